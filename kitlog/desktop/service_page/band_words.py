"""The service band of a kit: months, lanes, words."""

from collections.abc import Iterable, Sequence
from datetime import date

from kitlog.desktop.service_page.band_lanes import lanes_of
from kitlog.kit.due import DueState
from kitlog.paint.service_picture import ServicePicture, ServiceWords
from kitlog.wording.figures import MONTHS, day_text
from kitlog.wording.translate import _
from kitlog.workbench.reads import DueLine

HIDDEN = frozenset({DueState.DOES_NOT_APPLY})


def grouped(lines: Sequence[DueLine]) -> list[DueLine]:
    """The lines grouped by item, items in the order of their soonest rule."""
    order: dict[str, list[DueLine]] = {}
    for line in lines:
        if line.due.state not in HIDDEN:
            order.setdefault(line.item.id, []).append(line)
    return [line for group in order.values() for line in group]


def band_of(
    lines: Iterable[DueLine], today: date, months: int, outings: Iterable[date]
) -> tuple[ServicePicture, tuple[str, ...]]:
    """The band from the month of `today` on, and the id of the rule of each lane."""
    lanes = [(line.rule.id, lane) for line in lines for lane in lanes_of(line)]
    first = today.replace(day=1)
    names = tuple(_(MONTHS[(first.month - 1 + n) % 12]) for n in range(months))
    words = ServiceWords(
        today=_("today, {day}").format(day=day_text(today, year=False)),
        recommended=_("recommended"),
        due=_("due"),
        book_by=_("book by"),
        hours=_("limit by hours: likely day and span"),
        outing=_("planned outing"),
    )
    shown = tuple(lane for _rule, lane in lanes)
    return ServicePicture(first, names, today, shown, tuple(outings), words), tuple(rule for rule, _lane in lanes)
