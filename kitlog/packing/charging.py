"""What has to be full before leaving, and how long it then lasts."""

from dataclasses import dataclass

from kitlog.budget.power.result import DayResult
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.assessment import Assessment
from kitlog.packing.capacity import has_cell, is_bank
from kitlog.packing.power_day import ALWAYS_POWERED

CHARGED = ALWAYS_POWERED | {Kind.POWER_BANK}
"""Kinds that have a battery whether or not it has been described."""


@dataclass(frozen=True, slots=True)
class Lasting:
    """How a full device or bank fares in one case: charge at the end in per cent, when it first goes off in h.

    A day that was not simulated, or a thing without a part in it, has neither and `reckoned` False.
    """

    reckoned: bool = False
    first_off_h: float | None = None
    end_pct: float | None = None


@dataclass(frozen=True, slots=True)
class Charge:
    """One thing to charge.

    Attributes:
        is_bank: it feeds others.
        unknown: its energy or its draw is not on record, or the plan has no durations: how long it lasts is not known.
    """

    item: Item
    n: int
    is_bank: bool
    unknown: bool
    likely: Lasting
    high: Lasting


def charges(assessment: Assessment) -> tuple[Charge, ...]:
    """All that has a battery and goes along, banks first: they are charged before the devices they feed."""
    found = [
        Charge(
            line.item,
            line.n,
            is_bank(line.item),
            assessment.power.likely is None or line.item.id in assessment.power.unknown,
            _lasting(line.item, assessment.power.likely),
            _lasting(line.item, assessment.power.high),
        )
        for line in assessment.lines
        if not line.in_car and (has_cell(line.item) or line.item.kind in CHARGED)
    ]
    return tuple(sorted(found, key=lambda charge: not charge.is_bank))


def _lasting(item: Item, day: DayResult | None) -> Lasting:
    if day is not None and item.id in day.devices:
        device = day.devices[item.id]
        return Lasting(reckoned=True, first_off_h=device.first_off_h, end_pct=_pct(device.soc_end))
    if day is not None and item.id in day.banks:
        bank = day.banks[item.id]
        return Lasting(reckoned=True, first_off_h=bank.empty_h, end_pct=_pct(bank.soc_end))
    return Lasting()


def _pct(share: float | None) -> float | None:
    return None if share is None else 100 * share
