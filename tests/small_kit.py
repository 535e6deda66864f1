"""Small invented kits and outings, one line each: a pilot who flies alone from a ridge, and what is needed for it."""

from collections.abc import Iterable
from datetime import date
from typing import Any

from scenario import EVENING

from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import BodyMass, Pilot
from kitlog.packing.kit import History, Kit

DAY = date(2026, 5, 9)
NEW = History()
"""Nothing has been yet."""

PILOT = Pilot(id="p", name="Ines Maravel", masses=(BodyMass(taken_on=date(2026, 5, 1), mass_g=75_000),))


def item(name: str, kind: str = "other", mass_g: int | None = 100, **fields: Any) -> Item:
    """An item whose id is its name, weighed unless said otherwise."""
    plain = {"id": name, "name": name, "kind": kind, "mass_g": mass_g, "mass_source": "kitchen scale"}
    return Item.model_validate(plain | fields)


def other(one: Item, **fields: Any) -> Item:
    """The item with other fields, looked at by its model."""
    return Item.model_validate({**one.model_dump(), **fields})


WING = item("wing", "wing", 5_000, wing={"min_g": 80_000, "max_g": 100_000})
HARNESS = item("harness", "harness", 5_000, harness={"max_g": 110_000})
RESERVE = item("reserve", "reserve", 1_500, fitted_to="harness", reserve={"min_g": 60_000, "max_g": 100_000})
HELMET = item("helmet", "helmet", 500)

SET = (WING, HARNESS, RESERVE, HELMET)

WHOLE = (
    *SET,
    item("carabiners", "carabiner", 60, quantity=2),
    item("speed bar", "speed system", 100),
    item("boots", "footwear", 1_200, serves=("ankle high",)),
    item("gloves", "gloves", 100),
    item("glasses", "eyewear", 30),
    item("beacon", "beacon", 150),
    item("phone", "phone", 200),
    item("radio", "radio", 200),
    item("hook knife", "tool", 40),
    item("whistle", "signal", 10),
    item("first aid", "first aid", 300),
    item("foil blanket", "shelter", 60),
    item("bottle", "vessel", 50, vessel={"capacity_ml": 1_000}),
    item("papers", "papers", 50),
    item("rain jacket", "garment", 300, garment={"layer": "wind", "part": "top"}),
)
"""All that every flight needs: 90,260 g with pilot and half a litre; the beacon stays at home."""


def kit(*items: Item, pilot: Pilot | None = PILOT, **fields: Any) -> Kit:
    """A kit of these items, or the whole one."""
    return Kit(pilot=pilot, items=items or WHOLE, **fields)


def plus(*more: Item, **fields: Any) -> Kit:
    """The whole kit and more."""
    return Kit(pilot=PILOT, items=(*WHOLE, *more), **fields)


def but(*names: str, instead: Iterable[Item] = ()) -> Kit:
    """The whole kit without some items, and others instead."""
    assert {one.name for one in WHOLE} >= set(names)
    return Kit(pilot=PILOT, items=(*(one for one in WHOLE if one.name not in names), *instead))


def of_kind(kind: Kind, items: Iterable[Item] = WHOLE) -> list[Item]:
    return [one for one in items if one.kind is kind]


def outing(**fields: Any) -> Outing:
    """An afternoon on the ridge with a fellow pilot; the contact has been told."""
    plain = {
        "name": "ridge",
        "flight_types": ["ridge"],
        "first_day": DAY,
        "people": [
            {"name": "Jorun", "role": "contact", "told_at": EVENING},
            {"name": "Leda", "role": "fellow pilot"},
            {"name": "Tobiah", "role": "driver"},
        ],
        "conditions": {"water": False, "no signal": False, "forest": False, "airspace": False},
    }
    return Outing.model_validate(plain | fields)
