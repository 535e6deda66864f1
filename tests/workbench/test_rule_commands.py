"""Rules of one item and of a model, on a real data file."""

from collections.abc import Collection
from datetime import timedelta
from typing import Any

import pytest
from scenario import EVENING

from kitlog.fault import InputFault
from kitlog.kit.due import DueState
from kitlog.kit.item import Item
from kitlog.kit.service import ModelRule, ServiceRecord, ServiceRule
from kitlog.workbench.rule_commands import NOTICES
from kitlog.workbench.workbench import Workbench

TODAY = EVENING.date()


@pytest.fixture
def kit(empty: Workbench) -> Workbench:
    """Three wings, two of one model, and a harness of that name."""
    for item_id, fields in {
        "a": {"model": "Tarn 2"},
        "b": {"model": "TARN 2"},
        "c": {"model": "Merlar"},
        "h": {"model": "Tarn 2", "kind": "harness"},
        "n": {},
    }.items():
        given = {"id": item_id, "name": item_id.upper(), "kind": "wing", "maker": "Hollin", "opening_h": 0, **fields}
        empty.add_item(Item.model_validate(given))
    return empty


def model_rule(**fields: Any) -> ModelRule:
    given = {"id": "m", "kind": "wing", "maker": "Hollin", "model": "Tarn 2", "rule": "wing.full", "months": 36}
    return ModelRule.model_validate({**given, "source": "maker's manual, page 31", **fields})


def own_rule(rule_id: str, item_id: str, **fields: Any) -> ServiceRule:
    return ServiceRule.model_validate({"id": rule_id, "item_id": item_id, "rule": "wing.full", "months": 24, **fields})


def rule_of(bench: Workbench, item_id: str, name: str = "wing.full") -> ServiceRule:
    return next(rule for rule in bench.rules() if (rule.item_id, rule.rule) == (item_id, name))


def items_of(rules: Collection[ServiceRule]) -> set[str]:
    return {rule.item_id for rule in rules}


def state_of(bench: Workbench, item_id: str, name: str = "wing.full") -> DueState:
    return next(line.due.state for line in bench.due(TODAY) if (line.item.id, line.rule.rule) == (item_id, name))


class TestModelRule:
    def test_one_step_puts_it_on_every_item_of_the_model(self, kit: Workbench) -> None:
        done = kit.save_model_rule(model_rule())
        assert items_of(done.new) == items_of(kit.rules()) == {"a", "b"}
        assert {(rule.months, rule.of_model, rule.source) for rule in kit.rules()} == {
            (36, "m", "maker's manual, page 31")
        }
        kit.undo()
        assert (kit.rules(), kit.model_rules()) == ((), ())
        kit.redo()
        assert items_of(kit.rules()) == {"a", "b"}
        assert [rule.id for rule in kit.model_rules()] == ["m"]

    def test_nothing_is_due_by_default(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        assert state_of(kit, "a") is DueState.NO_RECORD

    def test_a_change_is_reckoned_at_once_on_all_of_them(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        for item_id in ("a", "b"):
            done_on = TODAY - timedelta(days=800)
            rule = rule_of(kit, item_id)
            kit.add_record(ServiceRecord(id=item_id, item_id=item_id, rules=(rule.id,), done_on=done_on))
        assert {state_of(kit, item_id) for item_id in ("a", "b")} == {DueState.IN_DATE}
        kit.save_model_rule(model_rule(months=24))
        assert {state_of(kit, item_id) for item_id in ("a", "b")} == {DueState.OVERDUE}
        kit.undo()
        assert {state_of(kit, item_id) for item_id in ("a", "b")} == {DueState.IN_DATE}

    def test_a_starter_that_nobody_touched_gives_way_to_the_manual(self, kit: Workbench) -> None:
        kit.take_starters("a", ["wing.full"])
        before = rule_of(kit, "a")
        assert before.months == 24
        done = kit.save_model_rule(model_rule())
        assert (items_of(done.follows), items_of(done.new)) == ({"a"}, {"b"})
        assert (rule_of(kit, "a").id, rule_of(kit, "a").months) == (before.id, 36)

    def test_figures_of_its_own_stay_and_are_told(self, kit: Workbench) -> None:
        kit.save_rule(own_rule("r", "a", months=12))
        seen = kit.reach_of(model_rule())
        assert items_of(seen.own) == {"a"}
        assert kit.save_model_rule(model_rule()).own == seen.own
        assert rule_of(kit, "a").months == 12
        kit.save_model_rule(model_rule(), replacing=["r"])
        assert (rule_of(kit, "a").id, rule_of(kit, "a").months, rule_of(kit, "a").of_model) == ("r", 36, "m")

    def test_looking_at_what_it_would_do_writes_nothing(self, kit: Workbench) -> None:
        assert items_of(kit.reach_of(model_rule()).new) == {"a", "b"}
        assert (kit.rules(), kit.model_rules(), kit.undoable and kit.undoable.code) == ((), (), "item.add")

    def test_the_same_thing_of_the_same_model_is_one_rule(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        kit.save_model_rule(model_rule(id="another", maker="HOLLIN", rule="Wing.Full", months=12))
        assert [(rule.id, rule.months) for rule in kit.model_rules()] == [("m", 12)]
        assert {rule.of_model for rule in kit.rules()} == {"m"}

    def test_one_of_another_model_by_now_is_let_go(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        item = kit.item("b")
        assert item is not None
        kit.edit_items([item.model_copy(update={"model": "Merlar"})])
        done = kit.save_model_rule(model_rule(months=12))
        assert items_of(done.loosened) == {"b"}
        assert (rule_of(kit, "b").months, rule_of(kit, "b").of_model) == (36, None)
        assert rule_of(kit, "a").months == 12


class TestOneItemForItsModel:
    def test_its_own_figures_become_those_of_the_model_in_one_step(self, kit: Workbench) -> None:
        kit.save_rule(own_rule("r", "a", months=18))
        kit.save_rule(own_rule("s", "b", months=6))
        done = kit.save_for_model(own_rule("r", "a", months=30, applies=False))
        assert (items_of(done.follows), items_of(done.own)) == ({"a"}, {"b"})
        assert (rule_of(kit, "a").months, rule_of(kit, "a").applies, rule_of(kit, "b").months) == (30, False, 6)
        kit.save_for_model(rule_of(kit, "a"), all_items=True)
        assert (rule_of(kit, "b").id, rule_of(kit, "b").months, rule_of(kit, "b").applies) == ("s", 30, True)
        kit.undo()
        kit.undo()
        assert (rule_of(kit, "a").months, rule_of(kit, "b").months, kit.model_rules()) == (18, 6, ())

    def test_a_new_one_is_put_on_all(self, kit: Workbench) -> None:
        kit.save_for_model(own_rule("r", "a"))
        assert items_of(kit.rules()) == {"a", "b"}

    def test_it_needs_a_model(self, kit: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            kit.save_for_model(own_rule("r", "n"))
        assert refused.value.code == "rule.no_model"


class TestOneItem:
    def test_a_rule_edited_by_itself_follows_no_longer(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        kit.save_rule(rule_of(kit, "a").model_copy(update={"months": 12}))
        assert (rule_of(kit, "a").months, rule_of(kit, "a").of_model) == (12, None)
        kit.save_model_rule(model_rule(months=30))
        assert (rule_of(kit, "a").months, rule_of(kit, "b").months) == (12, 30)

    def test_that_it_does_not_apply_is_each_items_own(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        kit.save_rule(rule_of(kit, "a").model_copy(update={"applies": False}))
        assert rule_of(kit, "a").of_model == "m"
        kit.save_model_rule(model_rule(months=30))
        assert (rule_of(kit, "a").months, rule_of(kit, "a").applies) == (30, False)

    def test_it_can_follow_again(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        kit.save_rule(rule_of(kit, "a").model_copy(update={"months": 12}))
        assert kit.follow_model(rule_of(kit, "a").id)
        assert (rule_of(kit, "a").months, rule_of(kit, "a").of_model) == (36, "m")

    def test_without_a_rule_of_the_model_there_is_nothing_to_follow(self, kit: Workbench) -> None:
        kit.save_rule(own_rule("r", "c"))
        assert not kit.follow_model("r")
        with pytest.raises(InputFault) as refused:
            kit.follow_model("nobody")
        assert refused.value.code == "rule.unknown"

    def test_it_becomes_a_rule_of_its_model(self, kit: Workbench) -> None:
        kit.save_rule(own_rule("r", "b", months=18))
        model = kit.as_model_rule(rule_of(kit, "b"))
        assert model is not None
        assert (model.model, model.maker, model.months) == ("TARN 2", "Hollin", 18)
        kit.save_model_rule(model, replacing=["r"])
        assert {(rule.item_id, rule.months) for rule in kit.rules()} == {("a", 18), ("b", 18)}
        assert kit.as_model_rule(rule_of(kit, "b").model_copy(update={"months": 12})) == model.model_copy(
            update={"months": 12}
        )

    def test_one_without_a_model_has_no_rule_of_a_model(self, kit: Workbench) -> None:
        assert kit.as_model_rule(own_rule("r", "n")) is None
        assert kit.model_rules_for("n") == ()

    def test_a_made_up_model_is_not_kept(self, kit: Workbench) -> None:
        kit.save_rule(own_rule("r", "a", of_model="nobody"))
        assert rule_of(kit, "a").of_model is None


class TestOffered:
    def test_an_item_added_later_is_offered_the_rule_before_any_starter(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        given = {"id": "d", "name": "D", "kind": "wing", "maker": "hollin", "model": "tarn 2"}
        kit.add_item(Item.model_validate(given))
        assert [rule.id for rule in kit.model_rules_for("d")] == ["m"]
        assert "wing.full" not in {starter.name for starter in kit.starters_for("d")}
        assert not [rule for rule in kit.rules() if rule.item_id == "d"]
        kit.take_starters("d", ["wing.full", "wing.trim"])
        assert {(rule.rule, rule.of_model) for rule in kit.rules() if rule.item_id == "d"} == {
            ("wing.full", "m"),
            ("wing.trim", None),
        }
        assert kit.model_rules_for("d") == ()

    def test_so_is_one_edited_to_that_model(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        item = kit.item("c")
        assert item is not None
        kit.edit_items([item.model_copy(update={"model": "Tarn 2"})])
        assert [rule.id for rule in kit.model_rules_for("c")] == ["m"]

    def test_starters_can_be_taken_for_the_whole_model(self, kit: Workbench) -> None:
        kit.take_starters("a", [NOTICES, "wing.trim"], for_model=True)
        assert {(rule.rule, rule.model) for rule in kit.model_rules()} == {(NOTICES, "Tarn 2"), ("wing.trim", "Tarn 2")}
        assert {(rule.item_id, rule.rule) for rule in kit.rules()} == {
            (item_id, name) for item_id in "ab" for name in (NOTICES, "wing.trim")
        }
        kit.undo()
        assert (kit.rules(), kit.model_rules()) == ((), ())

    def test_but_not_where_no_model_is_given(self, kit: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            kit.take_starters("n", [NOTICES], for_model=True)
        assert (refused.value.code, refused.value.facts["name"]) == ("rule.no_model", "N")
        assert kit.model_rules() == ()


class TestDeleting:
    def test_the_items_keep_their_rules_as_their_own(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        gone = kit.delete_model_rule("m")
        assert (len(gone.kept), gone.deleted) == (2, ())
        assert kit.model_rules() == ()
        assert {(rule.item_id, rule.months, rule.of_model) for rule in kit.rules()} == {
            ("a", 36, None),
            ("b", 36, None),
        }
        kit.undo()
        assert {rule.of_model for rule in kit.rules()} == {"m"}

    def test_unless_told_and_never_one_with_records(self, kit: Workbench) -> None:
        kit.save_model_rule(model_rule())
        kit.add_record(ServiceRecord(id="r", item_id="a", rules=(rule_of(kit, "a").id,), done_on=TODAY))
        gone = kit.delete_model_rule("m", with_rules=True)
        assert (len(gone.kept), len(gone.deleted)) == (1, 1)
        assert [(rule.item_id, rule.of_model) for rule in kit.rules()] == [("a", None)]

    def test_an_unknown_one_is_refused(self, kit: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            kit.delete_model_rule("nobody")
        assert refused.value.code == "rule.unknown"


class TestRecordForModel:
    def look(self, bench: Workbench, **fields: Any) -> tuple[str, ...]:
        rule = rule_of(bench, "a", NOTICES)
        given = {"id": "look", "item_id": "a", "rules": (rule.id,), "done_on": TODAY, **fields}
        return bench.record_for_model(ServiceRecord.model_validate(given))

    def test_one_look_serves_every_item_of_the_model(self, kit: Workbench) -> None:
        kit.take_starters("a", [NOTICES], for_model=True)
        kit.take_starters("c", [NOTICES])
        ids = self.look(kit, who="I", remarks="none found", hours=12.0, cost=0.0)
        assert (len(ids), ids[0]) == (2, "look")
        assert [state_of(kit, item_id, NOTICES) for item_id in "abc"] == [
            DueState.IN_DATE,
            DueState.IN_DATE,
            DueState.NO_RECORD,
        ]
        twin = next(record for record in kit.records() if record.item_id == "b")
        assert (twin.who, twin.remarks, twin.hours, twin.cost) == ("I", "none found", None, None)
        kit.undo()
        assert all(record.struck_at for record in kit.records())

    def test_an_item_without_the_rule_gets_no_record(self, kit: Workbench) -> None:
        kit.take_starters("a", [NOTICES])
        assert self.look(kit) == ("look",)

    @pytest.mark.parametrize(
        ("fields", "code"),
        [
            ({"done_on": TODAY + timedelta(days=1)}, "record.in_future"),
            ({"rules": ("nobody",)}, "rule.unknown"),
            ({"item_id": "nobody"}, "item.unknown"),
        ],
    )
    def test_what_cannot_be_is_refused(self, kit: Workbench, fields: dict[str, Any], code: str) -> None:
        kit.take_starters("a", [NOTICES])
        with pytest.raises(InputFault) as refused:
            self.look(kit, **fields)
        assert refused.value.code == code
        assert kit.records() == ()
