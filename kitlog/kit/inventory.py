"""What there is, what it cost and what shows that: the list that an insurer asks for."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date

from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind
from kitlog.kit.paper import Paper

_ORDER = {kind: place for place, kind in enumerate(Kind)}


@dataclass(frozen=True, slots=True)
class Inventory:
    """The items of a list, those of others apart.

    Attributes:
        on: today; owner: whose list it is, empty if not known.
        own: the pilot's own; others: what belongs to somebody else.
        left_out: how many retired or used-up ones are not listed.
    """

    on: date
    owner: str
    own: tuple[Item, ...]
    others: tuple[Item, ...]
    left_out: int = 0

    @property
    def items(self) -> tuple[Item, ...]:
        """All that are listed."""
        return (*self.own, *self.others)

    @property
    def value(self) -> float | None:
        """The sum of the values entered for the pilot's own things, None where nobody entered any."""
        entered = [item.value for item in self.own if item.value is not None]
        return sum(entered) if entered else None

    @property
    def without_value(self) -> tuple[Item, ...]:
        """The pilot's own without a value."""
        return tuple(item for item in self.own if item.value is None)

    @property
    def papers(self) -> tuple[Paper, ...]:
        """The photos and papers of all items, each content once."""
        return tuple({paper.sha256: paper for item in self.items for paper in item.papers}.values())


def of_others(item: Item) -> bool:
    """Whether an item belongs to somebody else."""
    return bool(item.belongs_to) or item.state is ItemState.BORROWED


def inventory(
    items: Iterable[Item], on: date, owner: str = "", *, only: Collection[str] = (), retired: bool = False
) -> Inventory:
    """The list by kind and name.

    Args:
        items: the whole kit.
        on: today.
        owner: whose list it is.
        only: ids of the items that are listed, whatever their state; empty = all that are not retired or used up.
        retired: list retired and used-up ones as well.
    """
    kit = tuple(items)
    listed = [item for item in kit if (item.id in only if only else retired or _kept(item))]
    listed.sort(key=lambda item: (_ORDER[item.kind], item.name.casefold()))
    return Inventory(
        on=on,
        owner=owner,
        own=tuple(item for item in listed if not of_others(item)),
        others=tuple(item for item in listed if of_others(item)),
        left_out=0 if only else len(kit) - len(listed),
    )


def _kept(item: Item) -> bool:
    return item.state is not ItemState.RETIRED and item.quantity > 0
