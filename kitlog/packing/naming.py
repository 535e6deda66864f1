"""Items named in an outing, by id or unique name (inside, ids only); and names of phases and checks that are none."""

from collections.abc import Iterable, Sequence
from difflib import get_close_matches
from typing import TypeVar

from kitlog.fault import InputFault
from kitlog.kit.called import called
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Pin, PlugPlan, StartCharge, Use

M = TypeVar("M", Pin, PlugPlan, Use, StartCharge)


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
        "starts": tuple(finder.put(start, "starts", "item") for start in outing.starts),
    }
    if outing.evening is not None:
        first = tuple(finder.id(name, "evening.priority") for name in outing.evening.priority)
        update["evening"] = outing.evening.model_copy(update={"priority": first})
    if outing.plugs is not None:
        update["plugs"] = tuple(finder.put(plug, "plugs", "device", "bank") for plug in outing.plugs)
    return outing.model_copy(update=update)


MOST_NAMED = 6
"""So many checks are named to somebody who typed one that there is not; the library has over a hundred."""


def refuse_unknown(outing: Outing, library: Library) -> None:
    """Refuse phases and checks that there are not: for an outing that somebody wrote, where they are slips of the pen.

    An outing of the data file may name a phase or a check that has gone since; it is assessed all the same.

    Raises:
        InputFault: ``outing.unknown_phase`` or ``outing.unknown_check`` with ``name``, ``field`` and the ``known`` ones
            (of the checks, those that look most alike); ``outing.no_phases`` where there is none to name.
    """
    phases = tuple(phase.name for phase in outing.phases)
    for field, plans in (("plugs.phase", outing.plugs or ()), ("uses.phase", outing.uses)):
        for plan in plans:
            if plan.phase not in phases:
                code = "outing.unknown_phase" if phases else "outing.no_phases"
                raise InputFault(code, name=plan.phase, field=field, known=phases)
    checks = tuple(check.id for check in library.checks)
    for answer in outing.answers:
        if answer.check not in checks:
            alike = tuple(get_close_matches(answer.check, checks, n=MOST_NAMED, cutoff=0.5))
            raise InputFault("outing.unknown_check", name=answer.check, field="answers.check", known=alike or checks)


class _Finder:
    """Finds ids by id or name."""

    def __init__(self, kit: Iterable[Item]) -> None:
        self._kit = tuple(kit)
        self._ids = {item.id for item in self._kit}

    def id(self, name: str, field: str) -> str:
        """The id meant by an id, or a unique name as somebody types it."""
        if name in self._ids:
            return name
        found = called(self._kit, name)
        if not found:
            raise InputFault("outing.unknown_item", name=name, field=field)
        if len(found) > 1:
            raise InputFault("outing.ambiguous_item", name=name, field=field, count=len(found))
        return found[0].id

    def put(self, model: M, where: str, *fields: str) -> M:
        """A copy of a pin, use, plug or charge with the named fields as ids."""
        return model.model_copy(update={f: self.id(getattr(model, f), f"{where}.{f}") for f in fields})
