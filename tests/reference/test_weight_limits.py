"""Limits by weight against published check values.

Sources: EN 926-2 certified range, as a seller's page on take-off weight tells it (limits inclusive, unrounded: common
practice, no source); a published reserve example: pilot and gear 96 kg, wing 5 kg, reserve to 100 kg, where sources
disagree on whether the wing counts. 1 lb = 0.45359237 kg by definition.
"""

import pytest

from kitlog.budget.weight import Fit, Load, fit, position_pct, reserve_fit, weigh
from kitlog.kit.facets import Reserve, Wing
from kitlog.units.mass import g_from_kg, g_from_lb

RANGE = Wing(min_g=85_000, max_g=105_000)


@pytest.mark.parametrize(
    ("mass_kg", "stands"),
    [(84.9, Fit.OUTSIDE), (85.0, Fit.INSIDE), (105.0, Fit.INSIDE), (105.1, Fit.OUTSIDE)],
)
def test_certified_range_is_inclusive(mass_kg: float, stands: Fit) -> None:
    assert fit(g_from_kg(mass_kg), RANGE.min_g, RANGE.max_g, 0) is stands


def test_masses_are_compared_unrounded() -> None:
    assert fit(105_049, RANGE.min_g, RANGE.max_g, 0) is Fit.OUTSIDE
    assert fit(84_951, RANGE.min_g, RANGE.max_g, 0) is Fit.OUTSIDE


def test_everything_that_leaves_the_ground_counts_the_wing_included() -> None:
    together = weigh([Load("pilot", 74_000), Load("wing", 5_000), Load("gear", 22_000)])
    assert together.take_off_g == 101_000
    assert together.without(5_000) == 96_000


def test_water_drunk_can_end_a_flight_below_the_range() -> None:
    day = weigh([Load("pilot", 85_500), Load("water", 2_000, gone_g=2_000)])
    assert fit(day.take_off_g, RANGE.min_g, RANGE.max_g, 0) is Fit.INSIDE
    assert fit(day.landing_g, RANGE.min_g, RANGE.max_g, 0) is Fit.INSIDE
    lighter = weigh([Load("pilot", 84_500), Load("water", 2_000, gone_g=2_000)])
    assert fit(lighter.take_off_g, RANGE.min_g, RANGE.max_g, 0) is Fit.INSIDE
    assert fit(lighter.landing_g, RANGE.min_g, RANGE.max_g, 0) is Fit.OUTSIDE


def test_reserve_example() -> None:
    load = reserve_fit(101_000, 96_000, Reserve(max_g=100_000), 0)
    assert load.without_wing is Fit.INSIDE
    assert load.with_wing is Fit.OUTSIDE


def test_exact_pounds_matter_at_a_limit() -> None:
    """220 lb are 99.79 kg; a page that divides by 2.2 makes it 100.00."""
    assert g_from_lb(220) == 99_790
    assert fit(g_from_lb(220), 70_000, 99_900, 0) is Fit.INSIDE
    assert fit(220 / 2.2 * 1_000, 70_000, 99_900, 0) is Fit.OUTSIDE


def test_middle_of_the_range() -> None:
    assert position_pct(95_000, RANGE) == 50
