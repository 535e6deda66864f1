"""The needs of an invented cross-country day against what an instructor says of the same kit (worked by hand).

Nothing is said of what the items serve: names, kinds and layers alone must lead there.
"""

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.facets import Garment
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, Layer
from kitlog.outing.conditions import Answer3, Condition
from kitlog.outing.needs import Need, Strength
from kitlog.packing.asked import asked
from kitlog.packing.assessment import Asked, Truth
from kitlog.packing.serving import meets

LIBRARY = load_library(resources_folder())
CROSS_COUNTRY = LIBRARY.flight_type("cross-country")

TRUE = {Condition.COLD, Condition.AIRSPACE, Condition.NO_PICKUP, Condition.LATE, Condition.HIGH}

TAKEN = {
    "Wing A": "wing",
    "Harness A, pod": "harness",
    "Reserve A": "reserve",
    "Helmet B, open": "helmet",
    "Carabiner A, aluminium": "carabiner",
    "Speed bar A": "speed system",
    "Flight computer, grey-scale": "instrument",
    "Audio vario, solar": "instrument",
    "Phone": "phone",
    "Handheld radio, 5 W": "radio",
    "Satellite messenger": "tracker",
    "Locator beacon, 406 MHz": "beacon",
    "Power bank 10,000 mAh": "power bank",
    "Action camera": "camera",
    "Cables": "cable",
    "Headlamp": "light",
    "Base top": "garment",
    "Base leggings": "garment",
    "Fleece": "garment",
    "Down jacket": "garment",
    "Shell jacket": "garment",
    "Flying trousers": "garment",
    "Socks": "garment",
    "Boots": "footwear",
    "Thin gloves": "gloves",
    "Heated gloves": "gloves",
    "Sunglasses": "eyewear",
    "Bladder 2 l": "vessel",
    "Food bar": "food",
    "Sandwich": "food",
    "First aid kit": "first aid",
    "Hook knife": "tool",
    "Tree kit and whistle": "tree kit",
    "Foil blanket": "shelter",
    "Papers, cash, card": "papers",
    "Rucksack 80 l": "bag",
}
QUANTITY = {"Carabiner A, aluminium": 2, "Food bar": 4}
ITEMS = [Item(id=name, name=name, kind=Kind(kind), quantity=QUANTITY.get(name, 1)) for name, kind in TAKEN.items()]


def needs_of(kit_conditions: set[Condition]) -> dict[str, Asked]:
    truths = [Truth(c, Answer3.YES if c in kit_conditions else Answer3.NO) for c in Condition]
    assert CROSS_COUNTRY is not None
    return {one.need.id: one for one in asked(LIBRARY, [CROSS_COUNTRY], truths)}


NEEDS = needs_of(TRUE)


def met_by(need: Need) -> set[str]:
    return {item.name for item in ITEMS if meets(item, need, LIBRARY)}


@pytest.mark.parametrize(
    ("need", "items"),
    [
        ("wing", {"Wing A"}),
        ("harness", {"Harness A, pod"}),
        ("reserve", {"Reserve A"}),
        ("helmet", {"Helmet B, open"}),
        ("carabiners", {"Carabiner A, aluminium"}),
        ("footwear", {"Boots"}),
        ("gloves", {"Thin gloves", "Heated gloves"}),
        ("phone", {"Phone"}),
        ("water", {"Bladder 2 l"}),
        ("papers", {"Papers, cash, card"}),
        ("wind layer", {"Shell jacket"}),
        ("map instrument", {"Flight computer, grey-scale"}),
        ("second position", {"Flight computer, grey-scale", "Phone"}),
        ("power bank", {"Power bank 10,000 mAh"}),
        ("cable", {"Cables"}),
        ("insulation", {"Down jacket"}),
        ("warm gloves", {"Heated gloves"}),
        ("light", {"Headlamp"}),
        ("cash", {"Papers, cash, card"}),
        ("bag", {"Rucksack 80 l"}),
    ],
)
def test_essential_and_met(need: str, items: set[str]) -> None:
    assert NEEDS[need].strength is Strength.ESSENTIAL
    assert met_by(NEEDS[need].need) == items


def test_nothing_else_that_an_item_meets_is_essential() -> None:
    essential = {name for name, one in NEEDS.items() if one.strength is Strength.ESSENTIAL}
    assert len(essential) == 21
    assert NEEDS["contact"].need.roles
    assert all(met_by(NEEDS[name].need) for name in essential - {"contact"})


def test_only_relief_and_sun_cream_are_missing() -> None:
    unmet = {
        name: one.strength.value
        for name, one in NEEDS.items()
        if one.need.wants_item and not one.need.check and not met_by(one.need)
    }
    assert unmet == {"relief": "advised", "sun cream": "comfort"}


def test_only_medicine_and_the_retrieve_plan_are_not_known() -> None:
    unanswered = {n for n, one in NEEDS.items() if one.need.check and not met_by(one.need)}
    assert unanswered == {"medicine", "retrieve plan"}
    assert all(NEEDS[name].strength is Strength.ADVISED for name in unanswered)


def test_paper_map_and_tree_kit_are_not_asked_for() -> None:
    assert not {"land map", "tree kit", "buoyancy", "call times"} & set(NEEDS)
    more = needs_of(TRUE | {Condition.NO_SIGNAL, Condition.FOREST})
    assert {"land map", "tree kit"} <= set(more)
    assert "Tree kit and whistle" in met_by(more["tree kit"].need)


def test_second_pair_and_second_source_are_there() -> None:
    for name in ("spare gloves", "second position"):
        assert NEEDS[name].need.amount == 2
        assert len(met_by(NEEDS[name].need)) == 2


def test_the_whistle_on_the_tree_kit_and_the_foil_blanket_count() -> None:
    assert met_by(NEEDS["whistle"].need) == {"Tree kit and whistle"}
    assert met_by(NEEDS["foil blanket"].need) == {"Foil blanket"}
    assert met_by(NEEDS["hook knife"].need) == {"Hook knife"}


def test_the_beacon_is_only_comfort_with_a_network_and_still_last_resort() -> None:
    assert NEEDS["beacon"].strength is Strength.COMFORT
    assert LIBRARY.facts(Kind.BEACON).last_resort


def test_the_clothes_of_the_day_each_have_their_need() -> None:
    clothes = {name: met_by(NEEDS[name].need) for name in NEEDS if name.startswith(("clothes", "mid layer"))}
    assert clothes == {
        "clothes top": {"Base top"},
        "clothes legs": {"Flying trousers"},
        "clothes feet": {"Socks"},
        "clothes legs base": {"Base leggings"},
        "mid layer": {"Fleece"},
    }


def test_layers_said_by_the_pilot_lead_to_the_same() -> None:
    named = {"Aa": Layer.INSULATION, "Bb": Layer.WIND, "Cc": Layer.MID}
    garments = [
        Item(id=name, name=name, kind=Kind.GARMENT, garment=Garment(layer=layer, part="top"))
        for name, layer in named.items()
    ]
    for need, name in (("insulation", "Aa"), ("wind layer", "Bb"), ("mid layer", "Cc")):
        assert [g.name for g in garments if meets(g, NEEDS[need].need, LIBRARY)] == [name]
    assert not any(meets(g, NEEDS["clothes top"].need, LIBRARY) for g in garments)
