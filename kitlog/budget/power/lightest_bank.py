"""Which of the banks that a pilot owns is the lightest that does?"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from kitlog.budget.power.check_query import check_query
from kitlog.budget.power.checks import check_day
from kitlog.budget.power.day import Bank, Day, Given, Name
from kitlog.budget.power.question import SmallestBank, Target
from kitlog.budget.power.result import DayResult, DeviceResult
from kitlog.budget.power.simulate import simulate
from kitlog.budget.power.state import TINY

MOST_CHOICES = 100
"""More banks than a pilot owns; with the run without a bank, far under 600 runs of the day."""


class BankChoice(Given):
    """A bank that could be taken, and its mass."""

    bank: Bank
    mass_g: Annotated[int, Field(ge=0, le=100_000)]


class LightestBank(Given):
    """Which of `choices`, in the place of the day's bank `place` and on its plugs, is the lightest that will do?

    One run of the single day for each, and one without any bank there; no grid.
    """

    place: Name
    choices: Annotated[tuple[BankChoice, ...], Field(strict=False, max_length=MOST_CHOICES)]
    targets: Annotated[tuple[Target, ...], Field(strict=False, min_length=1)]


@dataclass(frozen=True, slots=True)
class TargetMargin:
    """How one target fares. Negative `soc_over`: so much too little at the end; None: no cell.

    margin_wh and hours_more are those of `result.DeviceResult`, over the floor, not over the charge asked for.
    """

    met: bool
    first_off_h: float | None
    soc_over: float | None
    margin_wh: float
    hours_more: float | None


@dataclass(frozen=True, slots=True)
class BankTrial:
    """The day with one bank.

    Attributes:
        bank: None: without any bank in that place.
        too_few_ports: more plugs than it has ports in some phase; nothing was simulated, and the margins are empty.
        in_hand_wh: what its ports could still give at the end; None for a supply without end, and without a bank.
    """

    bank: str | None
    mass_g: int
    meets: bool
    margins: Mapping[str, TargetMargin]
    in_hand_wh: float | None = None
    too_few_ports: bool = False


@dataclass(frozen=True, slots=True)
class LightestResult:
    """The lightest that meets every target (None: none of them does), and all that were tried, lightest first."""

    lightest: BankTrial | None
    tried: tuple[BankTrial, ...]


def lightest_bank(day: Day, query: LightestBank) -> LightestResult:
    """Run the day without the bank and with each choice. Of two equally heavy ones, the one that has more left.

    Raises:
        InputFault: the day or the question contradicts itself (`checks`); a choice whose id the day has elsewhere.
    """
    check_day(day)
    check_query(SmallestBank(bank=query.place, max_Wh=1.0, targets=query.targets), day)
    tried = [_without(day, query), *(_with(day, query, choice) for choice in query.choices)]
    tried.sort(key=lambda trial: (trial.mass_g, -(trial.in_hand_wh or 0.0)))
    return LightestResult(next((trial for trial in tried if trial.meets), None), tuple(tried))


def _without(day: Day, query: LightestBank) -> BankTrial:
    bare = day.model_copy(
        update={
            "banks": tuple(bank for bank in day.banks if bank.id != query.place),
            "plugs": tuple(plug for plug in day.plugs if plug.bank != query.place),
        }
    )
    return _tried(None, 0, simulate(bare), query)


def _with(day: Day, query: LightestBank, choice: BankChoice) -> BankTrial:
    name = choice.bank.id
    if any(_plugs(day, query.place, phase.id) > choice.bank.ports for phase in day.phases):
        return BankTrial(name, choice.mass_g, meets=False, margins={}, too_few_ports=True)
    changed = day.model_copy(
        update={
            "banks": tuple(choice.bank if bank.id == query.place else bank for bank in day.banks),
            "plugs": tuple(
                plug.model_copy(update={"bank": name}) if plug.bank == query.place else plug for plug in day.plugs
            ),
        }
    )
    return _tried(name, choice.mass_g, simulate(changed), query)


def _plugs(day: Day, bank: str, phase: str) -> int:
    return sum(plug.bank == bank and plug.phase == phase for plug in day.plugs)


def _tried(bank: str | None, mass_g: int, result: DayResult, query: LightestBank) -> BankTrial:
    margins = {target.device: _margin(result.devices[target.device], target.min_soc) for target in query.targets}
    return BankTrial(
        bank=bank,
        mass_g=mass_g,
        meets=all(margin.met for margin in margins.values()),
        margins=margins,
        in_hand_wh=None if bank is None else result.banks[bank].in_hand_wh,
    )


def _margin(device: DeviceResult, min_soc: float) -> TargetMargin:
    soc_over = None if device.soc_end is None else device.soc_end - min_soc
    return TargetMargin(
        met=device.first_off_h is None and (soc_over is None or soc_over >= -TINY),
        first_off_h=device.first_off_h,
        soc_over=soc_over,
        margin_wh=device.margin_wh,
        hours_more=device.hours_more,
    )
