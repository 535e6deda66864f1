"""When hours run out: the airtime of the last 365 days carried on, with a span from its quieter and its busier half."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from kitlog.kit.flights import Flight
from kitlog.kit.usage import RATE_DAYS, logged

HALF_DAYS = RATE_DAYS // 2

FORESEEN_DAYS = 5 * 365
"""A day further off is not told: one year's plain rate says nothing of decades (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Rates:
    """Hours a day: over the last 365 days, and in the quieter and the busier half of them."""

    plain: float
    quiet: float
    busy: float


@dataclass(frozen=True, slots=True)
class RunOut:
    """The day on which hours run out.

    Attributes:
        likely: by the plain rate, rounded down to a day; early, late: by the busier and the quieter half; None where
            that rate is nothing, or the day lies beyond the calendar.
    """

    early: date | None
    likely: date | None
    late: date | None


def rates(flights: Sequence[Flight], on: date, *, ground_handling: bool) -> Rates:
    """The rates of the 365 days up to `on`, that day included."""
    start, middle = on - timedelta(days=RATE_DAYS), on - timedelta(days=HALF_DAYS)
    whole, newer = (
        logged(flights, after=after, until=on).hours(ground_handling=ground_handling) for after in (start, middle)
    )
    older = max(0.0, whole - newer)  # of a typed total over the middle each half has its part
    halves = (older / (RATE_DAYS - HALF_DAYS), newer / HALF_DAYS)
    plain = whole / RATE_DAYS
    return Rates(plain, min(plain, *halves), max(plain, *halves))  # the plain one lies between, rounding apart


def run_out(hours: float, rate: Rates, on: date) -> RunOut:
    """When so many hours, counted from `on`, are used up."""
    return RunOut(*(_day(hours, one, on) for one in (rate.busy, rate.plain, rate.quiet)))


def _day(hours: float, rate: float, on: date) -> date | None:
    if rate <= 0 or hours / rate >= (date.max - on).days:
        return None
    return on + timedelta(days=math.floor(hours / rate))
