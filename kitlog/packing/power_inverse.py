"""The inverse questions of an outing's power: longest retrieve, lowest charge at the start, smallest bank."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from kitlog.budget.power.day import Day
from kitlog.budget.power.longest_phase import longest_phase
from kitlog.budget.power.lowest_start import lowest_start
from kitlog.budget.power.question import LongestPhase, LowestStart, SmallestBank, Target
from kitlog.budget.power.result import DayResult
from kitlog.budget.power.smallest_bank import smallest_bank
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.packing.assessment import Assessment
from kitlog.packing.own_banks import carried
from kitlog.packing.power_changes import power_targets
from kitlog.packing.power_day import NO_PHASES

HORIZON_H = 72.0
"""No retrieve is looked at beyond three days."""

LARGEST_WH = 160.0
"""No larger bank is looked at: more may not travel by air at all, and few are carried."""

EXACT_H = 3e-4
"""A device that is off for less than this, in h, is so by the rounding of the simulation."""

_RETRIEVE = frozenset({PhaseWay.PACK_UP, PhaseWay.WALK_OUT, PhaseWay.RIDE_HOME, PhaseWay.NIGHT, PhaseWay.TRAVEL})


class Outcome(StrEnum):
    """What an answer without a figure means, so that none is taken for another."""

    FOUND = "found"
    BEYOND = "beyond the limit"
    NEVER = "not even the most will do"
    NOT_ASKED = "cannot be asked"


@dataclass(frozen=True, slots=True)
class Inverse:
    """An answer.

    Attributes:
        outcome: `found` with its figure; `beyond`: it holds as far as was looked; `never`: not even the largest, or
            full, will do; `not asked`: nothing was simulated, or there is nothing of the sort in the day.
        figure: h, % or Wh; 0 is a figure: fails at once, any start, no bank.
        limit: how far was looked, in the same unit.
        subject: id of the device or bank; phase: of the longest retrieve, the phase that was drawn out.
        off_from_h, off_before_h: of the longest retrieve, when the device first goes off before that phase begins, h
            from the start of the day, and for how long in all; None and 0 where it is on till then. The figure counts
            from the phase's beginning, whatever was before.
        why: of the longest retrieve, why it was not asked: ``no phases`` or ``no devices`` (nothing was simulated),
            ``swollen`` (the phone is), ``no phone`` (with known figures), ``no way home``, ``no cell``; else empty.
    """

    outcome: Outcome
    figure: float | None
    limit: float
    unit: str
    subject: str = ""
    phase: str = ""
    off_from_h: float | None = None
    off_before_h: float = 0.0
    why: str = ""


def longest_retrieve(
    assessment: Assessment, least_pct: float, *, high: bool = False, device: str = "", horizon_h: float = HORIZON_H
) -> Inverse:
    """How long the last phase of the day can be with a device (the phone, unless named) on and at `least_pct` or more.

    All before it is as in the likely case, or in the high one. Exact, one run.

    Raises:
        InputFault: ``id.unknown``: a device that has no part in the day; number codes for `least_pct` (0..100).
    """
    day = assessment.power.longest if high else assessment.power.planned
    name = device or _phone(assessment, day)
    phase = _last_phase(assessment, day)
    why = _why_not(assessment, name, phase)
    if why or day is None:
        return Inverse(Outcome.NOT_ASKED, None, horizon_h, "h", name, why=why)
    query = LongestPhase(phase=phase, device=name, min_soc=least_pct / 100, horizon_h=horizon_h)
    hours = longest_phase(day, query)
    outcome = Outcome.BEYOND if hours is None else Outcome.FOUND
    played = assessment.power.high if high else assessment.power.likely
    off_from_h, off_before_h = _off_before(name, phase, day, played)
    return Inverse(outcome, hours, horizon_h, "h", name, phase, off_from_h, off_before_h)


def _why_not(assessment: Assessment, name: str, phase: str) -> str:
    power = assessment.power
    if power.reason == NO_PHASES:
        return NO_PHASES
    if not name and any(item.kind is Kind.PHONE and item.id in power.swollen for item in carried(assessment)):
        return "swollen"
    if not name:
        return power.reason or "no phone"
    if not phase:
        return "no way home"
    return "no cell" if power.planned is not None and _is_empty(name, power.planned) else ""


def _off_before(name: str, last: str, day: Day, played: DayResult | None) -> tuple[float | None, float]:
    """When a device first goes off before the last phase begins, and for how long in all till then."""
    if played is None or name not in played.device_courses:
        return None, 0.0
    begins_h = sum(phase.hours for phase in day.phases if phase.id != last)
    off = [span for span in played.device_courses[name].off if span.from_h < begins_h]
    off_h = sum(min(span.to_h, begins_h) - span.from_h for span in off)
    return (off[0].from_h, off_h) if off_h > EXACT_H else (None, 0.0)


def lowest_start_pct(assessment: Assessment, items: Iterable[Item], device: str, *, high: bool = False) -> Inverse:
    """The lowest charge, %, with which a device may begin so that it lasts, and from every higher one too.

    It alone is judged, not what shares its banks: it is never off, and keeps at the end what is to be kept.
    At most 600 runs of the day.
    """
    day = assessment.power.longest if high else assessment.power.planned
    targets = _targets(items, day, {device})
    if day is None or not targets or _is_empty(device, day):
        return Inverse(Outcome.NOT_ASKED, None, 100.0, "%", device)
    share = lowest_start(day, LowestStart(device=device, targets=targets))
    figure = None if share is None else 100 * share
    return Inverse(Outcome.NEVER if figure is None else Outcome.FOUND, figure, 100.0, "%", device)


def smallest_bank_wh(
    assessment: Assessment, items: Iterable[Item], bank: str, *, high: bool = False, most_wh: float = LARGEST_WH
) -> Inverse:
    """The least label energy, Wh, of a bank with which all that hangs on it lasts, and with every larger one too.

    Its other figures stay. At most 600 runs of the day.
    """
    day = assessment.power.longest if high else assessment.power.planned
    hanging = {plug.device for plug in day.plugs if plug.bank == bank} if day else set()
    targets = _targets(items, day, hanging)
    if day is None or not targets:
        return Inverse(Outcome.NOT_ASKED, None, most_wh, "Wh", bank)
    figure = smallest_bank(day, SmallestBank(bank=bank, max_Wh=most_wh, targets=targets))
    return Inverse(Outcome.NEVER if figure is None else Outcome.FOUND, figure, most_wh, "Wh", bank)


def _targets(items: Iterable[Item], day: Day | None, devices: set[str]) -> tuple[Target, ...]:
    if day is None:
        return ()
    return tuple(target for target in power_targets(items, day) if target.device in devices)


def _is_empty(name: str, day: Day) -> bool:
    """Whether a device of the day has no cell: there is no charge to ask for."""
    return any(device.id == name and not (device.label_wh or 0.0) * device.health for device in day.devices)


def _phone(assessment: Assessment, day: Day | None) -> str:
    there = {device.id for device in day.devices} if day else set()
    phones = (line.item.id for line in assessment.lines if line.item.kind is Kind.PHONE)
    return next((name for name in phones if name in there), "")


def _last_phase(assessment: Assessment, day: Day | None) -> str:
    """The last phase with a duration, if it is on the way home: a flight is no retrieve."""
    lasting = {phase.id for phase in day.phases if phase.hours > 0} if day else set()
    last = next((phase for phase in reversed(assessment.outing.phases) if phase.name in lasting), None)
    return last.name if last is not None and last.way in _RETRIEVE else ""
