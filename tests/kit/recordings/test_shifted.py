"""The same track by a clock of another time zone."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.kit.recordings.shifted import PIECES, Trace, apart_m, shift_min

START = 1_775_000_000.0
HERE = Trace(START, START + 3_600, 2_000, tuple((47.0 + k / 100, 12.0) for k in range(PIECES + 1)))


def later(seconds: float, trace: Trace = HERE, longer_s: float = 0) -> Trace:
    return replace(trace, takeoff_s=trace.takeoff_s + seconds, landing_s=trace.landing_s + seconds + longer_s)


@given(st.integers(1, 56), st.booleans(), st.integers(-50, 50))
def test_whole_quarters_of_an_hour_up_to_14_hours(quarters: int, before: bool, clock_s: int) -> None:
    shift_s = quarters * 900 * (-1 if before else 1)
    other = later(shift_s + (min(clock_s, 0) if not before else max(clock_s, 0)))
    assert shift_min(HERE, other) == shift_min(other, HERE) == pytest.approx(quarters * 15, abs=1)


@pytest.mark.parametrize("seconds", [0, 60, 400, 1_000, 3_600 + 400, 57 * 900])
def test_no_zone_is_that_far_away(seconds: float) -> None:
    assert shift_min(HERE, later(seconds)) == 0


def test_another_track_or_another_length() -> None:
    spots = (*HERE.spots[:-1], (47.5, 12.0))
    assert shift_min(HERE, replace(later(3_600), spots=spots)) == 0
    assert shift_min(HERE, later(3_600, longer_s=120)) == 0


def test_where_only_the_log_is_known_times_and_height_tell() -> None:
    logged = replace(HERE, spots=())
    assert shift_min(later(3_600), logged) == 60
    assert shift_min(later(3_600 + 20), logged) == 0
    assert shift_min(later(3_600), replace(logged, top_m=1_990)) == 0
    assert shift_min(later(3_600), replace(logged, top_m=None)) == 0


def test_over_the_date_line_the_way_is_the_short_one() -> None:
    # a degree of latitude is 111.2 km on a sphere of 6,371 km; of longitude at the equator as much
    assert apart_m((0.0, 179.5), (0.0, -179.5)) == pytest.approx(111_195, rel=0.001)
