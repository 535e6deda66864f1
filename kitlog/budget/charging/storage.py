"""Cells that will lie for weeks: which to charge, which to use down, which to leave."""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from kitlog.budget.power.day import Given, Name, Share
from kitlog.fault import InputFault

LOW, HIGH, TARGET = 0.40, 0.60, 0.50
"""Charge for storage: 40 to 60 %, the middle as the aim. Trade practice (50-60 % in one account)."""

UNUSED_DAYS = 42
"""Six weeks without use; no source, a round figure within the 3 to 6 months after which cells are looked at."""

KEPT_AFTER_A_YEAR = ((0.0, 0.98, 0.94), (25.0, 0.96, 0.80), (40.0, 0.85, 0.65))
"""(deg C, share of the capacity kept when stored at 40 %, when stored full)."""

BAND = "40-60 %: trade practice; 50-60 % in one account"
LOSS = "a year at 25 C keeps 96 % stored at 40 %, 80 % stored full: wxlhbattery.com, r859.com"
SWOLLEN = "common practice, no source: to the collection point"

CHARGE, USE_DOWN, LEAVE, NOT_KNOWN, DISPOSE = "charge", "use_down", "leave", "not_known", "dispose"


class Stored(Given):
    """Something with a cell. start: charge on hand, None: not known; unused_days: None: not known."""

    id: Name
    start: Share | None = None
    unused_days: Annotated[int, Field(ge=0, le=36500)] | None = None
    swollen: bool = False


class Storing(Given):
    """What lies at home. season_over: all of it will lie; else only what has lain for six weeks."""

    things: Annotated[tuple[Stored, ...], Field(strict=False)]
    season_over: bool = False


@dataclass(frozen=True, slots=True)
class StorageStep:
    """What to do with one thing.

    Attributes:
        act: charge, use_down (no charger takes energy out: use it), leave, not_known (look at its charge), dispose.
        from_soc, to_soc: charge on hand, and aimed at; None where there is none.
        why: season_over, unused, in_use, in_band, charge_not_known, use_not_known or swollen.
        source: where the rule comes from; None where no rule is applied.
    """

    thing: str
    act: str
    from_soc: float | None
    to_soc: float | None
    why: str
    source: str | None


def for_storage(storing: Storing) -> tuple[StorageStep, ...]:
    """What to do with each thing, in the order given.

    Raises:
        InputFault: id.repeated with part device.
    """
    seen: set[str] = set()
    for thing in storing.things:
        if thing.id in seen:
            raise InputFault("id.repeated", id=thing.id, part="device")
        seen.add(thing.id)
    return tuple(_step(thing, season_over=storing.season_over) for thing in storing.things)


def _step(thing: Stored, *, season_over: bool) -> StorageStep:
    if thing.swollen:
        return StorageStep(thing.id, DISPOSE, thing.start, None, "swollen", SWOLLEN)
    if not season_over and thing.unused_days is None:
        return StorageStep(thing.id, NOT_KNOWN, thing.start, None, "use_not_known", None)
    if not season_over and (thing.unused_days or 0) < UNUSED_DAYS:
        return StorageStep(thing.id, LEAVE, thing.start, None, "in_use", None)
    return _to_the_band(thing, "season_over" if season_over else "unused")


def _to_the_band(thing: Stored, why: str) -> StorageStep:
    if thing.start is None:
        return StorageStep(thing.id, NOT_KNOWN, None, TARGET, "charge_not_known", BAND)
    if thing.start < LOW:
        return StorageStep(thing.id, CHARGE, thing.start, TARGET, why, BAND)
    if thing.start > HIGH:
        return StorageStep(thing.id, USE_DOWN, thing.start, TARGET, why, f"{BAND}; {LOSS}")
    return StorageStep(thing.id, LEAVE, thing.start, None, "in_band", BAND)
