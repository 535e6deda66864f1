"""What an item can do: said by the pilot, else guessed from its kind and name, and then shown as a guess."""

from dataclasses import dataclass

from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.needs import Need


@dataclass(frozen=True, slots=True)
class Serving:
    """What an item serves, and whether that is a guess."""

    names: frozenset[str]
    guessed: bool


def serving(item: Item, library: Library) -> Serving:
    """What an item serves: the pilot's list if there is one, else what kind and name suggest."""
    if item.serves:
        return Serving(frozenset(name.casefold() for name in item.serves), guessed=False)
    return Serving(library.guessed(item), guessed=True)


def meets(item: Item, need: Need, library: Library) -> bool:
    """Whether an item is of the right sort for a need, whatever its amount and state."""
    return need.takes(item, serving(item, library).names if need.serves else ())


LAST_RESORT = frozenset({"hook knife", "whistle", "foil blanket", "tree kit"})
"""What is of last resort whatever the kind of item that does it."""


def last_resort(item: Item, library: Library) -> bool:
    """Whether an item is of last resort: never "unused", never left for mass."""
    return library.facts(item.kind).last_resort or not LAST_RESORT.isdisjoint(serving(item, library).names)
