"""What the fan costs beside the chance alone: a ratio of two timings of the same days in one run."""

from time import process_time

import pytest

from kitlog.budget.power.chance import chance
from kitlog.budget.power.day import Day
from kitlog.budget.power.forecast import forecasts
from kitlog.budget.power.forecast_question import ForecastQuery

AT_MOST = 2
PHASES = {"wait": (1.5, 14), "flight": (4.5, -2), "walk": (1, 15), "ride": (2, 18)}


def device(name, cell_wh, watts, **how):
    return {"id": name, "cell_Wh": cell_wh, "cutoff": 0.05, "draw_W": dict(zip(PHASES, watts, strict=True)), **how}


DAY = Day.model_validate(
    {
        "phases": [{"id": name, "hours": hours, "ambient_C": temp_c} for name, (hours, temp_c) in PHASES.items()],
        "devices": [
            device("phone", 15.57, (0.6, 1.1, 0.9, 0.8), charge_max_W=7),
            device("computer", 10.545, (0.2, 0.45, 0.1, 0), charge_max_W=5),
            device("radio", 9.99, (0.8362,) * 4),
            device("messenger", 4.6, (0.07,) * 4),
        ],
        "banks": [{"id": "bank", "cell_Wh": 34.65, "ports": 2, "quiescent_W": 0.05, "temp_fixed_C": 15}],
        "plugs": [
            {"phase": "flight", "device": "phone", "bank": "bank", "connect_below": 0.6},
            {"phase": "walk", "device": "phone", "bank": "bank"},
            {"phase": "ride", "device": "phone", "bank": "bank"},
            {"phase": "ride", "device": "computer", "bank": "bank"},
        ],
    }
)
QUERY = ForecastQuery(
    n=10_000,
    hours={"wait": (0.5, 1.5, 3.0), "flight": (2.5, 4.5, 7.5), "walk": (0.2, 1.0, 3.0), "ride": (0.5, 2.0, 5.0)},
    draws={"phone": {"flight": (0.7, 1.1, 2.6)}, "radio": {"flight": (0.6, 0.84, 1.1)}},
    start={"phone": (0.8, 0.95, 1.0), "bank": (0.7, 0.9, 1.0)},
    callers=("phone", "messenger"),
)


def best_of(times, task):
    shortest = float("inf")
    for _ in range(times):
        start = process_time()
        task()
        shortest = min(shortest, process_time() - start)
    return shortest


@pytest.mark.bench
def test_the_fan_costs_no_more_than_the_days_themselves():
    alone_s = best_of(3, lambda: chance(DAY, QUERY))
    with_fan_s = best_of(3, lambda: list(forecasts(DAY, QUERY)))
    print(  # noqa: T201  # the figure is the point
        f"\n{QUERY.n / alone_s:.0f} days/s alone, {QUERY.n / with_fan_s:.0f} with fan, {with_fan_s / alone_s:.2f} times"
    )
    assert with_fan_s / alone_s <= AT_MOST
