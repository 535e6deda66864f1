from datetime import timedelta
from typing import Any

import pytest
from scenario import EVENING, LIBRARY

from kitlog.fault import InputFault
from kitlog.kit.due import DueState
from kitlog.kit.flights import Flight
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.workbench.starter_rule import rule_from
from kitlog.workbench.workbench import Workbench

TODAY = EVENING.date()
TOMORROW = TODAY + timedelta(days=1)


def id_of(bench: Workbench, name: str) -> str:
    return next(item.id for item in bench.items() if item.name == name)


def rule_of(bench: Workbench, item: str, rule: str) -> ServiceRule:
    return next(r for r in bench.rules() if (r.item_id, r.rule) == (id_of(bench, item), rule))


def state_of(bench: Workbench, item: str, rule: str) -> DueState:
    return next(l.due.state for l in bench.due(TODAY) if (l.item.name, l.rule.rule) == (item, rule))  # noqa: E741


def flight(**fields: Any) -> Flight:
    return Flight.model_validate({"id": "f", "on": TODAY, "airtime_min": 60, **fields})


class TestStarters:
    def test_are_offered_by_kind_and_by_what_the_item_serves(self, bench: Workbench) -> None:
        assert {s.name for s in bench.starters_for(id_of(bench, "Hook knife"))} == {"knife.blade"}
        assert {"wing.lowlines", "wing.siv"} <= {s.name for s in bench.starters_for(id_of(bench, "Wing A"))}

    def test_are_never_applied_by_themselves(self, empty: Workbench) -> None:
        from kitlog.kit.item import Item

        empty.add_item(Item.model_validate({"id": "w", "name": "wing", "kind": "wing"}))
        assert empty.starters_for("w")
        assert empty.rules() == ()

    def test_those_the_item_has_are_not_offered_again(self, bench: Workbench) -> None:
        wing = id_of(bench, "Wing A")
        offered = {s.name for s in bench.starters_for(wing)}
        assert not offered & {"wing.full", "wing.trim", "wing.event"}
        bench.take_starters(wing, ["wing.siv"])
        assert {s.name for s in bench.starters_for(wing)} == offered - {"wing.siv"}

    def test_taken_they_are_rules_that_name_their_source(self, bench: Workbench) -> None:
        bench.take_starters(id_of(bench, "Hook knife"), ["knife.blade"])
        rule = rule_of(bench, "Hook knife", "knife.blade")
        starter = next(s for s in LIBRARY.starter_rules if s.name == "knife.blade")
        assert (rule.months, rule.grounds, rule.source) == (starter.months, starter.grounds, starter.source)

    def test_a_printed_date_has_to_be_typed(self, bench: Workbench) -> None:
        radio = id_of(bench, "Flight computer")
        with pytest.raises(InputFault) as refused:
            bench.take_starters(radio, ["instrument.airspace"])
        assert refused.value.code == "rule.wants_a_date"
        assert not [rule for rule in bench.rules() if rule.item_id == radio]

    def test_an_unknown_item_is_offered_nothing(self, bench: Workbench) -> None:
        assert bench.starters_for("nobody") == ()

    def test_every_starter_with_a_limit_makes_a_valid_rule(self) -> None:
        limited = [s for s in LIBRARY.starter_rules if s.months or s.hours or s.launches or s.events]
        assert len(limited) > 20
        for starter in limited:
            assert rule_from(starter, "item", "id").rule == starter.name


class TestRecords:
    def test_one_record_can_satisfy_several_rules(self, bench: Workbench) -> None:
        full, trim = rule_of(bench, "Wing A", "wing.full"), rule_of(bench, "Wing A", "wing.trim")
        bench.add_record(ServiceRecord(id="r", item_id=full.item_id, rules=(full.id, trim.id), done_on=TODAY))
        assert {state_of(bench, "Wing A", name) for name in ("wing.full", "wing.trim")} == {DueState.IN_DATE}

    def test_a_struck_record_counts_no_more(self, bench: Workbench) -> None:
        rule = rule_of(bench, "Power bank", "any.capacity")
        bench.add_record(ServiceRecord(id="r", item_id=rule.item_id, rules=(rule.id,), done_on=TODAY))
        assert state_of(bench, "Power bank", "any.capacity") is DueState.IN_DATE
        bench.strike_record("r")
        assert state_of(bench, "Power bank", "any.capacity") is DueState.OVERDUE
        assert next(r for r in bench.records() if r.id == "r").struck_at == EVENING

    def test_the_future_is_refused(self, bench: Workbench) -> None:
        rule = rule_of(bench, "Power bank", "any.capacity")
        with pytest.raises(InputFault) as refused:
            bench.add_record(ServiceRecord(id="r", item_id=rule.item_id, rules=(rule.id,), done_on=TOMORROW))
        assert (refused.value.code, refused.value.facts["day"]) == ("record.in_future", TOMORROW)

    @pytest.mark.parametrize("item", ["Phone", "Wing B"])
    def test_a_rule_of_another_item_or_of_none_is_refused(self, bench: Workbench, item: str) -> None:
        rule = rule_of(bench, "Wing A", "wing.full").id if item == "Wing B" else "nothing"
        with pytest.raises(InputFault) as refused:
            bench.add_record(ServiceRecord(id="r", item_id=id_of(bench, item), rules=(rule,), done_on=TODAY))
        assert refused.value.code == "rule.unknown"
        assert "r" not in {record.id for record in bench.records()}

    def test_an_unknown_record_is_refused(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.strike_record("nothing")
        assert refused.value.code == "record.unknown"


class TestEvents:
    def test_opens_the_rules_that_answer_to_it(self, bench: Workbench) -> None:
        bench.log_event(Event(id="e", item_id=id_of(bench, "Wing A"), on=TODAY, kind="water"))
        assert state_of(bench, "Wing A", "wing.event") is DueState.OVERDUE

    def test_the_future_is_refused(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.log_event(Event(id="e", item_id=id_of(bench, "Wing A"), on=TOMORROW, kind="water"))
        assert refused.value.code == "event.in_future"


class TestRules:
    def test_one_with_records_stays(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.delete_rule(rule_of(bench, "Wing A", "wing.full").id)
        assert refused.value.code == "rule.has_records"

    def test_it_can_be_said_not_to_apply(self, bench: Workbench) -> None:
        rule = rule_of(bench, "Wing A", "wing.full")
        bench.save_rule(rule.model_copy(update={"applies": False}))
        assert state_of(bench, "Wing A", "wing.full") is DueState.DOES_NOT_APPLY

    def test_an_unknown_one_is_refused(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.delete_rule("nothing")
        assert refused.value.code == "rule.unknown"


class TestFlights:
    def test_airtime_goes_to_what_was_flown(self, bench: Workbench) -> None:
        wing = id_of(bench, "Wing B")
        before = bench.usage(wing, TODAY).airtime_h
        bench.add_flight(flight(flown=[wing]))
        assert bench.usage(wing, TODAY).airtime_h == pytest.approx(before + 1)

    def test_flights_can_be_added_before_anything_was_read(self, bench: Workbench, another: Workbench) -> None:
        wing = id_of(another, "Wing B")
        bench.add_flight(flight(flown=[wing], carried=[id_of(another, "Foil blanket")]))
        assert another.flights()[-1].flown == (wing,)

    @pytest.mark.parametrize(
        ("fields", "code"),
        [
            ({"on": TOMORROW}, "flight.in_future"),
            ({"until": TOMORROW}, "flight.in_future"),
            ({"flown": ["nobody"]}, "item.unknown"),
            ({"carried": ["nobody"]}, "item.unknown"),
        ],
    )
    def test_refusals(self, bench: Workbench, fields: dict[str, object], code: str) -> None:
        count = len(bench.flights())
        with pytest.raises(InputFault) as refused:
            bench.add_flight(flight(**fields))
        assert refused.value.code == code
        assert len(bench.flights()) == count

    def test_only_what_is_in_the_log_can_be_changed(self, bench: Workbench) -> None:
        for act in (lambda: bench.edit_flight(flight()), lambda: bench.delete_flight("nothing")):
            with pytest.raises(InputFault) as refused:
                act()
            assert refused.value.code == "flight.unknown"


class TestChangedRecords:
    def record(self, bench: Workbench, **fields: Any) -> ServiceRecord:
        rule = rule_of(bench, "Wing A", "wing.full")
        made = {"id": bench.new_id(), "item_id": rule.item_id, "rules": (rule.id,), "done_on": TODAY, **fields}
        return ServiceRecord.model_validate(made)

    def test_the_old_one_stays_struck_and_the_new_one_counts(self, bench: Workbench) -> None:
        old = self.record(bench, who="myself")
        bench.add_record(old)
        new = self.record(bench, who="workshop", result="failed")
        bench.change_record(old.id, new)
        stored = {r.id: r for r in bench.records()}
        assert stored[old.id].struck_at is not None
        assert (stored[new.id].who, stored[new.id].struck_at) == ("workshop", None)
        assert state_of(bench, "Wing A", "wing.full") is DueState.OVERDUE

    def test_it_is_one_step_to_undo(self, bench: Workbench) -> None:
        old, new = self.record(bench, who="myself"), self.record(bench, who="workshop")
        bench.add_record(old)
        bench.change_record(old.id, new)
        bench.undo()
        stored = {r.id: r for r in bench.records()}
        assert stored[old.id].struck_at is None
        assert stored[new.id].struck_at is not None
        bench.redo()
        stored = {r.id: r for r in bench.records()}
        assert stored[old.id].struck_at is not None
        assert stored[new.id].struck_at is None

    def test_hours_are_not_held_against_the_one_that_goes(self, bench: Workbench) -> None:
        old = self.record(bench, hours=900, done_on=TODAY - timedelta(days=9))
        bench.add_record(old, sure=True)
        bench.change_record(old.id, self.record(bench, hours=200.0, done_on=TODAY), sure=False)
        assert len([r for r in bench.records() if r.hours == 200.0]) == 1

    def test_neither_a_struck_nor_an_unknown_record_can_be_changed(self, bench: Workbench) -> None:
        old = self.record(bench)
        bench.add_record(old)
        bench.strike_record(old.id)
        for name in (old.id, "nobody"):
            with pytest.raises(InputFault, match=r"record\.unknown"):
                bench.change_record(name, self.record(bench))
