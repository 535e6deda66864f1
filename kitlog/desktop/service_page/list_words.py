"""Words of the service list, and of what stands under it about the selected rule."""

from collections.abc import Iterator
from datetime import date

from kitlog.desktop.service_page.rule_words import limits_of
from kitlog.kit.due import Due, DueState
from kitlog.wording.due_sentence import due_sentence, hours_text, span_text
from kitlog.wording.figures import day_text, number_text, with_unit
from kitlog.wording.record_text import result_text
from kitlog.wording.translate import _, ngettext
from kitlog.wording.words import word
from kitlog.workbench.reads import DueLine


def due_text(line: DueLine) -> str:
    """When it is due, as one date: by calendar, or about the day the hours run out; *now* where use is over."""
    due = line.due
    if due.failed and due.last is not None:
        return day_text(due.last.done_on)
    if due.event is not None:
        return day_text(due.event.on if due.due_on is None else due.due_on)
    if due.open and (due.due_on is None or due.on <= due.due_on):
        return _("now")
    first = _first_day(due)
    if first is None:
        return word("not known") if due.state is DueState.NO_RECORD else ""
    by_hours = due.predicted_on is not None and first == due.predicted_on and first != due.due_on
    return _("about {day}").format(day=day_text(first)) if by_hours else day_text(first)


def _first_day(due: Due) -> date | None:
    days = [day for day in (due.due_on, due.predicted_on) if day is not None]
    return min(days, default=None)


def first_limit_text(line: DueLine) -> str:
    """Which limit comes first, and what stands behind it."""
    due = line.due
    limits = ", ".join(limits_of(line.rule))
    if due.state is DueState.NO_RECORD:
        return _("{limits}, never recorded").format(limits=limits) if limits else word(due.state.value)
    if due.failed or due.event is not None:
        return due_sentence(due)
    dated, used = "".join(_calendar(line)), ", ".join(_use(line))
    if not dated or not used:
        return dated or used or limits or due_sentence(due)
    first, second = (used, dated) if _hours_first(due) else (dated, used)
    return _("{first}, before {second}").format(first=first, second=second)


def _calendar(line: DueLine) -> Iterator[str]:
    due, rule = line.due, line.rule
    if due.due_on is None:
        return
    if due.last is not None and due.last.next_due_on == due.due_on:
        yield _("as set at the last check")
    elif due.recommended_on is not None and due.recommended_on >= due.on:
        yield _("recommended from {day}").format(day=day_text(due.recommended_on))
    elif due.recommended_on is not None and not due.open:
        yield _("recommended since {day}").format(day=day_text(due.recommended_on))
    elif rule.months is not None and due.due_on != rule.due_on:
        yield ngettext("{n} month", "{n} months", rule.months).format(n=rule.months)
    else:
        yield _("typed date")


def _use(line: DueLine) -> Iterator[str]:
    due, last = line.due, line.due.last
    hours = last.next_within_h if last is not None and last.next_within_h is not None else line.rule.hours
    if due.hours_left is not None and hours is not None:
        limit = with_unit(hours, "h", 0 if hours == int(hours) else 1)
        yield f"{limit} ({hours_text(due)})"
    if due.launches_left is not None and line.rule.launches is not None:
        n = abs(due.launches_left)
        text = ngettext("{n} launch left", "{n} launches left", n)
        text = ngettext("{n} launch over", "{n} launches over", n) if due.launches_left < 0 else text
        limit = ngettext("{n} launch", "{n} launches", line.rule.launches).format(n=number_text(line.rule.launches))
        yield f"{limit} ({text.format(n=n)})"


def _hours_first(due: Due) -> bool:
    over = due.hours_left is not None and due.hours_left < 0
    return over or (due.predicted_on is not None and (due.due_on is None or due.predicted_on < due.due_on))


def book_text(due: Due) -> str:
    """By when to ask for it."""
    if due.open:
        return _("now")
    if due.book_by is None:
        return _("any day")
    return _("now") if due.book_by <= due.on else day_text(due.book_by, year=due.book_by.year != due.on.year)


def who_text(due: Due) -> str:
    """Who did it last."""
    return due.last.who if due.last is not None else ""


def told(line: DueLine, then: Due | None = None, proposal: str = "") -> tuple[str, str]:
    """What there is to say of a rule: what is on record, span and booking; and behind it where that comes from.

    Args:
        line: the rule judged today.
        then: the same judged on the last day of the next outing; None without one.
        proposal: how the check could be moved out of the season.
    """
    due = line.due
    first = [due_sentence(due), *_span(due), *_booking(due), *_next_outing(due, then)]
    if proposal:
        first.append(proposal)
    behind = [", ".join(limits_of(line.rule)), *_last(due)]
    if line.rule.source:
        behind.append(_("rule: {source}").format(source=line.rule.source))
    return "; ".join(first), "; ".join(part for part in behind if part)


def _span(due: Due) -> Iterator[str]:
    span = span_text(due.runs_out, due.on) if due.runs_out is not None else ""
    if span:
        yield _("hours run out {span}").format(span=span)


def _booking(due: Due) -> Iterator[str]:
    first = _first_day(due)
    if due.book_by is None or due.open or first is None or due.book_by >= first:
        return
    text = _("book by {day}") if due.on <= due.book_by else _("the day for booking, {day}, has passed")
    yield text.format(day=day_text(due.book_by))


def _next_outing(due: Due, then: Due | None) -> Iterator[str]:
    if then is None:
        return
    state = word(then.state.value)
    said = _("{state}, foreseen").format(state=state) if then.foreseen else state
    if then.days_left is not None and then.days_left >= 0 and not then.open:
        left = ngettext("{n} day before it is due", "{n} days before it is due", then.days_left)
        said = f"{said}, {left.format(n=then.days_left)}"
    yield _("on the next outing, {day}: {state}").format(
        day=day_text(then.on, year=then.on.year != due.on.year), state=said
    )


def _last(due: Due) -> Iterator[str]:
    last = due.last
    if last is None:
        return
    hours = "" if last.hours is None else _("at {hours}").format(hours=with_unit(last.hours, "h", 1))
    facts = (last.who, result_text(last.result), hours)
    yield ", ".join([_("last done {day}").format(day=day_text(last.done_on)), *(fact for fact in facts if fact)])
