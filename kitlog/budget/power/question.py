"""What is asked of a day by the longest phase, the smallest bank, the lowest start and the chance."""
# ruff: noqa: N815  # the keys of the JSON keep the capitals of their units

from collections.abc import Mapping
from typing import Annotated

from pydantic import Discriminator, Field, Tag

from kitlog.budget.power.day import LARGEST, Amount, Given, Name, Share

Triple = Annotated[tuple[Amount, Amount, Amount], Field(strict=False)]
"""Low, likely, high: a triangular distribution; low = high is allowed."""
ShareTriple = Annotated[tuple[Share, Share, Share], Field(strict=False)]


class Target(Given):
    """A device that must never go off and must end at min_soc (state of charge, 0..1) or more."""

    device: Name
    min_soc: Share = 0.0


class LongestPhase(Given):
    """How long can the last phase be, with the device on and at min_soc or more?

    The answer, in h, is exact: one run to horizon_h, no grid. 0: it fails at the start of the phase; null: not before
    horizon_h.
    """

    phase: Name
    device: Name
    min_soc: Share = 0.0
    horizon_h: Annotated[float, Field(gt=0, le=LARGEST)] = 72.0


class SmallestBank(Given):
    """The least cell energy of one bank, Wh, with which every target is met, as with all larger ones up to max_Wh.

    Found by walking down from max_Wh on a grid of 200 steps, halving where the course of the day changes; at most 600
    runs of the single day. Failing within one step, with the same course at both of its ends, is not seen. 0: no bank
    is needed; null: max_Wh is not enough.
    """

    bank: Name
    max_Wh: Annotated[float, Field(gt=0, le=LARGEST)]
    targets: Annotated[tuple[Target, ...], Field(strict=False, min_length=1)]


class LowestStart(Given):
    """The least state of charge of one device at the start, from which every higher start meets the targets too.

    Found by walking down from full on a grid of 200 steps and at every connect_below, halving where the course of the
    day changes; at most 600 runs of the single day. Failing within one step, with the same course at both of its ends,
    is not seen. 0: any start will do; null: full is not enough.
    """

    device: Name
    targets: Annotated[tuple[Target, ...], Field(strict=False, min_length=1)]


def _kind_of_least(value: object) -> str:
    return "?by_device" if isinstance(value, Mapping) else "?for_all"


class Chance(Given):
    """How often does each device last, when hours, draws and starts are drawn from low, likely, high?

    Attributes:
        n: number of days drawn.
        seed: the same seed gives the same days.
        hours: phase id -> hours.
        draws: device id -> phase id -> W.
        start: device or bank id -> state of charge.
        min_soc: state of charge at the end, for all devices or by device id.
    """

    n: Annotated[int, Field(ge=1, le=1_000_000)] = 10_000
    seed: Annotated[int, Field(ge=0, le=2**63)] = 1
    hours: dict[Name, Triple] = Field(default_factory=dict)
    draws: dict[Name, dict[Name, Triple]] = Field(default_factory=dict)
    start: dict[Name, ShareTriple] = Field(default_factory=dict)
    min_soc: Annotated[
        Annotated[Share, Tag("?for_all")] | Annotated[dict[Name, Share], Tag("?by_device")],
        Discriminator(_kind_of_least),
    ] = 0.0
