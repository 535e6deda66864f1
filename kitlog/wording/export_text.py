"""What a table of the kit leaves behind, in words."""

from collections.abc import Iterator, Sequence

from kitlog.kit.due import Due
from kitlog.kit.item import Item
from kitlog.kit.usage import Usage
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import with_unit
from kitlog.wording.incident_text import UNTIL_DONE
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import _, ngettext


def left_behind_lines(logs: Sequence[tuple[Item, Usage]], opened: Sequence[tuple[str, Due]]) -> Iterator[str]:
    """The hours of the log and the open events that a kit read from the tables would not have, all of them named."""
    if not logs and not opened:
        return
    yield _(
        "Not in these tables: the log and what happened. A kit that is read from them has more hours left than there"
        " are, and nothing open; a backup holds everything."
    )
    for name, due in opened:
        text = _("{item}, {rule}: {state} ({grounds})")
        facts = {"item": name, "rule": rule_text(due.rule), "state": due_sentence(due)}
        yield "  " + text.format(**facts, grounds=_(UNTIL_DONE[due.grounds]))
    for item, usage in logs:
        yield "  " + _log(item, usage)


def _log(item: Item, usage: Usage) -> str:
    parts = [_("{hours} of airtime").format(hours=with_unit(usage.airtime_h, "h", 1))] if usage.airtime_h else []
    if usage.ground_h:
        parts.append(_("{hours} of ground handling").format(hours=with_unit(usage.ground_h, "h", 1)))
    if usage.launches:
        parts.append(ngettext("{n} launch", "{n} launches", usage.launches).format(n=usage.launches))
    opening = _("none")
    if item.opening_h is not None:
        opening = with_unit(item.opening_h, "h", 1)
    text = _("{item}: {log} in the log (opening balance in the table: {opening})")
    return text.format(item=item.name, log=", ".join(parts), opening=opening)
