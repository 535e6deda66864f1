"""Months and days of service intervals."""

import calendar
import sqlite3
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from kitlog.fault import InputFault
from kitlog.units.days import FIRST_DAY, LAST_DAY, Day, add_months, parse_day

days = st.dates(FIRST_DAY, LAST_DAY)
months = st.integers(0, 1_200)


@pytest.mark.parametrize(
    ("day", "count", "later"),
    [
        # Computed by hand; that the end of the month clips is common practice among inspectors, no source.
        ("2025-08-31", 6, "2026-02-28"),
        ("2024-02-29", 12, "2025-02-28"),
        ("2023-08-31", 6, "2024-02-29"),
        # W3C XML Schema part 2, adding durations to dateTimes (quoted from memory): the day is clipped to the month.
        ("2000-03-31", 1, "2000-04-30"),
        ("2000-03-30", 1, "2000-04-30"),
        # The century rule of the Gregorian calendar: 2000 was a leap year, 2100 is none.
        ("1996-02-29", 48, "2000-02-29"),
        ("2096-02-29", 48, "2100-02-28"),
        ("2025-12-31", 0, "2025-12-31"),
        ("2025-12-01", 1, "2026-01-01"),
        ("2025-11-30", 1, "2025-12-30"),
    ],
)
def test_months_are_added_and_clipped(day: str, count: int, later: str) -> None:
    assert add_months(date.fromisoformat(day), count) == date.fromisoformat(later)


@given(day=days, count=months)
def test_the_month_is_the_right_one_and_the_day_never_spills_over(day: date, count: int) -> None:
    later = add_months(day, count)
    assert (later.year * 12 + later.month) - (day.year * 12 + day.month) == count
    assert later.day == day.day or (
        later.day < day.day and later.day == calendar.monthrange(later.year, later.month)[1]
    )


@given(day=days, count=months, step=st.integers(1, 400))
def test_a_later_day_is_never_due_earlier(day: date, count: int, step: int) -> None:
    assert add_months(day + timedelta(days=step), count) >= add_months(day, count)


@given(day=days, first=st.integers(0, 600), second=st.integers(0, 600))
def test_two_intervals_in_turn_never_outlast_one(day: date, first: int, second: int) -> None:
    at_once, in_turn = add_months(day, first + second), add_months(add_months(day, first), second)
    assert timedelta(0) <= at_once - in_turn <= timedelta(days=3)


@given(day=days.filter(lambda day: day.day <= 28), count=months)
def test_an_unclipped_sum_agrees_with_sqlite(day: date, count: int) -> None:
    base = sqlite3.connect(":memory:")
    try:
        (later,) = base.execute("SELECT date(?, ?)", (day.isoformat(), f"+{count} months")).fetchone()
    finally:
        base.close()
    assert add_months(day, count).isoformat() == later


def test_a_sum_past_the_last_year_stays_at_the_last_day() -> None:
    assert add_months(date(2100, 12, 31), 12 * 9_000) == date.max


@given(day=days)
def test_a_written_day_is_read_back(day: date) -> None:
    assert parse_day(f" {day.isoformat()} ") == day


@pytest.mark.parametrize(
    "text",
    ["", "2025-02-29", "2025-13-01", "2025-00-10", "25-01-01", "2025-1-1", "20250101", "2025-01-01T00:00", "1.2.2025",
     "٢٠٢٥-٠١-٠١", "2025-W01-1", "2025-01-01x"],
)  # fmt: skip
def test_what_is_no_day_is_refused(text: str) -> None:
    with pytest.raises(InputFault) as caught:
        parse_day(text)
    assert caught.value.code == "day.not_a_day"
    assert caught.value.facts["value"] == text


@pytest.mark.parametrize("text", ["1969-12-31", "2101-01-01", "0001-01-01", "9999-12-31"])
def test_a_day_out_of_range_is_named_as_such(text: str) -> None:
    with pytest.raises(InputFault) as caught:
        parse_day(text)
    assert caught.value.code == "day.out_of_range"


def test_models_hold_the_same_range() -> None:
    adapter = TypeAdapter(Day)
    assert adapter.validate_python("1970-01-01") == FIRST_DAY
    assert adapter.validate_python("2100-12-31") == LAST_DAY
    for text in ("1969-12-31", "2101-01-01"):
        with pytest.raises(ValidationError) as caught:
            adapter.validate_python(text)
        assert caught.value.errors()[0]["type"] == "day.out_of_range"
