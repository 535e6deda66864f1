"""Due states: what the record says of a service rule on a day.

Settled meanings: the due date itself is still in date; a limit just reached is not overdue; *due soon* looks at the due
limit, not at the recommended date; a record or flight after the day asked about is not yet known on that day. For a day
to come the hours foreseen until then are taken off.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from kitlog.kit.foresight import RunOut, rates, run_out
from kitlog.kit.service import (
    WARN_HOURS,
    WARN_LAUNCHES,
    CountsFrom,
    Event,
    Grounds,
    ServiceRecord,
    ServiceRule,
)
from kitlog.kit.service_book import ServiceBook
from kitlog.kit.serviced import Serviced
from kitlog.kit.use_left import ROUNDING_H, Log, hours_left, launches_left
from kitlog.units.days import add_months


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
        hours_left, launches_left: to the due limit by the log, negative once over, None where no such limit or not
            known; use_sure: False where they are only the least that can be left.
        hours_then: hours left on a day to come, what is foreseen until then taken off; None where that is the same.
        runs_out: the day on which the hours run out, with its span; None once they are used up.
        days_left: days to whichever of `due_on` and `predicted_on` comes first.
        book_by: due day less the lead time.
        counted_from: the date the months count from.
        last: the newest record that satisfies the rule, or says that it failed.
        event: the open event that calls for it.
        foreseen: it is overdue, or due soon, by hours foreseen alone.
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
    use_sure: bool = True
    hours_then: float | None = None
    runs_out: RunOut | None = None
    days_left: int | None = None
    book_by: date | None = None
    counted_from: date | None = None
    last: ServiceRecord | None = None
    event: Event | None = None
    foreseen: bool = False

    @property
    def open(self) -> bool:
        """Whether the service is overdue."""
        return self.state is DueState.OVERDUE

    @property
    def predicted_on(self) -> date | None:
        """The day on which the hours run out at the plain rate of the last 365 days."""
        return self.runs_out.likely if self.runs_out else None

    @property
    def failed(self) -> bool:
        """Whether the last look ended in a failure: it is open until it passes."""
        return self.last is not None and self.last.failed


def due_states(
    item: Serviced, book: ServiceBook, on: date, *, today: date | None = None, planned_h: float = 0.0
) -> tuple[Due, ...]:
    """All rules of an item judged on a day, in the order of the rules.

    Args:
        item: whose rules.
        book: what is on record.
        on: the day asked about.
        today: the day up to which the log tells; None = `on`.
        planned_h: hours that are planned with the item up to `on`; taken off where they are more than the usual rate.
    """
    rules = book.rules_of(item.id)
    if not rules:
        return ()
    log = Log(book.flown_with(item.id), book.log_begins_on)
    known = on if today is None else min(today, on)
    return tuple(_judge(item, rule, book, log, _Days(on, known, planned_h)) for rule in rules)


@dataclass(frozen=True, slots=True)
class _Days:
    """The day asked about, the last day that is known, and hours planned in between."""

    on: date
    known: date
    planned_h: float


def _judge(item: Serviced, rule: ServiceRule, book: ServiceBook, log: Log, days: _Days) -> Due:
    on = days.on
    records = [record for record in book.records_of(rule.id) if record.done_on <= on]
    passed = [record for record in records if not record.failed]
    done = passed[-1] if passed else None
    event = _open_event(rule, book.events_of(item.id), passed, on)
    start = _counted_from(item, rule, done)
    due_on, recommended_on = _dates(rule, start, done, event)
    hours = hours_left(item, rule, done, log, on)
    launches = launches_left(item, rule, done, log, on)
    left = hours.amount if hours else None
    rate = rates(log.flights, days.known, ground_handling=rule.ground_handling) if left is not None else None
    runs_out = run_out(left, rate, days.known) if left is not None and left > 0 and rate else None
    then = None
    if left is not None and rate is not None and (days.known < on or days.planned_h):
        then = left - max(rate.plain * (on - days.known).days, days.planned_h)
    predicted = runs_out.likely if runs_out else None
    first = _earlier(due_on, predicted)
    known = _Known(
        on=on,
        due_on=due_on,
        recommended_on=recommended_on,
        days_left=(first - on).days if first else None,
        hours_left=left,
        launches_left=None if launches is None or launches.amount is None else round(launches.amount),
        event=event,
        last=records[-1] if records else None,
        counted_from=start,
    )
    by_record = _state(known, rule, None)
    state = by_record if then is None else _state(known, rule, then)
    return Due(
        item_id=item.id,
        rule_id=rule.id,
        rule=rule.rule,
        grounds=rule.grounds,
        state=state,
        on=on,
        due_on=due_on,
        recommended_on=recommended_on,
        hours_left=left,
        launches_left=known.launches_left,
        use_sure=(hours is None or hours.sure) and (launches is None or launches.sure),
        hours_then=then,
        runs_out=runs_out,
        days_left=known.days_left,
        book_by=_back(first, rule.lead_days),
        counted_from=start,
        last=known.last,
        event=event,
        foreseen=state is not by_record,
    )


@dataclass(slots=True)
class _Known:
    """What is on record about a rule on a day, before it has a state; thousands are made at a time."""

    on: date
    due_on: date | None
    recommended_on: date | None
    days_left: int | None
    hours_left: float | None
    launches_left: int | None
    event: Event | None
    last: ServiceRecord | None
    counted_from: date | None


def _state(known: _Known, rule: ServiceRule, hours_then: float | None) -> DueState:
    if not rule.applies:
        return DueState.DOES_NOT_APPLY
    if _overdue(known, rule, hours_then):
        return DueState.OVERDUE
    if _due_soon(known, rule, hours_then):
        return DueState.DUE_SOON
    if known.recommended_on is not None and known.on > known.recommended_on:
        return DueState.RECOMMENDED_PASSED
    if _unknown(known, rule):
        return DueState.NO_RECORD
    if rule.waits_for_event_only and known.last is None:
        return DueState.DOES_NOT_APPLY
    return DueState.IN_DATE


def _overdue(known: _Known, rule: ServiceRule, hours_then: float | None) -> bool:
    return (
        (known.last is not None and known.last.failed)
        or (known.event is not None and not rule.event_days)
        or (known.due_on is not None and known.on > known.due_on)
        or _used_up(known.hours_left)
        or _used_up(hours_then)
        or _used_up(known.launches_left)
    )


def _used_up(left: float | None) -> bool:
    return left is not None and left < -ROUNDING_H


def _due_soon(known: _Known, rule: ServiceRule, hours_then: float | None) -> bool:
    return (
        known.event is not None
        or _within(known.days_left, rule.warn_days)
        or _within(known.hours_left, WARN_HOURS)
        or _within(hours_then, WARN_HOURS)
        or _within(known.launches_left, WARN_LAUNCHES)
    )


def _within(left: float | None, most: float) -> bool:
    return left is not None and left <= most


def _unknown(known: _Known, rule: ServiceRule) -> bool:
    """Whether a limit of the rule cannot be judged: never shown as good."""
    return (
        (bool(rule.months or rule.recommended_months) and known.counted_from is None)
        or (rule.hours is not None and known.hours_left is None)
        or (rule.launches is not None and known.launches_left is None)
    )


def _open_event(rule: ServiceRule, events: Sequence[Event], passed: Sequence[ServiceRecord], on: date) -> Event | None:
    """The earliest event that the rule answers to and that no record has answered yet.

    A record answers what happened before its day; of its own day only what it names, since nobody knows which came
    first.
    """
    if not rule.events or not events:
        return None
    kinds = {kind.casefold() for kind in rule.events}
    answered = {event_id for record in passed for event_id in record.answers}
    last = passed[-1].done_on if passed else None
    return next(
        (
            event
            for event in events
            if event.on <= on
            and event.kind.casefold() in kinds
            and event.id not in answered
            and (last is None or event.on >= last)
        ),
        None,
    )


def _counted_from(item: Serviced, rule: ServiceRule, last: ServiceRecord | None) -> date | None:
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
    """Due and recommended date; what the inspector set stands over the rule's months and typed date."""
    at_event = event.on + timedelta(days=rule.event_days) if event else None
    if last is not None and last.next_due_on is not None and last.sets_next_of(rule):
        return _earlier(last.next_due_on, at_event), None
    by_months = add_months(start, rule.months) if start and rule.months else None
    recommended = add_months(start, rule.recommended_months) if start and rule.recommended_months else None
    return _earlier(_earlier(by_months, _typed_date(rule, last)), at_event), recommended


def _earlier(one: date | None, other: date | None) -> date | None:
    """The earlier of two days, either of which may not be known."""
    if one is None or other is None:
        return other if one is None else one
    return min(one, other)


def _typed_date(rule: ServiceRule, last: ServiceRecord | None) -> date | None:
    """The typed date; for an event rule it is the day of the event, and a record since then has answered it."""
    if rule.due_on and rule.events and last is not None and last.done_on >= rule.due_on:
        return None
    return rule.due_on


def _back(day: date | None, lead_days: int) -> date | None:
    return day - timedelta(days=lead_days) if day else None
