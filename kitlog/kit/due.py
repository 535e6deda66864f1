"""Due states: what the record says of a service rule on a day.

Settled meanings: the due date itself is still in date; a limit just reached is not overdue; *due soon* looks at the due
limit, not at the recommended date; a record or flight after the day asked about is not yet known on that day.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from enum import StrEnum

from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import (
    WARN_HOURS,
    WARN_LAUNCHES,
    CountsFrom,
    Event,
    Grounds,
    ServiceRecord,
    ServiceRule,
)
from kitlog.kit.usage import flown_with, logged, rate_h_per_day
from kitlog.units.days import add_months

_ROUNDING_H = 1e-9
"""Sums of minutes are no decimal hours; a limit missed by less than this is reached."""


class DueState(StrEnum):
    """What is on record about a rule on a day, worst first."""

    OVERDUE = "overdue"
    DUE_SOON = "due soon"
    RECOMMENDED_PASSED = "recommended date passed"
    IN_DATE = "in date"
    NO_RECORD = "no record"
    NO_RULE = "no rule"
    DOES_NOT_APPLY = "does not apply"


STATE_ORDER = tuple(DueState)
"""Worst first, but *no record* is never better than *in date* for a reader: see `worst`."""


@dataclass(frozen=True, slots=True)
class Due:
    """One rule judged on one day.

    Attributes:
        due_on: the earliest due date by calendar or event, None where there is none or it is not known.
        recommended_on: the recommended date, None where the rule has one stage.
        hours_left, launches_left: to the due limit, negative once over, None where no such limit or not known.
        predicted_on: the day the hours run out at the plain rate of the last 365 days; None once they are used up.
        days_left: days to whichever of `due_on` and `predicted_on` comes first.
        book_by: due day less the lead time.
        counted_from: the date the months count from.
        last: the newest record that satisfies the rule.
        event: the open event that calls for it at once.
    """

    item_id: str
    rule_id: str
    rule: str
    grounds: Grounds
    state: DueState
    on: date
    due_on: date | None = None
    recommended_on: date | None = None
    hours_left: float | None = None
    launches_left: int | None = None
    predicted_on: date | None = None
    days_left: int | None = None
    book_by: date | None = None
    counted_from: date | None = None
    last: ServiceRecord | None = None
    event: Event | None = None

    @property
    def open(self) -> bool:
        """Whether the service is overdue."""
        return self.state is DueState.OVERDUE


@dataclass(frozen=True, slots=True)
class ServiceBook:
    """Everything the due states are judged from."""

    rules: tuple[ServiceRule, ...] = ()
    records: tuple[ServiceRecord, ...] = ()
    events: tuple[Event, ...] = ()
    flights: tuple[Flight, ...] = ()
    _by_item: dict[str, list[ServiceRule]] = field(default_factory=dict, init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        for rule in self.rules:
            self._by_item.setdefault(rule.item_id, []).append(rule)

    def rules_of(self, item_id: str) -> tuple[ServiceRule, ...]:
        """The rules of one item, in their order."""
        return tuple(self._by_item.get(item_id, ()))


def due_states(item: Item, book: ServiceBook, on: date) -> tuple[Due, ...]:
    """All rules of an item judged on a day, in the order of the rules."""
    rules = book.rules_of(item.id)
    flights = flown_with(item, book.flights) if rules else ()
    return tuple(judge(item, rule, book, flights, on) for rule in rules)


def judge(item: Item, rule: ServiceRule, book: ServiceBook, flights: Sequence[Flight], on: date) -> Due:
    """One rule of an item on a day; `flights` are those that gave the item airtime."""
    last = _last_record(rule, book.records, on)
    event = _open_event(rule, book.events, last, on)
    start = _counted_from(item, rule, last)
    due_on, recommended_on = _dates(rule, start, last, event)
    hours_left = _hours_left(item, rule, last, flights, on)
    launches_left = _launches_left(item, rule, last, flights, on)
    predicted_on = _predicted_on(rule, hours_left, flights, on)
    first = min((day for day in (due_on, predicted_on) if day), default=None)
    due = Due(
        item_id=item.id,
        rule_id=rule.id,
        rule=rule.rule,
        grounds=rule.grounds,
        state=DueState.IN_DATE,
        on=on,
        due_on=due_on,
        recommended_on=recommended_on,
        hours_left=hours_left,
        launches_left=launches_left,
        predicted_on=predicted_on,
        days_left=(first - on).days if first else None,
        book_by=_back(first, rule.lead_days),
        counted_from=start,
        last=last,
        event=event,
    )
    return _with_state(due, rule)


def _with_state(due: Due, rule: ServiceRule) -> Due:
    from dataclasses import replace

    return replace(due, state=_state(due, rule))


def _state(due: Due, rule: ServiceRule) -> DueState:
    if not rule.applies:
        return DueState.DOES_NOT_APPLY
    if _overdue(due):
        return DueState.OVERDUE
    if _due_soon(due, rule):
        return DueState.DUE_SOON
    if due.recommended_on is not None and due.on > due.recommended_on:
        return DueState.RECOMMENDED_PASSED
    if _unknown(due, rule):
        return DueState.NO_RECORD
    if _waits_for_event_only(rule) and due.last is None:
        return DueState.DOES_NOT_APPLY
    return DueState.IN_DATE


def _overdue(due: Due) -> bool:
    return (
        due.event is not None
        or (due.due_on is not None and due.on > due.due_on)
        or (due.hours_left is not None and due.hours_left < 0)
        or (due.launches_left is not None and due.launches_left < 0)
    )


def _due_soon(due: Due, rule: ServiceRule) -> bool:
    return (
        (due.days_left is not None and due.days_left <= rule.warn_days)
        or (due.hours_left is not None and due.hours_left <= WARN_HOURS)
        or (due.launches_left is not None and due.launches_left <= WARN_LAUNCHES)
    )


def _unknown(due: Due, rule: ServiceRule) -> bool:
    """Whether a limit of the rule cannot be judged: never shown as good."""
    return (
        (bool(rule.months or rule.recommended_months) and due.counted_from is None)
        or (rule.hours is not None and due.hours_left is None)
        or (rule.launches is not None and due.launches_left is None)
    )


def _waits_for_event_only(rule: ServiceRule) -> bool:
    limits = (rule.months, rule.recommended_months, rule.hours, rule.launches, rule.due_on)
    return bool(rule.events) and all(limit is None for limit in limits)


def _last_record(rule: ServiceRule, records: Sequence[ServiceRecord], on: date) -> ServiceRecord | None:
    known = [r for r in records if rule.id in r.rules and r.struck_at is None and r.done_on <= on]
    return max(known, key=lambda record: record.done_on, default=None)


def _open_event(rule: ServiceRule, events: Sequence[Event], last: ServiceRecord | None, on: date) -> Event | None:
    """The earliest event that the rule answers to and that no record has followed yet."""
    kinds = {kind.casefold() for kind in rule.events}
    waiting = [
        event
        for event in events
        if event.item_id == rule.item_id
        and event.struck_at is None
        and event.kind.casefold() in kinds
        and event.on <= on
        and (last is None or event.on > last.done_on)
    ]
    return min(waiting, key=lambda event: event.on, default=None)


def _counted_from(item: Item, rule: ServiceRule, last: ServiceRecord | None) -> date | None:
    match rule.counts_from:
        case CountsFrom.FIRST_USE:
            return item.first_used_on
        case CountsFrom.BOUGHT:
            return item.bought_on
        case CountsFrom.MADE:
            return item.made_on
        case CountsFrom.RECORD:
            return last.done_on if last else item.first_used_on or item.bought_on or item.made_on


def _dates(
    rule: ServiceRule, start: date | None, last: ServiceRecord | None, event: Event | None
) -> tuple[date | None, date | None]:
    days = [
        add_months(start, rule.months) if start and rule.months else None,
        _typed_date(rule, last),
        event.on if event else None,
    ]
    due_on = min((day for day in days if day), default=None)
    recommended = add_months(start, rule.recommended_months) if start and rule.recommended_months else None
    return due_on, recommended


def _typed_date(rule: ServiceRule, last: ServiceRecord | None) -> date | None:
    """The typed date; for an event rule it is the day of the event, and a record since then has answered it."""
    if rule.due_on and rule.events and last is not None and last.done_on >= rule.due_on:
        return None
    return rule.due_on


def _hours_left(
    item: Item, rule: ServiceRule, last: ServiceRecord | None, flights: Sequence[Flight], on: date
) -> float | None:
    if rule.hours is None:
        return None
    since = logged(flights, after=last.done_on if last else None, until=on)
    used = since.hours(ground_handling=rule.ground_handling)
    if last is None:
        if item.opening_h is None:
            return None
        used += item.opening_h
    elif last.hours is not None and item.opening_h is not None:
        total = logged(flights, until=on).hours(ground_handling=rule.ground_handling) + item.opening_h
        used = max(used, total - last.hours)  # figures that contradict each other never add hours
    left = rule.hours - used
    return 0.0 if abs(left) < _ROUNDING_H else left


def _launches_left(
    item: Item, rule: ServiceRule, last: ServiceRecord | None, flights: Sequence[Flight], on: date
) -> int | None:
    if rule.launches is None:
        return None
    used = logged(flights, after=last.done_on if last else None, until=on).launches
    if last is None:
        if item.opening_launches is None:
            return None
        used += item.opening_launches
    elif last.launches is not None and item.opening_launches is not None:
        used = max(used, logged(flights, until=on).launches + item.opening_launches - last.launches)
    return rule.launches - used


def _predicted_on(rule: ServiceRule, hours_left: float | None, flights: Sequence[Flight], on: date) -> date | None:
    if hours_left is None or hours_left <= 0:
        return None
    rate = rate_h_per_day(flights, on, ground_handling=rule.ground_handling)
    if rate <= 0 or hours_left / rate >= (date.max - on).days:
        return None
    return on + timedelta(days=math.floor(hours_left / rate))


def _back(day: date | None, lead_days: int) -> date | None:
    return day - timedelta(days=lead_days) if day else None
