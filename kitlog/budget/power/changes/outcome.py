"""How a day turned out for those who matter: what lasts, what falls short and by how much, what a bank did."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from kitlog.budget.power.day import Bank, Day, Device, Modes
from kitlog.budget.power.question import Target
from kitlog.budget.power.result import BankResult, DayResult, Span
from kitlog.budget.power.simulate import simulate
from kitlog.budget.power.state import TINY

SOON_H = 0.02
"""A bank that sleeps so soon after its time-out never had enough load, in h."""


@dataclass(frozen=True, slots=True)
class Fare:
    """How one device fares on one day.

    Attributes:
        first_off_h: when it first goes off, h from the start; None: never.
        off_h: how long it is off in all; on_at_end: a device that was off may be on again.
        short_h: from then to the end of its last use; 0 if it is never off.
        hours_more: how long it would go on unplugged at the end of the day, with the load of its last use (which need
            not be that of the last phase, as in `result.DeviceResult`); None: it was off, or has no load.
        load_w: the load of its last use, W; 0 without one.
        soc_end, margin_pct: charge at the end, 0..1, and what of it is usable, in % of all that could be used then;
            None: no cell.
        least_soc: the charge asked for at the end, 0..1; 0 where there is no cell.
        lasts: never off, and at the end at `least_soc` or more.
        life_h: hours of use from the start of the day: to the first switch-off, or to the end of its last use and
            `hours_more` beyond. 0 without a load.
        on_h: hours until the end of its last use, without those that it is off.
    """

    first_off_h: float | None
    off_h: float
    on_at_end: bool
    short_h: float
    hours_more: float | None
    load_w: float
    soc_end: float | None
    margin_pct: float | None
    least_soc: float
    lasts: bool
    life_h: float
    on_h: float


@dataclass(frozen=True)
class Outcome:
    """A day that has been run, and how the devices that matter fare in it."""

    day: Day
    result: DayResult
    fares: Mapping[str, Fare]

    @cached_property
    def sleepy(self) -> frozenset[str]:
        """Banks that do not stay awake though they are wanted."""
        return frozenset(bank.id for bank in self.day.banks if _is_sleepy(bank, self.result))

    def all_last(self, but: frozenset[str] = frozenset()) -> bool:
        """Whether every device that matters lasts, but for those given up."""
        return all(fare.lasts for name, fare in self.fares.items() if name not in but)

    @property
    def first_off_h(self) -> Mapping[str, float | None]:
        """When each device of the day, whether it matters or not, first goes off."""
        return {name: device.first_off_h for name, device in self.result.devices.items()}

    def spare_h(self, device: str) -> float | None:
        """How long it would go on unplugged with the load of the last phase (`result.DeviceResult.hours_more`).

        None: it was off, or draws nothing then.
        """
        found = self.result.devices[device]
        return found.hours_more if found.first_off_h is None else None

    @property
    def banks(self) -> Mapping[str, BankResult]:
        """How each bank fares."""
        return self.result.banks


def outcome(day: Day, targets: Sequence[Target]) -> Outcome:
    """Run a day.

    Raises:
        InputFault: the day contradicts itself (`checks`), or a target is no device of it (`id.unknown`).
    """
    result = simulate(day)
    devices = {device.id: device for device in day.devices}
    fares = {target.device: _fare(devices[target.device], day, result, target.min_soc) for target in targets}
    return Outcome(day, result, fares)


def _fare(device: Device, day: Day, result: DayResult, min_soc: float) -> Fare:
    found, off = result.devices[device.id], result.device_courses[device.id].off
    end_h, load_w = last_use(device, day)
    enough = found.soc_end is None or found.soc_end >= min_soc - TINY
    off_h = found.first_off_h
    hours_more = found.margin_wh / load_w if off_h is None and load_w else None
    return Fare(
        first_off_h=off_h,
        off_h=found.off_h,
        on_at_end=found.on_at_end,
        short_h=0.0 if off_h is None else max(0.0, end_h - off_h),
        hours_more=hours_more,
        load_w=load_w,
        soc_end=found.soc_end,
        margin_pct=found.margin_pct,
        least_soc=0.0 if found.soc_end is None else min_soc,
        lasts=off_h is None and enough,
        life_h=end_h + (hours_more or 0.0) if off_h is None else off_h,
        on_h=end_h - sum(max(0.0, min(span.to_h, end_h) - span.from_h) for span in off),
    )


def last_use(device: Device, day: Day) -> tuple[float, float]:
    """When the last phase with a load of the device ends, h from the start, and that load in W; (0, 0) without one."""
    clock_h = end_h = last_w = 0.0
    for phase in day.phases:
        clock_h += phase.hours
        draw = device.draw_W.get(phase.id, 0.0)
        load_w = draw.mean_w if isinstance(draw, Modes) else draw
        if phase.hours > 0 and load_w > 0:
            end_h, last_w = clock_h, load_w
    return end_h, last_w


def _is_sleepy(bank: Bank, result: DayResult) -> bool:
    """Asleep as soon as something is plugged in, or before something on it goes off. All full is no trouble."""
    asleep_h = result.banks[bank.id].auto_off_h
    if asleep_h is None:
        return False
    soon_h = bank.auto_off_s / 3600 + SOON_H
    for name, course in result.device_courses.items():
        for span in course.plugged:
            off_h = result.devices[name].first_off_h
            late_off = off_h is not None and asleep_h < off_h <= span.to_h
            if _on(span, bank.id, asleep_h) and (asleep_h - span.from_h <= soon_h or late_off):
                return True
    return False


def _on(span: Span, bank: str, at_h: float) -> bool:
    return span.what == bank and span.from_h <= at_h <= span.to_h
