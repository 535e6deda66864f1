"""Zeros of falling sums of a line and exponentials."""

from math import exp, inf, log

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from kitlog.budget.power.curve import first_zero, value

falling_terms = st.lists(st.tuples(st.floats(-50, 0), st.floats(1e-6, 1e4)), max_size=4)


def test_value():
    assert value(1.0, 2.0, [(3.0, 0.5)], 4.0) == pytest.approx(1 + 8 + 3 * (1 - exp(-2)))


def test_closed_forms():
    assert first_zero(3.0, -2.0, (), 10) == 1.5
    assert first_zero(3.0, 0.0, (), 10) == inf
    assert first_zero(1.0, 0.0, [(-2.0, 0.5)], 10) == pytest.approx(2 * log(2))
    assert first_zero(1.0, 0.0, [(-1.0, 0.5)], 10) == inf


@pytest.mark.parametrize("start", [0.0, -1e-9])
def test_at_once_if_there_is_nothing_left(start):
    assert first_zero(start, -1.0, [(-1.0, 1.0)], 5) == 0.0


@given(st.floats(1e-6, 100), st.floats(-20, 0), falling_terms, st.floats(0.01, 50))
def test_a_zero_is_where_scipy_finds_it(start, slope, terms, until_h):
    found = first_zero(start, slope, terms, until_h)
    if value(start, slope, terms, until_h) > 0:
        assert found == inf or found >= until_h * (1 - 1e-9)
    else:
        expected = brentq(lambda at_h: value(start, slope, terms, at_h), 0, until_h, xtol=1e-15)
        assert found == pytest.approx(expected, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("rate", [1e-9, 1e3, 1e12])
def test_stiff_and_slow_exponentials(rate):
    found = first_zero(1.0, -0.1, [(-0.5, rate)], 20.0)
    assert value(1.0, -0.1, [(-0.5, rate)], found) == pytest.approx(0, abs=1e-12)
