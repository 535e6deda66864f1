"""Time zones of places. The zones are those of the tz database (places and offsets from memory)."""

from datetime import date, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st
from recordings import utc

from kitlog.sky.zone import local_time, utc_day_of, zone_of


@pytest.mark.parametrize(
    ("lat", "lon", "zone"),
    [
        (-36.7, 147.0, "Australia/Melbourne"),
        (47.27, 11.40, "Europe/Vienna"),
        (45.7, 10.7, "Europe/Rome"),
        (51.48, -0.01, "Europe/London"),
        (4.4, -76.1, "America/Bogota"),
        (28.2, 83.95, "Asia/Kathmandu"),
    ],
)
def test_places(lat: float, lon: float, zone: str) -> None:
    assert zone_of(lat, lon) == zone


def test_the_open_sea_has_the_hour_of_its_meridian() -> None:
    assert local_time(utc("2026-06-01T12:00"), 0.0, -30.0).hour == 10


@given(st.floats(-90, 90), st.floats(-180, 180))
def test_every_place_has_a_local_time(lat: float, lon: float) -> None:
    at = utc("2026-06-01T12:00")
    assert local_time(at, lat, lon) == at


@given(
    st.sampled_from([(-36.7, 147.0), (47.0, 12.0), (38.0, -122.0), (1.87, -157.4), (28.2, 83.95)]),
    st.dates(date(2000, 1, 1), date(2035, 12, 31)),
    st.integers(0, 86_399),
)
def test_the_day_in_utc_falls_on_the_day_there(place: tuple[float, float], day: date, clock_s: int) -> None:
    found = utc_day_of(day, clock_s, *place)
    at = utc(f"{found}T00:00").timestamp() + clock_s
    assert local_time(datetime.fromtimestamp(at, utc("2026-01-01").tzinfo), *place).date() == day
