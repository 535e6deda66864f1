"""Hours and launches up to a day."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.kit.flights import Flight
from kitlog.kit.usage import Usage, logged

SPRING = date(2026, 3, 1)


def flight(day: date, minutes: float = 60, until: date | None = None, **more: object) -> Flight:
    return Flight.model_validate({"id": f"flight {day}", "on": day, "until": until, "airtime_min": minutes, **more})


flights = st.builds(
    lambda day, length, minutes, ground, launches: flight(
        day, minutes, day + timedelta(days=length) if length else None, ground_handling_min=ground, launches=launches
    ),
    st.dates(date(2025, 1, 1), date(2026, 12, 31)),
    st.integers(0, 400),
    st.floats(0, 1_440),
    st.floats(0, 600),
    st.integers(0, 60),
)


def test_ground_handling_is_booked_apart() -> None:
    usage = logged([flight(SPRING, 90, ground_handling_min=30, launches=2)], until=SPRING)
    assert usage == Usage(airtime_h=1.5, ground_h=0.5, launches=2)
    assert usage.hours(ground_handling=False) == 1.5
    assert usage.hours(ground_handling=True) == 2.0


def test_a_span_begins_after_its_first_day_and_holds_its_last() -> None:
    days = [flight(SPRING + timedelta(days=n)) for n in range(4)]
    assert logged(days, after=SPRING, until=SPRING + timedelta(days=2)).airtime_h == 2
    assert logged(days, until=SPRING - timedelta(days=1)) == Usage()


def test_a_typed_total_counts_once_its_last_day_is_there() -> None:
    total = flight(SPRING, 600, SPRING + timedelta(days=9), launches=20)
    assert logged([total], until=SPRING + timedelta(days=8)) == Usage()
    assert logged([total], until=SPRING + timedelta(days=9)) == Usage(10, 0, 20)


@pytest.mark.parametrize(
    ("days_before", "hours", "launches"), [(0, 10, 20), (1, 9, 18), (5, 5, 10), (9, 1, 2), (10, 0, 0)]
)
def test_a_typed_total_is_shared_out_by_days(days_before: int, hours: float, launches: int) -> None:
    total = flight(SPRING, 600, SPRING + timedelta(days=9), launches=20)
    after = SPRING + timedelta(days=days_before - 1)
    usage = logged([total], after=after, until=SPRING + timedelta(days=30))
    assert (usage.airtime_h, usage.launches) == (pytest.approx(hours), launches)


@given(st.lists(flights, max_size=6), st.dates(date(2025, 1, 1), date(2027, 12, 31)), st.integers(0, 500))
def test_two_spans_hold_what_one_holds_once_all_totals_are_in(log: list[Flight], cut: date, more: int) -> None:
    end = date(2028, 6, 1) + timedelta(days=more)
    before = sum(f.airtime_min for f in log) / 60
    after = logged(log, after=cut, until=end).airtime_h
    assert 0 <= after <= before + 1e-9
    assert logged(log, until=end).airtime_h == pytest.approx(before)


@given(st.lists(flights, max_size=6), flights, st.dates(date(2025, 1, 1), date(2027, 12, 31)))
def test_one_more_flight_never_takes_hours_away(log: list[Flight], extra: Flight, until: date) -> None:
    less, more = logged(log, until=until), logged([*log, extra], until=until)
    assert more.airtime_h >= less.airtime_h
    assert more.ground_h >= less.ground_h
    assert more.launches >= less.launches
