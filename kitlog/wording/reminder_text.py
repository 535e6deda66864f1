"""What a calendar says of a service or a loan, and the one line that the window says at its start.

The words stay the same from day to day as long as nothing about the rule changes: a calendar is told anew only then.
"""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from kitlog.kit.due import Due
from kitlog.kit.foresight import FORESEEN_DAYS
from kitlog.kit.off_season import Proposal
from kitlog.kit.service import ServiceRule
from kitlog.kit.serviced import ServicedItem
from kitlog.wording.due_sentence import hours_text, likely_text
from kitlog.wording.event_text import event_text
from kitlog.wording.figures import MONTHS, day_text, days_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import STANCE, first_upper

MOST_NAMES = 3

NO_LONGER_DUE = N_("No longer due")


def due_title(item: str, rule: str) -> str:
    """The title of a service in a calendar."""
    return _("Due: {item}, {rule}").format(item=item, rule=rule_text(rule))


def due_body(rule: ServiceRule, due: Due) -> str:
    """What a calendar says of a service: limits, booking, last time, where the rule comes from."""
    return "\n".join((*(first_upper(f"{line}.") for line in _facts(rule, due)), _(STANCE)))


def back_title(item: ServicedItem) -> str:
    """The title of the day that a borrowed or lent item goes or comes back."""
    text = _("Comes back: {item}") if item.lent_to else _("Goes back: {item}")
    return text.format(item=item.name)


def back_body(item: ServicedItem) -> str:
    """Who has it, or whose it is; empty where that is not on record."""
    if item.lent_to:
        return _("lent to {name}").format(name=item.lent_to)
    return _("it belongs to {name}").format(name=item.belongs_to) if item.belongs_to else ""


def summary_line(overdue: int, due_soon: int, back: int) -> str:
    """How much is overdue, due soon, and goes or comes back; empty where nothing is."""
    parts = []
    if overdue:
        parts.append(ngettext("{n} service overdue", "{n} services overdue", overdue).format(n=overdue))
    if due_soon:
        short = ngettext("{n} due soon", "{n} due soon", due_soon)
        whole = ngettext("{n} service due soon", "{n} services due soon", due_soon)
        parts.append((short if overdue else whole).format(n=due_soon))
    if back:
        parts.append(ngettext("{n} loan to end", "{n} loans to end", back).format(n=back))
    return ", ".join(parts)


def names_line(names: Sequence[str]) -> str:
    """The first names, each once, and how many more there are."""
    each = tuple(dict.fromkeys(names))
    said, more = ", ".join(each[:MOST_NAMES]), len(each) - MOST_NAMES
    return (
        said if more <= 0 else ngettext("{names} and {n} more", "{names} and {n} more", more).format(names=said, n=more)
    )


def proposal_text(proposal: Proposal) -> str:
    """That a check could be moved out of the season, and what that costs."""
    months = ngettext("{n} month", "{n} months", proposal.costs_months).format(n=proposal.costs_months)
    day = proposal.in_month
    facts = {"month": _(MONTHS[day.month - 1]), "year": day.year, "months": months}
    return _("in {month} {year} it costs {months} of interval and no flying day").format(**facts)


def calendar_line(file: str, entries: int, cancelled: int) -> str:
    """What was written into a calendar file."""
    said = ngettext("{n} entry", "{n} entries", entries).format(n=entries)
    if cancelled:
        said += ngettext(", {n} taken back", ", {n} taken back", cancelled).format(n=cancelled)
    return _("written: {file} ({said})").format(file=file, said=said)


def undated_line(count: int) -> str:
    """That some rules have no day that a calendar could show."""
    return ngettext(
        "{n} rule has no known day and is not in the calendar; it stands in the service list.",
        "{n} rules have no known day and are not in the calendar; they stand in the service list.",
        count,
    ).format(n=count)


def _facts(rule: ServiceRule, due: Due) -> Iterator[str]:
    yield from _why_open(due)
    if due.due_on is not None and due.event is None:
        set_there = due.last is not None and due.last.next_due_on == due.due_on
        text = _("due {day}, as set at the last check") if set_there else _("due {day}")
        yield text.format(day=day_text(due.due_on))
    if due.recommended_on is not None:
        yield _("recommended from {day}").format(day=day_text(due.recommended_on))
    if due.hours_left is not None:
        yield ", ".join(part for part in (hours_text(due), likely_text(due), _span(due)) if part)
    if due.launches_left is not None and due.launches_left >= 0:
        yield ngettext("{n} launch left", "{n} launches left", due.launches_left).format(n=due.launches_left)
    if rule.lead_days and due.book_by is not None and not due.open:
        yield _("book by {day}: it takes {days} days").format(day=day_text(due.book_by), days=rule.lead_days)
    if due.last is not None:
        yield _last(due.last.done_on, due.last.who)
    if rule.source:
        yield _("rule: {source}").format(source=rule.source.rstrip("."))


def _why_open(due: Due) -> Iterator[str]:
    if due.event is not None:
        yield _("called for by {event} on {day}").format(event=event_text(due.event), day=day_text(due.event.on))
    if due.failed and due.last is not None:
        yield _("failed on {day}: open until it passes").format(day=day_text(due.last.done_on))


def _span(due: Due) -> str:
    """The span of the day the hours run out, with its years: a calendar is read much later."""
    runs, last = due.runs_out, due.on + timedelta(days=FORESEEN_DAYS)
    if runs is None or runs.early is None or runs.early > last:
        return ""
    if runs.late is None or runs.late > last:
        return _("{day} at the earliest").format(day=day_text(runs.early))
    return _("span {days}").format(days=days_text(runs.early, runs.late))


def _last(done_on: date, who: str) -> str:
    day = day_text(done_on)
    return _("last done {day} by {who}").format(day=day, who=who) if who else _("last done {day}").format(day=day)
