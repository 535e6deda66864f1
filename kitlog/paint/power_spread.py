"""What many days say of one lane: the band that holds nine days of ten, and where they switch the device off."""

from dataclasses import dataclass
from itertools import pairwise

from kitlog.paint.checked import finite, share

Edges = tuple[float, ...]
"""Edges of the bands of the phases as shares of the width."""


@dataclass(frozen=True, slots=True)
class Spread:
    """Charge, 0 to 1, at or under which 5, 50 and 95 % of the days are, at equal shares of each phase.

    Attributes:
        steps: points in a phase; the first point is the start of the day, point `phase * steps + k` k/steps of a phase.
        low, middle, high: one figure for each point.
    """

    steps: int
    low: tuple[float, ...]
    middle: tuple[float, ...]
    high: tuple[float, ...]

    def __post_init__(self) -> None:
        if self.steps < 1 or not len(self.low) == len(self.middle) == len(self.high):
            raise ValueError("a spread has as many low points as middle and high ones, and some in each phase")
        for low, middle, high in zip(self.low, self.middle, self.high, strict=True):
            share(low=low, middle=middle, high=high)
            if not low <= middle <= high:
                raise ValueError("fewer days lie under a lower charge")

    def places(self, edges: Edges) -> list[float]:
        """Where the points lie, as shares of the width."""
        inner = (
            left + (right - left) * step / self.steps
            for left, right in pairwise(edges)
            for step in range(1, self.steps + 1)
        )
        return [0.0, *inner]

    def at(self, edges: Edges, place: float) -> tuple[float, float, float] | None:
        """Low, middle and high at a share of the width, linear between the points; None past its last point."""
        spots = self.places(edges)[: len(self.low)]
        after = next((index for index, spot in enumerate(spots) if spot >= place), None)
        if after is None:
            return None
        before = max(0, after - 1)
        wide = spots[after] - spots[before]
        into = (place - spots[before]) / wide if wide > 0 else 1.0
        low, middle, high = (
            points[before] + (points[after] - points[before]) * into for points in (self.low, self.middle, self.high)
        )
        return low, middle, high


@dataclass(frozen=True, slots=True)
class OffBy:
    """By where a share of all days has switched a device off.

    Attributes:
        pct: how many days of a hundred.
        phases_passed: where in the plan; 1.25 is a quarter of the second phase.
        text: the same with its time, in words.
    """

    pct: int
    phases_passed: float
    text: str

    def __post_init__(self) -> None:
        finite(phases_passed=self.phases_passed)

    def place(self, edges: Edges) -> float:
        """As a share of the width."""
        phases = len(edges) - 1
        number = max(0, min(int(self.phases_passed), phases - 1))
        if phases < 1:
            return 0.0
        into = min(max(self.phases_passed - number, 0.0), 1.0)
        return edges[number] + into * (edges[number + 1] - edges[number])
