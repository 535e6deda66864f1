"""What is asked about a flight before it stands in the log: a wing in the air twice at a time, or longer than a day."""

from collections.abc import Collection, Iterable, Iterator
from datetime import datetime, timedelta

from kitlog.kit.flights import DAY_MIN, Flight
from kitlog.kit.recordings.outcome import Reason
from kitlog.kit.recordings.overlap import CLOCKS_S

Span = tuple[datetime, datetime]


def span_of(flight: Flight) -> Span | None:
    """From take-off to landing, None where the log does not say; without a landing the airtime tells it."""
    if flight.takeoff_at is None or flight.until is not None:
        return None
    return flight.takeoff_at, flight.landing_at or flight.takeoff_at + timedelta(minutes=flight.airtime_min)


def questions(flight: Flight, log: Iterable[Flight], wings: Collection[str]) -> Iterator[Reason]:
    """What the pilot is asked about a flight, held against the others of the log.

    Args:
        flight: as it would stand there.
        log: all flights; the one of its own id is left alone.
        wings: ids of the items that are wings.

    Yields:
        Reason: ``flight.overlaps`` with ``day`` and ``minutes``, ``flight.day_over_full`` with ``day`` and ``hours``,
            ``flight.airtime_over_span`` with ``minutes`` and ``span``.
    """
    others = [other for other in log if other.id != flight.id and other.until is None]
    yield from _too_long(flight)
    yield from _twice_at_a_time(flight, others)
    yield from _over_full(flight, others, wings)


def _too_long(flight: Flight) -> Iterator[Reason]:
    span = span_of(flight)
    if span is None:
        return
    minutes = (span[1] - span[0]).total_seconds() / 60
    if flight.airtime_min > minutes + CLOCKS_S / 60:
        yield Reason("flight.airtime_over_span", {"minutes": round(flight.airtime_min), "span": round(minutes)})


def _twice_at_a_time(flight: Flight, others: Iterable[Flight]) -> Iterator[Reason]:
    """The first flight that overlaps; what is booked on nothing may have been on the same wing."""
    span = span_of(flight)
    for other in others if span else ():
        there = span_of(other)
        if span is None or there is None or not _may_share(flight, other):
            continue
        both_s = (min(span[1], there[1]) - max(span[0], there[0])).total_seconds()
        if both_s > CLOCKS_S:
            yield Reason("flight.overlaps", {"day": other.on, "minutes": round(both_s / 60)})
            return


def _may_share(one: Flight, other: Flight) -> bool:
    return not one.flown or not other.flown or not set(one.flown).isdisjoint(other.flown)


def _over_full(flight: Flight, others: Iterable[Flight], wings: Collection[str]) -> Iterator[Reason]:
    """Whether the flights of one wing on one day come to more than the day."""
    flown = set(wings).intersection(flight.flown)
    if flight.until is not None or not flown:
        return
    same_day = [other for other in others if other.on == flight.on]
    for wing in sorted(flown):
        minutes = flight.airtime_min + sum(other.airtime_min for other in same_day if wing in other.flown)
        if minutes > DAY_MIN:
            yield Reason("flight.day_over_full", {"day": flight.on, "hours": round(minutes / 60)})
            return
