"""The service band of a kit: months, lanes, words."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from kitlog.desktop.due_marks import MARKS
from kitlog.desktop.service_page.rule_words import limits_of
from kitlog.kit.due import DueState
from kitlog.paint.mark import Mark
from kitlog.paint.service_picture import HoursLimit, ServiceLane, ServicePicture, ServiceWords, Stage
from kitlog.wording.figures import MONTHS, day_text, with_unit
from kitlog.wording.rules import rule_text
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
    lanes = [(line.rule.id, lane) for line in lines for lane in _lanes(line)]
    first = today.replace(day=1)
    names = tuple(_(MONTHS[(first.month - 1 + n) % 12]) for n in range(months))
    words = ServiceWords(
        today=_("today, {day}").format(day=day_text(today, year=False)),
        recommended=_("recommended"),
        due=_("due"),
        book_by=_("book by"),
        hours=_("limit by hours: likely day"),
        outing=_("planned outing"),
    )
    shown = tuple(lane for _rule, lane in lanes)
    return ServicePicture(first, names, today, shown, tuple(outings), words), tuple(rule for rule, _lane in lanes)


def _lanes(line: DueLine) -> Iterator[ServiceLane]:
    due, name, rule = line.due, line.item.name, rule_text(line.due.rule)
    mark = MARKS[due.state]
    if due.state is DueState.NO_RECORD:
        yield ServiceLane(name, rule, Mark.NOT_KNOWN, unknown=_("no record: not known until a first one is entered"))
        return
    labels = [label for label in limits_of(line.rule) if not label.endswith("h")] if line.rule.months else []
    if due.due_on is not None:
        yield ServiceLane(
            name,
            ", ".join([rule, *labels[:1]]),
            mark,
            due=Stage(due.due_on, _due_words(line)),
            recommended=None if due.recommended_on is None else Stage(due.recommended_on, _recommended(line)),
            book_by=due.book_by if due.book_by is not None and due.book_by < due.due_on else None,
        )
    if due.hours_left is not None and line.rule.hours is not None:
        limit = with_unit(line.rule.hours, "h")
        over = due.hours_left < 0
        hour_mark = mark if over or due.due_on is None else _hours_mark(due.hours_left, mark)
        yield ServiceLane(name, f"{rule}, {limit}", hour_mark, hours=HoursLimit(_hours_words(line), due.predicted_on))


def _hours_mark(hours_left: float, mark: Mark) -> Mark:
    from kitlog.kit.service import WARN_HOURS

    return mark if hours_left <= WARN_HOURS else Mark.FINE


def _due_words(line: DueLine) -> str:
    due = line.due
    if due.due_on is None:
        return ""
    far = due.due_on.year != due.on.year
    day = day_text(due.due_on, year=far)
    if due.on > due.due_on or due.event is not None:
        return _("overdue since {day}").format(day=day)
    return _("due {day}").format(day=day) if due.recommended_on else day


def _recommended(line: DueLine) -> str:
    day = line.due.recommended_on
    return "" if day is None else _("recommended {day}").format(day=day_text(day, year=day.year != line.due.on.year))


def _hours_words(line: DueLine) -> str:
    due = line.due
    if due.hours_left is None:
        return ""
    if due.hours_left < 0:
        return _("{hours} over").format(hours=with_unit(-due.hours_left, "h", 1))
    left = _("{hours} left").format(hours=with_unit(due.hours_left, "h", 1))
    return (
        left if due.predicted_on is None else _("{left}, about {day}").format(left=left, day=day_text(due.predicted_on))
    )
