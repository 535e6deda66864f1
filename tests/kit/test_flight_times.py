from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

from kitlog.kit.flight_times import clock_of, moments_of

ROME = ZoneInfo("Europe/Rome")
DAY = date(2026, 3, 28)
"""The evening before the clocks go forward in Europe: 29 March 2026, 02:00 (tz database)."""


def test_a_landing_before_the_take_off_is_on_the_next_day_and_clocks_may_have_changed() -> None:
    begins, ends = moments_of(DAY, time(23, 0), time(4, 0), ROME)
    assert (begins, ends) == (datetime(2026, 3, 28, 22, tzinfo=UTC), datetime(2026, 3, 29, 2, tzinfo=UTC))
    assert clock_of(begins, "Europe/Rome") == time(23, 0)
    assert clock_of(ends, "Europe/Rome") == time(4, 0)


def test_without_a_take_off_there_is_no_landing() -> None:
    assert moments_of(DAY, None, time(4, 0), ROME) == (None, None)
    assert moments_of(DAY, time(4, 0), None, ROME)[1] is None


def test_a_clock_is_read_to_the_nearest_minute_and_stays_on_its_day() -> None:
    assert clock_of(datetime(2026, 5, 9, 10, 9, 58, tzinfo=UTC), "Europe/Rome") == time(12, 10)
    assert clock_of(datetime(2026, 5, 9, 10, 9, 29, tzinfo=UTC), "Europe/Rome") == time(12, 9)
    assert clock_of(datetime(2026, 5, 9, 21, 59, 40, tzinfo=UTC), "Europe/Rome") == time(23, 59)


def test_without_a_zone_the_clock_of_this_machine_counts() -> None:
    begins, _ends = moments_of(DAY, time(10, 30), None, None)
    assert clock_of(begins, "") == time(10, 30)
