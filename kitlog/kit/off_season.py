"""Moving a check out of the season: into a month without flying days, at the cost of some months of interval.

What the log tells by days counts: flights, and typed totals of at most a month. Longer totals say nothing of a month,
so the days that they cover are not known; a month counts as free only where the log knows the whole of it, and no day
in it was flown or is planned.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from kitlog.kit.due import Due
from kitlog.kit.flights import Flight
from kitlog.kit.kinds import Kind
from kitlog.kit.service import CountsFrom, ServiceRule
from kitlog.units.days import add_months

LOOKS_BACK_MONTHS = 36
"""The season is read from the log of the last three years."""

TOTAL_TELLS_DAYS = 31
"""A typed total over more days than this does not tell in which of its months was flown."""

MOST_SHARE = 0.5
"""So much of an interval may be given up at most (common practice, no source)."""

MOST_MONTHS = 6
"""And so many months at most."""

AHEAD_MONTHS = 12
"""Nobody plans a month further ahead than this."""

MISSED_ON_A_DAY = frozenset({Kind.WING, Kind.HARNESS, Kind.RESERVE})
"""Kinds without which nobody flies: their check is worth moving even where no workshop time is on record."""

Month = tuple[int, int]
"""Year and month."""


@dataclass(frozen=True, slots=True)
class Season:
    """Flying days by month of the year, 1 to 12, in the last three years; a month that is not there is not known."""

    flying_days: dict[int, int]
    planned: frozenset[Month] = frozenset()

    def is_free(self, month: Month) -> bool:
        """Whether nothing is flown in a month, as far as the log and the plans tell."""
        return self.flying_days.get(month[1]) == 0 and month not in self.planned

    def is_flown(self, month: Month) -> bool:
        """Whether something is flown in a month."""
        return self.flying_days.get(month[1], 0) > 0 or month in self.planned


@dataclass(frozen=True, slots=True)
class Proposal:
    """To have a check done before the season instead of in it.

    Attributes:
        due_on: the day it is due, by calendar or foreseen; in_month: the first day of the month proposed.
        costs_months: months of interval that are given up.
        flying_days: days flown, in three years, in the month that it is due.
    """

    due_on: date
    in_month: date
    costs_months: int
    flying_days: int


def season_of(flights: Sequence[Flight], today: date, planned: Iterable[date] = ()) -> Season:
    """The season as the log of the last three years tells it.

    Args:
        flights: the whole log, of all items.
        today: the day up to which the log tells.
        planned: days of planned outings.
    """
    told: list[Flight] = []
    vague: list[Flight] = []
    for flight in flights:
        (told if (flight.last_day - flight.on).days < TOTAL_TELLS_DAYS else vague).append(flight)
    flown = Counter(map(_month, {day for flight in told for day in (flight.on, flight.last_day) if day <= today}))
    unknown = {_month(day) for flight in vague for day in _months(flight.on, flight.last_day)}
    begins = min((flight.on for flight in flights), default=today)
    counted: dict[int, int] = {}
    for first in _months(add_months(today, -LOOKS_BACK_MONTHS), today):
        month = _month(first)
        whole = begins <= first and add_months(first, 1) <= today and month not in unknown
        if whole or flown[month]:
            counted[first.month] = counted.get(first.month, 0) + flown[month]
    return Season(counted, frozenset(map(_month, planned)))


def proposal(rule: ServiceRule, due: Due, kind: Kind, season: Season) -> Proposal | None:
    """A month before the season for a check that falls into it; None where there is nothing to gain.

    Args:
        rule: the rule; one that counts from the last record, or by hours.
        due: the same judged today: not overdue, not called for by an event.
        kind: of the item.
        season: when the pilot flies.
    """
    day = min((one for one in (due.due_on, due.predicted_on) if one is not None), default=None)
    if day is None or due.open or due.event is not None or not _movable(rule, kind):
        return None
    if not any(season.is_flown(_month(first)) for first in _months(day - timedelta(days=rule.lead_days), day)):
        return None
    for back in range(1, _most_months(rule) + 1):
        first = add_months(day.replace(day=1), -back)
        if _month(first) < _month(due.on):
            return None
        if first <= add_months(due.on, AHEAD_MONTHS) and _fits(max(first, due.on), rule.lead_days, season):
            return Proposal(day, first, back, season.flying_days.get(day.month, 0))
    return None


def _movable(rule: ServiceRule, kind: Kind) -> bool:
    from_record = rule.counts_from is CountsFrom.RECORD and bool(rule.months or rule.hours)
    return from_record and (rule.lead_days > 0 or kind in MISSED_ON_A_DAY)


def _most_months(rule: ServiceRule) -> int:
    return MOST_MONTHS if rule.months is None else min(MOST_MONTHS, int(rule.months * MOST_SHARE))


def _fits(start: date, lead_days: int, season: Season) -> bool:
    """Whether the item can be away from a day on without missing a flying day."""
    return all(season.is_free(_month(day)) for day in _months(start, start + timedelta(days=lead_days)))


def _months(start: date, end: date) -> Iterator[date]:
    """The first day of each month from one day to another."""
    day = start.replace(day=1)
    while day <= end:
        yield day
        day = add_months(day, 1)


def _month(day: date) -> Month:
    return day.year, day.month
