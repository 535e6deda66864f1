"""Items named in an outing: by id or by unique name; inside, ids only."""

from collections.abc import Iterable, Sequence
from typing import TypeVar

from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.outing.outing import Outing, Pin, PlugPlan, Use

M = TypeVar("M", Pin, PlugPlan, Use)


def with_ids(outing: Outing, kit: Sequence[Item]) -> Outing:
    """The outing with every item named by its id.

    Raises:
        InputFault: ``outing.unknown_item`` or ``outing.ambiguous_item`` with ``name`` and ``field``.
    """
    finder = _Finder(kit)
    chosen = {k: finder.id(v, f"set.{k}") for k, v in outing.set.model_dump().items() if v is not None}
    update: dict[str, object] = {
        "set": outing.set.model_copy(update=chosen),
        "pinned": tuple(finder.put(pin, "pinned", "item") for pin in outing.pinned),
        "left_out": tuple(finder.id(name, "left_out") for name in outing.left_out),
        "uses": tuple(finder.put(use, "uses", "item") for use in outing.uses),
    }
    if outing.plugs is not None:
        update["plugs"] = tuple(finder.put(plug, "plugs", "device", "bank") for plug in outing.plugs)
    return outing.model_copy(update=update)


class _Finder:
    """Finds ids by id or name."""

    def __init__(self, kit: Iterable[Item]) -> None:
        self._ids: set[str] = set()
        self._by_name: dict[str, list[str]] = {}
        for item in kit:
            self._ids.add(item.id)
            self._by_name.setdefault(item.name, []).append(item.id)

    def id(self, name: str, field: str) -> str:
        """The id meant by an id or a unique name."""
        if name in self._ids:
            return name
        found = self._by_name.get(name, [])
        if not found:
            raise InputFault("outing.unknown_item", name=name, field=field)
        if len(found) > 1:
            raise InputFault("outing.ambiguous_item", name=name, field=field, count=len(found))
        return found[0]

    def put(self, model: M, where: str, *fields: str) -> M:
        """A copy of a pin, use or plug with the named fields as ids."""
        return model.model_copy(update={f: self.id(getattr(model, f), f"{where}.{f}") for f in fields})
