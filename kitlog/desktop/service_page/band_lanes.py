"""The lanes of one service rule: by the calendar, by hours, by launches, or what is open."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from kitlog.desktop.due_marks import MARKS
from kitlog.desktop.service_page.rule_words import limits_of
from kitlog.kit.due import Due, DueState
from kitlog.kit.service import WARN_HOURS, WARN_LAUNCHES
from kitlog.paint.mark import Mark
from kitlog.paint.service_picture import HoursLimit, ServiceLane, Stage
from kitlog.wording.due_sentence import due_sentence, hours_text, span_text
from kitlog.wording.figures import day_text, number_text, with_unit
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import word
from kitlog.workbench.reads import DueLine


def lanes_of(line: DueLine) -> Iterator[ServiceLane]:
    """A lane for each limit of a rule; book-by stands on the one that comes first."""
    due = line.due
    lane = ServiceLane(line.item.name, rule_text(due.rule), MARKS[due.state])
    if due.state is DueState.NO_RECORD:
        yield replace(lane, unknown=_("no record: not known until a first one is entered"))
        return
    if due.failed and due.last is not None:
        yield replace(lane, due=Stage(due.last.done_on, _("failed on {day}").format(day=_day(due.last.done_on, due))))
        return
    yield from _by_calendar(line, lane)
    yield from _by_hours(line, lane)
    yield from _by_launches(line, lane)


def _by_calendar(line: DueLine, lane: ServiceLane) -> Iterator[ServiceLane]:
    due = line.due
    if due.due_on is None:
        return
    labels = [label for label in limits_of(line.rule) if not label.endswith("h")] if line.rule.months else []
    recommended = due.recommended_on
    yield replace(
        lane,
        rule=", ".join([lane.rule, *labels[:1]]),
        mark=_calendar_mark(due, lane.mark),
        due=Stage(due.due_on, _due_words(due)),
        recommended=None if recommended is None else Stage(recommended, _recommended(recommended, due)),
        book_by=due.book_by if not _hours_first(due) else None,
    )


def _by_hours(line: DueLine, lane: ServiceLane) -> Iterator[ServiceLane]:
    due, last = line.due, line.due.last
    limit = last.next_within_h if last is not None and last.next_within_h is not None else line.rule.hours
    if due.hours_left is None or limit is None:
        return
    alone = due.due_on is None and due.launches_left is None
    yield replace(
        lane,
        rule=f"{lane.rule}, {with_unit(limit, 'h', 0 if limit == int(limit) else 1)}",
        mark=lane.mark if alone else _mark_by(due.hours_left, WARN_HOURS),
        hours=_foreseen(due),
        book_by=due.book_by if _hours_first(due) else None,
    )


def _foreseen(due: Due) -> HoursLimit:
    runs, text = due.runs_out, _hours_words(due)
    return HoursLimit(text, runs.likely, runs.early, runs.late) if runs else HoursLimit(text)


def _by_launches(line: DueLine, lane: ServiceLane) -> Iterator[ServiceLane]:
    left, limit = line.due.launches_left, line.rule.launches
    if left is None or limit is None:
        return
    text = ngettext("{n} launch over", "{n} launches over", -left) if left < 0 else _left(left, sure=line.due.use_sure)
    yield replace(
        lane,
        rule=f"{lane.rule}, {ngettext('{n} launch', '{n} launches', limit).format(n=number_text(limit))}",
        mark=_mark_by(left, WARN_LAUNCHES),
        note=text.format(n=abs(left)),
    )


def _left(left: int, *, sure: bool) -> str:
    if sure:
        return ngettext("{n} launch left", "{n} launches left", left)
    return ngettext("at least {n} launch left", "at least {n} launches left", left)


def _mark_by(left: float, warn: float) -> Mark:
    """The shape of a limit by use that stands beside others."""
    return Mark.STOP if left < 0 else Mark.LOOK if left <= warn else Mark.FINE


def _calendar_mark(due: Due, mark: Mark) -> Mark:
    """The shape of a date; where hours alone make the rule overdue, the date is not."""
    by_date = due.event is not None or (due.due_on is not None and due.on > due.due_on)
    return Mark.FINE if due.open and not by_date else mark


def _hours_first(due: Due) -> bool:
    """Whether the hours run out before the date, as foreseen."""
    return due.predicted_on is not None and (due.due_on is None or due.predicted_on < due.due_on)


def _due_words(due: Due) -> str:
    if due.event is not None:
        return due_sentence(due)
    if due.due_on is None:
        return ""
    day = _day(due.due_on, due)
    if due.on > due.due_on:
        return _("overdue since {day}").format(day=day)
    return _("due {day}").format(day=day) if due.recommended_on else day


def _recommended(day: date, due: Due) -> str:
    return _("recommended {day}").format(day=_day(day, due))


def _day(day: date, due: Due) -> str:
    return day_text(day, year=day.year != due.on.year)


def _hours_words(due: Due) -> str:
    """Hours left, the likely day and its span; what is not known is said."""
    left = hours_text(due)
    if due.hours_left is None or due.hours_left < 0:
        return left
    runs = due.runs_out
    if runs is None or runs.likely is None:
        return _("{left}, none flown in 12 months").format(left=left) if due.hours_left else left
    about = _("{left}, about {day}").format(left=left, day=_day(runs.likely, due))
    span = span_text(runs, due.on)
    return f"{about}; {span}" if span else about


def state_word(due: Due) -> str:
    """The word of a state; what is only foreseen is said to be."""
    said = word(due.state.value)
    return _("{state}, foreseen").format(state=said) if due.foreseen else said
