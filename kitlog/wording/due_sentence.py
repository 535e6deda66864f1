"""What is on record about a service rule on a day, in words: both limits, and what is foreseen is said to be."""

from collections.abc import Iterator
from datetime import date

from kitlog.kit.due import Due, DueState
from kitlog.kit.foresight import FORESEEN_DAYS, RunOut
from kitlog.wording.event_text import event_text
from kitlog.wording.figures import day_text, with_unit
from kitlog.wording.translate import _, ngettext

SAID_H = 1.0
"""Hours foreseen until a day to come are said from this many on, or where they alone decide."""


def due_sentence(due: Due) -> str:
    """What is on record about a rule on a day, in words."""
    if due.state is DueState.NO_RECORD:
        return _("no record: not known until a first one is entered")
    return "; ".join(_parts(due)) or _(due.state.value)


def span_text(runs_out: RunOut, on: date) -> str:
    """The span of the day on which hours run out, seen from `on`; empty where it is not known or too far off."""
    if runs_out.early is None or _far(runs_out.early, on):
        return ""
    if runs_out.late is None or _far(runs_out.late, on):
        return _("{day} at the earliest").format(day=day_text(runs_out.early, year=runs_out.early.year != on.year))
    return _("{first} to {last}").format(
        first=day_text(runs_out.early, year=runs_out.early.year not in {on.year, runs_out.late.year}),
        last=day_text(runs_out.late, year=runs_out.late.year != on.year),
    )


def hours_text(due: Due) -> str:
    """Hours left or over, *at least* where no more is known; empty where no limit by hours can be judged."""
    if due.hours_left is None:
        return ""
    hours = with_unit(abs(due.hours_left), "h", 1)
    if due.hours_left < 0:
        return _("{hours} over the limit").format(hours=hours)
    return (_("{hours} left") if due.use_sure else _("at least {hours} left")).format(hours=hours)


def likely_text(due: Due) -> str:
    """About when the hours run out; empty where that is not known or so far off that it says nothing."""
    likely = due.predicted_on
    return "" if likely is None or _far(likely, due.on) else _("about {day}").format(day=day_text(likely))


def _far(day: date, on: date) -> bool:
    """Whether a day is too far off to mean anything: the plain rate of one year says nothing of decades."""
    return (day - on).days > FORESEEN_DAYS


def _parts(due: Due) -> Iterator[str]:
    if due.failed and due.last is not None:
        yield _("failed on {day}: open until it passes").format(day=day_text(due.last.done_on))
    if due.event is not None:
        yield _event(due)
        return
    if due.recommended_on is not None and due.recommended_on < due.on and not due.open:
        yield _("recommended by {day}").format(day=day_text(due.recommended_on))
    yield from (part for part in (_by_date(due), _by_hours(due), _then(due), _by_launches(due)) if part)


def _event(due: Due) -> str:
    if due.event is None:
        return ""
    facts = {"event": event_text(due.event), "day": day_text(due.event.on)}
    if due.due_on is None or due.due_on <= due.event.on:
        return _("open since {day}: {event}").format(**facts)
    text = _("{event} on {day}: overdue since {due}") if due.on > due.due_on else _("{event} on {day}: due {due}")
    return text.format(**facts, due=day_text(due.due_on))


def _by_date(due: Due) -> str:
    if due.due_on is None:
        return ""
    text = _("overdue since {day}") if due.on > due.due_on else _("due {day}")
    if due.last is not None and due.last.next_due_on == due.due_on:
        text = (
            _("overdue since {day}, as set at the last check")
            if due.on > due.due_on
            else _("due {day}, as set at the last check")
        )
    return text.format(day=day_text(due.due_on))


def _by_hours(due: Due) -> str:
    said = hours_text(due)
    about = likely_text(due) if said and due.hours_left is not None and due.hours_left >= 0 else ""
    return ", ".join(part for part in (said, about) if part)


def _then(due: Due) -> str:
    """What is foreseen on a day to come; nothing where the log alone says as much."""
    if due.hours_then is None or due.hours_left is None or due.hours_left < 0:
        return ""
    if not due.foreseen and due.hours_left - due.hours_then < SAID_H:
        return ""
    hours = with_unit(abs(due.hours_then), "h", 1)
    text = _("foreseen {hours} over on {day}") if due.hours_then < 0 else _("foreseen {hours} left on {day}")
    return text.format(hours=hours, day=day_text(due.on))


def _by_launches(due: Due) -> str:
    left = due.launches_left
    if left is None:
        return ""
    if left < 0:
        return ngettext("{n} launch over", "{n} launches over", -left).format(n=-left)
    if not due.use_sure:
        return ngettext("at least {n} launch left", "at least {n} launches left", left).format(n=left)
    return ngettext("{n} launch left", "{n} launches left", left).format(n=left)
