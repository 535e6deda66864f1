"""The rows that an incident writes: an event an item, and the rules without which nothing would follow from it."""

from collections.abc import Callable, Iterable, Sequence
from datetime import date

from kitlog.kit.event_words import noted
from kitlog.kit.incidents import FollowUp, Incident, widened
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS
from kitlog.kit.service import Event, ServiceRule
from kitlog.outing.library import Library
from kitlog.workbench.starter_rule import rule_from

NEW_PAIRING = "new pairing"
"""The event, and the incident, that a changed pair is: a compatibility check is due."""

TAKEN_OUT = "taken out"
"""The event that a pair was parted; it opens nothing, and tells a later pairing from the first one."""


def incident_rows(
    incident: Incident, found: Iterable[FollowUp], library: Library, on: date, note: str, new_id: Callable[[], str]
) -> tuple[Event | ServiceRule, ...]:
    """What is written of an incident, and nothing else."""
    rows: list[Event | ServiceRule] = []
    for one in found:
        rows += [rule_from(library.starter(name), one.item_id, new_id()) for name in one.takes]
        rows += [widened(rule, one.event) for rule in one.widens]
        rows.append(
            Event(id=new_id(), item_id=one.item_id, on=on, kind=one.event, note=noted(incident, one.event, note))
        )
    return tuple(rows)


def pair_change(before: Item | None, after: Item, events: Sequence[Event], names: dict[str, str]) -> tuple[str, str]:
    """The event that a change of a pair is, and its note; both empty where it is none.

    The first pair of a thing is no record. One that was taken out and fitted to something else later is a new pairing
    too.

    Args:
        before: as it was, None for a new item.
        after: as it shall be.
        events: all events.
        names: names of items by id.
    """
    if before is None or before.fitted_to == after.fitted_to or after.kind not in SET_KINDS:
        return "", ""
    was = _name(before.fitted_to, names) if before.fitted_to else _taken_out_of(after.id, events)
    now = _name(after.fitted_to, names)
    if not was or was == now:
        return "", ""
    return (NEW_PAIRING, f"{was} -> {now}") if now else (TAKEN_OUT, was)


def _taken_out_of(item_id: str, events: Sequence[Event]) -> str:
    """What it was taken out of last, empty if it was not."""
    known = [e for e in events if e.item_id == item_id and e.struck_at is None and e.kind in {TAKEN_OUT, NEW_PAIRING}]
    last = max(enumerate(known), key=lambda numbered: (numbered[1].on, numbered[0]), default=None)
    return last[1].note if last is not None and last[1].kind == TAKEN_OUT else ""


def _name(item_id: str | None, names: dict[str, str]) -> str:
    return names.get(item_id, item_id) if item_id else ""
