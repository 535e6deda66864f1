"""How far an outing's power goes: longest retrieve, lowest charges at the start, smallest and lightest bank."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from kitlog.budget.result import Sure
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.packing.lightest import MyLightest, my_lightest_bank
from kitlog.packing.power_chance import how_sure
from kitlog.packing.power_inverse import Inverse, Outcome, longest_retrieve, lowest_start_pct, smallest_bank_wh

KEEP_PCT = 10.0
"""Charge that the phone is to keep through the retrieve, %, unless the pilot says otherwise (as the findings ask)."""


@dataclass(frozen=True, slots=True)
class BothCases:
    """One answer in the likely and in the high case, and how sure the figures are that it rests on."""

    likely: Inverse
    high: Inverse
    sure: Sure


@dataclass(frozen=True, slots=True)
class PowerLimits:
    """The answers so far; `lightest` is None until `complete`, and then where there is nothing to ask.

    Attributes:
        starts: of each simulated device; banks: the smallest that would do in the place of each bank that goes along.
    """

    starts: tuple[BothCases, ...] = ()
    banks: tuple[BothCases, ...] = ()
    lightest: MyLightest | None = None
    complete: bool = False


def retrieve_limit(assessment: Assessment, keep_pct: float = KEEP_PCT) -> BothCases:
    """The longest retrieve with the phone at `keep_pct` or more: two runs of the day.

    Raises:
        InputFault: number codes for `keep_pct` (0..100).
    """
    likely, high = (longest_retrieve(assessment, keep_pct, high=case) for case in (False, True))
    return _both(likely, high, (likely.subject,), assessment)


def power_limits(assessment: Assessment, items: Iterable[Item], library: Library) -> Iterator[PowerLimits]:
    """All the other answers, one more each time, each of at most 1,200 runs of the day: not for the window's thread."""
    kit = tuple(items)
    day = assessment.power.planned
    found = PowerLimits()
    for device in day.devices if day else ():
        likely, high = (lowest_start_pct(assessment, kit, device.id, high=case) for case in (False, True))
        found = replace(found, starts=(*found.starts, _both(likely, high, (device.id,), assessment)))
        yield found
    for bank in day.banks if day else ():
        likely, high = (smallest_bank_wh(assessment, kit, bank.id, high=case) for case in (False, True))
        hanging = tuple(dict.fromkeys(plug.device for plug in day.plugs if plug.bank == bank.id)) if day else ()
        found = replace(found, banks=(*found.banks, _both(likely, high, hanging, assessment)))
        yield found
    yield replace(found, lightest=my_lightest_bank(assessment, kit, library), complete=True)


def _both(likely: Inverse, high: Inverse, devices: tuple[str, ...], assessment: Assessment) -> BothCases:
    asked = likely.outcome is not Outcome.NOT_ASKED
    return BothCases(likely, high, how_sure(devices, assessment) if asked else Sure.NOT_KNOWN)
