"""Days drawn at random: each uncertain figure on its own from its triangle, and every day run by the same routine.

Nothing else draws days: the chance that something lasts, the forecast and the picture's fan look at the same ones.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import BankPlan, DevicePlan, Plan, plan_day
from kitlog.budget.power.question import Chance
from kitlog.budget.power.recorder import Recorder
from kitlog.budget.power.run import run_day
from kitlog.budget.power.story import Run


@dataclass(slots=True)
class _Figure:
    """One figure of the plan, and the triangle (low, likely, high) from which it is drawn."""

    figures: list[float]
    index: int
    triple: tuple[float, float, float]


class Uncertain:
    """The plan of a checked day, and those of its figures that are uncertain."""

    def __init__(self, day: Day, query: Chance) -> None:
        self.plan: Plan = plan_day(day)
        self._cells: list[DevicePlan | BankPlan] = [*self.plan.devices, *self.plan.banks]
        self._starts = [cell.start for cell in self._cells]
        self._figures = _figures(day, query, self.plan, self._starts)

    def days(self, n: int, seed: int, recorder: Recorder | None = None, recorded: int = 0) -> Iterator[Run]:
        """Draw and run n days; the same seed gives the same days. A recorder sees the first `recorded` of them."""
        random = Random(seed)
        triangular, plan, figures = random.triangular, self.plan, self._figures
        for number in range(n):
            for figure in figures:
                low, likely, high = figure.triple
                figure.figures[figure.index] = triangular(low, high, likely)
            self._set_starts()
            yield run_day(plan, recorder if number < recorded else None)

    def likely_day(self, recorder: Recorder | None = None) -> Run:
        """The day on which every uncertain figure is its likely one."""
        for figure in self._figures:
            figure.figures[figure.index] = figure.triple[1]
        self._set_starts()
        return run_day(self.plan, recorder)

    def _set_starts(self) -> None:
        for cell, start in zip(self._cells, self._starts, strict=True):
            cell.start = start


def _figures(day: Day, query: Chance, plan: Plan, starts: list[float]) -> list[_Figure]:
    """In the order of the day, so that the draws do not depend on the order of the question."""
    found = [
        _Figure(plan.hours, index, query.hours[phase.id])
        for index, phase in enumerate(day.phases)
        if phase.id in query.hours
    ]
    for device, device_plan in zip(day.devices, plan.devices, strict=True):
        draws = query.draws.get(device.id, {})
        found += [
            _Figure(device_plan.load_w, index, draws[phase.id])
            for index, phase in enumerate(day.phases)
            if phase.id in draws
        ]
    names = [cell.id for cell in (*day.devices, *day.banks)]
    return found + [
        _Figure(starts, index, query.start[name]) for index, name in enumerate(names) if name in query.start
    ]
