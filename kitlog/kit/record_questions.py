"""What is asked about a service record before it stands in the book: hours that run backwards, a day too early."""

from collections.abc import Iterable, Iterator
from datetime import timedelta

from kitlog.kit.flights import Flight
from kitlog.kit.incidents import answers
from kitlog.kit.item import Item
from kitlog.kit.recordings.outcome import Reason
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.kit.usage import logged

ASKED = frozenset(
    {
        "record.before_made",
        "record.hours_backwards",
        "record.launches_backwards",
        "record.hours_below_log",
        "record.hours_above_log",
        "record.launches_below_log",
    }
)
"""The codes of all questions: a fault of another code is no question, and cannot be answered with *it is so*."""

SLACK_H = 0.5
"""A workshop writes whole hours; so much less than the log holds is no question (common practice, no source)."""


FAR_ABOVE, FAR_ABOVE_H = 2.0, 10.0
"""More than twice what opening balance and log hold, and ten hours: a slip rather than flights not yet entered."""


def record_questions(
    record: ServiceRecord, item: Item, others: Iterable[ServiceRecord], flown: Iterable[Flight]
) -> Iterator[Reason]:
    """What the pilot is asked about a record.

    Args:
        record: as it would stand in the book.
        item: whose record.
        others: all records; those of other items, struck ones and the one of its own id are left alone.
        flown: the flights that gave the item airtime.

    Yields:
        Reason: ``record.before_made`` with ``day`` and ``made``; ``record.hours_backwards`` with ``hours``, ``day``,
            ``other`` and ``other_day``; ``record.launches_backwards`` likewise; ``record.hours_below_log`` with
            ``hours``, ``logged`` and ``day``; ``record.hours_above_log`` and ``record.launches_below_log`` likewise.
    """
    if item.made_on is not None and record.done_on < item.made_on:
        yield Reason("record.before_made", {"day": record.done_on, "made": item.made_on})
    theirs = [
        other for other in others if other.item_id == item.id and other.struck_at is None and other.id != record.id
    ]
    for what, code in (("hours", "record.hours_backwards"), ("launches", "record.launches_backwards")):
        yield from _backwards(record, theirs, what, code)
    yield from _below_log(record, item, list(flown))
    yield from _far_above_log(record, item, list(flown))


def answered_that_day(record: ServiceRecord, rules: Iterable[ServiceRule], events: Iterable[Event]) -> tuple[str, ...]:
    """Ids of the events of the record's own day that its rules answer to; a failed look answers none."""
    if record.failed:
        return ()
    satisfied = [rule for rule in rules if rule.id in record.rules]
    return tuple(
        event.id
        for event in events
        if event.struck_at is None
        and (event.item_id, event.on) == (record.item_id, record.done_on)
        and any(answers(rule, event.kind) for rule in satisfied)
    )


def _backwards(record: ServiceRecord, others: Iterable[ServiceRecord], what: str, code: str) -> Iterator[Reason]:
    """Another record of an earlier day with more, or of a later day with less; the nearest one is named."""
    here = getattr(record, what)
    if here is None:
        return
    known = [(other, there) for other in others if (there := getattr(other, what)) is not None]
    against = [
        (abs((other.done_on - record.done_on).days), other, there)
        for other, there in known
        if (other.done_on < record.done_on and there > here) or (other.done_on > record.done_on and there < here)
    ]
    if against:
        _, other, there = min(against, key=lambda found: found[0])
        facts = {"day": record.done_on, "other": there, "other_day": other.done_on}
        yield Reason(code, {what: here, **facts})


def _below_log(record: ServiceRecord, item: Item, flown: list[Flight]) -> Iterator[Reason]:
    """Less than opening balance and log together hold on the day before: flights of that day may come after it."""
    until = record.done_on - timedelta(days=1)
    log = logged(flown, until=until)
    hours = (item.opening_h or 0.0) + log.airtime_h
    if record.hours is not None and record.hours < hours - SLACK_H:
        facts = {"hours": record.hours, "logged": round(hours, 1), "day": record.done_on}
        yield Reason("record.hours_below_log", facts)
    launches = (item.opening_launches or 0) + log.launches
    if record.launches is not None and record.launches < launches:
        facts = {"launches": record.launches, "logged": launches, "day": record.done_on}
        yield Reason("record.launches_below_log", facts)


def _far_above_log(record: ServiceRecord, item: Item, flown: list[Flight]) -> Iterator[Reason]:
    """Far more than everything that is known, ground handling included: later records would all run backwards."""
    if record.hours is None or item.opening_h is None:
        return
    log = logged(flown, until=record.done_on)
    hours = item.opening_h + (item.opening_ground_h or 0.0) + log.airtime_h + log.ground_h
    if record.hours > FAR_ABOVE * hours + FAR_ABOVE_H:
        yield Reason(
            "record.hours_above_log", {"hours": record.hours, "logged": round(hours, 1), "day": record.done_on}
        )
