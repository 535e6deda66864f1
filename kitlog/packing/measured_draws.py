"""Which draw a measurement has taken the place of."""

from dataclasses import dataclass

from kitlog.budget.power.describe import DrawRange
from kitlog.kit.item import Item
from kitlog.packing.draws import known_draw


@dataclass(frozen=True, slots=True)
class Replaced:
    """A way of use that is measured now, the draw it had before, and on what basis."""

    way: str
    before: DrawRange
    basis: str


def measured_instead(before: Item, after: Item) -> Replaced | None:
    """The first way of use of `after` that is measured and was not in `before`; the name is the same in both."""
    was = {way.name: way for way in before.battery.ways} if before.battery else {}
    for way in after.battery.ways if after.battery else ():
        old = was.get(way.name)
        if old is None or way.basis != "measured" or old.basis == "measured":
            continue
        draw = known_draw(old, before)
        if draw is not None:
            return Replaced(way.name, draw, old.basis)
    return None
