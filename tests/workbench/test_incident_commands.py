from datetime import date, timedelta

import pytest
from reads import all_reads
from scenario import EVENING

from kitlog.fault import InputFault
from kitlog.kit.due import Due, DueState
from kitlog.kit.item import Item
from kitlog.kit.service import Event, Grounds, ServiceRecord, ServiceRule
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.event_text import note_text
from kitlog.workbench.workbench import Workbench

TODAY = EVENING.date()
TOMORROW = TODAY + timedelta(days=1)


def id_of(bench: Workbench, name: str) -> str:
    return next(item.id for item in bench.items() if item.name == name)


def rules_of(bench: Workbench, item: str) -> dict[str, ServiceRule]:
    return {rule.rule: rule for rule in bench.rules() if rule.item_id == id_of(bench, item)}


def due_of(bench: Workbench, item: str, rule: str, on: date = TODAY) -> Due:
    return next(line.due for line in bench.due(on) if (line.item.name, line.rule.rule) == (item, rule))


def log(bench: Workbench, incident: str, *items: str, on: date = TODAY, note: str = "") -> None:
    bench.log_incident(bench.incident(incident), [id_of(bench, item) for item in items], on, note)


class TestLogging:
    def test_one_step_for_all_items(self, bench: Workbench) -> None:
        log(bench, "tree", "Wing A", "Harness A", note="a larch")
        assert [(e.kind, e.note) for e in bench.events()[-2:]] == [
            ("tree", "a larch"),
            ("impact", "[tree landing] a larch"),
        ]
        assert due_of(bench, "Wing A", "wing.event").state is DueState.OVERDUE
        assert due_of(bench, "Harness A", "harness.event").state is DueState.OVERDUE
        bench.undo()
        assert due_of(bench, "Wing A", "wing.event").state is DueState.IN_DATE
        assert all(event.struck_at for event in bench.events()[-2:])

    def test_what_was_entered_is_what_is_said(self, bench: Workbench) -> None:
        log(bench, "tree", "Wing A", "Harness A", note="a larch")
        assert "tree landing" in due_sentence(due_of(bench, "Harness A", "harness.event"))
        assert "impact" not in due_sentence(due_of(bench, "Harness A", "harness.event"))
        assert note_text(bench.events()[-1]) == note_text(bench.events()[-2]) == "a larch"

    def test_a_rule_of_a_harness_that_names_the_tree_is_opened_by_it(self, bench: Workbench) -> None:
        harness = id_of(bench, "Harness A")
        bench.save_rule(ServiceRule(id="own", item_id=harness, rule="own look", events=("tree",), grounds=Grounds.YES))
        log(bench, "tree", "Harness A")
        assert due_of(bench, "Harness A", "own look").state is DueState.OVERDUE

    def test_the_rule_that_is_lacking_is_taken_and_told(self, bench: Workbench) -> None:
        assert "reserve.event" not in rules_of(bench, "Reserve A")
        before = len(bench.rules())
        logged = bench.log_incident(bench.incident("reserve thrown"), [id_of(bench, "Reserve A")], TODAY)
        assert [one.takes for one in logged.follow_ups] == [("reserve.event",)]
        assert len(bench.rules()) == before + 1
        due = due_of(bench, "Reserve A", "reserve.event")
        assert (due.state, due.grounds) == (DueState.OVERDUE, Grounds.YES)
        stops = {f.subject for f in bench.assess(bench.outings()[0]).findings if f.state == "stop"}
        assert f"{id_of(bench, 'Reserve A')}:reserve.event" in stops

    def test_undo_takes_the_rule_off_again(self, bench: Workbench) -> None:
        before = all_reads(bench)
        log(bench, "reserve thrown", "Reserve A")
        bench.undo()
        after = all_reads(bench)
        assert after["rules"] == before["rules"]

    def test_drying_is_due_within_a_day(self, bench: Workbench) -> None:
        log(bench, "water", "Wing A")
        assert due_of(bench, "Wing A", "any.dry").due_on == TOMORROW
        assert due_of(bench, "Wing A", "any.dry").state is DueState.DUE_SOON
        assert due_of(bench, "Wing A", "any.dry", TOMORROW + timedelta(days=1)).state is DueState.OVERDUE

    def test_a_rule_that_does_not_know_such_an_event_learns_it(self, bench: Workbench) -> None:
        assert "crash" not in rules_of(bench, "Wing A")["wing.event"].events
        log(bench, "crash", "Wing A")
        assert rules_of(bench, "Wing A")["wing.event"].events[-1] == "crash"
        assert due_of(bench, "Wing A", "wing.event").state is DueState.OVERDUE

    def test_nothing_is_written_before_it_is_asked_for(self, bench: Workbench) -> None:
        before = all_reads(bench)
        found = bench.incident_follow_ups(bench.incident("water"), [id_of(bench, "Reserve A")], TODAY)
        assert found[0].takes == ("reserve.event",)
        assert all_reads(bench) == before

    def test_the_full_inspection_is_not_reset_by_the_check_after_a_tree(self, bench: Workbench) -> None:
        """The worked example: a check after a tree landing resets the trim, not the full inspection."""
        full = due_of(bench, "Wing A", "wing.full").due_on
        log(bench, "tree", "Wing A")
        rules = rules_of(bench, "Wing A")
        done = (rules["wing.event"].id, rules["wing.trim"].id)
        bench.add_record(ServiceRecord(id="r", item_id=id_of(bench, "Wing A"), rules=done, done_on=TODAY))
        assert due_of(bench, "Wing A", "wing.event").state is DueState.IN_DATE
        assert due_of(bench, "Wing A", "wing.trim").counted_from == TODAY
        assert due_of(bench, "Wing A", "wing.full").due_on == full

    @pytest.mark.parametrize(
        ("items", "on", "code"),
        [
            (["Wing A"], TOMORROW, "event.in_future"),
            ([], TODAY, "event.no_items"),
            (["Reserve A"], date(2018, 5, 31), "event.before_made"),
        ],
    )
    def test_refusals(self, bench: Workbench, items: list[str], on: date, code: str) -> None:
        before = all_reads(bench)
        with pytest.raises(InputFault) as refused:
            log(bench, "water", *items, on=on)
        assert refused.value.code == code
        assert all_reads(bench) == before

    def test_something_else_wants_a_note(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            log(bench, "other", "Wing A", note=" ")
        assert refused.value.code == "event.no_note"
        log(bench, "other", "Wing A", note="left in the hot car")
        assert (bench.events()[-1].kind, bench.events()[-1].note) == ("other", "left in the hot car")

    def test_unknown_items_and_incidents(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.log_incident(bench.incident("water"), ["nobody"], TODAY)
        assert refused.value.code == "item.unknown"
        with pytest.raises(InputFault) as refused:
            bench.incident("rain of frogs")
        assert refused.value.code == "incident.unknown"
        assert "hard landing" in str(refused.value.facts["known"])


class TestChoosing:
    def test_what_a_rule_of_the_pilots_own_answers_to_can_be_logged(self, bench: Workbench) -> None:
        boots = id_of(bench, "Boots")
        bench.save_rule(ServiceRule(id="own", item_id=boots, rule="new soles", events=("long hike",)))
        assert bench.incidents()[-1].name == "long hike"
        assert [item.name for item in bench.can_strike(bench.incident("Long hike"))] == ["Boots"]
        log(bench, "long hike", "Boots")
        assert due_of(bench, "Boots", "new soles").state is DueState.OVERDUE

    def test_only_what_it_can_strike_is_offered(self, bench: Workbench) -> None:
        kinds = {item.kind for item in bench.can_strike(bench.incident("helmet blow"))}
        assert kinds == {"helmet"}
        assert len(bench.can_strike(bench.incident("other"))) == len(bench.items())

    def test_an_old_name_of_an_event_still_opens_what_answers_to_it(self, bench: Workbench) -> None:
        log(bench, "sand", "Harness A")
        assert due_of(bench, "Harness A", "harness.event").state is DueState.OVERDUE


class TestStriking:
    def test_a_struck_event_stays_and_opens_nothing(self, bench: Workbench) -> None:
        log(bench, "tree", "Wing A")
        event = bench.events()[-1]
        bench.strike_event(event.id)
        assert bench.events()[-1].struck_at == EVENING
        assert due_of(bench, "Wing A", "wing.event").state is DueState.IN_DATE
        with pytest.raises(InputFault) as refused:
            bench.strike_event("nothing")
        assert refused.value.code == "event.unknown"


class TestPairs:
    def reserve(self, bench: Workbench) -> Item:
        return next(item for item in bench.items() if item.name == "Reserve A")

    def fit(self, bench: Workbench, harness: str | None) -> None:
        to = id_of(bench, harness) if harness else None
        bench.edit_items([self.reserve(bench).model_copy(update={"fitted_to": to})])

    def test_another_harness_opens_the_compatibility_check(self, bench: Workbench) -> None:
        self.fit(bench, "Harness B")
        due = due_of(bench, "Reserve A", "reserve.fit")
        assert (due.state, due.grounds) == (DueState.OVERDUE, Grounds.YES)
        assert bench.events()[-1].note == "Harness A -> Harness B"
        assert bench.undoable is not None
        assert bench.undoable.code == "item.paired"  # the window says so beside Undo
        bench.undo()
        assert "reserve.fit" not in rules_of(bench, "Reserve A")
        assert self.reserve(bench).fitted_to == id_of(bench, "Harness A")

    def test_taken_out_and_put_elsewhere_later_is_one_too(self, bench: Workbench) -> None:
        self.fit(bench, None)
        assert "reserve.fit" not in rules_of(bench, "Reserve A")
        self.fit(bench, "Harness B")
        assert due_of(bench, "Reserve A", "reserve.fit").state is DueState.OVERDUE

    def test_taken_out_and_put_back_is_none(self, bench: Workbench) -> None:
        self.fit(bench, None)
        self.fit(bench, "Harness A")
        assert [event.kind for event in bench.events()[-1:]] == ["taken out"]
        assert "reserve.fit" not in rules_of(bench, "Reserve A")


class TestRepack:
    """A harness is looked over with each repack of its reserve (Gin Gingo Airlite manual p. 18, second-hand)."""

    def repack(self, bench: Workbench, on: date = TODAY) -> None:
        rule = rules_of(bench, "Reserve A")["reserve.repack"]
        bench.add_record(ServiceRecord(id=f"r {on}", item_id=rule.item_id, rules=(rule.id,), done_on=on))

    def test_calls_for_a_look_at_the_harness_where_its_rule_asks(self, bench: Workbench) -> None:
        bench.take_starters(id_of(bench, "Harness A"), ["harness.visual"])
        self.repack(bench)
        event = bench.events()[-1]
        assert (event.item_id, event.kind, event.note) == (id_of(bench, "Harness A"), "reserve repacked", "Reserve A")
        assert due_of(bench, "Harness A", "harness.visual").state is DueState.OVERDUE
        bench.undo()
        assert bench.events()[-1].struck_at

    def test_not_where_none_asks_or_it_was_looked_over_then(self, bench: Workbench) -> None:
        before = bench.events()
        self.repack(bench, TODAY - timedelta(days=1))
        bench.take_starters(id_of(bench, "Harness A"), ["harness.visual"])
        visual = rules_of(bench, "Harness A")["harness.visual"]
        bench.add_record(ServiceRecord(id="v", item_id=visual.item_id, rules=(visual.id,), done_on=TODAY))
        self.repack(bench)
        assert bench.events() == before


class TestRecords:
    def test_events_of_that_day_are_answered(self, bench: Workbench) -> None:
        log(bench, "tree", "Wing A")
        rule = rules_of(bench, "Wing A")["wing.event"]
        bench.add_record(ServiceRecord(id="r", item_id=rule.item_id, rules=(rule.id,), done_on=TODAY))
        assert bench.records()[-1].answers == (bench.events()[-1].id,)
        bench.log_event(Event(id="again", item_id=rule.item_id, on=TODAY, kind="water"))
        assert due_of(bench, "Wing A", "wing.event").event.id == "again"  # type: ignore[union-attr]

    def test_hours_that_run_backwards_are_asked_about(self, bench: Workbench) -> None:
        rule = rules_of(bench, "Wing A")["wing.full"]
        record = ServiceRecord(id="r", item_id=rule.item_id, rules=(rule.id,), done_on=TODAY, hours=1.0)
        with pytest.raises(InputFault) as asked:
            bench.add_record(record)
        assert str(asked.value.code).startswith("record.hours_")
        bench.add_record(record, sure=True)
        assert bench.records()[-1].hours == 1.0
