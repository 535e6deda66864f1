"""What is usual for a kind, against masses from handling kit and against published ones.

The bands themselves are from memory (M): they say which typed mass is plausible, nothing else. The single masses are
second-hand (B); each must lie inside the band of its kind.
"""

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.kinds import Kind, PhaseWay, Place, Zone

LIBRARY = load_library(resources_folder())

BANDS_G = {
    "wing": (900, 10_500),  # solo from 900, tandem to 10,500
    "harness": (150, 9_000),
    "reserve": (600, 4_500),  # solo from 600, tandem to 4,500
    "helmet": (250, 1_300),
    "carabiner": (3, 250),
    "speed system": (30, 400),
    "instrument": (10, 600),
    "phone": (90, 500),
    "radio": (60, 750),
    "tracker": (40, 300),
    "beacon": (40, 300),
    "camera": (20, 900),
    "light": (10, 300),
    "garment": (20, 2_500),
    "gloves": (20, 900),
    "footwear": (300, 2_400),
    "eyewear": (10, 250),
    "vessel": (10, 600),
    "food": (5, 1_500),
    "papers": (2, 500),
    "tool": (2, 1_200),
    "tree kit": (5, 1_500),
    "first aid": (20, 1_500),
    "shelter": (20, 3_000),
    "bag": (50, 3_000),
    "buoyancy": (200, 2_000),
    "ballast": (20, 600),
    "oxygen": (500, 5_000),
    "relief": (1, 400),
    "skin care": (1, 400),
    "medicine": (1, 400),
    "signal": (1, 400),
}
"""From memory of handling kit (M): plausibility only."""


def test_every_kind_has_its_facts_once() -> None:
    assert sorted(f.kind for f in LIBRARY.kinds) == sorted(Kind)


@pytest.mark.parametrize(("kind", "band"), BANDS_G.items())
def test_bands_are_those_of_the_handbook_table(kind: str, band: tuple[int, int]) -> None:
    facts = LIBRARY.facts(Kind(kind))
    assert (facts.least_g, facts.most_g) == band


def test_every_band_has_a_width() -> None:
    assert all(0 < f.least_g < f.most_g for f in LIBRARY.kinds)


def test_a_bank_is_judged_by_grams_per_watt_hour() -> None:
    bank = LIBRARY.facts(Kind.POWER_BANK)
    assert bank.wh_band_g == (3.5, 12.0)  # M
    assert [f.kind for f in LIBRARY.kinds if f.wh_band_g] == [Kind.POWER_BANK]
    assert bank.least_g <= 3.5 * 18
    assert bank.most_g >= 12 * 100


@pytest.mark.parametrize(
    ("kind", "mass_g", "source"),
    [
        ("wing", 3_000, "encyclopaedia article on paragliding: wings of 3 to 7 kg (B)"),
        ("wing", 7_000, "the same"),
        ("wing", 4_500, "Eagles Tribe, Going light: a light version (B)"),
        ("wing", 5_440, "the same: the standard version of the same size"),
        ("harness", 3_800, "Cross Country magazine, 19 January 2022: light all-round (B)"),
        ("harness", 7_500, "the same: competition pod"),
        ("harness", 1_500, "the same: split-leg reversible"),
        ("radio", 583, "Motorola XTS 5000 manual (B)"),
        ("tool", 130, "hapixc.com, 15 items, 2014: a multi-tool (B)"),
        ("tree kit", 900, "CHGPA forum: rope, slings, two carabiners (B)"),
        ("first aid", 350, "richiesadventures.com, 2018: a doctor-pilot's kit (B)"),
    ],
)
def test_published_masses_are_plausible(kind: str, mass_g: int, source: str) -> None:
    facts = LIBRARY.facts(Kind(kind))
    assert facts.least_g <= mass_g <= facts.most_g, source


@pytest.mark.parametrize(
    ("kind", "typed"),
    [
        ("wing", 5),  # kg typed as g
        ("harness", 6),
        ("reserve", 1),
        ("carabiner", 620),  # ten of them in one figure
    ],
)
def test_usual_slips_fall_outside(kind: str, typed: int) -> None:
    facts = LIBRARY.facts(Kind(kind))
    assert not facts.least_g <= typed <= facts.most_g


def test_last_resort_kinds() -> None:
    """Reserve, first aid, beacon, light, tree kit, buoyancy; knife, whistle and foil are last resort by what they serve."""
    assert {f.kind for f in LIBRARY.kinds if f.last_resort} == {
        Kind.RESERVE,
        Kind.FIRST_AID,
        Kind.BEACON,
        Kind.LIGHT,
        Kind.TREE_KIT,
        Kind.BUOYANCY,
    }


def test_only_food_is_gone_at_the_landing() -> None:
    """Water is the content of its vessel; the vessel stays."""
    assert [f.kind for f in LIBRARY.kinds if f.gone_at_landing] == [Kind.FOOD]


def test_devices_draw_where_they_are_used() -> None:
    callers = {way for way in PhaseWay if way not in {PhaseWay.TRAVEL, PhaseWay.NIGHT}}
    for kind in (Kind.PHONE, Kind.RADIO, Kind.TRACKER):
        assert set(LIBRARY.facts(kind).used_in) == callers
    assert set(LIBRARY.facts(Kind.INSTRUMENT).used_in) == {PhaseWay.WAIT, PhaseWay.FLIGHT}
    assert LIBRARY.facts(Kind.CAMERA).used_in == LIBRARY.facts(Kind.GLOVES).used_in == (PhaseWay.FLIGHT,)
    assert set(LIBRARY.facts(Kind.LIGHT).used_in) == {PhaseWay.WALK_OUT, PhaseWay.NIGHT}
    assert LIBRARY.facts(Kind.POWER_BANK).used_in == LIBRARY.facts(Kind.BEACON).used_in == ()


def test_zones_of_the_set() -> None:
    assert LIBRARY.facts(Kind.WING).zone is Zone.OVERHEAD
    assert LIBRARY.facts(Kind.HARNESS).zone is Zone.HARNESS
    assert LIBRARY.facts(Kind.RESERVE).zone is Zone.UNDER_SEAT
    assert {LIBRARY.facts(k).zone_on_foot for k in (Kind.WING, Kind.HARNESS, Kind.RESERVE)} == {Zone.RUCKSACK}


def test_places_are_on_the_cautious_side_of_what_is_seen() -> None:
    """Ranges from handling devices (M): the low end of each; on the chest never over 30 deg C."""
    seen = {
        Place.COCKPIT: (0, 3),
        Place.CLOSED_POCKET: (2, 6),
        Place.UNDER_SHELL: (12, 22),
        Place.THIGH_POCKET: (8, 15),
        Place.BACK_POCKET: (0, 4),
        Place.GLOVE_CUFF: (5, 12),
    }
    assert {p.place: p.offset_k for p in LIBRARY.places} == {place: low for place, (low, _) in seen.items()}
    assert {p.place: p.most_c for p in LIBRARY.places if p.most_c is not None} == {Place.UNDER_SHELL: 30}


def test_only_gloves_have_a_place_without_being_asked() -> None:
    assert {f.kind: f.place for f in LIBRARY.kinds if f.place} == {Kind.GLOVES: Place.GLOVE_CUFF}
