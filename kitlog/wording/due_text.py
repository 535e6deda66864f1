"""The service list on a terminal."""

from collections.abc import Iterator, Sequence
from datetime import date

from kitlog.kit.due import Due, DueState
from kitlog.kit.item import Item
from kitlog.wording.columns import WIDTH, Column, row, wrapped
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text
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


def due_lines(lines: Sequence[tuple[Item, Due]], on: date, rules: int) -> Iterator[str]:
    """One row a rule, in the order given; the day it is judged for above, the stance below.

    Args:
        lines: what is shown.
        on: the day.
        rules: how many rules there are in all.
    """
    yield _("Service on record, judged for {day}").format(day=day_text(on))
    yield ""
    if not rules:
        yield _("No service rule is on record, so nothing is known about service.")
    elif not lines:
        yield _("None of the {n} rules is due in that time.").format(n=rules)
    for item, due in lines:
        yield from row(_cells(item, due), _COLUMNS)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)


def _cells(item: Item, due: Due) -> tuple[str, str, str]:
    state = f"{SHAPES.get(due.state, ' ')} {word(due.state.value)}"
    return state, f"{item.name}: {rule_text(due.rule)}", due_sentence(due) + _book_by(due)


def _book_by(due: Due) -> str:
    if due.book_by is None or due.due_on is None or due.book_by >= due.due_on:
        return ""
    text = _("; book by {day}") if due.on <= due.book_by else _("; booking day {day} has passed")
    return text.format(day=day_text(due.book_by)) if not due.open else ""
