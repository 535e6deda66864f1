"""When hours run out: the span from the quieter and the busier half of the last 365 days."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.kit.flights import Flight
from kitlog.kit.foresight import RATE_DAYS, rates, run_out

TODAY = date(2026, 5, 8)


def flown(first: date, hours: float, last: date | None = None) -> Flight:
    return Flight(id=str(first), on=first, until=last or first, airtime_min=60 * hours)


def test_a_total_over_the_middle_counts_in_both_halves() -> None:
    """237 days from 9 May to 31 December 2025, 54 of them after 7 November: the halves share the hours by days."""
    total = flown(date(2025, 5, 9), 23.7, date(2025, 12, 31))
    found = rates([total], TODAY, ground_handling=False)
    assert (found.plain, found.busy, found.quiet) == (
        pytest.approx(23.7 / 365),
        pytest.approx(18.3 / 183),
        pytest.approx(5.4 / 182),
    )


@given(st.lists(st.tuples(st.integers(0, RATE_DAYS - 1), st.floats(0.1, 20)), max_size=30), st.floats(0.1, 500))
def test_early_likely_and_late_stand_in_their_order(days: list[tuple[int, float]], left: float) -> None:
    flights = [flown(TODAY - timedelta(days=back), hours) for back, hours in days]
    foreseen = run_out(left, rates(flights, TODAY, ground_handling=False), TODAY)
    known = [day for day in (foreseen.early, foreseen.likely, foreseen.late) if day is not None]
    assert known == sorted(known)


def test_nothing_flown_foresees_nothing() -> None:
    foreseen = run_out(10, rates([], TODAY, ground_handling=False), TODAY)
    assert (foreseen.early, foreseen.likely, foreseen.late) == (None, None, None)
