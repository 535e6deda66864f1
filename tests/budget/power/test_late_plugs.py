"""Plugs planned at a charge that the device never shows alive."""

import pytest

from kitlog.budget.power.day import Day
from kitlog.budget.power.late_plugs import late_plugs


def late(below, *, ambient_c=0, draw=1.0, cell_wh=10):
    day = Day.model_validate(
        {
            "phases": [{"id": "flight", "hours": 1, "ambient_C": ambient_c}],
            "devices": [{"id": "phone", "cell_Wh": cell_wh, "cutoff": 0.1, "draw_W": {"flight": draw}}],
            "banks": [{"id": "bank", "cell_Wh": 9}],
            "plugs": [{"phase": "flight", "device": "phone", "bank": "bank", "connect_below": below}],
        }
    )
    return list(late_plugs(day))


@pytest.mark.parametrize(("below", "found"), [(0.2, True), (0.235, True), (0.236, False), (None, False)])
def test_at_the_floor_is_too_late(below, found):
    """By hand, at 0 deg C with f = .85 and a cut-off of .1: floor 1 - .85 x .9 = .235."""
    assert [one.floor_soc for one in late(below)] == ([pytest.approx(0.235)] if found else [])


def test_warmer_it_is_not():
    assert not late(0.2, ambient_c=25)


@pytest.mark.parametrize("how", [{"draw": 0}, {"cell_wh": 0}])
def test_nothing_that_could_run_down(how):
    assert not late(0.0, **how)
