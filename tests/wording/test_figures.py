"""Figures in words: thin space (U+2009) in thousands, true minus (U+2212), no break (U+00A0) before the unit."""

from datetime import UTC, date, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.wording.figures import (
    clock_text,
    day_text,
    days_text,
    hours_text,
    kg_text,
    litres_text,
    mass_text,
    number_text,
    percent_text,
    span_text,
)


@pytest.mark.parametrize(
    ("number", "decimals", "said"),
    [
        (0, 0, "0"),
        (999, 0, "999"),
        (1_000, 0, "1\u2009000"),
        (1_234_567, 0, "1\u2009234\u2009567"),
        (-60, 0, "\u221260"),
        (-0.4, 0, "0"),
        (-0.04, 1, "0.0"),
        (-0.06, 1, "\u22120.1"),
        (12.345, 2, "12.35"),
    ],
)
def test_numbers(number: float, decimals: int, said: str) -> None:
    assert number_text(number, decimals) == said


@given(st.floats(-1e9, 1e9), st.integers(0, 3))
def test_a_number_can_be_read_back(number: float, decimals: int) -> None:
    said = number_text(number, decimals)
    assert "-" not in said
    read = float(said.replace("\u2009", "").replace("\u2212", "-"))
    assert read == pytest.approx(number, abs=0.51 * 10**-decimals)


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (mass_text(96_200), "96\u2009200\u00a0g"),
        (mass_text(None), "not known"),
        (kg_text(96_240), "96.2\u00a0kg"),
        (kg_text(85_000), "85.0\u00a0kg"),
        (kg_text(-1_500), "\u22121.5\u00a0kg"),
        (percent_text(56.04, 1), "56.0\u00a0%"),
        (percent_text(None), "not known"),
        (litres_text(2_000), "2.0\u00a0l"),
        (litres_text(1_970), "1.97\u00a0l"),
        (litres_text(500), "0.5\u00a0l"),
    ],
)
def test_figures_with_units(said: str, expected: str) -> None:
    assert said == expected


@pytest.mark.parametrize(
    ("hours", "said"),
    [
        (0, "0:00"),
        (1.5, "1:30"),
        (0.6613, "0:40"),
        (1.9999, "2:00"),
        (-0.5, "\u22120:30"),
        (-0.001, "0:00"),
        (25.25, "25:15"),
    ],
)
def test_hours(hours: float, said: str) -> None:
    assert hours_text(hours) == f"{said}\u00a0h"


@pytest.mark.parametrize(
    ("hours", "said"), [(0.661, "40\u00a0min"), (1.98, "119\u00a0min"), (2, "2:00\u00a0h"), (-3.63, "3:38\u00a0h")]
)
def test_spans(hours: float, said: str) -> None:
    assert span_text(hours) == said


def test_days() -> None:
    assert day_text(date(2026, 5, 9)) == "9\u00a0May\u00a02026"
    assert days_text(date(2026, 6, 20), date(2026, 6, 20)) == "20\u00a0Jun\u00a02026"
    assert days_text(date(2026, 6, 20), date(2026, 6, 21)) == "20\u00a0Jun to 21\u00a0Jun\u00a02026"
    assert days_text(date(2026, 12, 31), date(2027, 1, 1)) == "31\u00a0Dec\u00a02026 to 1\u00a0Jan\u00a02027"


def test_clock() -> None:
    assert clock_text(datetime(2026, 5, 9, 7, 5, tzinfo=UTC)) == "07:05"
