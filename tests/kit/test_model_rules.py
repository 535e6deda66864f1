"""Rules by model: whom they are about, and what becomes of the rules of items."""

from collections.abc import Iterator
from itertools import count
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind
from kitlog.kit.model_rules import items_like, limits_of, model_of, offered, reach, same_rule, says_the_same
from kitlog.kit.service import ModelRule, ServiceRule


def item(item_id: str, **fields: Any) -> Item:
    given = {"kind": Kind.WING, "maker": "Hollin", "model": "Tarn 2", **fields}
    return Item.model_validate({"id": item_id, "name": f"Wing {item_id}", **given})


def model_rule(**fields: Any) -> ModelRule:
    given = {"id": "m", "kind": Kind.WING, "maker": "Hollin", "model": "Tarn 2", "rule": "wing.full", "months": 36}
    return ModelRule.model_validate({**given, **fields})


def own_rule(rule_id: str, item_id: str, **fields: Any) -> ServiceRule:
    return ServiceRule.model_validate({"id": rule_id, "item_id": item_id, "rule": "wing.full", "months": 24, **fields})


def new_ids() -> Iterator[str]:
    return (f"new {number}" for number in count(1))


class TestModel:
    @pytest.mark.parametrize(
        "fields", [{"maker": "HOLLIN"}, {"model": "tarn 2"}, {"model": " Tarn  2 "}, {"serial": "7"}, {"name": "B"}]
    )
    def test_capitals_and_blanks_make_no_other_model(self, fields: dict[str, str]) -> None:
        assert model_of(item("a", **fields)) == model_of(item("b")) == model_of(model_rule())

    def test_accents_typed_in_two_ways_are_one(self) -> None:
        assert model_of(item("a", model="Fe\u0301e")) == model_of(item("b", model="F\u00e9e"))

    @pytest.mark.parametrize("fields", [{"kind": Kind.HARNESS}, {"maker": "Quern"}, {"maker": ""}, {"model": "Tarn 3"}])
    def test_another_kind_maker_or_model_is_another(self, fields: dict[str, Any]) -> None:
        assert model_of(item("a", **fields)) != model_of(model_rule())

    def test_without_a_model_nothing_is_alike(self) -> None:
        nameless = item("a", model="")
        assert model_of(nameless) is None
        assert items_like(nameless, [nameless, item("b", model="")]) == (nameless,)

    def test_all_of_one_model_the_item_itself_first(self) -> None:
        first, second, other = item("a"), item("b"), item("c", model="Tarn 3")
        assert items_like(second, [first, other, second]) == (second, first)


class TestReach:
    def test_an_item_without_such_a_rule_gets_one_that_follows(self) -> None:
        done = reach(model_rule(), [item("a")], [], new_ids=new_ids())
        assert [(rule.id, rule.item_id, rule.of_model, rule.months) for rule in done.new] == [("new 1", "a", "m", 36)]
        assert done.written == done.new

    @pytest.mark.parametrize("state", [ItemState.RETIRED, ItemState.LOST])
    def test_one_that_is_gone_gets_none_but_keeps_following(self, state: ItemState) -> None:
        gone = item("a", state=state)
        assert reach(model_rule(), [gone], [], new_ids=new_ids()).written == ()
        (followed,) = reach(model_rule(), [gone], [own_rule("r", "a", of_model="m")], new_ids=new_ids()).follows
        assert followed.months == 36

    def test_a_rule_that_follows_keeps_id_and_whether_it_applies(self) -> None:
        before = own_rule("r", "a", of_model="m", applies=False)
        (rule,) = reach(model_rule(), [item("a")], [before], new_ids=new_ids()).follows
        assert (rule.id, rule.months, rule.applies, rule.of_model) == ("r", 36, False, "m")

    def test_it_follows_through_another_name(self) -> None:
        before = own_rule("r", "a", of_model="m")
        (rule,) = reach(model_rule(rule="big check"), [item("a")], [before], new_ids=new_ids()).follows
        assert (rule.id, rule.rule) == ("r", "big check")

    def test_figures_of_its_own_stay_unless_they_are_named(self) -> None:
        own = own_rule("r", "a", rule="Wing.FULL")
        kept = reach(model_rule(), [item("a")], [own], new_ids=new_ids())
        assert (kept.own, kept.written) == ((own,), ())
        taken = reach(model_rule(), [item("a")], [own], replacing={"r"}, new_ids=new_ids())
        assert taken.own == ()
        assert [(rule.id, rule.rule, rule.of_model) for rule in taken.follows] == [("r", "wing.full", "m")]

    def test_an_item_of_another_model_by_now_keeps_the_figures_as_its_own(self) -> None:
        before = own_rule("r", "a", of_model="m")
        done = reach(model_rule(), [item("a", model="Tarn 3")], [before], new_ids=new_ids())
        assert done.loosened == (before.model_copy(update={"of_model": None}),)
        assert not done.follows

    def test_rules_about_something_else_are_left_alone(self) -> None:
        other = own_rule("r", "a", rule="wing.trim")
        done = reach(model_rule(), [item("a")], [other], new_ids=new_ids())
        assert [rule.rule for rule in done.written] == ["wing.full"]

    @given(st.lists(st.tuples(st.sampled_from(["Tarn 2", "TARN 2", "Tarn 3", ""]), st.sampled_from(["", "m", "own"]))))
    def test_each_item_of_the_model_has_one_rule_of_that_name_afterwards(self, kit: list[tuple[str, str]]) -> None:
        items = [item(str(n), model=model) for n, (model, _) in enumerate(kit)]
        rules = [
            own_rule(f"r{n}", str(n), of_model="m" if has == "m" else None) for n, (_, has) in enumerate(kit) if has
        ]
        done = reach(model_rule(), items, rules, new_ids=new_ids())
        after = {rule.id: rule for rule in [*rules, *done.written]}
        for thing in items:
            of_item = [rule for rule in after.values() if rule.item_id == thing.id]
            if model_of(thing) == model_of(model_rule()):
                assert len(of_item) == 1
            assert all(
                says_the_same(rule, model_rule()) and model_of(thing) == model_of(model_rule())
                for rule in of_item
                if rule.of_model
            )


class TestOffered:
    def test_the_rule_of_the_model_until_the_item_has_one(self) -> None:
        rule = model_rule()
        assert offered(item("a", model="tarn 2"), [rule], []) == (rule,)
        assert offered(item("a"), [rule], [own_rule("r", "a")]) == ()
        assert offered(item("a"), [rule], [own_rule("r", "a", rule="renamed", of_model="m")]) == ()
        assert offered(item("a"), [rule], [own_rule("r", "b")]) == (rule,)

    def test_nothing_for_another_model(self) -> None:
        assert offered(item("a", model="Tarn 3"), [model_rule()], []) == ()
        assert offered(item("a", model=""), [model_rule()], []) == ()

    def test_a_second_rule_for_the_same_thing_is_known(self) -> None:
        first = model_rule()
        assert same_rule(model_rule(id="n", maker="hollin", rule="WING.FULL", months=12), [first]) == first
        assert same_rule(first, [first]) is None
        assert same_rule(model_rule(id="n", rule="wing.trim"), [first]) is None


def test_what_a_rule_says_is_all_but_whom_it_is_about() -> None:
    assert set(limits_of(model_rule())) == set(ServiceRule.model_fields) - {"id", "item_id", "applies", "of_model"}
    assert set(limits_of(model_rule())) == set(ModelRule.model_fields) - {"id", "kind", "maker", "model"}
