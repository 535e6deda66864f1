"""The take-off rule: when a recording is in the air, and what it comes to.

A recording does not say when it takes off and lands; kitlog finds it, and the pilot confirms or corrects it. The
figures are kitlog's own choice, in the range of what public programs use (over 9 to 18 km/h for 5 to 60 s, or 0.2 m/s
of climb):

* Only A fixes are places. Spikes are left out (`plausible`), fixes averaged over 5 s, and the recording is cut at gaps:
  pauses of valid fixes over 60 s (and over three times the usual interval).
* In the air is what shows, over 30 s, a median speed over ground of 4.5 m/s (16 km/h) or a climb or sink of 1 m/s;
  nobody does that on foot. The take-off is the first step in such a window that is quick itself (3 m/s, or 0.7 m/s up
  or down), the landing the last; what lies before or after and is still quicker than a walk belongs to the flight.
* Once in the air it stays so until it is seen at rest for 60 s (within 15 m, and 10 m of height by pressure or 25 m by
  satellite), or at no more than a walk (2.2 m/s, 0.5 m/s up or down) for 180 s: that is a landing. Not so if it
  goes up and down by more than 45 m in these 180 s (50 m by satellite): nobody walks so steeply for so long, it is
  parked in the wind. Time on the ground between two launches is not airtime.
* A gap counts as flown if it begins and ends in the air: quick steps reach to within 20 s of it on both sides. A
  recording (or what follows a gap from the ground) that starts or ends in the air counts from its first or to its
  last fix.
* What lasts less than 20 s or covers less than 50 m is no flight.
* Greatest heights are those in the legs, spikes left out; by satellite from A fixes only.

What only looks like a flight is in `likeness`. Heights may be negative; where none are recorded, speed alone decides.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot

from kitlog.kit.recordings.airborne import Air, airs_of, is_on_ground
from kitlog.kit.recordings.fix import Fix, moment
from kitlog.kit.recordings.found import Doubt, FlightFound, Leg, NoFlight
from kitlog.kit.recordings.likeness import doubt_of
from kitlog.kit.recordings.plausible import reached_heights
from kitlog.kit.recordings.track import Stretch, points_of, stretches_of

LEAST_S, LEAST_M = 20, 50.0


@dataclass(frozen=True, slots=True)
class _Part:
    """A time in the air in one stretch; several on end are one leg."""

    stretch: Stretch
    air: Air

    @property
    def start_s(self) -> float:
        return self.stretch.first_s if self.air.open_start else self.stretch.t[self.air.first]

    @property
    def end_s(self) -> float:
        return self.stretch.last_s if self.air.open_end else self.stretch.t[self.air.last]

    @property
    def path_m(self) -> float:
        places = zip(self.stretch.x, self.stretch.y, strict=True)
        chosen = list(places)[self.air.first : self.air.last + 1]
        return sum(hypot(x1 - x0, y1 - y0) for (x0, y0), (x1, y1) in pairwise(chosen))


def judge(fixes: Sequence[Fix]) -> FlightFound | NoFlight:
    """Find the flights of a recording by the rule above.

    Args:
        fixes: never going back in time, at least one.
    """
    legs = tuple(_legs(fixes))
    if not legs:
        valid = sum(fix.valid for fix in fixes)
        return NoFlight(moment(fixes[0].at_s), moment(fixes[-1].at_s), valid)
    sure = tuple(leg for leg in legs if leg.doubt is None)
    counted = sure or legs
    left_out = tuple(leg for leg in legs if leg.doubt) if sure else ()
    return _found(fixes, counted, left_out)


def _found(fixes: Sequence[Fix], legs: tuple[Leg, ...], left_out: tuple[Leg, ...]) -> FlightFound:
    spans = [(leg.takeoff_at.timestamp(), leg.landing_at.timestamp()) for leg in legs]
    place = next(fix for fix in fixes if fix.valid and fix.at_s >= spans[0][0] - 1)
    gnss = [(fix.at_s, fix.gnss_m) for fix in fixes if fix.valid and fix.gnss_m is not None]
    pressure = [(fix.at_s, fix.pressure_m) for fix in fixes if fix.pressure_m is not None]
    return FlightFound(legs, left_out, place.lat_deg, place.lon_deg, _highest(gnss, spans), _highest(pressure, spans))


def _highest(heights: Sequence[tuple[int, int]], spans: Sequence[tuple[float, float]]) -> int | None:
    """The greatest height in the legs, `LEAST_S` before and after them included; spikes left out."""
    if not heights:
        return None
    t, h = zip(*heights, strict=True)
    kept = reached_heights(t, h)
    good = heights if kept is None else [heights[i] for i in kept]
    at = [one[0] for one in good]
    slices = (good[bisect_left(at, start - LEAST_S) : bisect_right(at, end + LEAST_S)] for start, end in spans)
    return max((height for part in slices for _, height in part), default=None)


def _legs(fixes: Sequence[Fix]) -> Iterator[Leg]:
    for parts in _joined(stretches_of(points_of(fixes))):
        leg = _leg(parts)
        if leg.airtime_s >= LEAST_S and sum(part.path_m for part in parts) >= LEAST_M:
            yield replace(leg, doubt=_doubt(parts))


def _joined(stretches: Sequence[Stretch]) -> Iterator[list[_Part]]:
    """Times in the air, those on both sides of a gap that counts as flown together."""
    parts: list[_Part] = []
    for stretch in stretches:
        airs = airs_of(stretch)
        if not airs and not is_on_ground(stretch):
            continue
        if parts and not (airs and airs[0].open_start):
            yield parts
            parts = []
        for air in airs:
            parts = [*parts, _Part(stretch, air)]
            if not air.open_end:
                yield parts
                parts = []
    if parts:
        yield parts


def _leg(parts: Sequence[_Part]) -> Leg:
    first, last = parts[0], parts[-1]
    gaps = [after.start_s - before.end_s for before, after in pairwise(parts)]
    return Leg(
        takeoff_at=moment(first.start_s),
        landing_at=moment(last.end_s),
        takeoff_seen=not first.air.open_start,
        landing_seen=not last.air.open_end,
        gaps=len(gaps),
        gaps_s=sum(gaps),
    )


def _doubt(parts: Sequence[_Part]) -> Doubt | None:
    return doubt_of([(part.stretch, part.air.first, part.air.last) for part in parts])
