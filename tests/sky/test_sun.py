"""Sunset against published tables.

Sources: a college's table for Decorah, Iowa (assumed 43.303 N 91.786 W, UTC-5), September, to the minute; values of the
astral library 3.2 (seconds cut off), elevation 0, as listed in the project's reference of check values. Tolerance 2 min.
"""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.sky.sun import sunset

TWO_MINUTES = timedelta(minutes=2)


@pytest.mark.parametrize(("day", "clock"), [(1, "19:41"), (8, "19:29"), (15, "19:16"), (22, "19:04"), (30, "18:49")])
def test_published_table_of_a_college(day: int, clock: str) -> None:
    """Yearly drift is up to a minute."""
    zone = ZoneInfo("America/Chicago")
    printed = datetime.strptime(f"2026-09-{day:02d} {clock}", "%Y-%m-%d %H:%M").replace(tzinfo=zone)
    found = sunset(43.303, -91.786, date(2026, 9, day), "America/Chicago")
    assert found is not None
    assert abs(found - printed) <= TWO_MINUTES


@pytest.mark.parametrize(
    ("lat", "lon", "zone", "day", "clock"),
    [
        (51.4769, 0.0, "Europe/London", date(2026, 6, 21), "21:20:31"),
        (51.4769, 0.0, "Europe/London", date(2026, 12, 21), "15:52:42"),
        (47.2692, 11.4041, "Europe/Vienna", date(2026, 6, 21), "21:14:00"),
        (47.2692, 11.4041, "Europe/Vienna", date(2026, 9, 22), "19:12:11"),
        (-36.7306, 146.9600, "Australia/Melbourne", date(2026, 12, 21), "20:30:13"),
        (0.1807, -78.4678, "America/Guayaquil", date(2026, 3, 20), "18:24:19"),
        (38.9, -77.0167, "America/New_York", date(2026, 6, 21), "20:36:38"),
        (47.0, 12.0, "Europe/Rome", date(2026, 5, 9), "20:32:43"),
        (47.0, 12.0, "Europe/Rome", date(2026, 6, 20), "21:10:13"),
        (45.7, 10.7, "Europe/Rome", date(2026, 9, 5), "19:47:41"),
    ],
)
def test_listed_values(lat: float, lon: float, zone: str, day: date, clock: str) -> None:
    listed = datetime.fromisoformat(f"{day} {clock}").replace(tzinfo=ZoneInfo(zone))
    found = sunset(lat, lon, day, zone)
    assert found is not None
    assert abs(found - listed) <= TWO_MINUTES


def test_the_evening_of_the_day_asked_for_far_west_of_greenwich() -> None:
    """With UTC dates the evening of the 20th would come back: a known trap."""
    found = sunset(51.05, -114.07, date(2026, 6, 21), "America/Edmonton")
    assert found is not None
    assert (found.date(), found.hour) == (date(2026, 6, 21), 21)


def test_across_the_date_line() -> None:
    found = sunset(1.87, -157.4, date(2026, 6, 21), "Pacific/Kiritimati")
    assert found is not None
    assert (found.date(), found.hour) == (date(2026, 6, 21), 18)


def test_a_sunset_after_midnight_ends_the_day_before() -> None:
    """Reykjavik at midsummer: an almanac has the sun down a few minutes after midnight (from memory)."""
    found = sunset(64.13, -21.9, date(2026, 6, 21), "Atlantic/Reykjavik")
    assert found is not None
    assert (found.date(), found.hour) == (date(2026, 6, 22), 0)


@pytest.mark.parametrize("day", [date(2026, 6, 21), date(2026, 12, 21)])
def test_midnight_sun_and_polar_night_have_none(day: date) -> None:
    assert sunset(69.65, 18.95, day, "Europe/Oslo") is None


@given(
    st.floats(-60, 60),
    st.sampled_from([("Europe/Rome", 12.0), ("Asia/Shanghai", 87.6), ("Pacific/Auckland", 174.8), ("UTC", 0.0)]),
    st.dates(date(2020, 1, 1), date(2035, 12, 31)),
)
def test_each_day_has_its_own_evening(lat: float, place: tuple[str, float], day: date) -> None:
    zone, lon = place
    evening, next_evening = sunset(lat, lon, day, zone), sunset(lat, lon, day + timedelta(days=1), zone)
    assert evening is not None
    assert next_evening is not None
    noon = datetime(day.year, day.month, day.day, 12, tzinfo=ZoneInfo(zone))
    assert timedelta(0) < evening - noon < timedelta(hours=14)
    assert 23.5 * 3_600 < next_evening.timestamp() - evening.timestamp() < 24.5 * 3_600
