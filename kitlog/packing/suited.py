"""Which items are of the right sort for a need: looked up once for a kit, however many plans of it are judged.

An assessment judges one plan and then each remedy on trial; the kit stays the same, and every need asks for every item
again.
"""

from collections.abc import Iterable, Mapping

from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.needs import Need
from kitlog.packing.serving import serving


class Suited:
    """The items of one kit by need.

    Args:
        items: what the pilot has.
        library: what serves.
    """

    def __init__(self, items: Iterable[Item], library: Library) -> None:
        self._serving = {item.id: (item, serving(item, library).names) for item in items}
        self._found: dict[Need, Mapping[str, Item]] = {}

    def to(self, need: Need) -> Mapping[str, Item]:
        """The items of the right sort by id, in the order of the kit, whatever their amount and state."""
        if need not in self._found:
            self._found[need] = {name: item for name, (item, does) in self._serving.items() if need.takes(item, does)}
        return self._found[need]
