"""Which shape a due state is shown with, and when something is due in a few words."""

from kitlog.kit.due import Due
from kitlog.paint.due_mark import DUE_MARKS
from kitlog.wording.due_sentence import hours_text, likely_text
from kitlog.wording.figures import day_text, with_unit
from kitlog.wording.translate import _, ngettext

MARKS = DUE_MARKS


def due_brief(due: Due) -> str:
    """When it is due, beside the word of its state: a date, hours left and about when, launches left."""
    if due.failed and due.last is not None:
        return _("failed {day}").format(day=day_text(due.last.done_on))
    if due.event is not None:
        by = due.due_on if due.due_on is not None and due.due_on > due.event.on else None
        return day_text(by) if by is not None else _("since {day}").format(day=day_text(due.event.on))
    parts = []
    if due.due_on is not None:
        late = due.on > due.due_on
        parts.append((_("since {day}") if late else "{day}").format(day=day_text(due.due_on)))
    if due.hours_left is not None:
        parts.append(_hours(due, beside=bool(parts)))
    if due.launches_left is not None:
        n = due.launches_left
        text = ngettext("{n} launch left", "{n} launches left", n)
        parts.append((ngettext("{n} launch over", "{n} launches over", -n) if n < 0 else text).format(n=abs(n)))
    return ", ".join(parts)


def _hours(due: Due, *, beside: bool) -> str:
    """Hours left or over; beside a date the figure alone, else with the likely day."""
    if not beside or due.hours_left is None or due.hours_left < 0 or not due.use_sure:
        return ", ".join(part for part in (hours_text(due), "" if beside else likely_text(due)) if part)
    return _("or {hours}").format(hours=with_unit(due.hours_left, "h", 1))
