"""What stops the pilot on a day, planned or not: rules that are a stop, a look or not known then, and what is away."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from kitlog.budget.result import SEVERITY, State
from kitlog.kit.due import Due, due_states
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, PhaseWay
from kitlog.kit.service import Grounds
from kitlog.kit.service_book import ServiceBook
from kitlog.outing.outing import Outing
from kitlog.packing.fitness import CHECKED_KINDS, weighed

AWAY, GOES_BACK, NO_RULES = "away", "goes back", "no rules"


@dataclass(frozen=True, slots=True)
class StopLine:
    """One thing that is not plainly in order on the day.

    Attributes:
        due: the rule judged on the day; None where it is about the item itself, with `why`: ``away`` (lent or at the
            workshop), ``goes back`` (borrowed, and it has to be back by then), ``no rules``.
        asks_law: it would be a stop if law, school or event asked for it.
    """

    item: Item
    state: State
    due: Due | None = None
    why: str = ""
    asks_law: bool = False


def what_stops(
    items: Iterable[Item],
    book: ServiceBook,
    on: date,
    *,
    today: date,
    planned_h: Mapping[str, float] | None = None,
    by_law: bool = False,
) -> tuple[StopLine, ...]:
    """Everything that is a stop, a look or not known on a day, the worst first.

    Args:
        items: the kit; what is lost, retired or used up is left out.
        book: what is on record.
        on: the day asked about; hours foreseen until then are taken off.
        today: the day up to which the log tells.
        planned_h: hours in the air that outings plan with an item until then, by its id.
        by_law: whether law, school or event ask for service on that day.
    """
    planned = planned_h or {}
    there = [i for i in items if i.quantity and i.state not in {ItemState.LOST, ItemState.RETIRED}]
    lines = [
        line
        for item in there
        for line in _of_item(item, due_states(item, book, on, today=today, planned_h=planned.get(item.id, 0.0)), on)
    ]
    judged = [_judged(line, by_law=by_law) for line in lines]
    worst = [line for line in judged if line.state is not State.FINE]
    return tuple(sorted(worst, key=lambda line: (SEVERITY.index(line.state), line.item.name.casefold())))


def planned_hours(outings: Iterable[Outing], usual: Iterable[str], today: date, on: date) -> Mapping[str, float]:
    """Hours in the air that outings until a day plan with each item of their set, or else of the usual one."""
    usual_ids = tuple(usual)
    hours: dict[str, float] = {}
    for outing in outings:
        if today <= outing.last_day and outing.first_day <= on:
            flown = sum(phase.likely_h for phase in outing.phases if phase.way is PhaseWay.FLIGHT)
            for item_id in _flown_by(outing, usual_ids):
                hours[item_id] = hours.get(item_id, 0.0) + flown
    return hours


def _flown_by(outing: Outing, usual: tuple[str, ...]) -> frozenset[str]:
    chosen = outing.set
    named = (chosen.wing, chosen.harness, chosen.reserve, chosen.helmet)
    found = frozenset(name for name in named if name is not None)
    return found or frozenset(usual)


def _of_item(item: Item, dues: tuple[Due, ...], on: date) -> Iterable[StopLine]:
    if not item.usable:
        back = item.back_by is not None and item.back_by <= on
        yield StopLine(item, State.NOT_KNOWN if back else State.LOOK, why=AWAY)
    if item.state is ItemState.BORROWED and item.back_by is not None and item.back_by < on:
        yield StopLine(item, State.LOOK, why=GOES_BACK)
    if not dues and item.kind in CHECKED_KINDS:
        yield StopLine(item, State.NOT_KNOWN, why=NO_RULES)
    yield from (StopLine(item, State.FINE, due) for due in dues)


def _judged(line: StopLine, *, by_law: bool) -> StopLine:
    due = line.due
    if due is None:
        return line
    asks_law = not by_law and due.open and due.grounds is Grounds.BY_LAW and not due.foreseen and not due.failed
    return StopLine(line.item, weighed(due, by_law=by_law), due, asks_law=asks_law)
