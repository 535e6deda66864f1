"""What can be asked of a day: the course itself, or one of four questions. The keys of `query` tell which."""
# ruff: noqa: N815  # the keys of the JSON keep the capitals of their units

from collections.abc import Mapping
from typing import Annotated

from pydantic import Discriminator, Field, Tag

from kitlog.budget.power.day import LARGEST, Amount, Day, Given, Name, Share

Triple = Annotated[tuple[Amount, Amount, Amount], Field(strict=False)]
"""Low, likely, high: a triangular distribution; low = high is allowed."""
ShareTriple = Annotated[tuple[Share, Share, Share], Field(strict=False)]


class Target(Given):
    """A device that must never go off and must end at min_soc (state of charge, 0..1) or more."""

    device: Name
    min_soc: Share = 0.0


class LongestPhase(Given):
    """How long can the last phase be, with the device on and at min_soc or more? None past horizon_h."""

    phase: Name
    device: Name
    min_soc: Share = 0.0
    horizon_h: Annotated[float, Field(gt=0, le=LARGEST)] = 72.0


class SmallestBank(Given):
    """The least cell energy of one bank with which every target is met, up to max_Wh."""

    bank: Name
    max_Wh: Annotated[float, Field(gt=0, le=LARGEST)]
    targets: Annotated[tuple[Target, ...], Field(strict=False, min_length=1)]


class LowestStart(Given):
    """The least state of charge of one device at the start, from which every higher start meets the targets too."""

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


def kind_of_query(value: object) -> str | None:
    """Which question it is, told by its keys; None if they tell nothing."""
    if isinstance(value, Given):
        return _KINDS.get(type(value))
    keys = value.keys() if isinstance(value, Mapping) else ()
    for key, kind in _TELLING_KEYS.items():
        if key in keys:
            return kind
    return None


_KINDS = {
    LongestPhase: "?longest_phase",
    SmallestBank: "?smallest_bank",
    LowestStart: "?lowest_start",
    Chance: "?chance",
}
_TELLING_KEYS = {
    "phase": "?longest_phase",
    "horizon_h": "?longest_phase",
    "bank": "?smallest_bank",
    "max_Wh": "?smallest_bank",
    "targets": "?lowest_start",
    "device": "?lowest_start",
    "n": "?chance",
    "hours": "?chance",
    "draws": "?chance",
    "start": "?chance",
}

Query = Annotated[
    Annotated[LongestPhase, Tag("?longest_phase")]
    | Annotated[SmallestBank, Tag("?smallest_bank")]
    | Annotated[LowestStart, Tag("?lowest_start")]
    | Annotated[Chance, Tag("?chance")],
    Discriminator(kind_of_query),
]


class Request(Given):
    """One JSON object: a day, and beside it either `sample_h` (times in h, may be empty) or a `query`."""

    day: Day
    sample_h: Annotated[tuple[Amount, ...], Field(strict=False)] | None = None
    query: Query | None = None
