"""Items named in a list on the command line, with commas between them."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from kitlog.fault import InputFault

if TYPE_CHECKING:
    from kitlog.workbench.workbench import Workbench


def ids_of(text: str, bench: "Workbench", option: str) -> tuple[str, ...]:
    """The items of a list of names with commas between them; a name may have commas itself."""
    names: dict[str, list[str]] = {}
    for item in bench.items():
        names.setdefault(item.name, []).append(item.id)
    names |= {item.id: [item.id] for item in bench.items()}
    parts = [part.strip() for part in text.split(",")] if text.strip() else []
    ids = []
    while parts:
        name, count = _longest(parts, names)
        parts = parts[count:]
        ids.append(_one(name, names.get(name, []), option))
    return tuple(dict.fromkeys(ids))


def _longest(parts: Sequence[str], names: "dict[str, list[str]]") -> tuple[str, int]:
    """The longest run of parts that is a name; the first part where none is."""
    for count in range(len(parts), 0, -1):
        name = ", ".join(parts[:count])
        if name in names:
            return name, count
    return parts[0], 1


def _one(name: str, ids: Sequence[str], option: str) -> str:
    from kitlog.units.strict_json import shown

    if not ids:
        raise InputFault("item.unknown", field=option, name=shown(name))
    if len(ids) > 1:
        raise InputFault("item.ambiguous", field=option, name=shown(name), count=len(ids))
    return ids[0]
