import pytest
from scenario import judged, missing, of_code, the
from small_kit import NEW, but, item, outing, plus

from kitlog.budget.result import State
from kitlog.kit.item import Item
from kitlog.packing.assessment import Assessment
from kitlog.wording.remedies import remedy_text


def bottle(name: str, capacity_ml: int | None, **fields: object) -> Item:
    return item(name, "vessel", 50, vessel=None if capacity_ml is None else {"capacity_ml": capacity_ml}, **fields)


def filled(assessment: Assessment) -> dict[str, int]:
    return {line.item.name: line.content_ml for line in assessment.lines if line.item.kind == "vessel"}


def assessed(*vessels: Item, types: tuple[str, ...] = ("ridge",), **fields: object) -> Assessment:
    return judged(outing(flight_types=types, **fields), but("bottle", instead=vessels), NEW)


class TestFilling:
    def test_as_planned(self) -> None:
        assert filled(assessed(bottle("a", 1_000), water_ml=800)) == {"a": 800}

    def test_without_a_plan_the_least_that_is_needed(self) -> None:
        assert filled(assessed(bottle("a", 2_000))) == {"a": 500}
        assert filled(assessed(bottle("a", 2_000), types=("ridge", "cross-country"))) == {"a": 1_500}

    def test_a_second_vessel_goes_where_one_does_not_hold_it(self) -> None:
        assert filled(assessed(bottle("a", 700), bottle("b", 700), water_ml=1_000)) == {"a": 700, "b": 300}

    def test_one_that_holds_it_all_goes_before_two_lighter_ones(self) -> None:
        large = item("large", "vessel", 90, vessel={"capacity_ml": 1_500})
        assert filled(assessed(bottle("a", 700), bottle("b", 700), large, water_ml=1_400)) == {"large": 1_400}

    def test_the_larger_one_is_filled_first_and_the_pinned_one_before_it(self) -> None:
        two = (bottle("small", 400), bottle("large", 1_000))
        assert filled(assessed(*two, pinned=["small", "large"], water_ml=900)) == {"small": 0, "large": 900}
        larger = filled(assessed(*two, pinned=["small"], water_ml=900))
        assert larger == {"small": 400, "large": 500}

    def test_pieces_of_a_set_hold_it_together(self) -> None:
        pair = bottle("flasks", 500, quantity=2)
        assert filled(assessed(pair, pinned=["flasks"], water_ml=1_000)) == {"flasks": 1_000}

    def test_water_counts_at_take_off_and_not_at_the_landing(self) -> None:
        mass = assessed(bottle("a", 1_000), water_ml=1_000).mass
        assert mass.take_off_g is not None
        assert mass.landing_g is not None
        assert mass.take_off_g - mass.landing_g == 1_000


class TestTooLittle:
    def test_none_planned_is_a_stop(self) -> None:
        assessment = assessed(bottle("a", 1_000), water_ml=0)
        found = missing(assessment, "water")
        assert found is not None
        assert (found.state, found.reason) == (State.STOP, "no water planned")
        assert not of_code(assessment, "water.less")
        (remedy,) = the(assessment, "need.missing", "water").remedies
        assert "0.5" in remedy_text(remedy, {})

    def test_no_vessel_is_a_stop(self) -> None:
        found = missing(assessed(water_ml=1_000), "water")
        assert found is not None
        assert (found.state, found.reason) == (State.STOP, "none owned")

    def test_less_than_the_needs_ask_for_is_a_look(self) -> None:
        less = the(assessed(bottle("a", 1_000), types=("cross-country",), water_ml=1_000), "water.less")
        assert (less.state, less.figure, less.margin) == (State.LOOK, 1_000, -500)

    @pytest.mark.parametrize("water_ml", [None, 500, 900])
    def test_enough_says_nothing(self, water_ml: int | None) -> None:
        assessment = assessed(bottle("a", 1_000), water_ml=water_ml)
        assert not [finding for finding in assessment.findings if finding.code.startswith("water.")]


class TestMoreThanTheVesselsHold:
    def test_is_a_look_and_counts_as_what_they_hold(self) -> None:
        assessment = assessed(bottle("a", 1_000), bottle("b", 500), water_ml=4_000)
        assert filled(assessment) == {"a": 1_000, "b": 500}
        no_room = the(assessment, "water.no_room")
        assert (no_room.state, no_room.figure, no_room.margin) == (State.LOOK, 1_500, -2_500)


class TestVolumeNotKnown:
    def test_takes_what_was_planned(self) -> None:
        assessment = assessed(bottle("a", None), water_ml=1_200)
        assert filled(assessment) == {"a": 1_200}
        assert not [finding for finding in assessment.findings if finding.code.startswith("water.")]

    def test_takes_what_the_others_do_not_hold(self) -> None:
        assessment = assessed(bottle("a", None), bottle("b", 1_000), pinned=["a", "b"], water_ml=1_200)
        assert filled(assessment) == {"a": 200, "b": 1_000}

    def test_without_a_plan_it_is_not_known(self) -> None:
        assessment = assessed(bottle("a", None))
        unknown = the(assessment, "water.not_known")
        assert (unknown.state, unknown.items) == (State.NOT_KNOWN, ("a",))
        assert missing(assessment, "water") is None


def test_more_water_is_never_put_in_unasked() -> None:
    assert filled(judged(outing(), plus(), NEW)) == {"bottle": 500}
