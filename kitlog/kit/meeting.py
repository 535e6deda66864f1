"""Which things of a list that comes in are in the kit already: the same name, and nothing that says otherwise."""

import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from kitlog.kit.item import Item


@dataclass(frozen=True, slots=True)
class Identity:
    """What tells one thing from another; a blank says nothing."""

    name: str
    maker: str = ""
    model: str = ""
    serial: str = ""


@dataclass(frozen=True, slots=True)
class Met:
    """An item of the kit that a row is about; `sure` is False where it could as well be another one."""

    item: Item
    sure: bool = True


def identity_of(item: Item) -> Identity:
    """What tells an item of the kit from others."""
    return Identity(item.name, item.maker, item.model, item.serial)


def meetings(incoming: Sequence[Identity], kit: Sequence[Item]) -> tuple[Met | None, ...]:
    """For each thing that comes in the item of the kit that it is, each item at most once; None = it is new.

    Two are the same if their names are and maker, model and serial do not contradict each other (upper and lower case,
    blanks and how accents are composed do not count; a blank contradicts nothing). Those alike in all four are paired
    first, in their order.
    """
    met: dict[int, Met] = {}
    for rows, items in _namesakes(incoming, kit):
        met |= _alike(rows, items, incoming)
        met |= _compatible([row for row in rows if row not in met], items, incoming, met)
    return tuple(met.get(row) for row in range(len(incoming)))


def _namesakes(incoming: Sequence[Identity], kit: Sequence[Item]) -> Iterator[tuple[list[int], list[Item]]]:
    by_name: dict[str, list[Item]] = {}
    for item in kit:
        by_name.setdefault(folded(item.name), []).append(item)
    rows: dict[str, list[int]] = {}
    for row, identity in enumerate(incoming):
        name = folded(identity.name)
        if name in by_name:
            rows.setdefault(name, []).append(row)
    return ((found, by_name[name]) for name, found in rows.items())


def _alike(rows: Iterable[int], items: Iterable[Item], incoming: Sequence[Identity]) -> dict[int, Met]:
    """Rows and items alike in all four; unsure where there are more items than rows and they differ in the rest."""
    by_identity: dict[Identity, list[Item]] = {}
    for item in items:
        by_identity.setdefault(_plain(identity_of(item)), []).append(item)
    theirs: dict[Identity, list[int]] = {}
    for row in rows:
        theirs.setdefault(_plain(incoming[row]), []).append(row)
    found: dict[int, Met] = {}
    for identity, some in theirs.items():
        same = by_identity.get(identity, [])
        sure = len(some) >= len(same) or _all_the_same(same)
        found |= {row: Met(item, sure) for row, item in zip(some, same, strict=False)}
    return found


def _compatible(
    rows: Sequence[int], items: Sequence[Item], incoming: Sequence[Identity], met: Mapping[int, Met]
) -> dict[int, Met]:
    """For the other rows the free item that shares most with them, those that say most first."""
    taken = {one.item.id for one in met.values()}
    free = [(item, _plain(identity_of(item))) for item in items if item.id not in taken]
    found: dict[int, Met] = {}
    for row in sorted(rows, key=lambda row: (-_said(incoming[row]), row)):
        near = {item.id: _closeness(_plain(incoming[row]), identity) for item, identity in free}
        most = max(near.values(), default=-1)
        if most >= 0:
            rivals = [item for item, _identity in free if near[item.id] == most]
            found[row] = Met(rivals[0], sure=_all_the_same(rivals))
            free = [pair for pair in free if pair[0] is not rivals[0]]
    return found


def _all_the_same(items: Sequence[Item]) -> bool:
    first = items[0].model_copy(update={"id": ""}) if items else None
    return all(item.model_copy(update={"id": ""}) == first for item in items[1:])


def _said(identity: Identity) -> int:
    return sum(map(bool, (identity.maker, identity.model, identity.serial)))


def _closeness(one: Identity, other: Identity) -> int:
    """How many of maker, model and serial both give alike; -1 where one contradicts."""
    near = 0
    for a, b in ((one.maker, other.maker), (one.model, other.model), (one.serial, other.serial)):
        if a and b and a != b:
            return -1
        near += bool(a and b)
    return near


def _plain(identity: Identity) -> Identity:
    return Identity(*map(folded, (identity.name, identity.maker, identity.model, identity.serial)))


def folded(text: str) -> str:
    """A name as it is compared: small, composed, blanks as one."""
    small = text.casefold() if text.isascii() else unicodedata.normalize("NFC", text).casefold()
    return " ".join(small.split())
