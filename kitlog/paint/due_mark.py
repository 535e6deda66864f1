"""Which shape a due state is shown with: word, shape and colour together; no record is a dashed ring and never good."""

from kitlog.kit.due import DueState
from kitlog.paint.mark import Mark

DUE_MARKS = {
    DueState.OVERDUE: Mark.STOP,
    DueState.DUE_SOON: Mark.LOOK,
    DueState.RECOMMENDED_PASSED: Mark.LOOK,
    DueState.IN_DATE: Mark.FINE,
    DueState.NO_RECORD: Mark.NOT_KNOWN,
    DueState.NO_RULE: Mark.NONE,
    DueState.DOES_NOT_APPLY: Mark.NONE,
}
