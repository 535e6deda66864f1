"""What a pilot has to hand for changes: spare banks, other ways of use, warmer places, cables and their masses."""
# ruff: noqa: N815  # the keys of the JSON keep the capitals of their units

from typing import Annotated, Literal

from pydantic import Field

from kitlog.budget.power.day import Amount, Bank, Draw, Given, Name, Real, Share
from kitlog.budget.power.question import Target

PLUG_BELOW = 0.6
"""Charge under which a device is plugged, if it is not to hang on the bank all day (common practice, no source)."""


class SpareBank(Given):
    """A bank that stays at home as planned; mass_g None: not known."""

    bank: Bank
    mass_g: Amount | None = None


class OtherUse(Given):
    """Other ways of use of a device, by phase (phase id -> W or modes).

    Attributes:
        code: what it comes to: `use_less` (screen share down, low heat) or `flight_mode`.
        name: the way of use, in the pilot's word.
    """

    device: Name
    code: Literal["use_less", "flight_mode"] = "use_less"
    name: Name
    draw_W: Annotated[dict[Name, Draw], Field(min_length=1)]


class WarmerPlace(Given):
    """A place where a device or bank would be warmer; temp_offset_C: warmer than the air by this much, K."""

    id: Name
    place: Name
    temp_offset_C: Real


class ToHand(Given):
    """Everything that could be changed.

    Attributes:
        spare_banks: banks that could be taken.
        other_uses, warmer_places: as the pilot's kit gives them.
        mass_g: of carried banks, by id; a bank that is not named weighs nobody knows what.
        cable_g: device id -> what its cable would add, in g: 0 if one is carried already; not named: not known.
        may_be_off: devices that the pilot could do without for the day.
        plug_phases: phases in which something can be plugged; None: in all.
        also_plugged: device or bank id -> phases in which it can be plugged besides, lying where hands reach it.
        plug_below: charge for "plug only below"; None: not offered.
    """

    spare_banks: Annotated[tuple[SpareBank, ...], Field(strict=False)] = ()
    other_uses: Annotated[tuple[OtherUse, ...], Field(strict=False)] = ()
    warmer_places: Annotated[tuple[WarmerPlace, ...], Field(strict=False)] = ()
    mass_g: dict[Name, Amount] = Field(default_factory=dict)
    cable_g: dict[Name, Amount] = Field(default_factory=dict)
    may_be_off: Annotated[tuple[Name, ...], Field(strict=False)] = ()
    plug_phases: Annotated[tuple[Name, ...], Field(strict=False)] | None = None
    also_plugged: dict[Name, Annotated[tuple[Name, ...], Field(strict=False)]] = Field(default_factory=dict)
    plug_below: Share | None = PLUG_BELOW


class ChangesQuery(ToHand):
    """The question in JSON: what is to hand, what must last, and the same day with the hours of the high case.

    Attributes:
        high_hours: phase id -> hours in the high case; a phase that is not named keeps its hours.
        targets: devices that matter; empty: all of them.
    """

    high_hours: dict[Name, Amount] = Field(default_factory=dict)
    targets: Annotated[tuple[Target, ...], Field(strict=False)] = ()
