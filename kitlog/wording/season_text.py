"""The run before a season, and what stops the pilot on a day, in words."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date

from kitlog.budget.result import State
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.kit.season_start import SeasonAsk, SeasonLine, SeasonWhy
from kitlog.packing.what_stops import AWAY, GOES_BACK, NO_RULES, StopLine
from kitlog.wording.columns import WIDTH, Column, paragraph, row, wrapped
from kitlog.wording.due_sentence import due_sentence
from kitlog.wording.figures import day_text
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import STANCE, word

WHY: Mapping[SeasonWhy, str] = {
    SeasonWhy.OPEN: N_("open"),
    SeasonWhy.NO_RECORD: N_("not known"),
    SeasonWhy.CAPACITY: N_("capacity test: none since"),
    SeasonWhy.STORAGE: N_("storage charge: not seen to since"),
    SeasonWhy.DATED: N_("date on paper: still right?"),
    SeasonWhy.NOTICES: N_("maker’s notices: not looked for since"),
    SeasonWhy.IN_SEASON: N_("falls due in the season"),
    SeasonWhy.NOT_LOOKED: N_("not looked at since"),
}

MARKS = {State.STOP: "■", State.LOOK: "◆", State.NOT_KNOWN: "○"}

LOOK_MOVES_NOTHING = N_("A look moves no due date: only what is ticked as done counts from today.")

_COLUMNS = (Column(12), Column(30), Column(WIDTH - 12 - 30 - 4))


def ask_text(ask: SeasonAsk) -> str:
    """A rule of the run: what it is, and what is on record."""
    return f"{rule_text(ask.due.rule)}: {due_sentence(ask.due)}"


def looked_text(line: SeasonLine) -> str:
    """When the thing was last looked at, and why it is in the run."""
    said = (
        _("no look on record")
        if line.looked_on is None
        else _("last looked at on {day}").format(day=day_text(line.looked_on))
    )
    return f"{said}; {_('its cell lay through the pause: look at the charge')}" if line.lies else said


def since_text(since: date) -> str:
    """What counts as looked at."""
    return _("A look since {day} counts for this season.").format(day=day_text(since))


def season_lines(since: date, lines: Sequence[SeasonLine]) -> Iterator[str]:
    """The run on a terminal."""
    yield since_text(since)
    yield ""
    for line in lines:
        yield from paragraph(f"{line.item.name}: {looked_text(line)}")
        for ask in line.asks:
            yield from paragraph(f"{_(WHY[ask.why])}: {ask_text(ask)}", indent=2)
    if not lines:
        yield _("Nothing is left to look at before the season, as far as the records tell.")
        yield ""
    else:
        yield ""
        n = len(lines)
        yield ngettext("{n} thing to look at.", "{n} things to look at.", n).format(n=n)
        yield from wrapped(_(LOOK_MOVES_NOTHING), WIDTH)
    yield from wrapped(_(STANCE), WIDTH)


def stop_title(line: StopLine) -> str:
    """What a line is about: the item, and the rule if it is one."""
    return line.item.name if line.due is None else f"{line.item.name}: {rule_text(line.due.rule)}"


def stop_sentence(line: StopLine) -> str:
    """Why it is a stop, a look or not known."""
    if line.due is None:
        return _ABOUT[line.why](line.item)
    said = due_sentence(line.due)
    return f"{said}; {_('a stop where law, school or event asks for it')}" if line.asks_law else said


def custody_text(item: Item) -> str:
    """Who has it, or whose it is, and when it goes back; empty for what is simply the pilot's own and at hand."""
    if item.state is ItemState.LENT:
        who = _("lent to {name}").format(name=item.lent_to) if item.lent_to else _("lent")
    elif item.state is ItemState.BORROWED:
        who = _("belongs to {name}").format(name=item.belongs_to) if item.belongs_to else _("borrowed")
    elif item.state is ItemState.AWAY:
        who = _("away")
    else:
        return ""
    return who if item.back_by is None else _("{who}, back by {day}").format(who=who, day=day_text(item.back_by))


def stops_lines(lines: Sequence[StopLine], on: date, today: date) -> Iterator[str]:
    """What stops the pilot on a day, on a terminal."""
    yield _("What stands in the way on {day}, as far as it is on record").format(day=day_text(on))
    if on > today:
        yield from wrapped(_(FORESEEN), WIDTH)
    yield ""
    for line in lines:
        yield from row(
            (f"{MARKS[line.state]} {word(line.state.value)}", stop_title(line), stop_sentence(line)), _COLUMNS
        )
    if not lines:
        yield _("Nothing on record is a stop, a look or not known on that day.")
    yield ""
    yield from wrapped(_(STANCE), WIDTH)


FORESEEN = N_(
    "Hours until then are foreseen from the last 12 months, or from what outings plan where that is more: "
    "by them alone nothing is ever a stop."
)


def _goes_back(item: Item) -> str:
    return _("{who}: has to be back before").format(who=custody_text(item))


def _away(item: Item) -> str:
    return _("not at hand: {who}").format(who=custody_text(item) or word(item.state.value))


def _no_rules(_item: Item) -> str:
    return _("no service rule on record: nothing is known of when it is due")


_ABOUT: Mapping[str, Callable[[Item], str]] = {AWAY: _away, GOES_BACK: _goes_back, NO_RULES: _no_rules}
