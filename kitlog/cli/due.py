"""kitlog due: what is on record about the service of the kit."""

from datetime import date
from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, STOPPED, Call
from kitlog.cli.parser import Verbs, json_option, strict_option
from kitlog.cli.streams import say
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.workbench.reads import DueLine


def add(verbs: Verbs) -> None:
    """Add the verb."""
    parser = verbs.add("due", _("list the service rules of the kit, what is due first"), _due)
    parser.add_argument(
        "--on", metavar=_("DATE"), type=arguments.day("--on"), help=_("judge that day (default: today)")
    )
    parser.add_argument(
        "--within",
        metavar=_("DAYS"),
        type=arguments.whole("--within", 0, 36_500),
        help=_("only what is due within so many days, overdue, recommended already, or without any record"),
    )
    json_option(parser)
    strict_option(parser)


def _due(call: Call) -> int:
    on: date = call.options.on or call.doors.clock().date()
    with call.reading() as bench:
        every = bench.due(on)
    within = call.options.within
    lines = every if within is None else tuple(line for line in every if _is_near(line, within))
    if call.options.json:
        from kitlog.files.due_json import due_json

        documents.say_json([due_json(line.item, line.due) for line in lines])
    else:
        from kitlog.wording.due_text import due_lines

        say(due_lines([(line.item, line.due) for line in lines], on, len(every)))
    return STOPPED if call.options.strict and any(map(_stops, lines)) else DONE


def _is_near(line: "DueLine", days: int) -> bool:
    """Whether a line belongs to a look ahead; what is not known is never hidden by it."""
    from kitlog.kit.due import DueState
    from kitlog.kit.service import WARN_HOURS, WARN_LAUNCHES

    due = line.due
    if due.state in {DueState.OVERDUE, DueState.RECOMMENDED_PASSED, DueState.NO_RECORD}:
        return True
    if due.state is DueState.DOES_NOT_APPLY:
        return False
    limits = ((due.days_left, days), (due.hours_left, WARN_HOURS), (due.launches_left, WARN_LAUNCHES))
    return any(left is not None and left <= most for left, most in limits)


def _stops(line: "DueLine") -> bool:
    """Overdue, and an item that grounds itself: on any outing a stop."""
    from kitlog.kit.service import Grounds

    return line.due.open and line.due.grounds is Grounds.YES
