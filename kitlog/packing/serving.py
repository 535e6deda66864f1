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
    text = f"{item.name} {item.model}".casefold()
    names = frozenset(
        served.name
        for served in library.served
        if item.kind in served.kinds or any(word.casefold() in text for word in served.words)
    )
    return Serving(names, guessed=True)


def meets(item: Item, need: Need, library: Library) -> bool:
    """Whether an item is of the right sort for a need, whatever its amount and state.

    A garment must be of the layer and cover the part that are asked for, if any are.
    """
    if need.layer is not None and (item.garment is None or item.garment.layer is not need.layer):
        return bool(need.serves) and _serves(item, need, library)
    if need.part and (item.garment is None or item.garment.part.casefold() != need.part.casefold()):
        return False
    return item.kind in need.kinds or _serves(item, need, library)


def _serves(item: Item, need: Need, library: Library) -> bool:
    return bool(need.serves) and not serving(item, library).names.isdisjoint(need.serves)
