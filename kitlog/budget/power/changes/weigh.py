"""Runs each candidate in the likely and the high case and puts what helps most at the top."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import inf

from kitlog.budget.power.changes.candidate import Candidate
from kitlog.budget.power.changes.effect import LEAST_H, Effect, effects
from kitlog.budget.power.changes.generate import candidates
from kitlog.budget.power.changes.given import ToHand
from kitlog.budget.power.changes.outcome import Fare, Outcome, outcome
from kitlog.budget.power.checks import refuse_unknown
from kitlog.budget.power.day import Day
from kitlog.budget.power.question import Target


@dataclass(frozen=True)
class Planned:
    """The day as planned, run in the likely case and, if it was given, in the high one."""

    targets: tuple[Target, ...]
    likely: Outcome
    high: Outcome | None = None

    @cached_property
    def trouble(self) -> frozenset[str]:
        """Devices that matter and do not last in one of the cases."""
        return frozenset(name for one in self.cases.values() for name, fare in one.fares.items() if not fare.lasts)

    @property
    def sleepy(self) -> frozenset[str]:
        """Banks that do not stay awake though they are wanted."""
        return frozenset(name for one in self.cases.values() for name in one.sleepy)

    @property
    def cases(self) -> Mapping[str, Outcome]:
        """The outcomes by the name of their case."""
        return {"likely": self.likely} if self.high is None else {"likely": self.likely, "high": self.high}


@dataclass(frozen=True, slots=True)
class DeviceGain:
    """What a change does for one device.

    Attributes:
        gain_h: hours of use more (negative: fewer) in the likely case: it goes off later, or could go on longer. If it
            is off for longer in all, never the better for going off no sooner: then the hours so lost count.
        gain_high_h: the same in the high case; None: not run.
        likely, high: how it fares then.
    """

    gain_h: float
    gain_high_h: float | None
    likely: Fare
    high: Fare | None


@dataclass(frozen=True, slots=True)
class Weighed:
    """A candidate, and what came of it.

    Attributes:
        devices: the devices that matter, without those given up.
        all_last, all_last_high: whether all of these last in the likely and in the high case (None: not run).
        cut_h, cut_high_h: hours by which these fall less short, added up; negative: shorter still.
        harms: what goes off, runs empty or falls asleep because of it.
        mends: what no longer does, or later.
    """

    candidate: Candidate
    devices: Mapping[str, DeviceGain]
    all_last: bool
    all_last_high: bool | None
    cut_h: float
    cut_high_h: float | None
    harms: tuple[Effect, ...]
    mends: tuple[Effect, ...]


def plan(likely: Day, high: Day | None = None, targets: Sequence[Target] = ()) -> Planned:
    """Run the day as planned.

    Args:
        likely: the day in the likely case.
        high: the same phases, devices and banks in the high case.
        targets: devices that matter, with the charge they must end with; empty: all devices, never off.

    Raises:
        InputFault: the day contradicts itself (`checks`), or `id.unknown` for a target.
    """
    names = {device.id for device in likely.devices}
    for target in targets:
        if target.device not in names:
            refuse_unknown(target.device, "device", "targets")
    asked = tuple(targets) or tuple(Target(device=device.id) for device in likely.devices)
    return Planned(asked, outcome(likely, asked), None if high is None else outcome(high, asked))


def remedies(planned: Planned, to_hand: ToHand, seldom: Collection[str] = ()) -> tuple[Weighed, ...]:
    """All sensible candidates for what is in trouble, weighed; none where all lasts and every bank stays awake.

    `seldom`: devices that are in trouble too, as they last too seldom by chance.
    """
    return weigh(planned, candidates(planned.likely.day, to_hand, planned.trouble.union(seldom), planned.sleepy))


def weigh(planned: Planned, tried: Iterable[Candidate]) -> tuple[Weighed, ...]:
    """Run the candidates, once in each case of `planned`.

    Sorted: those that make all last in every case, then in the likely case, and among them those that give nothing up;
    then by hours gained, then by mass (not known: last), then by the margin of the device that has least.

    Raises:
        InputFault: a candidate makes a day that contradicts itself (`checks`).
    """
    return tuple(sorted((_weighed(planned, candidate) for candidate in tried), key=_rank))


def _weighed(planned: Planned, candidate: Candidate) -> Weighed:
    after = {case: outcome(candidate.make(was.day), planned.targets) for case, was in planned.cases.items()}
    but, likely, high = candidate.gives_up, after["likely"], after.get("high")
    pairs = [(case, was, after[case]) for case, was in planned.cases.items()]
    return Weighed(
        candidate=candidate,
        devices={name: _gain(name, planned, likely, high) for name in likely.fares if name not in but},
        all_last=likely.all_last(but),
        all_last_high=None if high is None else high.all_last(but),
        cut_h=_cut_h(planned.likely, likely, but),
        cut_high_h=None if high is None or planned.high is None else _cut_h(planned.high, high, but),
        harms=tuple(effect for case, was, now in pairs for effect in effects(was, now, case, but)),
        mends=tuple(effect for case, was, now in pairs for effect in effects(now, was, case, but)),
    )


def _gain(name: str, planned: Planned, likely: Outcome, high: Outcome | None) -> DeviceGain:
    late = None if high is None else high.fares[name]
    return DeviceGain(
        gain_h=_gain_h(planned.likely.fares[name], likely.fares[name]),
        gain_high_h=None if late is None or planned.high is None else _gain_h(planned.high.fares[name], late),
        likely=likely.fares[name],
        high=late,
    )


def _gain_h(was: Fare, now: Fare) -> float:
    later_h, on_h = now.life_h - was.life_h, now.on_h - was.on_h
    return min(later_h, on_h) if on_h < -LEAST_H else later_h


def _cut_h(before: Outcome, after: Outcome, but: frozenset[str]) -> float:
    return sum(fare.short_h - after.fares[name].short_h for name, fare in before.fares.items() if name not in but)


def _rank(one: Weighed) -> tuple[float, ...]:
    mass_g = one.candidate.mass_g
    return (
        not (one.all_last and one.all_last_high is not False),
        not one.all_last,
        bool(one.candidate.gives_up),
        -round(one.cut_h + (one.cut_high_h or 0.0), 3),
        inf if mass_g is None else mass_g,
        -_least_margin(one),
    )


def _least_margin(one: Weighed) -> float:
    fares = [gain.high or gain.likely for gain in one.devices.values()]
    return min((fare.margin_pct for fare in fares if fare.margin_pct is not None), default=0.0)
