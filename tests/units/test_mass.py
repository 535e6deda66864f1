"""Grams inside, kilograms and pounds at the edges."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.units.mass import g_from_kg, g_from_lb, kg_from_g


@pytest.mark.parametrize(
    ("pounds", "grams"),
    [
        # 1 lb = 0.45359237 kg: definition of the international pound (1959 agreement; NIST SP 811 appendix B, from memory).
        (1, 454),
        (100_000, 45_359_237),
        # Worked by hand: 220 lb x 453.59237 g = 99 790.3 g, where the rule of thumb "divide by 2.2" says 100 000 g.
        (220, 99_790),
        (0, 0),
    ],
)
def test_pounds(pounds: float, grams: int) -> None:
    assert g_from_lb(pounds) == grams


@pytest.mark.parametrize(
    ("kilograms", "grams"), [(0.0005, 1), (0.0015, 2), (1.0045, 1_005), (5.24, 5_240), (84.9999, 85_000)]
)
def test_kilograms_round_halves_up_as_written(kilograms: float, grams: int) -> None:
    assert g_from_kg(kilograms) == grams


@given(st.integers(0, 1_000_000))
def test_grams_survive_the_way_to_kilograms_and_back(grams: int) -> None:
    assert g_from_kg(kg_from_g(grams)) == grams
