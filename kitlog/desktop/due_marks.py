"""Which shape a due state is shown with, and when something is due in a few words."""

from kitlog.kit.due import Due, DueState
from kitlog.paint.mark import Mark
from kitlog.wording.figures import day_text, with_unit
from kitlog.wording.translate import _

MARKS = {
    DueState.OVERDUE: Mark.STOP,
    DueState.DUE_SOON: Mark.LOOK,
    DueState.RECOMMENDED_PASSED: Mark.LOOK,
    DueState.IN_DATE: Mark.FINE,
    DueState.NO_RECORD: Mark.NOT_KNOWN,
    DueState.NO_RULE: Mark.NONE,
    DueState.DOES_NOT_APPLY: Mark.NONE,
}
"""Word, shape and colour together: no record is a dashed ring and never good."""


def due_brief(due: Due) -> str:
    """When it is due, beside the word of its state: a date, hours left, launches left."""
    if due.event is not None:
        return _("since {day}").format(day=day_text(due.event.on))
    parts = []
    if due.due_on is not None:
        late = due.on > due.due_on
        parts.append((_("since {day}") if late else "{day}").format(day=day_text(due.due_on)))
    if due.hours_left is not None:
        hours = with_unit(abs(due.hours_left), "h", 1)
        text = _("{hours} over") if due.hours_left < 0 else _("or {hours}") if parts else _("{hours} left")
        parts.append(text.format(hours=hours))
    if due.launches_left is not None:
        parts.append(_("{n} launches left").format(n=due.launches_left))
    return ", ".join(parts)
