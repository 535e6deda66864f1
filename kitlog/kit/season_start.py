"""The run at the start of a season: everything that nobody has looked at since the last one ended.

Beside that, whatever its last look: what is open, capacity tests, dates paid or printed, makers' notices, and cells
that lay through the pause. It asks; it opens nothing and puts no rule on anything.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from kitlog.kit.due import Due, DueState, due_states
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook

SEASON_DAYS = 183
"""What falls due within half a year is said to fall into the season (common practice, no source)."""

PAUSE_DAYS = 28
"""A shorter time without a flight ends no season (common practice, no source)."""

AUTUMN = (10, 1)
"""Month and day from which is counted where the log shows no pause (common practice, no source)."""

LOOKED_OVER = frozenset(
    {Kind.WING, Kind.HARNESS, Kind.RESERVE, Kind.HELMET, Kind.CARABINER, Kind.SPEED_SYSTEM, Kind.BUOYANCY, Kind.BEACON}
)
"""Kinds that are looked over before a season, whether they have a rule or not."""

CAPACITY, STORAGE, NOTICES = "any.capacity", "any.storage", "maker.notices"
"""Starter rules of which each season asks by name."""


class SeasonWhy(StrEnum):
    """Why a rule is asked about."""

    OPEN = "open"
    NO_RECORD = "no record"
    CAPACITY = "capacity test"
    STORAGE = "storage charge"
    DATED = "typed date"
    NOTICES = "maker's notices"
    IN_SEASON = "due in the season"
    NOT_LOOKED = "not looked at"


EACH_SEASON = frozenset({SeasonWhy.OPEN, SeasonWhy.CAPACITY, SeasonWhy.STORAGE, SeasonWhy.DATED, SeasonWhy.NOTICES})
"""What brings an item into the run even if somebody has looked at it since."""


@dataclass(frozen=True, slots=True)
class SeasonAsk:
    """One rule of an item, judged today, and why it is asked about."""

    due: Due
    why: SeasonWhy


@dataclass(frozen=True, slots=True)
class SeasonLine:
    """One item of the run.

    Attributes:
        looked_on: the day of its last record of any kind, None = none.
        not_looked: whether that was before the pause.
        lies: its cell lay through the pause and its charge is to be looked at.
        asks: its rules that are asked about.
    """

    item: Item
    looked_on: date | None
    not_looked: bool
    lies: bool
    asks: tuple[SeasonAsk, ...]


def season_start(
    items: Iterable[Item], book: ServiceBook, on: date, *, since: date, lying: frozenset[str] = frozenset()
) -> tuple[SeasonLine, ...]:
    """What to look at before the season, one line an item, in the order in which kit is laid out.

    Args:
        items: the kit; what is lost, retired or used up is left out.
        book: what is on record.
        on: today.
        since: a look on or after this day counts for the season.
        lying: ids of items with a cell that lay unused.
    """
    looked = _looked_on(book.records)
    lines = (
        _line(item, book, on, since, (looked.get(item.id), item.id in lying))
        for item in items
        if item.quantity and item.state not in {ItemState.LOST, ItemState.RETIRED}
    )
    order = list(Kind)
    asked = (line for line in lines if line is not None)
    return tuple(sorted(asked, key=lambda line: (order.index(line.item.kind), line.item.name.casefold())))


def season_ended_on(flights: Iterable[Flight], on: date) -> date:
    """The last day before the longest pause that ends within the last year, today's included; else the last autumn."""
    days = sorted((flight.on, flight.last_day) for flight in flights if flight.last_day <= on)
    best, length = None, timedelta(days=PAUSE_DAYS)
    flown_to: date | None = None
    for first, last in [*days, (on, on)]:
        if flown_to is not None and first - flown_to >= length and first > on - timedelta(days=365):
            best, length = flown_to, first - flown_to
        flown_to = last if flown_to is None else max(flown_to, last)
    return best or _last_autumn(on)


def _last_autumn(on: date) -> date:
    this_year = date(on.year, *AUTUMN)
    return this_year if this_year < on else date(on.year - 1, *AUTUMN)


def _looked_on(records: Iterable[ServiceRecord]) -> Mapping[str, date]:
    looked: dict[str, date] = {}
    for record in records:
        if record.struck_at is None:
            looked[record.item_id] = max(record.done_on, looked.get(record.item_id, record.done_on))
    return looked


def _line(item: Item, book: ServiceBook, on: date, since: date, known: tuple[date | None, bool]) -> SeasonLine | None:
    looked_on, lies = known
    rules = {rule.id: rule for rule in book.rules_of(item.id)}
    not_looked = (looked_on is None or looked_on < since) and (bool(rules) or item.kind in LOOKED_OVER)
    asks = tuple(
        SeasonAsk(due, why)
        for due in due_states(item, book, on)
        if (why := _why(due, rules[due.rule_id], since)) is not None
    )
    if not not_looked and not lies and all(ask.why not in EACH_SEASON for ask in asks):
        return None
    return SeasonLine(item, looked_on, not_looked, lies, asks)


_NAMED = {CAPACITY: SeasonWhy.CAPACITY, STORAGE: SeasonWhy.STORAGE, NOTICES: SeasonWhy.NOTICES}


def _why(due: Due, rule: ServiceRule, since: date) -> SeasonWhy | None:
    if due.state is DueState.DOES_NOT_APPLY:
        return None
    if due.open:
        return SeasonWhy.OPEN
    if due.state is DueState.NO_RECORD:
        return SeasonWhy.NO_RECORD
    if due.last is None or due.last.done_on < since:
        why = _NAMED.get(due.rule) or (SeasonWhy.DATED if _is_typed_date(rule) else None)
        if why is not None:
            return why
    if due.days_left is not None and due.days_left <= SEASON_DAYS:
        return SeasonWhy.IN_SEASON
    waits = not any(_intervals(rule)) and rule.due_on is None
    return SeasonWhy.NOT_LOOKED if not waits and due.last is not None and due.last.done_on < since else None


def _is_typed_date(rule: ServiceRule) -> bool:
    """A subscription, an insurance, a printed date: nothing but a day that somebody typed."""
    return rule.due_on is not None and not any(_intervals(rule))


def _intervals(rule: ServiceRule) -> tuple[float | None, ...]:
    return rule.months, rule.recommended_months, rule.hours, rule.launches
