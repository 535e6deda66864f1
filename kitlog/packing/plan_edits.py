"""Edits to an outing's plan: one item for another, one left at home, one taken along, ballast."""

from kitlog.kit.item import Item
from kitlog.kit.kinds import Zone
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, OwnLine, Pin


def swapped(outing: Outing, item_id: str, instead_id: str) -> Outing:
    """The outing with `instead_id` in the place of `item_id`, which is left out; items named by id."""
    both = {item_id, instead_id}
    old = next((pin for pin in outing.pinned if pin.item == item_id), None)
    pin = old.model_copy(update={"item": instead_id, "n": None}) if old else Pin(item=instead_id)
    chosen = {kind: instead_id if name == item_id else name for kind, name in outing.set.model_dump().items()}
    return outing.model_copy(
        update={
            "pinned": (*(p for p in outing.pinned if p.item not in both), pin),
            "left_out": (*(name for name in outing.left_out if name not in both), item_id),
            "set": outing.set.model_copy(update=chosen),
        }
    )


def left_out(outing: Outing, item_id: str) -> Outing:
    """The outing without an item; named by id."""
    return outing.model_copy(
        update={
            "pinned": tuple(pin for pin in outing.pinned if pin.item != item_id),
            "left_out": (*(name for name in outing.left_out if name != item_id), item_id),
        }
    )


def taken_along(outing: Outing, item: Item, library: Library) -> Outing:
    """The outing with an item pinned, in the air even if it usually waits in the car."""
    pin = Pin(item=item.id, zone=_zone_in_the_air(item, library))
    return outing.model_copy(
        update={
            "pinned": (*(p for p in outing.pinned if p.item != item.id), pin),
            "left_out": tuple(name for name in outing.left_out if name != item.id),
        }
    )


def _zone_in_the_air(item: Item, library: Library) -> Zone | None:
    """None where its own zone will do, else that of its kind, else the back pocket."""
    usual = library.facts(item.kind).zone
    if (item.zone or usual) is not Zone.LEFT_IN_CAR:
        return None
    return Zone.BACK_POCKET if usual is Zone.LEFT_IN_CAR else usual


def ballasted(outing: Outing, mass_g: int) -> Outing:
    """The outing with so much ballast in g."""
    line = OwnLine(text="ballast", mass_g=mass_g, zone=Zone.BACK_POCKET)
    return outing.model_copy(update={"own_lines": (*outing.own_lines, line)})
