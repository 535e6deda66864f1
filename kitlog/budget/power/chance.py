"""How often does each device last, when durations, draws and starts are not certain?"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt

from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Day
from kitlog.budget.power.forecast_draws import Uncertain
from kitlog.budget.power.question import Chance
from kitlog.budget.power.targets import lasts

GOOD = 0.95
"""From this chance on a device is relied on. A choice, no source: one failed call in twenty long days is a few in a
pilot's life."""

_Z_95 = 1.959963984540054
"""How many standard deviations of a normal distribution hold 95 % of it."""


@dataclass(frozen=True, slots=True)
class Odds:
    """Share of the days drawn on which something holds, and the standard error of that share: sqrt(p (1 - p) / n).

    The error is that of drawing so many days and no more; that of the figures put in is not known and not in it.
    """

    probability: float
    standard_error: float
    days: int

    @property
    def within(self) -> tuple[float, float]:
        """Bounds of the probability that hold 95 times of 100, also where all days or none did (Wilson, 1927)."""
        n, z = self.days, _Z_95
        middle = (self.probability + z * z / (2 * n)) / (1 + z * z / n)
        half = z / (1 + z * z / n) * sqrt(self.probability * (1 - self.probability) / n + z * z / (4 * n * n))
        return max(0.0, min(middle - half, self.probability)), min(1.0, max(middle + half, self.probability))


def odds_of(held: int, days: int) -> Odds:
    """The odds of what held on `held` of `days` days."""
    probability = held / days
    return Odds(probability, sqrt(probability * (1.0 - probability) / days), days)


def too_seldom(chances: Mapping[str, Odds]) -> frozenset[str]:
    """Devices that were off on some of the days drawn, on so many that it may be more than one day in twenty."""
    return frozenset(name for name, one in chances.items() if one.probability < 1 and one.within[0] < GOOD)


def chance(day: Day, query: Chance) -> dict[str, Odds]:
    """Draw `n` days, each figure on its own from a triangle (low, likely, high), and run each.

    The same seed gives the same days, in whatever order the JSON names the figures. `forecast` tells more of them.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`).
    """
    check_day(day)
    check_query(query, day)
    least = [least_soc(query, device.id) for device in day.devices]
    held = [0] * len(least)
    for run in Uncertain(day, query).days(query.n, query.seed):
        for index, min_soc in enumerate(least):
            held[index] += lasts(run, index, min_soc)
    return {device.id: odds_of(count, query.n) for device, count in zip(day.devices, held, strict=True)}


def least_soc(query: Chance, device: str) -> float:
    """State of charge that a device must have at the end."""
    return query.min_soc.get(device, 0.0) if isinstance(query.min_soc, Mapping) else query.min_soc
