"""Reminders: the calendar file, and what there is to be reminded of at the start."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from kitlog.fault import InputFault
from kitlog.kit.due import DueState
from kitlog.kit.off_season import Proposal, proposal, season_of
from kitlog.kit.reminder import Reminder
from kitlog.kit.reminders import (
    BACK_WARN_DAYS,
    Entry,
    Wanted,
    back_soon,
    back_uid,
    coming_back,
    day_of,
    entries,
    service_uid,
    stem_of,
)
from kitlog.kit.service_book import ServiceBook
from kitlog.kit.serviced import ServicedItem
from kitlog.outing.outing import Outing
from kitlog.store.writer import Writer
from kitlog.wording.reminder_text import NO_LONGER_DUE, back_body, back_title, due_body, due_title
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper
from kitlog.workbench.reads import DueLine, DueRow, Reads

HEAD_BYTES = 400


@dataclass(frozen=True, slots=True)
class CalendarWritten:
    """What went into a calendar file: entries that stand, entries taken back, rules of which no day is known."""

    entries: int
    cancelled: int
    undated: int


@dataclass(frozen=True, slots=True)
class ToRemember:
    """What there is to be reminded of today, the worst first: rules overdue, rules due soon, loans that end."""

    overdue: tuple[DueRow, ...]
    due_soon: tuple[DueRow, ...]
    back: tuple[ServicedItem, ...]


class ReminderCommands(Reads):
    """What reminds the pilot."""

    def to_remember(self) -> ToRemember:
        """What is overdue or due soon today, and what is borrowed or lent and should go or come back."""
        today = self.now().date()
        rows = self.due_list(today)
        overdue, soon = (
            tuple(row for row in rows if row.due.state is state) for state in (DueState.OVERDUE, DueState.DUE_SOON)
        )
        return ToRemember(overdue, soon, back_soon(self.serviced_items(), today))

    def proposals(self, rows: Iterable[DueLine | DueRow]) -> dict[str, Proposal]:
        """Checks that could be moved out of the season, by the ids of their rules.

        Args:
            rows: rules judged today.
        """
        today = self.now().date()
        planned = [day for outing in self.outings() for day in outing.days if day >= today]
        season = season_of(self.flights(), today, planned)
        found = ((row.rule.id, proposal(row.rule, row.due, row.item.kind, season)) for row in rows)
        return {rule_id: one for rule_id, one in found if one is not None}

    def loans(self) -> tuple[tuple[date, ServicedItem], ...]:
        """What is borrowed or lent up to a day, with that day; the first to go first."""
        return coming_back(self.serviced_items())

    def next_outing(self) -> Outing | None:
        """The next planned outing that is not over."""
        today = self.now().date()
        coming = [outing for outing in self.outings() if outing.last_day >= today]
        return min(coming, key=lambda outing: outing.first_day, default=None)

    def write_calendar(self, to: Path) -> CalendarWritten:
        """Write all that falls due, as of today, into a calendar file, and remember what it says.

        Cannot be undone: a calendar that has read the file knows it.

        Raises:
            InputFault: ``calendar.not_ours`` with ``file``: what lies there is no calendar that kitlog wrote.
            SystemFault: as `kitlog.files.atomic.written`; as every write to the data file.
        """
        from kitlog.files import atomic
        from kitlog.files.calendar_file import calendar_bytes, is_own

        with atomic.told(to):
            if to.is_file() and not is_own(_head(to)):
                raise InputFault("calendar.not_ours", file=str(to))
        now = self.now()
        rows, items, book = self.due_list(now.date()), self.serviced_items(), self.book()
        made: list[tuple[Entry, ...]] = []

        def work(writer: Writer) -> None:
            old = writer.reminders()
            wanted = [*_services(rows, book, old), *_loans(items)]
            told, new = entries(wanted, old, now.date(), _titles(book, items), _(NO_LONGER_DUE))
            atomic.write(to, calendar_bytes(told, now))
            writer.put_all(new)
            made.append(told)

        self._write("calendar.write", work, undo=False)
        cancelled = sum(entry.cancelled for entry in made[0])
        undated = sum(_asks(row) and day_of(row.due, None) is None for row in rows)
        return CalendarWritten(len(made[0]) - cancelled, cancelled, undated)


def _asks(row: DueRow) -> bool:
    """Whether a rule asks for something by itself, and not only after an event."""
    rule = row.rule
    limits = (rule.months, rule.recommended_months, rule.hours, rule.launches, rule.due_on)
    return rule.applies and any(limit is not None for limit in limits)


def _services(rows: tuple[DueRow, ...], book: ServiceBook, old: tuple[Reminder, ...]) -> list[Wanted]:
    before = {reminder.id: reminder for reminder in old if not reminder.cancelled}
    found = []
    for row in rows:
        passed = [r.done_on for r in book.records_of(row.rule.id) if not r.failed and r.done_on <= row.due.on]
        uid = service_uid(row.rule.id, passed[-1] if passed else None)
        day = day_of(row.due, before.get(uid))
        if day is not None:
            ahead = max(row.rule.warn_days, row.rule.lead_days)
            title = due_title(row.item.name, row.rule.rule)
            found.append(Wanted(uid, day, ahead, title, due_body(row.rule, row.due)))
    return found


def _loans(items: tuple[ServicedItem, ...]) -> list[Wanted]:
    return [
        Wanted(back_uid(item.id), day, BACK_WARN_DAYS, back_title(item), first_upper(back_body(item)))
        for day, item in coming_back(items)
    ]


def _titles(book: ServiceBook, items: tuple[ServicedItem, ...]) -> dict[str, str]:
    """Words for what is taken back, by the stem of its UID; of what is retired as well."""
    names = {item.id: item.name for item in items}
    titles = {rule.id: due_title(names[rule.item_id], rule.rule) for rule in book.rules}
    return titles | {stem_of(back_uid(item.id)): back_title(item) for item in items}


def _head(file: Path) -> bytes:
    with file.open("rb") as handle:
        return handle.read(HEAD_BYTES)
