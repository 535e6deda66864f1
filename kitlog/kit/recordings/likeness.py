"""What only looks like a flight: cable car, car, boat, bicycle, ground handling. Doubts to be told, never certainties.

The figures are kitlog's own choice (common practice, no source); a paraglider sinks about 1 m/s in still air, glides
7 to 10 metres for one of height, and gains height by circling or by going to and fro:

* low and near: all within 150 m and 20 m of height: ground handling;
* only climbs: 50 m up and hardly any down (5 %): a cable car if its ends lie 97 % of its way apart and it stops once at
  the most, else a car uphill;
* sinks straight: at least 50 m, ends 97 % of its way apart, hardly any up, steeper than 22 %, at a steady speed of
  4 m/s or more (the middle half within a fifth of the median): a cable car down;
* fast and level: median over 12 m/s (43 km/h), and for 70 % of the time no more than 0.4 m/s up or down over 30 s: a
  car;
* stops: at least twice still for 10 s, faster than 14 m/s for a tenth of the time, level for half: a car in traffic;
* level: for 80 % of the time within 5 m of height by pressure (12 m by satellite) over 120 s: a boat or a ride on the
  ground;
* follows the ground: over 12 m/s for no more than 5 % of the time, over 0.8 m/s up or down for no more than 5 %, both
  up and down (a fifth of the other at least), a tenth of its way from end to end, and the slower the more it climbs
  (correlation of both over 30 s of -0.6 or less): a bicycle, told as such a ride.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from math import hypot
from statistics import StatisticsError, correlation, fmean, median

from kitlog.kit.recordings.found import Because, Doubt, LooksLike
from kitlog.kit.recordings.track import Stretch

Part = tuple[Stretch, int, int]
"""A stretch, and the first and last cell in the air."""

NEAR_M, LOW_M = 150.0, 20.0
LEAST_CLIMB_M, OTHER_WAY, STRAIGHT_UP, STRAIGHT_DOWN, STEEP = 50.0, 0.05, 0.97, 0.97, 0.22
FAST_M_S, LEVEL_M_S, LEVEL_SHARE = 12.0, 0.4, 0.7
STILL_M_S, STILL_S, STOPS, BRISK_M_S, STOPPING_LEVEL_SHARE = 1.0, 10, 2, 14.0, 0.5
STEADY_M_S = 4.0
FLAT_S, FLAT_M, FLAT_GNSS_M, FLAT_SHARE = 120, 5.0, 12.0, 0.8
SELDOM, GENTLE_M_S, SLOWER_UPHILL, BOTH_WAYS, ABOUT = 0.05, 0.8, -0.6, 0.2, 0.1
_SMOOTH_S = 30
_LEAST_STEPS = 10


@dataclass(frozen=True, slots=True)
class _Shape:
    """A leg in figures; see `Doubt`."""

    speeds: Sequence[float]
    path_m: float
    apart_m: float
    across_m: float
    high_m: float
    up_m: float
    down_m: float
    level: float
    stops: int


def doubt_of(parts: Sequence[Part]) -> Doubt | None:
    """What a leg looks like, None for a flight."""
    shape = _shape(parts)
    found = _likeness(shape) or _as_ride(parts, shape)
    if found is None:
        return None
    looks_like, because = found
    across = shape.across_m if looks_like is LooksLike.GROUND_HANDLING else shape.apart_m
    return Doubt(looks_like, because, median(shape.speeds), shape.up_m, shape.down_m, across, shape.stops)


def _likeness(shape: _Shape) -> tuple[LooksLike, Because] | None:
    straight = shape.apart_m / shape.path_m if shape.path_m else 0.0
    if shape.across_m < NEAR_M and shape.high_m < LOW_M:
        return LooksLike.GROUND_HANDLING, Because.LOW_AND_NEAR
    if shape.up_m >= LEAST_CLIMB_M and shape.down_m <= OTHER_WAY * shape.up_m:
        if straight >= STRAIGHT_UP and shape.stops < STOPS:
            return LooksLike.CABLE_CAR, Because.CLIMBS_STRAIGHT
        return LooksLike.CAR, Because.ONLY_CLIMBS
    if straight >= STRAIGHT_DOWN and _sinks_steadily(shape):
        return LooksLike.CABLE_CAR, Because.SINKS_STRAIGHT
    return _as_car(shape)


def _sinks_steadily(shape: _Shape) -> bool:
    if shape.down_m < max(LEAST_CLIMB_M, STEEP * shape.path_m) or shape.up_m > OTHER_WAY * shape.down_m:
        return False
    ranked = sorted(shape.speeds)
    quarter = len(ranked) // 4
    middle = median(ranked)
    return (
        middle >= STEADY_M_S
        and ranked[-1 - quarter] - middle <= 0.2 * middle
        and middle - ranked[quarter] <= 0.2 * middle
    )


def _as_car(shape: _Shape) -> tuple[LooksLike, Because] | None:
    if median(shape.speeds) > FAST_M_S and shape.level >= LEVEL_SHARE:
        return LooksLike.CAR, Because.FAST_AND_LEVEL
    brisk = sum(speed > BRISK_M_S for speed in shape.speeds) * 10 >= len(shape.speeds)
    if shape.stops >= STOPS and brisk and shape.level >= STOPPING_LEVEL_SHARE:
        return LooksLike.CAR, Because.STOPS
    return None


def _as_ride(parts: Sequence[Part], shape: _Shape) -> tuple[LooksLike, Because] | None:
    if not any(stretch.points.h for stretch, _, _ in parts):
        return None
    if _flat_share(parts) >= FLAT_SHARE:
        return LooksLike.GROUND_RIDE, Because.LEVEL
    if _gets_about(shape) and _follows_ground(parts):
        return LooksLike.GROUND_RIDE, Because.FOLLOWS_GROUND
    return None


def _gets_about(shape: _Shape) -> bool:
    """Whether it is seldom fast, goes up as well as down, and not to and fro over the same place."""
    seldom_fast = sum(speed > FAST_M_S for speed in shape.speeds) <= SELDOM * len(shape.speeds)
    both_ways = min(shape.up_m, shape.down_m) >= BOTH_WAYS * max(shape.up_m, shape.down_m)
    return seldom_fast and both_ways and shape.across_m >= ABOUT * shape.path_m


def _flat_share(parts: Sequence[Part]) -> float:
    """The share of the time that lies in pieces of `FLAT_S` without any height to speak of."""
    flat = took = 0.0
    for stretch, a, b in parts:
        high_m = FLAT_M if stretch.points.by_pressure else FLAT_GNSS_M
        for first, last in pairwise(_marks(stretch, a, b, FLAT_S)):
            lasts, h = stretch.t[last] - stretch.t[first], stretch.h[first : last + 1]
            took += lasts
            flat += lasts if lasts >= FLAT_S and max(h) - min(h) <= high_m else 0.0
    return flat / took if took else 0.0


def _follows_ground(parts: Sequence[Part]) -> bool:
    """Whether it is never steep, and the slower the more it climbs."""
    steps = [(s, a, b) for s, first, last in parts for a, b in pairwise(_marks(s, first, last, _SMOOTH_S))]
    climbs = [(s.h[b] - s.h[a]) / (s.t[b] - s.t[a]) for s, a, b in steps]
    if len(steps) < _LEAST_STEPS or sum(abs(climb) > GENTLE_M_S for climb in climbs) > SELDOM * len(steps):
        return False
    try:
        return correlation([fmean(s.speed_m_s[a:b]) for s, a, b in steps], climbs) <= SLOWER_UPHILL
    except StatisticsError:  # one of them never changes
        return False


def _shape(parts: Sequence[Part]) -> _Shape:
    speeds = [speed for stretch, a, b in parts for speed in stretch.speed_m_s[a:b]]
    path = sum(hypot(s.x[k + 1] - s.x[k], s.y[k + 1] - s.y[k]) for s, a, b in parts for k in range(a, b))
    x = [value for stretch, a, b in parts for value in stretch.x[a : b + 1]]
    y = [value for stretch, a, b in parts for value in stretch.y[a : b + 1]]
    h = [value for stretch, a, b in parts for value in stretch.h[a : b + 1]]
    climbs = [climb for part in parts for climb in _climbs(part)]
    took = sum(dt for dt, _ in climbs)
    return _Shape(
        speeds=speeds,
        path_m=path,
        apart_m=hypot(x[-1] - x[0], y[-1] - y[0]),
        across_m=hypot(max(x) - min(x), max(y) - min(y)),
        high_m=max(h) - min(h),
        up_m=sum(dh for _, dh in climbs if dh > 0),
        down_m=-sum(dh for _, dh in climbs if dh < 0),
        level=sum(dt for dt, dh in climbs if abs(dh) <= LEVEL_M_S * dt) / took if took else 0.0,
        stops=sum(_stops(part) for part in parts),
    )


def _climbs(part: Part) -> Iterator[tuple[float, float]]:
    """Seconds and metres up of steps of about `_SMOOTH_S`, so that noise does not add up."""
    stretch, first, last = part
    for a, b in pairwise(_marks(stretch, first, last, _SMOOTH_S)):
        yield stretch.t[b] - stretch.t[a], stretch.h[b] - stretch.h[a]


def _marks(stretch: Stretch, first: int, last: int, every_s: int) -> list[int]:
    """Cells about so many seconds apart, the first and the last among them."""
    marks = [first]
    for k in range(first + 1, last + 1):
        if stretch.t[k] - stretch.t[marks[-1]] >= every_s or k == last:
            marks.append(k)
    return marks


def _stops(part: Part) -> int:
    """How often it stands still for `STILL_S`."""
    stretch, first, last = part
    runs = groupby(range(first, last), lambda k: stretch.speed_m_s[k] < STILL_M_S)
    still = [list(run) for is_still, run in runs if is_still]
    return sum(stretch.t[run[-1] + 1] - stretch.t[run[0]] >= STILL_S for run in still)
