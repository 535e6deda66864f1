from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.paint.case_clock import CaseClock, band_edges, value_at

HIGH = (2.0, 6.0, 2.0)
LIKELY = CaseClock(band_edges(HIGH), (1.0, 4.0, 0.0))


def test_bands_are_as_wide_as_the_high_case():
    assert band_edges(HIGH) == pytest.approx((0.0, 0.2, 0.8, 1.0))


def test_bands_without_any_hours_are_equal():
    assert band_edges((0.0, 0.0)) == pytest.approx((0.0, 0.5, 1.0))
    assert band_edges(()) == (0.0,)


def test_the_hours_of_a_case_are_stretched_into_its_bands():
    assert LIKELY.share_at(0.5) == pytest.approx(0.1)  # half of the wait
    assert LIKELY.share_at(3.0) == pytest.approx(0.5)  # half of the flight
    assert LIKELY.hours_at(0.5) == pytest.approx(3.0)
    assert LIKELY.hours_at(0.9) == pytest.approx(5.0)  # a phase of no hours: time stands still
    assert LIKELY.hours_at(1.0) == pytest.approx(5.0)


def test_a_phase_of_no_hours_is_crossed_level():
    laid = LIKELY.laid(((0.0, 1.0), (5.0, 0.5)))
    assert laid[-2:] == [(pytest.approx(0.8), 0.5), (pytest.approx(1.0), 0.5)]


def test_a_curve_that_ends_is_not_drawn_on():
    assert max(share for share, _ in LIKELY.laid(((0.0, 1.0), (3.0, 0.2)))) == pytest.approx(0.5)
    assert LIKELY.laid(()) == []


def test_values_are_linear_and_unknown_outside():
    curve = ((0.0, 1.0), (2.0, 0.5), (2.0, 0.8), (4.0, 0.6))
    assert value_at(curve, 1.0) == pytest.approx(0.75)
    assert value_at(curve, 3.0) == pytest.approx(0.7)
    assert value_at(curve, 4.0) == pytest.approx(0.6)
    assert value_at(curve, 4.1) is None
    assert value_at((), 0.0) is None


@given(st.lists(st.floats(0.01, 24), min_size=1, max_size=8), st.floats(0, 1))
def test_a_place_and_its_hours_belong_together(lasts: list[float], share: float):
    clock = CaseClock(band_edges(tuple(lasts)), tuple(lasts))
    assert clock.share_at(clock.hours_at(share)) == pytest.approx(share, abs=1e-6)


@given(st.lists(st.tuples(st.floats(0, 12), st.floats(0, 12)), min_size=1, max_size=6))
def test_laid_curves_never_run_back(phases: list[tuple[float, float]]):
    clock = CaseClock(band_edges(tuple(h for _, h in phases)), tuple(low for low, _ in phases))
    laid = clock.laid(((0.0, 1.0), (6.0, 0.4), (sum(clock.lasts_h) + 1.0, 0.1)))
    shares = [share for share, _ in laid]
    assert all(later >= earlier - 1e-9 for earlier, later in pairwise(shares))
    assert all(-1e-9 <= share <= 1 + 1e-9 for share in shares)
