"""The fan of the picture: how far apart the charge of each device and bank lies on the days drawn.

Durations differ from day to day. So charges are compared at equal shares of each phase, not at equal hours: half-way
through the flight beside half-way through the flight. The bands are quantiles at each such point by itself; none of
them is the course of a single day. The likely day's own course is beside them.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

QUANTILES_PCT = (5, 50, 95)


@dataclass(frozen=True, slots=True)
class LaneFan:
    """Charge, 0..1, of one device or bank at the points of a `Fan`: 5, 50 and 95 % of the days are at or under it.

    `likely` is the day on which every uncertain figure is its likely one.
    """

    low: tuple[float, ...]
    middle: tuple[float, ...]
    high: tuple[float, ...]
    likely: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Fan:
    """The fans of all lanes.

    The first point is the start of the day; point `phase * steps + k` is at k/steps of the phase (its index from 0), so
    that the end of a phase and the start of the next share one point. A device without a cell and a supply without end
    have no lane.

    Attributes:
        days: how many days it shows: the first of those drawn.
        steps: points per phase.
        likely_h: when each point is on the likely day, h.
    """

    days: int
    steps: int
    likely_h: tuple[float, ...]
    devices: Mapping[str, LaneFan]
    banks: Mapping[str, LaneFan]


def point_hours(hours: Sequence[float], steps: int) -> tuple[float, ...]:
    """When each point of a fan is on a day with these durations of its phases, h: where a picture has to draw it."""
    ends = list(accumulate(hours, initial=0.0))
    inner = (
        end_h if k == steps else start_h + (end_h - start_h) * k / steps
        for start_h, end_h in pairwise(ends)
        for k in range(1, steps + 1)
    )
    return (0.0, *inner)


class Columns:
    """Charges by point and lane, kept sorted, so that quantiles can be read again and again while days are added."""

    def __init__(self, number: int) -> None:
        self._fresh: list[list[float]] = []
        self._columns: list[list[float]] = [[] for _ in range(number)]

    def add(self, row: list[float]) -> None:
        """One day: a charge for each column."""
        self._fresh.append(row)

    def quantiles(self) -> list[tuple[float, ...]]:
        """By column: the charges at or under which 5, 50 and 95 % of the days are."""
        for column, fresh in zip(self._columns, zip(*self._fresh, strict=True), strict=False):
            column.extend(fresh)
            column.sort()  # what was sorted before is one run of the merge: cheap
        self._fresh.clear()
        return [tuple(column[rank(pct, len(column))] for pct in QUANTILES_PCT) for column in self._columns]


def rank(pct: int, days: int) -> int:
    """Index, in ascending order, of the least figure that at least `pct` % of the days are at or under."""
    return max(0, -(-pct * days // 100) - 1)


def lane_fans(lanes: int, quantiles: Sequence[tuple[float, ...]], likely: Sequence[float]) -> list[LaneFan]:
    """The fans of so many lanes, from columns in the order lane by lane, point by point."""
    points = len(likely) // lanes if lanes else 0
    parts = [slice(lane * points, (lane + 1) * points) for lane in range(lanes)]
    return [_lane_fan(quantiles[part], likely[part]) for part in parts]


def _lane_fan(quantiles: Sequence[tuple[float, ...]], likely: Sequence[float]) -> LaneFan:
    low, middle, high = zip(*quantiles, strict=True)
    return LaneFan(low, middle, high, tuple(likely))
