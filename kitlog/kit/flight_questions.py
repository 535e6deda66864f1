"""What is asked about a flight before it stands in the log: the same one twice, two wings, longer than a day."""

from collections.abc import Collection, Iterable, Iterator
from datetime import datetime, timedelta

from kitlog.kit.flights import DAY_MIN, Flight
from kitlog.kit.recordings.outcome import Reason
from kitlog.kit.recordings.overlap import CLOCKS_S

Span = tuple[datetime, datetime]

ASKED = frozenset(
    {
        "flight.overlaps",
        "flight.same_day",
        "flight.in_a_total",
        "flight.total_over_flights",
        "flight.two_wings",
        "flight.day_over_full",
        "flight.airtime_over_span",
        "flight.airtime_under_span",
        "flight.no_airtime",
        "flight.no_wing",
    }
)
"""All that is asked; the pilot may say that it is so."""
SAME_MIN = 1.0
"""Two entries of a day without times whose airtimes differ by no more than this may be one entered twice."""

BOTH_TYPED_MIN = 15.0
"""Minutes by which a flight of one launch may be shorter than from its take-off to its landing without being asked:
times of day are typed to the quarter of an hour. Common practice, no source."""


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
        Reason: of `ASKED`, with what their sentences need.
    """
    others = [other for other in log if other.id != flight.id]
    single = [other for other in others if other.until is None]
    yield from _two_wings(flight, wings)
    yield from _no_wing(flight, wings)
    yield from _no_airtime(flight)
    yield from _too_long(flight)
    yield from _too_short(flight)
    yield from _twice_at_a_time(flight, single)
    yield from _same_day(flight, single, wings)
    yield from in_totals(flight, others, wings)
    yield from _total_over(flight, others, wings)
    yield from _over_full(flight, single, wings)


def may_share_wing(one: Flight, other: Flight, wings: Collection[str]) -> bool:
    """Whether both may count the same hours: the same wing; without wings the same thing; or booked on nothing."""
    mine, theirs = set(one.flown), set(other.flown)
    if not mine or not theirs:
        return True
    if not mine.isdisjoint(wings) and not theirs.isdisjoint(wings):
        return not mine.intersection(wings).isdisjoint(theirs)
    return not mine.isdisjoint(theirs)


def in_totals(flight: Flight, log: Iterable[Flight], wings: Collection[str]) -> Iterator[Reason]:
    """A typed total that reaches over the day of a flight may hold it already."""
    if flight.until is not None or not flight.airtime_min:
        return
    for other in log:
        reaches = other.until is not None and other.on <= flight.on <= other.until and other.airtime_min
        if reaches and may_share_wing(flight, other, wings):
            yield Reason("flight.in_a_total", {"first": other.on, "last": other.last_day})


def _total_over(total: Flight, others: Iterable[Flight], wings: Collection[str]) -> Iterator[Reason]:
    """A typed total over days of which the log has something already."""
    if total.until is None or not total.airtime_min:
        return
    meets = [other for other in others if other.on <= total.last_day and total.on <= other.last_day]
    within = [other for other in meets if other.airtime_min and may_share_wing(total, other, wings)]
    if within:
        first, last = min(other.on for other in within), max(other.last_day for other in within)
        minutes = round(sum(other.airtime_min for other in within))
        yield Reason("flight.total_over_flights", {"minutes": minutes, "first": first, "last": last})


def _two_wings(flight: Flight, wings: Collection[str]) -> Iterator[Reason]:
    """One flight is on one wing; each of two would get all of the airtime. A typed total may be of several."""
    count = len(set(wings).intersection(flight.flown))
    if count > 1 and flight.until is None:
        yield Reason("flight.two_wings", {"count": count})


def _same_day(flight: Flight, others: Iterable[Flight], wings: Collection[str]) -> Iterator[Reason]:
    """A flight of the same wing and day that no time tells apart."""
    if flight.until is not None or not flight.airtime_min:
        return
    for other in others:
        alike = other.on == flight.on and other.airtime_min and may_share_wing(flight, other, wings)
        if alike and _not_told_apart(flight, other):
            yield Reason("flight.same_day", {"day": other.on, "minutes": round(other.airtime_min)})
            return


def _not_told_apart(one: Flight, other: Flight) -> bool:
    """One has no times, and either the other has or both are as long: two short hops by hand ask nothing."""
    spans = span_of(one), span_of(other)
    if spans == (None, None):
        return abs(one.airtime_min - other.airtime_min) <= SAME_MIN
    return None in spans


def _too_long(flight: Flight) -> Iterator[Reason]:
    span = span_of(flight)
    if span is None:
        return
    minutes = (span[1] - span[0]).total_seconds() / 60
    if flight.airtime_min > minutes + CLOCKS_S / 60:
        yield Reason("flight.airtime_over_span", {"minutes": round(flight.airtime_min), "span": round(minutes)})


def _too_short(flight: Flight) -> Iterator[Reason]:
    """Less airtime than its times say, and no second launch or ground handling between that explains it."""
    if not flight.airtime_min or flight.launches > 1 or flight.landing_at is None or flight.recordings:
        return
    span = span_of(flight)
    minutes = (span[1] - span[0]).total_seconds() / 60 if span else 0.0
    if minutes - flight.airtime_min - flight.ground_handling_min > BOTH_TYPED_MIN:
        yield Reason("flight.airtime_under_span", {"minutes": round(flight.airtime_min), "span": round(minutes)})


def _no_airtime(flight: Flight) -> Iterator[Reason]:
    """A launch without a minute in the air."""
    if flight.until is None and flight.launches and not flight.airtime_min:
        yield Reason("flight.no_airtime", {"launches": flight.launches})


def _no_wing(flight: Flight, wings: Collection[str]) -> Iterator[Reason]:
    """Something was flown, and none of the wings that there are: their hours would stay too few."""
    if flight.until is None and flight.flown and wings and set(flight.flown).isdisjoint(wings):
        yield Reason("flight.no_wing", {"day": flight.on})


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
