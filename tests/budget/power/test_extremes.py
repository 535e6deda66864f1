"""Figures at the edges of what is accepted: every day still ends, with charges between empty and full."""

import sys
from math import isfinite
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitlog.budget.power.day import LARGEST, Day
from kitlog.budget.power.simulate import simulate

sys.path.insert(0, str(Path(__file__).parents[2] / "reference"))  # importmode=importlib finds no neighbours
from power_days import random_day

AMOUNTS = [0.0, 5e-324, 1e-300, 1e-12, 1e-9, 1e-6, 1.0, 2.0, 4.0, 1e6, LARGEST]
SHARES = [0.0, 5e-324, 1e-15, 1e-9, 0.25, 0.5, 0.75, 1 - 1e-9, 1 - 1e-15, 1.0]
RANGE_OF = {
    "hours": AMOUNTS, "cell_Wh": AMOUNTS, "charge_max_W": AMOUNTS, "input_limit_W": AMOUNTS, "port_limit_W": AMOUNTS,
    "total_limit_W": AMOUNTS, "quiescent_W": AMOUNTS, "min_out_W": AMOUNTS, "auto_off_s": AMOUNTS,
    "start": SHARES, "health": SHARES, "cutoff": SHARES[:-1], "charge_eff": SHARES, "knee": SHARES,
    "restart_margin": SHARES, "eff": [0.01, 0.5, 1.0], "connect_below": SHARES, "charge_to": SHARES,
    "ambient_C": [-LARGEST, -20.0, -5.0, 0.0, 25.0, LARGEST], "temp_offset_C": [-LARGEST, 0.0, 1e-9, LARGEST],
}  # fmt: skip


def to_the_edge(raw, rng, often):
    for part in ("phases", "devices", "banks", "plugs"):
        for thing in raw[part]:
            for key, figures in RANGE_OF.items():
                if (key in thing and thing[key] is not None and rng.random() < often) or (
                    key in ("health", "charge_eff", "knee", "start") and part == "devices" and rng.random() < often / 3
                ):
                    thing[key] = rng.choice(figures)
            if part == "devices":
                thing["draw_W"] = {
                    name: rng.choice(AMOUNTS) if rng.random() < often else draw
                    for name, draw in thing["draw_W"].items()
                }
    return raw


def check(raw):
    result = simulate(Day.model_validate(raw))
    for device in result.devices.values():
        assert isfinite(device.margin_wh)
        assert device.soc_end is None or 0 <= device.soc_end <= 1
    for bank in result.banks.values():
        assert isfinite(bank.delivered_wh)
        assert bank.soc_end is None or 0 <= bank.soc_end <= 1
    for course in (*result.device_courses.values(), *result.bank_courses.values()):
        assert all(0 <= soc <= 1 for _, soc in course.points)


@settings(max_examples=200, deadline=None)
@given(st.randoms(use_true_random=False))
def test_a_day_at_the_edges_ends(rng):
    check(to_the_edge(random_day(rng), rng, 0.4))


@pytest.mark.slow
def test_many_days_at_the_edges_end():
    for seed in range(20_000):
        rng = Random(seed)
        check(to_the_edge(random_day(rng), rng, rng.random()))
