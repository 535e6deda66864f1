"""Hours and launches of an item: opening balance and log, up to a day."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from kitlog.kit.flights import Flight

RATE_DAYS = 365
"""The window for the plain rate of use."""


@dataclass(frozen=True, slots=True)
class Usage:
    """What the log holds for one item in a span of days.

    Attributes:
        airtime_h: hours in the air; ground_h: hours of ground handling; launches: take-offs.
    """

    airtime_h: float = 0.0
    ground_h: float = 0.0
    launches: int = 0

    def hours(self, *, ground_handling: bool) -> float:
        """Hours, with ground handling where a rule counts it."""
        return self.airtime_h + (self.ground_h if ground_handling else 0.0)


def logged(flights: Iterable[Flight], *, after: date | None = None, until: date) -> Usage:
    """Sum of the flights after the day `after` and up to the day `until`.

    A flight counts on its last day. A typed total counts whole once its last day is reached, and in the part that
    lies after `after` (by days) when it reaches over that day: the log does not say more.
    """
    air = ground = launches = 0.0
    for flight in flights:
        share = _share(flight, after, until)
        air += share * flight.airtime_min / 60
        ground += share * flight.ground_handling_min / 60
        launches += share * flight.launches
    return Usage(air, ground, round(launches))


def _share(flight: Flight, after: date | None, until: date) -> float:
    if flight.last_day > until:
        return 0.0
    if after is None or flight.on > after:
        return 1.0
    if flight.last_day <= after:
        return 0.0
    days = (flight.last_day - flight.on).days + 1
    return (flight.last_day - after).days / days
