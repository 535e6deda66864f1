"""Reminders for a calendar: which entries it is to hold, and how each follows the one it was told before (RFC 5545).

An entry keeps its UID for as long as the same service is asked for; SEQUENCE rises whenever what it says changes. Once
the service is done the entry is cancelled, and the next time it falls due is an entry of its own.
"""

import hashlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from kitlog.kit.due import Due, DueState
from kitlog.kit.foresight import FORESEEN_DAYS
from kitlog.kit.reminder import Reminder
from kitlog.kit.serviced import ServicedItem
from kitlog.units.days import FIRST_DAY, LAST_DAY

BACK_WARN_DAYS = 7
"""How long ahead a calendar rings for what is borrowed or lent (common practice, no source)."""

TAKEN_BACK_DAYS = 60
"""How long what is taken back is told again after its day (our own choice): a file may never reach the calendar."""

HOST = "@kitlog"


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a calendar is to say.

    Attributes:
        uid: of the entry; on: its day; alarm_days: how many days ahead it rings, from 0.
        summary, text: its words.
    """

    uid: str
    on: date
    alarm_days: int
    summary: str
    text: str

    @property
    def content(self) -> str:
        """SHA-256 of all that it says."""
        said = "\n".join((self.on.isoformat(), str(self.alarm_days), self.summary, self.text))
        return hashlib.sha256(said.encode()).hexdigest()


@dataclass(frozen=True, slots=True)
class Entry:
    """One entry of a calendar file.

    Attributes:
        sequence: raised by one each time that what it says changes.
        changed: whether it says something else than the last file did.
        cancelled: it is taken back.
    """

    wanted: Wanted
    sequence: int
    changed: bool
    cancelled: bool = False


def service_uid(rule_id: str, done_on: date | None) -> str:
    """The UID of the service that a rule asks for next: of the rule, and of the day it was last done.

    Args:
        rule_id: of the rule.
        done_on: the day of the last record that satisfies the rule, None without one.
    """
    return f"{rule_id}.{done_on:%Y%m%d}{HOST}" if done_on else f"{rule_id}.0{HOST}"


def back_uid(item_id: str) -> str:
    """The UID of the day that a borrowed or lent item goes or comes back."""
    return f"back-{item_id}.0{HOST}"


def stem_of(uid: str) -> str:
    """What a UID is about: the id of a rule, or ``back-`` and the id of an item."""
    return uid.rpartition(".")[0]


def day_of(due: Due, told: Reminder | None) -> date | None:
    """The day that a rule's entry stands on; None where no day is known, or nothing is asked for.

    Args:
        due: the rule, judged today.
        told: what the calendar was told of it, if that still stands: what hours or launches made overdue stays on
            its day.
    """
    if due.state is DueState.DOES_NOT_APPLY:
        return None
    day: date | None = _open_since(due, told) if due.open else None
    if not due.open:
        last = due.on + timedelta(days=FORESEEN_DAYS)
        foreseen = due.predicted_on if due.predicted_on is not None and due.predicted_on <= last else None
        day = min((one for one in (due.due_on, foreseen) if one is not None), default=None)
    return day if day is not None and FIRST_DAY <= day <= LAST_DAY else None


def _open_since(due: Due, told: Reminder | None) -> date:
    if due.event is not None:
        return due.event.on
    if due.last is not None and due.last.failed:
        return due.last.done_on
    if due.due_on is not None and due.due_on < due.on:
        return due.due_on
    return told.on if told is not None and told.on <= due.on else due.on


def coming_back(items: Iterable[ServicedItem]) -> tuple[tuple[date, ServicedItem], ...]:
    """What is borrowed or lent up to a day, with that day; the first to go first."""
    found = [(item.back_by, item) for item in items if item.kept and item.back_by is not None]
    return tuple(sorted(found, key=lambda one: one[0]))


def back_soon(items: Iterable[ServicedItem], today: date) -> tuple[ServicedItem, ...]:
    """What goes or comes back within `BACK_WARN_DAYS`, or should have by now; the first to go first."""
    last = today + timedelta(days=BACK_WARN_DAYS)
    return tuple(item for day, item in coming_back(items) if day <= last)


def entries(
    wanted: Sequence[Wanted], old: Iterable[Reminder], today: date, titles: Mapping[str, str], title: str
) -> tuple[tuple[Entry, ...], tuple[Reminder, ...]]:
    """The entries of the next calendar file, by day, and what is to be remembered of it.

    What is no longer wanted is cancelled; that is told again until `TAKEN_BACK_DAYS` after its day, in case one file
    never reached the calendar. What is cancelled later than on its day stands on the day on which it is: of what was
    overdue for long, one file alone would tell otherwise.

    Args:
        wanted: what the calendar is to say.
        old: what it was told before.
        today: the day of the file.
        titles: words for what is cancelled, by the stem of its UID.
        title: words for what is cancelled and has none any more.
    """
    before, again = {reminder.id: reminder for reminder in old}, timedelta(days=TAKEN_BACK_DAYS)
    made = [_entry(one, before.get(one.uid)) for one in wanted]
    kept = {one.uid for one in wanted}
    made += [
        _taken_back(reminder, titles.get(stem_of(reminder.id), title), today)
        for reminder in before.values()
        if reminder.id not in kept and (not reminder.cancelled or today - reminder.on <= again)
    ]
    made.sort(key=lambda entry: (entry.wanted.on, entry.wanted.uid))
    return tuple(made), tuple(_remembered(entry, before) for entry in made if entry.changed)


def _entry(wanted: Wanted, before: Reminder | None) -> Entry:
    if before is None:
        return Entry(wanted, 0, changed=True)
    changed = before.cancelled or before.content != wanted.content
    return Entry(wanted, before.sequence + changed, changed=changed)


def _taken_back(before: Reminder, title: str, today: date) -> Entry:
    changed = not before.cancelled
    wanted = Wanted(before.id, max(before.on, today) if changed else before.on, 0, title, "")
    return Entry(wanted, before.sequence + changed, changed=changed, cancelled=True)


def _remembered(entry: Entry, before: Mapping[str, Reminder]) -> Reminder:
    wanted = entry.wanted
    content = before[wanted.uid].content if entry.cancelled else wanted.content
    return Reminder(id=wanted.uid, sequence=entry.sequence, on=wanted.on, content=content, cancelled=entry.cancelled)
