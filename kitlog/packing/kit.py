"""What an assessment is made from: the kit, and what has been."""

from dataclasses import dataclass

from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import Pilot


@dataclass(frozen=True, slots=True)
class Kit:
    """What the pilot has: the pilot, a passenger if any, items and the rules on them."""

    pilot: Pilot | None = None
    items: tuple[Item, ...] = ()
    rules: tuple[ServiceRule, ...] = ()
    passenger: Pilot | None = None


@dataclass(frozen=True, slots=True)
class History:
    """What has been: service records, events, flights, earlier outings."""

    records: tuple[ServiceRecord, ...] = ()
    events: tuple[Event, ...] = ()
    flights: tuple[Flight, ...] = ()
    outings: tuple[Outing, ...] = ()


def book_of(kit: Kit, history: History) -> ServiceBook:
    """Everything that due states are judged from."""
    return ServiceBook(kit.rules, history.records, history.events, history.flights)
