"""Words of service rules: limits, who did it last, what an open one means."""

from collections.abc import Iterator
from datetime import date

from kitlog.kit.due import Due, DueState
from kitlog.kit.service import Grounds, ServiceRule
from kitlog.outing.library import StarterRule
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text, number_text, with_unit
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import word
from kitlog.workbench.reads import DueLine

WHILE_OPEN = {
    Grounds.YES: N_("stop until done"),
    Grounds.BY_LAW: N_("stop where law asks"),
    Grounds.NO: N_("look"),
}


def limits_of(rule: ServiceRule | StarterRule) -> Iterator[str]:
    """Each limit of a rule in words."""
    if rule.recommended_months:
        yield _("advised {months}").format(months=_months(rule.recommended_months))
    if rule.months:
        yield _months(rule.months)
    if rule.hours is not None:
        yield with_unit(rule.hours, "h", 0 if rule.hours == int(rule.hours) else 1)
    if rule.launches is not None:
        yield ngettext("{n} launch", "{n} launches", rule.launches).format(n=number_text(rule.launches))
    if isinstance(rule, ServiceRule) and rule.due_on:
        yield _("by {day}").format(day=day_text(rule.due_on))
    if rule.events:
        yield _("after {events}").format(events=", ".join(word(event) for event in rule.events))


def _months(months: int) -> str:
    return ngettext("{n} month", "{n} months", months).format(n=months)


def due_text(line: DueLine) -> str:
    """When it is due, as one date: by calendar, or about the day the hours run out."""
    due = line.due
    if due.event is not None:
        return day_text(due.event.on)
    first = _first_day(due)
    if first is None:
        return word("not known") if due.state is DueState.NO_RECORD else ""
    by_hours = due.predicted_on is not None and first == due.predicted_on and first != due.due_on
    return _("about {day}").format(day=day_text(first)) if by_hours else day_text(first)


def _first_day(due: Due) -> date | None:
    days = [day for day in (due.due_on, due.predicted_on) if day is not None]
    return min(days, default=None)


def first_limit_text(line: DueLine) -> str:
    """Which limit comes first."""
    said = due_sentence(line.due)
    return said if line.due.event is not None else ", ".join(limits_of(line.rule)) or said


def book_text(due: Due) -> str:
    """By when to ask for it."""
    if due.book_by is None:
        return _("any day") if due.state is not DueState.OVERDUE else _("now")
    return _("now") if due.book_by <= due.on else day_text(due.book_by)


def who_text(due: Due) -> str:
    """Who did it last."""
    return due.last.who if due.last is not None else ""
