"""The exact power budget against a numerical solution of the same rules, written a second time (`power_ode`).

Reference library: scipy's `solve_ivp` (DOP853, rtol 1e-12), restarted at every event.
"""

import sys
from itertools import pairwise
from pathlib import Path

import pytest

from kitlog.budget.power.day import Day
from kitlog.budget.power.simulate import simulate

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from power_days import seeded_day
from power_ode import Ode

NEAR = 1e-6  # h, and share of charge, and Wh


def differences(seed):
    raw = seeded_day(seed)
    exact, ode = simulate(Day.model_validate(raw)), Ode(raw).run()
    pairs = []
    for i, device in enumerate(exact.devices.values()):
        pairs += [(device.first_off_h, ode.first_off[i]), (device.off_h, ode.off_h[i]), (device.on_at_end, ode.on[i])]
        pairs += [(soc, ode.phase_end[k][i]) for k, soc in enumerate(device.phase_end_soc or ())]
    for j, bank in enumerate(exact.banks.values()):
        pairs += [(bank.auto_off_h, ode.auto_off[j]), (bank.empty_h, ode.empty[j])]
        pairs.append((bank.delivered_wh, ode.y[ode.n + ode.m + j]))
        if bank.soc_end is not None:
            pairs.append((bank.soc_end, ode.y[ode.n + j]))
        assert bank.state_end == ode.state[j], f"day {seed}, bank {j}"
    return [(seed, a, b) for a, b in pairs if (a is None) != (b is None) or (a is not None and abs(a - b) > NEAR)]


def test_the_same_devices_die_at_the_same_times_with_the_same_charge():
    assert [found for seed in range(60) for found in differences(seed)] == []


@pytest.mark.slow
def test_the_same_on_thousands_of_random_days():
    assert [found for seed in range(1_000, 11_000) for found in differences(seed)] == []


def test_the_random_days_are_lively():
    """A comparison of days on which nothing happens would show nothing."""
    results = [simulate(Day.model_validate(seeded_day(seed))) for seed in range(200)]
    devices = [device for result in results for device in result.devices.values()]
    banks = [bank for result in results for bank in result.banks.values()]
    courses = [course for result in results for course in result.device_courses.values()]
    assert sum(device.first_off_h is not None for device in devices) > 100
    assert sum(device.on_at_end and device.first_off_h is not None for device in devices) > 15
    assert sum(bank.empty_h is not None for bank in banks) > 20
    assert sum(bank.auto_off_h is not None for bank in banks) > 10
    assert sum(any(before < after for (_, before), (_, after) in pairwise(c.points)) for c in courses) > 100
