"""Counts, over the days drawn, what lasts, what is alive at the end, and when each device goes off."""

from bisect import insort
from collections.abc import Sequence

from kitlog.budget.power.fan import QUANTILES_PCT, rank
from kitlog.budget.power.state import ON, TINY, DeviceState
from kitlog.budget.power.story import Run
from kitlog.budget.power.targets import lasts


class Tally:
    """Counts by index of the device; `least` is the charge that each must have at the end."""

    def __init__(self, least: Sequence[float], callers: Sequence[int]) -> None:
        self.days = 0
        self.lasted = [0] * len(least)
        self.alive = [0] * len(least)
        self.all_lasted = 0
        self.caller_alive = 0
        self._least = least
        self._callers = callers
        self._off_h: list[list[float]] = [[] for _ in least]
        self._off_at: list[list[float]] = [[] for _ in least]

    def add(self, run: Run) -> None:
        """Count one day."""
        self.days += 1
        held = [lasts(run, index, min_soc) for index, min_soc in enumerate(self._least)]
        living = [is_alive(device) for device in run.devices]
        for index, device in enumerate(run.devices):
            self.lasted[index] += held[index]
            self.alive[index] += living[index]
            if device.first_off_h is not None:
                insort(self._off_h[index], device.first_off_h)
                insort(self._off_at[index], phases_passed(run.plan.hours, device.first_off_h))
        self.all_lasted += all(held)
        self.caller_alive += any(living[index] for index in self._callers)

    def off_h(self, index: int) -> tuple[float | None, ...]:
        """Hours by which 5, 50 and 95 % of the days have switched the device off; None where fewer days have."""
        return self._by_share_of_days(self._off_h[index])

    def off_at(self, index: int) -> tuple[float | None, ...]:
        """The same in phases passed (`phases_passed`): where in the plan 5, 50 and 95 % of the days have."""
        return self._by_share_of_days(self._off_at[index])

    def _by_share_of_days(self, found: list[float]) -> tuple[float | None, ...]:
        ranks = [rank(pct, self.days) for pct in QUANTILES_PCT]
        return tuple(found[at] if at < len(found) else None for at in ranks)


def phases_passed(hours: Sequence[float], at_h: float) -> float:
    """How many phases of a day with these durations have passed at a time; 1.25: a quarter of the second."""
    start_h = 0.0
    for index, lasts_h in enumerate(hours):
        if lasts_h > 0 and at_h <= start_h + lasts_h:
            return index + max(0.0, at_h - start_h) / lasts_h
        start_h += lasts_h
    return float(len(hours))


def is_alive(device: DeviceState) -> bool:
    """On at the end of the day, with usable charge of its own or on a bank that gives: it could be used right then.

    A device that was off for a while and has come back counts; one that is on only because nothing was drawn from its
    locked cell does not.
    """
    fed = device.bank is not None and device.bank.state == ON
    return device.on and (fed or (device.loss > 0.0 and device.soc > device.floor + TINY))
