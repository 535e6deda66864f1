import pytest

from kitlog.paint.power_spread import OffBy, Spread

EDGES = (0.0, 0.2, 0.2, 1.0)  # the phase in the middle lasts no time at all
FLAT = (0.5,) * 7


def spread(low=FLAT, middle=FLAT, high=FLAT, steps=2) -> Spread:
    return Spread(steps, low, middle, high)


def test_the_points_lie_at_equal_shares_of_each_phase():
    assert spread().places(EDGES) == pytest.approx([0, 0.1, 0.2, 0.2, 0.2, 0.6, 1.0])


def test_values_between_the_points():
    low, middle, high = (0.9, 0.8, 0.7, 0.7, 0.6, 0.4, 0.2), FLAT[:0] + (0.95,) * 7, (1.0,) * 7
    found = spread(low, middle, high)
    assert found.at(EDGES, 0.05) == pytest.approx((0.85, 0.95, 1.0))
    assert found.at(EDGES, 0.8) == pytest.approx((0.3, 0.95, 1.0))
    assert found.at(EDGES, 0.0) == pytest.approx((0.9, 0.95, 1.0))
    assert found.at(EDGES, 1.0) == pytest.approx((0.2, 0.95, 1.0))


def test_past_its_last_point_there_is_nothing_to_read():
    assert Spread(1, (0.5,), (0.5,), (0.5,)).at(EDGES, 0.3) is None


@pytest.mark.parametrize(("passed", "place"), [(0, 0), (0.5, 0.1), (1, 0.2), (2.25, 0.4), (3, 1), (7, 1)])
def test_where_days_switch_a_device_off(passed: float, place: float):
    assert OffBy(5, passed, "").place(EDGES) == pytest.approx(place)


@pytest.mark.parametrize(
    "wrong",
    [
        {"low": (0.6,) * 7},
        {"high": (0.4,) * 7},
        {"high": (1.1,) * 7},
        {"middle": (0.5,) * 6},
        {"low": (float("nan"),) * 7},
        {"steps": 0},
    ],
)
def test_what_is_no_spread_is_refused(wrong: dict):
    with pytest.raises(ValueError, match=r"share|low|points|lie|spread"):
        spread(**wrong)


def test_a_place_that_is_no_number_is_refused():
    with pytest.raises(ValueError, match="phases_passed"):
        OffBy(5, float("nan"), "")
