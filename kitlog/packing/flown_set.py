"""What was flown on a day, as far as kit, outings and log tell it: what gets airtime and launches, what rode along.

The first that holds: the wing, harness, reserves, helmet and carabiners of an outing of that day, with what is fitted
to them; those of the last flight up to that day (or, before the log begins, of the first after it); the only ones there
are. Else nothing is proposed: hours on the wrong wing, or on none, make a service date look further away than it is.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from kitlog.fault import Fault
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, ItemState, Kind
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.assess import judge_of
from kitlog.packing.kit import History, Kit
from kitlog.packing.naming import with_ids

FLOWN_KINDS = frozenset({*SET_KINDS, Kind.CARABINER, Kind.SPEED_SYSTEM})
"""Kinds that get airtime."""
GONE = frozenset({ItemState.LOST, ItemState.RETIRED})


class ChosenBy(StrEnum):
    """Why it is proposed."""

    NAMED = "named"
    OUTING = "outing"
    LAST_FLIGHT = "last flight"
    ONLY_ONES = "only ones"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True)
class FlownSet:
    """What a flight is booked on.

    Attributes:
        by: why; name: of the outing; day: of the last flight.
        flown: ids of what gets airtime and launches; carried: ids of what only rode along.
    """

    by: ChosenBy
    flown: tuple[str, ...] = ()
    carried: tuple[str, ...] = ()
    name: str = ""
    day: date | None = None


NOTHING = FlownSet(ChosenBy.NOTHING)
"""Nobody knows."""


class FlownSets:
    """Proposes what was flown; each outing is judged once. It may be used on another thread.

    Args:
        kit, library, history: as for an assessment.
        working_on: id of the outing being worked on: it goes before others of the same day.
    """

    def __init__(self, kit: Kit, library: Library, history: History, working_on: str = "") -> None:
        self._kit, self._library, self._history = kit, library, history
        self._items = {item.id: item for item in kit.items}
        self._outings = sorted(history.outings, key=lambda outing: (outing.id != working_on, outing.first_day))
        self._flights = sorted(history.flights, key=lambda flight: (flight.last_day, flight.on))
        self._judged: dict[str, FlownSet | None] = {}

    @property
    def is_empty(self) -> bool:
        """Whether nothing in the kit could get airtime, so that none can be lost."""
        return not any(item.kind in FLOWN_KINDS and item.state not in GONE for item in self._kit.items)

    def on(self, day: date, at: datetime) -> FlownSet:
        """What is proposed for a flight on a local day; `at` is its take-off."""
        return next(iter(self.choices(day, at)), NOTHING)

    def choices(self, day: date, at: datetime) -> Sequence[FlownSet]:
        """All that could be, the proposed one first."""
        ways = (*self._of_outings(day, at), self._of_last_flight(day), self._only_ones())
        return [way for way in ways if way is not None and way.flown]

    def newer_than(self, day: date, booked: FlownSet) -> tuple[str, date] | None:
        """The first thing of what was flown that was bought, or else made, after a day: its name, and that day."""
        for item in (self._items[item_id] for item_id in booked.flown if item_id in self._items):
            since = item.bought_on or item.made_on
            if since is not None and since > day:
                return item.name, since
        return None

    def outing_on(self, day: date) -> Outing | None:
        """The outing of a day."""
        return next((outing for outing in self._outings if outing.first_day <= day <= outing.last_day), None)

    def _of_outings(self, day: date, at: datetime) -> Iterator[FlownSet | None]:
        for outing in self._outings:
            if outing.first_day <= day <= outing.last_day:
                if outing.id not in self._judged:
                    self._judged[outing.id] = self._of_outing(outing, at)
                yield self._judged[outing.id]

    def _of_outing(self, outing: Outing, at: datetime) -> FlownSet | None:
        """Judged at the time of the flight: what is overdue by now may have been in date then."""
        try:
            plan = with_ids(outing, self._kit.items)
            judged = judge_of(plan, self._kit, self._library, self._history, at)(plan)
        except Fault:
            return None
        if Kind.WING not in judged.chosen:
            return None
        lines = [line.item for line in judged.lines if not line.in_car]
        chosen = [judged.chosen[kind] for kind in SET_KINDS if kind in judged.chosen]
        flown = list(dict.fromkeys(item.id for item in self._with_fitted(chosen, lines)))
        carried = tuple(dict.fromkeys(item.id for item in lines if item.id not in flown))
        return FlownSet(ChosenBy.OUTING, tuple(flown), carried, name=outing.name)

    def _with_fitted(self, chosen: Sequence[Item], lines: Iterable[Item]) -> Iterator[Item]:
        """The set, what of the list is flown by its kind, and what is fitted to either."""
        there = {item.id: item for item in chosen}
        listed = [item for item in lines if item.kind in FLOWN_KINDS and self._is_flown(item, there)]
        there |= {item.id: item for item in listed}
        yield from there.values()
        yield from (
            item
            for item in self._kit.items
            if item.fitted_to in there and item.kind in FLOWN_KINDS and item.state not in GONE
        )

    def _is_flown(self, item: Item, there: dict[str, Item]) -> bool:
        """A second wing or helmet on the list is carried; a second reserve is flown."""
        taken = {other.kind for other in there.values()}
        return item.id in there or item.kind is Kind.RESERVE or item.kind not in taken or item.kind not in SET_KINDS

    def _of_last_flight(self, day: date) -> FlownSet | None:
        """What was flown last; nothing if something of it is gone by now, for then something else was flown since."""
        booked = [flight for flight in self._flights if flight.flown]
        before = [flight for flight in booked if flight.last_day <= day]
        last = before[-1] if before else booked[0] if booked else None
        if last is None or not self._still_there(last, day):
            return None
        return FlownSet(ChosenBy.LAST_FLIGHT, last.flown, day=last.last_day)

    def _still_there(self, flight: Flight, day: date) -> bool:
        items = [self._items.get(item_id) for item_id in flight.flown]
        return all(item is not None and (item.state not in GONE or day <= flight.last_day) for item in items)

    def _only_ones(self) -> FlownSet | None:
        """The only wing, harness and helmet, and what is fitted to them; nothing where one of them is a question."""
        by_kind = {kind: [i for i in self._kit.items if i.kind is kind and i.state not in GONE] for kind in FLOWN_KINDS}
        if len(by_kind[Kind.WING]) != 1 or any(len(by_kind[kind]) > 1 for kind in (Kind.HARNESS, Kind.HELMET)):
            return None
        chosen = [item for kind in SET_KINDS if len(by_kind[kind]) == 1 for item in by_kind[kind]]
        chosen += [
            item
            for kind in (Kind.CARABINER, Kind.SPEED_SYSTEM)
            for item in by_kind[kind][:1]
            if len(by_kind[kind]) == 1
        ]
        there = {item.id: item for item in self._with_fitted(chosen, ())}
        if by_kind[Kind.RESERVE] and not any(item.kind is Kind.RESERVE for item in there.values()):
            return None
        return FlownSet(ChosenBy.ONLY_ONES, tuple(there))
