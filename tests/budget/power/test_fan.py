"""The fan: charges at equal shares of each phase."""

import pytest
from scipy.stats import triang

from kitlog.budget.power.day import Day
from kitlog.budget.power.fan import Columns, point_hours, rank
from kitlog.budget.power.forecast import FAN_DAYS, forecast, forecasts
from kitlog.budget.power.forecast_question import ForecastQuery


def two_phases(**device):
    return Day.model_validate(
        {
            "phases": [{"id": name, "hours": 2, "ambient_C": 25} for name in ("wait", "flight")],
            "devices": [
                {"id": "phone", "cell_Wh": 20, "draw_W": {"wait": 1, "flight": 2}, **device},
                {"id": "lamp", "cell_Wh": 0},
            ],
            "banks": [{"id": "bank", "cell_Wh": 10}, {"id": "car", "cell_Wh": None}],
        }
    )


def fan(day, **query):
    return forecast(day, ForecastQuery.model_validate({"n": 2000, "fan_steps": 4} | query)).fan


def test_points_are_shares_of_a_phase():
    assert point_hours((2, 0, 4), 2) == (0, 1, 2, 2, 2, 4, 6)
    found = fan(two_phases(), n=5)
    assert found.likely_h == (0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4)
    assert found.devices["phone"].likely == pytest.approx([1, 0.975, 0.95, 0.925, 0.9, 0.85, 0.8, 0.75, 0.7])


def test_half_way_through_a_phase_is_compared_with_half_way():
    """2 Wh/h in a phase of (1, 2, 4) h: half-way a tenth of its hours is gone from 20 Wh. Quantiles of scipy's triang;
    tolerance from 2,000 days."""
    phone = fan(two_phases(), hours={"flight": [1, 2, 4]}).devices["phone"]
    length = triang(c=1 / 3, loc=1, scale=3)
    for band, q in ((phone.low, 0.95), (phone.middle, 0.5), (phone.high, 0.05)):
        assert band[4] == pytest.approx(0.9)
        assert band[6] == pytest.approx(0.9 - length.ppf(q) / 20, abs=0.006)
        assert band[8] == pytest.approx(0.9 - length.ppf(q) / 10, abs=0.012)


def test_bands_lie_in_order_between_empty_and_full():
    found = fan(two_phases(cell_Wh=5), hours={"wait": [0, 2, 6], "flight": [0, 2, 3]}, start={"phone": [0.3, 0.9, 1]})
    phone = found.devices["phone"]
    for low, middle, high in zip(phone.low, phone.middle, phone.high, strict=True):
        assert 0 <= low <= middle <= high <= 1
    assert phone.low[0] < phone.high[0]


def test_lanes_are_what_can_run_empty():
    found = fan(two_phases(), n=5)
    assert list(found.devices) == ["phone"]
    assert list(found.banks) == ["bank"]
    bare = Day.model_validate({"phases": [{"id": "wait", "hours": 1, "ambient_C": 0}]})
    assert (fan(bare, n=3).devices, fan(bare, n=3).banks) == ({}, {})


def test_a_phase_without_duration_keeps_the_charge():
    phone = fan(two_phases(), n=3, hours={"wait": [0, 0, 0]}).devices["phone"]
    assert phone.likely[:5] == (1, 1, 1, 1, 1)
    assert phone.likely[8] == pytest.approx(0.8)
    none = fan(two_phases(), n=3, hours={"wait": [0, 0, 0], "flight": [0, 0, 0]})
    assert none.devices["phone"].likely == (1,) * 9


def test_it_shows_the_first_days_and_is_drawn_anew_as_they_double():
    query = ForecastQuery(n=FAN_DAYS + 1500, hours={"flight": (1.0, 2.0, 4.0)}, fan_steps=1)
    shown = [each.fan.days for each in forecasts(two_phases(), query)]
    assert shown == [500, 1000, 2000, 2000, 4000, 4000, 4000]
    assert shown[-1] == FAN_DAYS


def test_quantiles_are_the_least_that_enough_days_are_under():
    assert [rank(pct, 100) for pct in (5, 50, 95)] == [4, 49, 94]
    assert [rank(pct, 1) for pct in (5, 50, 95)] == [0, 0, 0]
    columns = Columns(1)
    for soc in (0.3, 0.1):
        columns.add([soc])
    assert columns.quantiles() == [(0.1, 0.1, 0.3)]
    columns.add([0.2])
    assert columns.quantiles() == [(0.1, 0.2, 0.3)]
