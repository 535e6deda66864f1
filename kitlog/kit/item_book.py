"""All that is on record about one item, for whoever buys, insures or inspects it: struck entries stay in it."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from kitlog.kit.due import Due, due_states
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.paper import Paper
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.kit.usage import Usage, logged


@dataclass(frozen=True, slots=True)
class Total:
    """Airtime, ground handling and launches up to a day.

    Attributes:
        hours_known, launches_known: False where they are only what the log holds: what was before it is not known.
    """

    airtime_h: float
    ground_h: float
    launches: int
    hours_known: bool
    launches_known: bool


@dataclass(frozen=True, slots=True)
class Year:
    """One year of the log.

    Attributes:
        flights: entries of the log that reach into it.
        shared: of these the typed totals that reach over its ends: it has its part of them, by days.
    """

    year: int
    flights: int
    shared: int
    used: Usage


@dataclass(frozen=True, slots=True)
class Judged:
    """A rule, and what is on record about it today."""

    rule: ServiceRule
    due: Due


@dataclass(frozen=True, slots=True)
class Entry:
    """A record or an event, with the item's airtime on that day as far as it is known.

    Attributes:
        hours: as written on the paper, else opening balance and log; None = not known.
        by_log: `hours` was reckoned from the log.
        rules: the names of the rules that a record satisfies.
        answered: the events that a record names as answered.
    """

    what: ServiceRecord | Event
    hours: float | None
    by_log: bool
    rules: tuple[str, ...] = ()
    answered: tuple[Event, ...] = ()

    @property
    def on(self) -> date:
        """Its day."""
        return self.what.done_on if isinstance(self.what, ServiceRecord) else self.what.on

    @property
    def struck(self) -> bool:
        """Whether it was struck through later."""
        return self.what.struck_at is not None


@dataclass(frozen=True, slots=True)
class ItemBook:
    """The service book of one item on a day.

    Attributes:
        owner: who keeps it, empty if not known.
        host, guests: names of what it is fitted to, and of what is fitted to it.
        log_begins_on: the first day of the log, None while it is empty.
        total, logged: use until today, with the opening balance and without it.
        years: the log by years, the newest first.
        flights, recorded: entries of the log with it, and how many of them rest on a flight recording.
        rules: those that apply or do not, in their order.
        history: records and events, the oldest first.
    """

    item: Item
    on: date
    owner: str
    host: str
    guests: tuple[str, ...]
    log_begins_on: date | None
    total: Total
    logged: Usage
    years: tuple[Year, ...]
    flights: int
    recorded: int
    rules: tuple[Judged, ...]
    history: tuple[Entry, ...]

    @property
    def records(self) -> tuple[ServiceRecord, ...]:
        """The records that are not struck, the oldest first."""
        return tuple(e.what for e in self.history if isinstance(e.what, ServiceRecord) and not e.struck)

    @property
    def papers(self) -> tuple[Paper, ...]:
        """The papers of the item and of all records, each content once."""
        records = (entry.what for entry in self.history if isinstance(entry.what, ServiceRecord))
        listed = (*self.item.papers, *(paper for record in records for paper in record.papers))
        return tuple({paper.sha256: paper for paper in listed}.values())


def item_book(item: Item, items: Iterable[Item], book: ServiceBook, on: date, owner: str = "") -> ItemBook:
    """Put together what is on record about an item.

    Args:
        item: which.
        items: the whole kit, for pairs.
        book: rules, records, events and flights, struck ones among them.
        on: today.
        owner: who keeps it.
    """
    kit = tuple(items)
    flights = [flight for flight in book.flown_with(item.id) if flight.last_day <= on]
    rules = {rule.id: rule for rule in book.rules_of(item.id)}
    return ItemBook(
        item=item,
        on=on,
        owner=owner,
        host=next((other.name for other in kit if other.id == item.fitted_to), ""),
        guests=tuple(other.name for other in kit if other.fitted_to == item.id),
        log_begins_on=book.log_begins_on,
        total=total_use(item, flights, on),
        logged=logged(flights, until=on),
        years=tuple(_years(flights, on)),
        flights=len(flights),
        recorded=sum(bool(flight.recordings) for flight in flights),
        rules=tuple(Judged(rules[due.rule_id], due) for due in due_states(item, book, on)),
        history=tuple(sorted(_entries(item, book, rules), key=lambda entry: entry.on)),
    )


def total_use(item: Item, flights: Sequence[Flight], on: date) -> Total:
    """Opening balance and log up to a day."""
    used = logged(flights, until=on)
    return Total(
        airtime_h=used.airtime_h + (item.opening_h or 0.0),
        ground_h=used.ground_h + (item.opening_ground_h or 0.0),
        launches=used.launches + (item.opening_launches or 0),
        hours_known=item.opening_h is not None,
        launches_known=item.opening_launches is not None,
    )


def _years(flights: Sequence[Flight], on: date) -> Iterator[Year]:
    years = {year for flight in flights for year in range(flight.on.year, flight.last_day.year + 1)}
    for year in sorted(years, reverse=True):
        of_year = [flight for flight in flights if flight.on.year <= year <= flight.last_day.year]
        shared = sum(flight.on.year != flight.last_day.year for flight in of_year)
        yield Year(year, len(of_year), shared, _used_in(year, of_year, flights, on))


def _used_in(year: int, of_year: Sequence[Flight], flights: Sequence[Flight], on: date) -> Usage:
    """What one year has; launches are rounded for all years together, so that their sum is that of the log."""
    before, last = date(year - 1, 12, 31), date(year, 12, 31)
    since, beyond = logged(of_year, after=before, until=on), logged(of_year, after=last, until=on)
    launches = logged(flights, after=before, until=on).launches - logged(flights, after=last, until=on).launches
    return Usage(since.airtime_h - beyond.airtime_h, since.ground_h - beyond.ground_h, launches)


def _entries(item: Item, book: ServiceBook, rules: dict[str, ServiceRule]) -> Iterator[Entry]:
    events = {event.id: event for event in book.events if event.item_id == item.id}
    for event in events.values():
        yield Entry(event, _hours_at(item, book, event.on), by_log=True)
    for record in book.records:
        if record.item_id == item.id:
            names = tuple(rules[rule_id].rule for rule_id in record.rules if rule_id in rules)
            hours = _hours_at(item, book, record.done_on) if record.hours is None else record.hours
            answered = tuple(events[event_id] for event_id in record.answers if event_id in events)
            yield Entry(record, hours, record.hours is None, names, answered)


def _hours_at(item: Item, book: ServiceBook, on: date) -> float | None:
    """Airtime at the end of a day: known only where the log tells of that day and the balance before it is known."""
    begins = book.log_begins_on
    if item.opening_h is None or begins is None or on < begins:
        return None
    return item.opening_h + logged(book.flown_with(item.id), until=on).airtime_h
