"""The service list on a terminal."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from kitlog.kit.due import Due, DueState
from kitlog.kit.off_season import Proposal
from kitlog.kit.reminders import back_soon
from kitlog.kit.serviced import ServicedItem
from kitlog.wording.columns import WIDTH, Column, row, wrapped
from kitlog.wording.due_sentence import due_sentence, likely_text, span_text
from kitlog.wording.figures import day_text, days_text
from kitlog.wording.reminder_text import back_body, back_title, proposal_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _
from kitlog.wording.words import STANCE, word

SHAPES = {
    DueState.OVERDUE: "■",
    DueState.DUE_SOON: "◆",
    DueState.RECOMMENDED_PASSED: "◇",
    DueState.IN_DATE: "●",
    DueState.NO_RECORD: "○",
}


_COLUMNS = (Column(18), Column(29), Column(WIDTH - 18 - 29 - 4))


@dataclass(frozen=True, slots=True)
class Ahead:
    """What lies ahead of a list that is judged today.

    Attributes:
        outing, first_day, last_day: name and days of the next outing, None for none.
        open_then: ids of rules that are in date today and overdue on its last day.
        loans: what is borrowed or lent up to a day, with that day.
        proposals: checks that could be moved out of the season, by the ids of their rules.
    """

    outing: str | None = None
    first_day: date | None = None
    last_day: date | None = None
    open_then: frozenset[str] = frozenset()
    loans: Sequence[tuple[date, ServicedItem]] = ()
    proposals: Mapping[str, Proposal] = field(default_factory=dict)


NOTHING_AHEAD = Ahead()


def due_lines(lines: Sequence[tuple[str, Due]], on: date, rules: int, ahead: Ahead = NOTHING_AHEAD) -> Iterator[str]:
    """One row a rule, in the order given; the day it is judged for above, the stance below.

    Args:
        lines: what is shown: the name of the item, and the rule judged.
        on: the day.
        rules: how many rules there are in all.
        ahead: what lies ahead of it.
    """
    yield _("Service on record, judged for {day}").format(day=day_text(on))
    if ahead.first_day is not None and ahead.last_day is not None:
        days = days_text(ahead.first_day, ahead.last_day)
        yield from wrapped(_("Next outing: {name}, {days}").format(name=ahead.outing, days=days), WIDTH)
    yield ""
    if not rules:
        yield _("No service rule is on record, so nothing is known about service.")
    elif not lines:
        yield _("None of the {n} rules is due in that time.").format(n=rules)
    for name, due in lines:
        yield from row(_cells(name, due, ahead), _COLUMNS)
    for day, item in ahead.loans:
        yield from row(_loan(day, item, on), _COLUMNS)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)


def _loan(day: date, item: ServicedItem, on: date) -> tuple[str, str, str]:
    """A loan as a row of its own."""
    state = DueState.OVERDUE if day < on else DueState.DUE_SOON if item in back_soon([item], on) else DueState.IN_DATE
    said = "; ".join(part for part in (_("back by {day}").format(day=day_text(day)), back_body(item)) if part)
    return f"{SHAPES[state]} {_('on loan')}", back_title(item), said


def _cells(name: str, due: Due, ahead: Ahead) -> tuple[str, str, str]:
    state = f"{SHAPES.get(due.state, ' ')} {word(due.state.value)}"
    said = "; ".join(part for part in (due_sentence(due), *_more(due, ahead)) if part)
    return state, f"{name}: {rule_text(due.rule)}", said


def _span(due: Due) -> str:
    """The span of the day on which the hours run out."""
    if due.runs_out is None or not likely_text(due):
        return ""
    span = span_text(due.runs_out, due.on)
    return _("hours run out {span}").format(span=span) if span else ""


def _more(due: Due, ahead: Ahead) -> Iterator[str]:
    yield _span(due)
    yield _book_by(due)
    if due.rule_id in ahead.open_then:
        yield _("overdue on the next outing")
    if due.rule_id in ahead.proposals:
        yield proposal_text(ahead.proposals[due.rule_id])


def _book_by(due: Due) -> str:
    if due.book_by is None or due.open:
        return ""
    first = min(day for day in (due.due_on, due.predicted_on) if day is not None)
    if due.book_by >= first or (first == due.predicted_on != due.due_on and not likely_text(due)):
        return ""
    text = _("book by {day}") if due.on <= due.book_by else _("booking day {day} has passed")
    return text.format(day=day_text(due.book_by))
