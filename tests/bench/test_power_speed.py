"""How much faster the exact power budget is than a numerical one. A ratio of two timings of the same days in one run."""

import json
import sys
from pathlib import Path
from time import perf_counter

import pytest

from kitlog.budget.power.day import Day
from kitlog.budget.power.simulate import simulate

TESTS = Path(__file__).parents[1]
sys.path.insert(0, str(TESTS / "reference"))  # importmode=importlib finds no neighbours
from power_ode import Ode  # noqa: E402  # after the path is known

AT_LEAST = 20


def best_of(times, task):
    shortest = float("inf")
    for _ in range(times):
        start = perf_counter()
        task()
        shortest = min(shortest, perf_counter() - start)
    return shortest


@pytest.mark.bench
@pytest.mark.parametrize("case", ["O3", "O4", "O5", "O9"])
def test_a_day_is_simulated_twenty_times_faster_than_it_is_integrated(case):
    cases = json.loads((TESTS / "budget/cases/power-open.json").read_text(encoding="utf-8"))["cases"]
    raw = next(each["day"] for each in cases if each["id"] == case)
    day = Day.model_validate(raw)
    exact_s = best_of(50, lambda: simulate(day))
    ode_s = best_of(5, lambda: Ode(raw, rtol=1e-9).run())
    print(  # noqa: T201  # the figure is the point
        f"\n{case}: {exact_s * 1e6:.0f} us exact, {ode_s * 1e3:.1f} ms integrated, {ode_s / exact_s:.0f} times faster"
    )
    assert ode_s / exact_s >= AT_LEAST
