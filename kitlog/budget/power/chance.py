"""How often does each device last, when durations, draws and starts are not certain?"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt
from random import Random

from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import BankPlan, DevicePlan, Plan, plan_day
from kitlog.budget.power.question import Chance
from kitlog.budget.power.run import run_day
from kitlog.budget.power.targets import lasts


@dataclass(frozen=True, slots=True)
class Odds:
    """Share of the days drawn on which the device lasts, and the standard error of that share: sqrt(p (1 - p) / n)."""

    probability: float
    standard_error: float


@dataclass(slots=True)
class _Uncertain:
    """One figure of the plan, and the triangle from which it is drawn."""

    figures: list[float]
    index: int
    triple: tuple[float, float, float]


def chance(day: Day, query: Chance) -> dict[str, Odds]:
    """Draw `n` days, each figure on its own from a triangle (low, likely, high), and run each.

    The same seed gives the same days, in whatever order the JSON names the figures.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`).
    """
    check_day(day)
    check_query(query, day)
    plan = plan_day(day)
    starts = [device.start for device in plan.devices] + [bank.start for bank in plan.banks]
    uncertain = _uncertain(day, query, plan, starts)
    least = [_least(query, device.id) for device in day.devices]
    held = [0] * len(least)
    random = Random(query.seed)
    for _ in range(query.n):
        _draw(uncertain, random)
        _set_starts(plan, starts)
        run = run_day(plan)
        for index, min_soc in enumerate(least):
            held[index] += lasts(run, index, min_soc)
    return {device.id: _odds(count / query.n, query.n) for device, count in zip(day.devices, held, strict=True)}


def _odds(probability: float, n: int) -> Odds:
    return Odds(probability, sqrt(probability * (1.0 - probability) / n))


def _least(query: Chance, device: str) -> float:
    return query.min_soc.get(device, 0.0) if isinstance(query.min_soc, Mapping) else query.min_soc


def _uncertain(day: Day, query: Chance, plan: Plan, starts: list[float]) -> list[_Uncertain]:
    """In the order of the day, so that the draws do not depend on the order of the question."""
    found = [
        _Uncertain(plan.hours, index, query.hours[phase.id])
        for index, phase in enumerate(day.phases)
        if phase.id in query.hours
    ]
    for device, device_plan in zip(day.devices, plan.devices, strict=True):
        draws = query.draws.get(device.id, {})
        found += [
            _Uncertain(device_plan.load_w, index, draws[phase.id])
            for index, phase in enumerate(day.phases)
            if phase.id in draws
        ]
    names = [cell.id for cell in (*day.devices, *day.banks)]
    return found + [
        _Uncertain(starts, index, query.start[name]) for index, name in enumerate(names) if name in query.start
    ]


def _draw(uncertain: list[_Uncertain], random: Random) -> None:
    for figure in uncertain:
        low, likely, high = figure.triple
        figure.figures[figure.index] = random.triangular(low, high, likely)


def _set_starts(plan: Plan, starts: list[float]) -> None:
    cells: list[DevicePlan | BankPlan] = [*plan.devices, *plan.banks]
    for cell, start in zip(cells, starts, strict=True):
        cell.start = start
