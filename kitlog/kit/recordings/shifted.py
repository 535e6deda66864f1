"""The same flight by two clocks: one instrument stood on the wrong time zone, so that its track lies hours apart.

Time zones are whole quarters of an hour apart (common practice, no source). Two flights on the same day that are as
long as each other, that far apart and on the same track may be one; both were flown only if the pilot says so.
"""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, hypot, radians

from kitlog.kit.recordings.fix import Fix
from kitlog.kit.recordings.found import FlightFound
from kitlog.kit.recordings.track import M_PER_DEG

Spot = tuple[float, float]
"""Degrees north and east."""

QUARTER_S, CLOCK_S, FURTHEST_S = 900, 60, 14 * 3_600
LENGTH_S, NEAR_M, PIECES = 30, 200.0, 8
HEIGHT_M, CLOSE_S = 5, 5


@dataclass(frozen=True, slots=True)
class Trace:
    """What tells the same track again, whatever its clock.

    Attributes:
        takeoff_s, landing_s: UTC, seconds since 1970; top_m: greatest height, None if not recorded.
        spots: places at equal times from take-off to landing; empty where only the log is known.
    """

    takeoff_s: float
    landing_s: float
    top_m: int | None
    spots: tuple[Spot, ...] = ()


def trace_of(fixes: Sequence[Fix], flight: FlightFound) -> Trace:
    """The trace of a flight found in a recording."""
    start, end = flight.takeoff_at.timestamp(), flight.landing_at.timestamp()
    times = (start + (end - start) * k / PIECES for k in range(PIECES + 1))
    return Trace(start, end, flight.max_altitude_m, tuple(_spot(fixes, at) for at in times))


def _spot(fixes: Sequence[Fix], at_s: float) -> Spot:
    """The first valid fix at or after a time, else the last of all."""
    first = bisect_left(fixes, at_s, key=lambda fix: fix.at_s)
    fix = next((fixes[k] for k in range(first, len(fixes)) if fixes[k].valid), fixes[-1])
    return fix.lat_deg, fix.lon_deg


def shift_min(one: Trace, other: Trace) -> int:
    """How many minutes the clocks of two recordings of one flight lie apart; 0 where they are not one."""
    shift_s = abs(one.takeoff_s - other.takeoff_s)
    off_s = abs(shift_s - QUARTER_S * round(shift_s / QUARTER_S))
    longer_s = abs((one.landing_s - one.takeoff_s) - (other.landing_s - other.takeoff_s))
    if not QUARTER_S - CLOCK_S <= shift_s <= FURTHEST_S:
        return 0
    if one.spots and other.spots:
        same = off_s <= CLOCK_S and longer_s <= LENGTH_S and _same_track(one.spots, other.spots)
    else:
        same = off_s <= CLOSE_S and longer_s <= CLOSE_S and _same_top(one.top_m, other.top_m)
    return round(shift_s / 60) if same else 0


def _same_track(one: Sequence[Spot], other: Sequence[Spot]) -> bool:
    return all(apart_m(a, b) <= NEAR_M for a, b in zip(one, other, strict=True))


def _same_top(one: int | None, other: int | None) -> bool:
    """The log keeps no track: the height has to tell."""
    return one is not None and other is not None and abs(one - other) <= HEIGHT_M


def apart_m(one: Spot, other: Spot) -> float:
    """How far two places lie apart, near enough to tell places of a flight from others."""
    east = (one[1] - other[1] + 180.0) % 360.0 - 180.0
    return hypot(one[0] - other[0], east * cos(radians((one[0] + other[0]) / 2))) * M_PER_DEG
