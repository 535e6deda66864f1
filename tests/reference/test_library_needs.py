"""Needs of flight types: closed lists that fit together, and the sources behind some of them.

Strengths are common practice from instruction, no source, unless one is named.
"""

import re
from collections import defaultdict

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.kinds import Kind, Layer
from kitlog.outing.conditions import Condition
from kitlog.outing.needs import WHY_WORDS, FlightType, Need, Strength
from kitlog.outing.outing import Role

LIBRARY = load_library(resources_folder())
BY_TYPE = {flight_type.name: flight_type for flight_type in LIBRARY.flight_types}
PLACED = [
    *(("base", need) for need in LIBRARY.base),
    *(("overlay", need) for need in LIBRARY.overlays),
    *((flight_type.name, need) for flight_type in LIBRARY.flight_types for need in flight_type.needs),
]
NEEDS = [need for _, need in PLACED]
BUDGETS = {"power", "weight", "water", "warmth", "daylight", "air"}
USED_BY_THE_POWER_BUDGET = {"call for help"}


def base(name: str) -> Need:
    return next(need for need in LIBRARY.base if need.id == name)


def of(flight_type: str, name: str) -> Need:
    return next(need for need in BY_TYPE[flight_type].needs if need.id == name)


def strongest(need: Need) -> dict[Condition, Strength]:
    return {condition: step.to for step in need.raised for condition in step.when}


def test_what_needs_ask_items_to_serve_is_the_closed_list() -> None:
    asked = {name for need in NEEDS for name in need.serves}
    assert asked | USED_BY_THE_POWER_BUDGET == set(LIBRARY.served_by_name())
    assert len(LIBRARY.served) == len(LIBRARY.served_by_name())


def test_every_reason_is_short_and_promises_nothing() -> None:
    for need in NEEDS:
        assert 2 <= len(need.why.split()) <= WHY_WORDS, need.id
        assert not re.search(r"\b(safe|airworthy)\b", need.why), need.id


def test_a_need_stands_once_in_each_place() -> None:
    keys = [(place, need.id) for place, need in PLACED]
    assert len(keys) == len(set(keys))


def test_the_same_id_is_the_same_need() -> None:
    """What meets it may not differ, since needs of several types are merged into one."""
    means: dict[str, set[tuple[object, ...]]] = defaultdict(set)
    for need in NEEDS:
        garment = (need.layer, need.not_layers, need.part)
        means[need.id].add(
            (need.kinds, need.serves, need.both, garment, need.roles, need.check, need.either, need.every)
        )
    assert [name for name, ways in means.items() if len(ways) > 1] == []


def test_every_essential_need_can_be_met() -> None:
    """By an item that somebody could own, a person, an answer, or a limit that a budget judges."""
    served = LIBRARY.served_by_name()
    for need in NEEDS:
        things = need.kinds or any(served[name].kinds or served[name].words for name in need.serves)
        assert things or need.roles or need.check or need.limit, need.id


def test_both_names_kinds_and_what_they_serve() -> None:
    assert all(need.kinds and need.serves for need in NEEDS if need.both)
    assert all(need.wants_item and need.check for need in NEEDS if need.either)


def test_a_condition_makes_a_need_stronger_never_weaker() -> None:
    for need in NEEDS:
        assert all(step.to.rank < need.strength.rank for step in need.raised), need.id


def test_overlays_hang_on_a_condition() -> None:
    assert all(need.only_when for need in LIBRARY.overlays)


def test_garments_are_asked_for_by_layer_or_part() -> None:
    for need in NEEDS:
        if need.kinds == (Kind.GARMENT,):
            assert need.layer or need.part, need.id
        else:
            assert not any((need.layer, need.part, need.not_layers)), need.id


@pytest.mark.parametrize(
    ("flight_type", "makes"),
    [
        ("tandem", {Condition.PASSENGER}),
        ("over-water course", {Condition.WATER}),
        ("competition", {Condition.EVENT}),
        ("bivouac", set()),
    ],
)
def test_what_a_type_makes_true(flight_type: str, makes: set[Condition]) -> None:
    assert set(BY_TYPE[flight_type].makes_true) == makes


@pytest.mark.parametrize("flight_type", LIBRARY.flight_types, ids=lambda t: t.name)
def test_every_type_asks_for_budgets_that_exist(flight_type: FlightType) -> None:
    assert {"power", "weight"} <= set(flight_type.budgets) <= BUDGETS


def test_what_every_flight_needs() -> None:
    essential = {need.id for need in LIBRARY.base if need.strength is Strength.ESSENTIAL and not need.only_when}
    assert essential == {
        "wing",
        "harness",
        "reserve",
        "helmet",
        "carabiners",
        "footwear",
        "gloves",
        "phone",
        "contact",
        "water",
        "papers",
    }
    assert base("contact").roles == (Role.CONTACT,)
    assert base("carabiners").amount == 2


def test_the_phone_shows_thirty_per_cent_at_the_landing() -> None:
    """Common practice, no source."""
    assert base("phone").charge_pct == 30
    assert [need.id for need in NEEDS if need.charge_pct is not None] == ["phone"]


def test_over_water_buoyancy_and_a_cutter() -> None:
    """UK technical manual as quoted by a club (SHGC, Flying over Water, B): dry landing within reach, else buoyancy and
    a cutter. Lines wrap within seconds (FAI/CIVL, water landing, A)."""
    assert base("buoyancy").only_when == (Condition.WATER,)
    assert base("buoyancy").strength is Strength.ESSENTIAL
    assert strongest(base("hook knife"))[Condition.WATER] is Strength.ESSENTIAL
    for flight_type in ("coast", "over-water course"):
        assert of(flight_type, "hook knife").strength is Strength.ESSENTIAL
    assert of("over-water course", "floating position").strength is Strength.ESSENTIAL


def test_somebody_on_the_ground_at_the_coast() -> None:
    """A must at one island club (Guernsey club, emergency procedures, B)."""
    helper = of("coast", "ground helper")
    assert Role.HELPER in helper.roles
    assert Role.CONTACT not in helper.roles
    assert strongest(helper) == {Condition.WATER: Strength.ESSENTIAL, Condition.ALONE: Strength.ESSENTIAL}


def test_the_pack_of_a_hike() -> None:
    """20 % of body mass is the usual upper rule (outdoors.nordling.de, B)."""
    assert of("hike and fly", "pack share").limit == "pack_share"
    assert of("hike and fly", "pack share").limit_high == 20


def test_the_course_wants_the_middle_of_the_range_and_no_ballast() -> None:
    """Common practice, no source."""
    middle = of("over-water course", "mid range")
    assert (middle.limit, middle.limit_low, middle.limit_high) == ("mid_range", 40, 80)
    assert of("over-water course", "no ballast").limit == "no_ballast"
    assert {need.limit for need in NEEDS if need.limit} == {"pack_share", "mid_range", "no_ballast"}


def test_fingers_fail_first() -> None:
    """Finger skin fell to 13.9 deg C within about 2 h while the core fell 0.3 K: Wilkes et al. 2019 (A): hands have a
    need of their own, met by warm gloves alone."""
    gloves = of("cross-country", "warm gloves")
    assert gloves.both
    assert gloves.serves == ("warm",)
    assert strongest(gloves)[Condition.COLD] is Strength.ESSENTIAL


def test_water_of_a_long_flight() -> None:
    """About 0.55 l/h measured on hang-glider pilots (IJSPP 5(1), 2010, A): 1.5 l are under three hours."""
    assert (of("cross-country", "water").water_ml or 0) / 550 < 3
    least = {name: need.water_ml for name, t in BY_TYPE.items() for need in t.needs if need.id == "water"}
    assert (least["ridge"], least["local thermals"], least["cross-country"]) == (500, 1000, 1500)
    assert base("water").water_ml == min(ml for ml in least.values() if ml is not None)


def test_insulation_is_a_layer() -> None:
    insulation = of("cross-country", "insulation")
    assert insulation.layer is Layer.INSULATION
    assert insulation.amount == 1
    assert insulation.strength is Strength.ESSENTIAL


def test_second_sources_are_an_amount_of_two() -> None:
    two = {need.id for need in NEEDS if need.amount == 2}
    assert two == {
        "carabiners",
        "spare gloves",
        "second position",
        "food",
        "dry top",
        "second power source",
        "passenger helmet",
        "passenger eyewear",
        "second reserve",
        "two recorders",
    }


def test_tandem_pilots_show_a_documented_hook_in_check() -> None:
    """New Zealand, form OPMF30 of the national association, 2004 (B)."""
    assert of("tandem", "hook-in check").strength is Strength.ESSENTIAL
    assert of("tandem", "passenger mass").check == "passenger.mass"


def test_a_competition_may_ask_for_what_one_race_asks() -> None:
    """Run&Fly Jura, race rules section 6 (A for its own rules): reserve rule, live tracker, a second recorder."""
    assert of("competition", "event tracker").strength is Strength.ESSENTIAL
    assert of("competition", "two recorders").amount == 2
    assert of("competition", "event reserve").check == "plan.event_reserve"


def test_a_kit_with_clothes_gets_dressed() -> None:
    """Common practice, no source: comfort only, so that nothing is a finding."""
    clothes = [need for need in LIBRARY.base if need.id.startswith("clothes")]
    assert [need.part for need in clothes] == ["top", "legs", "feet"]
    assert all(need.strength is Strength.COMFORT for need in clothes)
