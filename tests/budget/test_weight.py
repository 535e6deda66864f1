import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.budget.weight import (
    PILOT,
    Fit,
    Load,
    fit,
    harness_fit,
    least_fit,
    position_pct,
    reserve_fit,
    under,
    weigh,
)
from kitlog.kit.facets import Harness, Reserve, Wing
from kitlog.kit.kinds import Zone

GRAMS = st.integers(0, 200_000)
TOLERANCES = st.floats(0, 5_000)


@st.composite
def loads(draw: st.DrawFn, *, known: bool = False) -> Load:
    mass = draw(GRAMS if known else st.none() | GRAMS)
    tolerance = draw(TOLERANCES)
    return Load(
        id=draw(st.text(min_size=1, max_size=3)),
        mass_g=mass,
        tolerance_g=tolerance,
        weighed_g=draw(st.floats(0, tolerance)),
        zone=draw(st.none() | st.sampled_from(Zone)),
        gone_g=draw(st.integers(0, mass or 0)),
        on_foot=draw(st.none() | st.sampled_from(Zone)),
    )


class TestSums:
    def test_nothing_weighs_nothing(self) -> None:
        nothing = weigh([])
        assert (nothing.take_off_g, nothing.landing_g, nothing.tolerance_g, nothing.by_zone) == (0, 0, 0, {})
        assert nothing.pilot_g is None
        assert nothing.sharpen is None

    @given(st.lists(loads(known=True)))
    def test_is_the_sum_of_the_loads(self, every: list[Load]) -> None:
        sums = weigh(every)
        assert sums.take_off_g == sum(load.mass_g or 0 for load in every) == sums.known_g
        assert sums.landing_g == sums.take_off_g - sum(load.gone_g for load in every) == sums.known_landing_g
        assert sums.tolerance_g == pytest.approx(math.sqrt(sum(load.tolerance_g**2 for load in every)))
        assert sums.tolerance_sum_g == pytest.approx(sum(load.tolerance_g for load in every))

    @given(st.lists(loads()))
    def test_zones_hold_all_but_bodies(self, every: list[Load]) -> None:
        assert sum(weigh(every).by_zone.values()) == sum(load.mass_g or 0 for load in every if load.zone is not None)

    @given(st.lists(loads()))
    def test_one_mass_that_is_not_known_makes_the_sum_not_known(self, every: list[Load]) -> None:
        sums = weigh(every)
        unknown = [load.id for load in every if load.mass_g is None]
        assert list(sums.unknown) == unknown
        assert (sums.take_off_g is None) == (sums.landing_g is None) == bool(unknown)

    @given(st.lists(loads()), loads())
    def test_another_load_never_makes_it_less(self, every: list[Load], more: Load) -> None:
        before, after = weigh(every), weigh([*every, more])
        assert after.known_g >= before.known_g
        assert after.known_landing_g >= before.known_landing_g
        assert after.tolerance_g >= before.tolerance_g
        assert after.pack_g >= before.pack_g

    @given(st.lists(loads()))
    def test_the_landing_is_never_heavier_than_the_take_off(self, every: list[Load]) -> None:
        sums = weigh(every)
        assert sums.known_landing_g <= sums.known_g

    @given(st.lists(loads()))
    def test_the_plain_sum_of_tolerances_is_the_worst_case(self, every: list[Load]) -> None:
        sums = weigh(every)
        assert sums.tolerance_g <= sums.tolerance_sum_g + 1e-6


class TestWalk:
    def test_what_is_worn_on_foot_and_bodies_are_not_carried(self) -> None:
        sums = weigh(
            [
                Load(PILOT, 74_000),
                Load("passenger", 80_000),
                Load("boots", 1_180, zone=Zone.WORN),
                Load("shell", 385, zone=Zone.BACK_POCKET, on_foot=Zone.WORN),
                Load("wing", 3_080, zone=Zone.OVERHEAD, on_foot=Zone.RUCKSACK),
                Load("jacket", 342, zone=Zone.WORN, on_foot=Zone.RUCKSACK),
                Load("radio", 212, zone=Zone.COCKPIT),
            ]
        )
        assert sums.pack_g == 3_080 + 342 + 212
        assert sums.pilot_g == 74_000


class TestSharpening:
    def test_names_the_weighing_that_narrows_most(self) -> None:
        sums = weigh(
            [
                Load(PILOT, 74_000, 1_000, 1_000),
                Load("harness", 5_600, 1_400, 50),
                Load("wing", 5_240, 50, 50),
                Load("lunch", 190, 47.5, 5),
            ]
        )
        assert sums.sharpen is not None
        assert sums.sharpen.id == "harness"
        before, after = math.hypot(1_000, 1_400, 50, 47.5), math.hypot(1_000, 50, 50, 47.5)
        assert sums.sharpen.by_g == pytest.approx(before - after)

    def test_nothing_is_named_where_all_is_weighed_as_well_as_it_can_be(self) -> None:
        assert weigh([Load("wing", 5_240, 50, 50), Load("knife", 38, 5, 5)]).sharpen is None

    def test_a_mass_that_is_not_known_is_missing_rather_than_wide(self) -> None:
        assert weigh([Load("wing", None, 0, 0)]).sharpen is None


class TestFit:
    @given(st.integers(0, 150_000), st.integers(0, 150_000), TOLERANCES)
    def test_limits_are_inside(self, one: int, other: int, tolerance: float) -> None:
        low, high = min(one, other), max(one, other)
        assert fit(low, low, high, 0) is Fit.INSIDE
        assert fit(high, low, high, 0) is Fit.INSIDE
        assert fit(low, low, high, tolerance) in {Fit.INSIDE, Fit.REACHES_OVER}
        assert fit(high, low, high, tolerance) in {Fit.INSIDE, Fit.REACHES_OVER}
        assert fit(low - 1, low, high, 0) is Fit.OUTSIDE
        assert fit(high + 1, low, high, 0) is Fit.OUTSIDE

    @pytest.mark.parametrize(
        ("mass", "stands"),
        [
            (83_999, Fit.OUTSIDE),
            (84_000, Fit.REACHES_IN),
            (84_500, Fit.REACHES_IN),
            (85_000, Fit.REACHES_OVER),
            (85_999, Fit.REACHES_OVER),
            (86_000, Fit.INSIDE),
            (104_000, Fit.INSIDE),
            (104_001, Fit.REACHES_OVER),
            (106_000, Fit.REACHES_IN),
            (106_001, Fit.OUTSIDE),
        ],
    )
    def test_a_tolerance_reaches_over_or_in(self, mass: int, stands: Fit) -> None:
        assert fit(mass, 85_000, 105_000, 1_000) is stands

    @pytest.mark.parametrize(("mass", "low", "high"), [(None, 1, 2), (1, None, 2), (1, 1, None)])
    def test_nothing_fits_where_a_figure_is_not_known(
        self, mass: int | None, low: int | None, high: int | None
    ) -> None:
        assert fit(mass, low, high, 0) is Fit.NOT_KNOWN

    @given(GRAMS, GRAMS, TOLERANCES)
    def test_a_greatest_load_alone(self, mass: int, high: int, tolerance: float) -> None:
        stands = under(mass, high, tolerance)
        assert (stands in {Fit.INSIDE, Fit.REACHES_OVER}) == (mass <= high)
        assert (stands is Fit.INSIDE) == (mass + tolerance <= high)

    def test_a_harness_without_a_limit_is_not_known(self) -> None:
        assert harness_fit(90_000, Harness(), 0) is Fit.NOT_KNOWN
        assert harness_fit(90_000, None, 0) is Fit.NOT_KNOWN
        assert harness_fit(None, Harness(max_g=100_000), 0) is Fit.NOT_KNOWN


class TestLeastFit:
    """What is known of a mass may be over a limit already."""

    @given(GRAMS, GRAMS, TOLERANCES)
    def test_never_says_inside(self, known: int, high: int, tolerance: float) -> None:
        stands = least_fit(known, high, tolerance)
        assert (stands is Fit.NOT_KNOWN) == (known <= high)
        assert (stands is Fit.OUTSIDE) == (known - tolerance > high)

    def test_without_a_limit_nothing_is_over(self) -> None:
        assert least_fit(500_000, None, 0) is Fit.NOT_KNOWN


class TestReserve:
    def test_both_loads_stand(self) -> None:
        load = reserve_fit(101_000, 96_000, Reserve(max_g=100_000), 0)
        assert (load.with_wing, load.without_wing) == (Fit.OUTSIDE, Fit.INSIDE)

    @pytest.mark.parametrize(("without", "below"), [(59_999, True), (60_000, False), (None, False)])
    def test_least_load(self, without: int | None, below: bool) -> None:
        assert reserve_fit(None, without, Reserve(min_g=60_000, max_g=95_000), 0).below_min is below

    def test_without_figures_nothing_is_known(self) -> None:
        load = reserve_fit(96_000, 91_000, None, 0)
        assert (load.with_wing, load.without_wing, load.below_min) == (Fit.NOT_KNOWN, Fit.NOT_KNOWN, False)


class TestPosition:
    def test_is_not_cut_off(self) -> None:
        wing = Wing(min_g=85_000, max_g=105_000)
        places = [position_pct(mass, wing) for mass in (75_000, 85_000, 95_000, 105_000, 115_000)]
        assert places == [-50, 0, 50, 100, 150]

    @pytest.mark.parametrize("wing", [None, Wing(), Wing(min_g=85_000), Wing(min_g=85_000, max_g=85_000)])
    def test_needs_a_range(self, wing: Wing | None) -> None:
        assert position_pct(90_000, wing) is None
