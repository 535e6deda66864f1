"""Items named in a list on the command line, with commas between them."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from kitlog.fault import InputFault

if TYPE_CHECKING:
    from kitlog.kit.item import Item
    from kitlog.workbench.workbench import Workbench


def ids_of(text: str, bench: "Workbench", option: str) -> tuple[str, ...]:
    """The items of a list of names with commas between them; a name may have commas itself."""
    items = bench.items()
    parts = [part.strip() for part in text.split(",")] if text.strip() else []
    ids = []
    while parts:
        found, count = _longest(parts, items)
        ids.append(_one(", ".join(parts[:count]), found, option))
        parts = parts[count:]
    return tuple(dict.fromkeys(ids))


def _longest(parts: Sequence[str], items: "Sequence[Item]") -> "tuple[tuple[Item, ...], int]":
    """What the longest run of parts that is a name calls, and its length; nothing for the first part where none is."""
    from kitlog.kit.called import called

    for count in range(len(parts), 0, -1):
        name = ", ".join(parts[:count])
        found = tuple(item for item in items if item.id == name) or called(items, name)
        if found:
            return found, count
    return (), 1


def _one(name: str, found: "Sequence[Item]", option: str) -> str:
    from kitlog.units.strict_json import shown

    if not found:
        raise InputFault("item.unknown", field=option, name=shown(name))
    if len(found) > 1:
        raise InputFault("item.ambiguous", field=option, name=shown(name), count=len(found))
    return found[0].id
