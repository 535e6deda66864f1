"""What is left of a limit by hours or launches: opening balance and log since the last record, and how sure that is.

The log tells of the days since it begins. A record from before that day, without the item's totals at the time, leaves
open how much was flown in between: at most what the opening balance holds. What is left then is *at least* the limit
less all of it; if that is below zero, nothing is known.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from kitlog.kit.flights import Flight
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.kit.serviced import Serviced
from kitlog.kit.usage import logged

ROUNDING_H = 1e-9
"""Sums of minutes are no decimal hours; a limit missed by less than this is reached."""


@dataclass(frozen=True, slots=True)
class Left:
    """What is left of a limit.

    Attributes:
        amount: hours or launches, negative once over; None = not known.
        sure: False where it is the least that can be left.
    """

    amount: float | None = None
    sure: bool = True


NOTHING_KNOWN = Left(None, sure=False)


@dataclass(frozen=True, slots=True)
class Log:
    """The flights of one item, and since when the log tells of it.

    Attributes:
        begins_on: the first day of the whole log, None while it is empty.
    """

    flights: Sequence[Flight]
    begins_on: date | None

    def covers(self, since: date, until: date) -> bool:
        """Whether it tells of every day after `since`."""
        return since >= until if self.begins_on is None else since >= self.begins_on - timedelta(days=1)


@dataclass(frozen=True, slots=True)
class _Balance:
    """One sort of use.

    Attributes:
        opening: before the log; besides: what counts before the log but is in no total of a paper (ground handling).
        all, since: in the log, and of that since the last record.
        by_total: what the log holds less the total that the record names, None where it names none.
        apart: what was used since the record and is in no total of a paper.
    """

    opening: float | None
    besides: float
    all: float
    since: float
    by_total: float | None
    apart: float

    @property
    def most(self) -> float | None:
        """Everything that can have been used, None where the opening balance is not known."""
        return None if self.opening is None else self.opening + self.besides + self.all


def hours_left(item: Serviced, rule: ServiceRule, last: ServiceRecord | None, log: Log, on: date) -> Left | None:
    """Hours to the due limit; None where the rule has no limit by hours."""
    set_h = last.next_within_h if last is not None and last.sets_next_of(rule) else None
    limit = rule.hours if set_h is None else set_h
    if limit is None:
        return None
    everything = logged(log.flights, until=on)
    since = logged(log.flights, after=last.done_on if last else None, until=on)
    with_ground = rule.ground_handling
    balance = _Balance(
        opening=item.opening_h,
        besides=(item.opening_ground_h or 0.0) if with_ground else 0.0,
        all=everything.hours(ground_handling=with_ground),
        since=since.hours(ground_handling=with_ground),
        by_total=None if last is None or last.hours is None else everything.airtime_h - last.hours,
        apart=since.ground_h if with_ground else 0.0,
    )
    left = _left(limit, balance, last, log, on)
    return Left(0.0, left.sure) if left.amount is not None and abs(left.amount) < ROUNDING_H else left


def launches_left(item: Serviced, rule: ServiceRule, last: ServiceRecord | None, log: Log, on: date) -> Left | None:
    """Launches to the due limit; None where the rule has no limit by launches."""
    if rule.launches is None:
        return None
    everything = logged(log.flights, until=on).launches
    balance = _Balance(
        opening=item.opening_launches,
        besides=0.0,
        all=everything,
        since=logged(log.flights, after=last.done_on if last else None, until=on).launches,
        by_total=None if last is None or last.launches is None else everything - last.launches,
        apart=0.0,
    )
    return _left(rule.launches, balance, last, log, on)


def _left(limit: float, use: _Balance, last: ServiceRecord | None, log: Log, on: date) -> Left:
    if last is None:
        return NOTHING_KNOWN if use.most is None else Left(limit - use.most)
    if use.by_total is not None and use.opening is not None:
        by_total = use.opening + use.by_total + use.apart
        return Left(limit - max(use.since, by_total))  # figures that contradict each other never add hours
    if log.covers(last.done_on, on) or use.opening == 0:
        return Left(limit - use.since)
    if use.most is None or limit < use.most:
        return NOTHING_KNOWN
    return Left(limit - use.most, sure=False)
