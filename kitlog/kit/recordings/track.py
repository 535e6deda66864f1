"""A recording made ready to be judged: valid fixes in metres, spikes out, cut at gaps, averaged over seconds."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, hypot, radians
from statistics import fmean, median_low

from kitlog.kit.recordings.fix import Fix
from kitlog.kit.recordings.plausible import reached_heights, reached_places

M_PER_DEG = 111_195.0
"""Length of a degree on a sphere of 6,371 km."""
CELL_S = 5
"""Fixes are averaged over this many seconds: it takes the edge off the noise and blurs a turn but little."""
GAP_S = 60
"""A pause of valid fixes longer than this, and longer than three times the usual interval, is a gap."""


@dataclass(frozen=True, slots=True)
class Points:
    """Valid fixes without spikes.

    Attributes:
        t: seconds since 1970; x, y: metres east and north of the first fix; h: heights in metres for rates of climb, by
            pressure if recorded, else by satellite, empty if neither is.
        by_pressure: where `h` comes from.
    """

    t: Sequence[int]
    x: Sequence[float]
    y: Sequence[float]
    h: Sequence[float]
    by_pressure: bool


@dataclass(frozen=True, slots=True)
class Stretch:
    """Points between two gaps, averaged.

    Attributes:
        points: all of the recording.
        starts: index of the first point of each cell, and one past the last point.
        t, x, y, h: means of the cells; speed_m_s, climb_m_s: from each cell to the next, one fewer.
    """

    points: Points
    starts: Sequence[int]
    t: Sequence[float]
    x: Sequence[float]
    y: Sequence[float]
    h: Sequence[float]
    speed_m_s: Sequence[float]
    climb_m_s: Sequence[float]

    @property
    def first_s(self) -> int:
        """Time of the first point."""
        return self.points.t[self.starts[0]]

    @property
    def last_s(self) -> int:
        """Time of the last point."""
        return self.points.t[self.starts[-1] - 1]


def points_of(fixes: Sequence[Fix]) -> Points:
    """The valid fixes, projected, without spikes; a V fix is no place at all, one of a time already there neither."""
    valid = [fix for before, fix in zip((None, *fixes), fixes, strict=False) if fix.valid and _later(before, fix)]
    if not valid:
        return Points((), (), (), (), by_pressure=False)
    t, lat, lon, gnss, pressure, _ = zip(*valid, strict=True)
    lat0, lon0 = lat[0], lon[0]
    east = M_PER_DEG * cos(radians(lat0))
    x = [((value - lon0 + 180.0) % 360.0 - 180.0) * east for value in lon]
    y = [(value - lat0) * M_PER_DEG for value in lat]
    by_pressure = None not in pressure
    h = pressure if by_pressure else gnss if None not in gnss else ()
    return _without_spikes(Points(t, x, y, h, by_pressure))


def _later(before: Fix | None, fix: Fix) -> bool:
    return before is None or not before.valid or fix.at_s > before.at_s


def _without_spikes(points: Points) -> Points:
    kept = reached_places(points.t, points.x, points.y)
    if kept is not None:
        x, y, h = ([column[i] for i in kept] if column else () for column in (points.x, points.y, points.h))
        points = Points([points.t[i] for i in kept], x, y, h, points.by_pressure)
    return Points(points.t, points.x, points.y, _held(points.t, points.h), points.by_pressure)


def _held(t: Sequence[int], h: Sequence[float]) -> Sequence[float]:
    """Heights with each spike replaced by the last height before it (the first good one, at the start)."""
    kept = reached_heights(t, h) if h else None
    if kept is None:
        return h
    held: list[float] = []
    for i, after in zip(kept, [*kept[1:], len(h)], strict=True):
        held += [h[i]] * (after - (i if held else 0))
    return held


def stretches_of(points: Points) -> list[Stretch]:
    """The points cut at gaps and averaged; a stretch has at least two cells."""
    starts = _cell_starts(points.t)
    if len(starts) < 3:
        return []
    gap_s = max(GAP_S, 3 * median_low(b - a for a, b in pairwise(points.t[i] for i in starts[:-1])))
    cuts = [k for k in range(1, len(starts) - 1) if points.t[starts[k]] - points.t[starts[k] - 1] > gap_s]
    bounds = pairwise([0, *cuts, len(starts) - 1])
    return [_stretch(points, starts[a : b + 1]) for a, b in bounds if b - a >= 2]


def _cell_starts(t: Sequence[int]) -> list[int]:
    """Where each cell begins, counted from the first point, and the number of points."""
    starts: list[int] = []
    until = float("-inf")
    for i, at in enumerate(t):
        if at >= until:
            starts.append(i)
            until = at + CELL_S
    return [*starts, len(t)]


def _stretch(points: Points, starts: Sequence[int]) -> Stretch:
    t, x, y = (list(_means(column, starts)) for column in (points.t, points.x, points.y))
    h = list(_means(points.h, starts)) if points.h else [0.0] * len(t)
    took = [b - a for a, b in pairwise(t)]
    speed = [hypot(x[i + 1] - x[i], y[i + 1] - y[i]) / dt for i, dt in enumerate(took)]
    climb = [(h[i + 1] - h[i]) / dt for i, dt in enumerate(took)]
    return Stretch(points, starts, t, x, y, h, speed, climb)


def _means(column: Sequence[float], starts: Sequence[int]) -> Iterator[float]:
    return (column[a] if b - a == 1 else fmean(column[a:b]) for a, b in pairwise(starts))
