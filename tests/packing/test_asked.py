import pytest
from scenario import LIBRARY

from kitlog.outing.conditions import Answer3, Condition
from kitlog.outing.needs import FlightType, Need, Raise, Strength
from kitlog.packing.asked import EVERY_FLIGHT, asked
from kitlog.packing.assessment import Asked, Truth


def need(strength: Strength = Strength.ADVISED, id_: str = "water", **fields: object) -> Need:
    plain = {"id": id_, "label": id_, "kinds": ["vessel"], "strength": strength, "why": "because"}
    return Need.model_validate(plain | fields)


def library(*base: Need, overlays: tuple[Need, ...] = ()) -> object:
    return LIBRARY.model_copy(update={"base": base, "overlays": overlays})


def flight_type(name: str, *needs: Need) -> FlightType:
    return FlightType(name=name, label=name, needs=needs)


def merged(base: tuple[Need, ...], *types: FlightType, holding: tuple[Condition, ...] = (), overlays=()) -> list[Asked]:
    truths = [Truth(c, Answer3.YES if c in holding else Answer3.NO) for c in Condition]
    return list(asked(library(*base, overlays=overlays), types, truths))


class TestMerging:
    @pytest.mark.parametrize("turned", [False, True])
    def test_strongest_wins_whatever_the_order(self, turned: bool) -> None:
        types = [
            flight_type("short", need(Strength.COMFORT, why="short")),
            flight_type("long", need(Strength.ESSENTIAL, why="long")),
        ]
        (one,) = merged((need(Strength.ADVISED),), *(types[::-1] if turned else types))
        assert (one.strength, one.need.why) == (Strength.ESSENTIAL, "long")
        assert set(one.by) == {EVERY_FLIGHT, "short", "long"}

    @pytest.mark.parametrize("turned", [False, True])
    def test_larger_amounts_win_whoever_asks(self, turned: bool) -> None:
        types = [
            flight_type("much", need(Strength.COMFORT, amount=3, most=4, water_ml=1_500)),
            flight_type("little", need(Strength.ESSENTIAL, amount=2, most=9, water_ml=500)),
        ]
        (one,) = merged((), *(types[::-1] if turned else types))
        assert (one.strength, one.need.amount, one.need.most, one.need.water_ml) == (Strength.ESSENTIAL, 3, 9, 1_500)

    def test_different_needs_stay_apart(self) -> None:
        assert len(merged((need(), need(id_="food")), flight_type("x", need(id_="radio")))) == 3

    def test_strongest_first_otherwise_as_in_the_library(self) -> None:
        needs = (need(Strength.COMFORT, "a"), need(Strength.ESSENTIAL, "b"), need(Strength.ESSENTIAL, "c"))
        assert [one.need.id for one in merged(needs)] == ["b", "c", "a"]


class TestConditions:
    def test_a_condition_raises(self) -> None:
        raised = need(raised=[Raise(to=Strength.ESSENTIAL, when=(Condition.COLD, Condition.SNOW))])
        (calm,), (cold,) = merged((raised,)), merged((raised,), holding=(Condition.COLD,))
        assert (calm.strength, calm.raised_by) == (Strength.ADVISED, None)
        assert (cold.strength, cold.raised_by) == (Strength.ESSENTIAL, Condition.COLD)

    def test_a_condition_never_lowers(self) -> None:
        lowered = need(Strength.ESSENTIAL, raised=[Raise(to=Strength.ADVISED, when=(Condition.COLD,))])
        (one,) = merged((lowered,), holding=(Condition.COLD,))
        assert one.strength is Strength.ESSENTIAL

    def test_a_need_may_exist_only_under_a_condition(self) -> None:
        only = need(only_when=[Condition.WATER])
        assert merged((only,)) == []
        (one,) = merged((only,), holding=(Condition.WATER,))
        assert "water" in one.by

    def test_an_overlay_joins_the_need_of_the_type(self) -> None:
        overlay = need(Strength.ESSENTIAL, only_when=[Condition.ALONE])
        (one,) = merged((need(),), overlays=(overlay,), holding=(Condition.ALONE,))
        assert one.strength is Strength.ESSENTIAL
        assert one.by == (EVERY_FLIGHT, "alone")

    def test_an_open_condition_counts_only_where_it_says_so(self) -> None:
        only = need(only_when=[Condition.WATER])
        for counts in (True, False):
            truth = Truth(Condition.WATER, Answer3.OPEN, counts_as_yes=counts)
            assert bool(asked(library(only), (), [truth])) is counts


class TestLibrary:
    """The starter tables: several types of one day."""

    def strengths(self, *names: str, holding: tuple[Condition, ...] = ()) -> dict[str, Asked]:
        types = [found for name in names if (found := LIBRARY.flight_type(name))]
        assert len(types) == len(names)
        truths = [Truth(c, Answer3.YES if c in holding else Answer3.NO) for c in Condition]
        return {one.need.id: one for one in asked(LIBRARY, types, truths)}

    def test_hike_and_fly_with_cross_country_asks_for_both(self) -> None:
        both = self.strengths("hike and fly", "cross-country")
        assert {"pack share", "map instrument"} <= both.keys()
        assert both["insulation"].strength is Strength.ESSENTIAL
        assert both["water"].need.water_ml == 1_500
        assert set(both["water"].by) == {EVERY_FLIGHT, "hike and fly", "cross-country"}

    def test_each_type_alone_asks_for_less(self) -> None:
        assert self.strengths("hike and fly")["insulation"].strength is Strength.ADVISED
        assert self.strengths("ridge")["water"].need.water_ml == 500
        assert "map instrument" not in self.strengths("hike and fly")
