"""Everything that due states are judged from, found by item and rule without a search."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from operator import attrgetter
from typing import TypeVar

from kitlog.kit.flights import Flight
from kitlog.kit.service import Event, ServiceRecord, ServiceRule

K = TypeVar("K")
V = TypeVar("V")


@dataclass(frozen=True)
class ServiceBook:
    """Rules, records, events and flights; struck ones may be among them and count for nothing."""

    rules: tuple[ServiceRule, ...] = ()
    records: tuple[ServiceRecord, ...] = ()
    events: tuple[Event, ...] = ()
    flights: tuple[Flight, ...] = ()

    def rules_of(self, item_id: str) -> tuple[ServiceRule, ...]:
        """The rules of an item, in their order."""
        return tuple(self._rules.get(item_id, ()))

    def records_of(self, rule_id: str) -> tuple[ServiceRecord, ...]:
        """The records of a rule that are not struck, by day; those of one day in the order of entry."""
        return tuple(self._records.get(rule_id, ()))

    def events_of(self, item_id: str) -> tuple[Event, ...]:
        """What happened to an item, struck entries left out, by day."""
        return tuple(self._events.get(item_id, ()))

    def flown_with(self, item_id: str) -> tuple[Flight, ...]:
        """The flights that gave an item airtime."""
        return tuple(self._flights.get(item_id, ()))

    def is_of(self, other: "ServiceBook") -> bool:
        """Whether both are made of the very same tuples."""
        ours, theirs = ((one.rules, one.records, one.events, one.flights) for one in (self, other))
        return all(mine is yours for mine, yours in zip(ours, theirs, strict=True))

    @cached_property
    def log_begins_on(self) -> date | None:
        """The first day that the log tells of, None while it is empty."""
        return min((flight.on for flight in self.flights), default=None)

    @cached_property
    def _rules(self) -> dict[str, list[ServiceRule]]:
        return _grouped((rule.item_id, rule) for rule in self.rules)

    @cached_property
    def _records(self) -> dict[str, list[ServiceRecord]]:
        known = sorted((r for r in self.records if r.struck_at is None), key=attrgetter("done_on"))
        return _grouped((rule, record) for record in known for rule in record.rules)

    @cached_property
    def _events(self) -> dict[str, list[Event]]:
        known = sorted((e for e in self.events if e.struck_at is None), key=attrgetter("on"))
        return _grouped((event.item_id, event) for event in known)

    @cached_property
    def _flights(self) -> dict[str, list[Flight]]:
        return _grouped((item_id, flight) for flight in self.flights for item_id in dict.fromkeys(flight.flown))


def _grouped(pairs: Iterable[tuple[K, V]]) -> dict[K, list[V]]:
    found: dict[K, list[V]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return found
