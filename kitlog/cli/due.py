"""kitlog due: what is on record about the service of the kit."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from kitlog.cli import arguments, documents
from kitlog.cli.call import DONE, STOPPED, Call
from kitlog.cli.parser import Verbs, json_option, strict_option
from kitlog.cli.streams import note, say
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.wording.due_text import Ahead
    from kitlog.workbench.reads import DueRow
    from kitlog.workbench.reminder_commands import CalendarWritten
    from kitlog.workbench.workbench import Workbench


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
    parser.add_argument(
        "--ics",
        metavar=_("FILE"),
        type=arguments.target("--ics"),
        help=_("write all that falls due, as of today, as a calendar file; written again, it updates the calendar"),
    )
    json_option(parser)
    strict_option(parser)


def _due(call: Call) -> int:
    today = call.doors.clock().date()
    on: date = call.options.on or today
    with call.reading() as bench:
        every = bench.due_list(on)
        ahead = _ahead(bench, every) if on == today else None
        written = None if call.options.ics is None else bench.write_calendar(Path(call.options.ics))
    within = call.options.within
    lines = every if within is None else tuple(line for line in every if _is_near(line, within))
    if call.options.json:
        _say_json(lines, ahead)
    else:
        _say_text(lines, on, len(every), ahead)
    if written is not None:
        _say_written(call.options.ics, written)
    return STOPPED if call.options.strict and any(map(_stops, lines)) else DONE


def _ahead(bench: "Workbench", today: "tuple[DueRow, ...]") -> "Ahead":
    """What lies ahead: the next outing and what will be overdue on it, and checks to move out of the season."""
    from kitlog.wording.due_text import Ahead

    outing = bench.next_outing()
    open_now = {row.rule.id for row in today if row.due.open}
    then = () if outing is None else bench.due_list(outing.last_day)
    return Ahead(
        outing=outing.name if outing else None,
        first_day=outing.first_day if outing else None,
        last_day=outing.last_day if outing else None,
        open_then=frozenset(row.rule.id for row in then if row.due.open and row.rule.id not in open_now),
        loans=bench.loans(),
        proposals=bench.proposals(today),
    )


def _say_json(lines: "tuple[DueRow, ...]", ahead: "Ahead | None") -> None:
    from kitlog.files.due_json import due_json

    moved = ahead.proposals if ahead else {}
    documents.say_json([due_json(line.item, line.due, moved.get(line.rule.id)) for line in lines])


def _say_text(lines: "tuple[DueRow, ...]", on: date, rules: int, ahead: "Ahead | None") -> None:
    from kitlog.wording.due_text import NOTHING_AHEAD, due_lines

    say(due_lines([(line.item.name, line.due) for line in lines], on, rules, ahead or NOTHING_AHEAD))


def _say_written(file: str, written: "CalendarWritten") -> None:
    """What went into the calendar: a remark, so that the list alone is the answer."""
    from kitlog.wording.reminder_text import calendar_line, undated_line

    note(calendar_line(file, written.entries, written.cancelled))
    if written.undated:
        note(undated_line(written.undated))


def _is_near(line: "DueRow", days: int) -> bool:
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


def _stops(line: "DueRow") -> bool:
    """Overdue, and an item that grounds itself: on any outing a stop."""
    from kitlog.kit.service import Grounds

    return line.due.open and line.due.grounds is Grounds.YES
