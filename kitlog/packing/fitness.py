"""Whether an item can go on the days of an outing: at hand, without an open stop, in date."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from kitlog.budget.result import State
from kitlog.kit.due import Due, DueState, due_states
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.kit.service import Grounds
from kitlog.outing.outing import Outing
from kitlog.packing.capacity import is_swollen
from kitlog.packing.kit import History, Kit, book_of

CHECKED_KINDS = frozenset({Kind.WING, Kind.HARNESS, Kind.RESERVE})
"""What makers have looked at by the calendar or by hours, whatever the model: without a rule nothing is known of it."""


@dataclass(frozen=True, slots=True)
class Fitness:
    """One item on the days of an outing.

    Attributes:
        dues: its rules judged on the last day, which governs.
        open_stop: a rule that grounds it on any of the days, None if there is none.
    """

    item: Item
    dues: tuple[Due, ...] = ()
    open_stop: Due | None = None

    @property
    def overdue(self) -> bool:
        """Whether any rule is overdue on the last day."""
        return any(due.open for due in self.dues)

    @property
    def swollen(self) -> bool:
        """Whether its battery was seen swollen: such a thing is neither taken nor charged."""
        return is_swollen(self.item)

    @property
    def can_go(self) -> bool:
        """At hand, without an open stop and without a swollen battery."""
        return self.item.usable and self.open_stop is None and not self.swollen


def fitness_of(outing: Outing, kit: Kit, history: History, today: date) -> Mapping[str, Fitness]:
    """Every item by id, judged on the first and the last day; hours foreseen and planned until then are taken off.

    Between the two a state can only get worse, unless a record falls between: then the first day is the worse one.
    """
    book = book_of(kit, history)
    fitness: dict[str, Fitness] = {}
    for item in kit.items:
        last = due_states(item, book, outing.last_day, today=today, planned_h=planned_h_of(outing, item, today))
        first = last if outing.first_day == outing.last_day else due_states(item, book, outing.first_day, today=today)
        stop = next((due for due in (*last, *first) if open_state(due, outing) is State.STOP), None)
        fitness[item.id] = Fitness(item, last, stop)
    return fitness


def planned_h_of(outing: Outing, item: Item, today: date) -> float:
    """Hours in the air that the outing plans with an item: none once it is over, or where another one is chosen.

    Of what is over the log tells. An outing that names another wing, harness, reserve or helmet leaves this one alone.
    """
    chosen = {
        Kind.WING: outing.set.wing,
        Kind.HARNESS: outing.set.harness,
        Kind.RESERVE: outing.set.reserve,
        Kind.HELMET: outing.set.helmet,
    }.get(item.kind)
    if outing.last_day < today or chosen not in {None, item.id}:
        return 0.0
    return sum(phase.likely_h for phase in outing.phases if phase.way is PhaseWay.FLIGHT)


def grounded(fitness: Mapping[str, Fitness]) -> frozenset[str]:
    """Ids of items with an open stop, or with a swollen battery: what they could do does not count."""
    return frozenset(name for name, fit in fitness.items() if fit.open_stop is not None or fit.swollen)


def next_due(dues: Iterable[Due]) -> Due | None:
    """The rule that falls due first, by calendar or as hours are foreseen; what is overdue already is none."""
    ahead = [(due.days_left, due) for due in dues if due.days_left is not None and due.days_left >= 0 and not due.open]
    return min(ahead, key=lambda one: one[0])[1] if ahead else None


def open_state(due: Due, outing: Outing) -> State:
    """What a judged rule means for an item in use on the outing.

    A rule without record is *not known*, never a stop. Due soon is a state of the rule, not a finding of an outing on
    whose last day the rule is still in date; but a recommended date that has passed stays one, however near the due.
    """
    return weighed(due, by_law=bool(outing.demanded))


def weighed(due: Due, *, by_law: bool) -> State:
    """The same without an outing: whether law, school or event are taken to ask for what is grounded by law."""
    match due.state:
        case DueState.OVERDUE:
            return State.STOP if _is_stop(due, by_law=by_law) else State.LOOK
        case DueState.RECOMMENDED_PASSED:
            return State.LOOK
        case DueState.DUE_SOON if due.recommended_on is not None and due.on > due.recommended_on:
            return State.LOOK
        case DueState.NO_RECORD:
            return State.NOT_KNOWN
        case _:
            return State.FINE


def _is_stop(due: Due, *, by_law: bool) -> bool:
    """Whether it grounds the item: by its grounds, unless only foreseen.

    What an inspector failed is a stop for a rule by law too, whoever asks: it is no missed date but a thing known bad.
    """
    if due.foreseen or due.grounds is Grounds.NO:
        return False
    return due.grounds is Grounds.YES or by_law or due.failed
