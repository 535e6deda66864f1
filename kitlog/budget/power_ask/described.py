"""Draws as pilots know them, turned into W before anything else looks at the day.

A draw may be W, modes, a current, "lasts 9 h like this" or a drop of charge seen on the gauge; within modes the same
stand beside a share. The arithmetic, its sources and its errors are those of `kitlog.budget.power.describe`.
"""
# ruff: noqa: N815  # the keys of the JSON keep the capitals of their units

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from pydantic import Discriminator, Field, Tag

from kitlog.budget.power.checks import check_cell
from kitlog.budget.power.day import Amount, Day, DayFrame, Device, DeviceFigures, Draw, Given, Mode, Modes, Name, Share
from kitlog.budget.power.describe import DrawRange, draw_from_current, draw_from_drop, draw_from_runtime
from kitlog.budget.power.describe_bounds import MOST_H, MOST_MA, MOST_V
from kitlog.budget.power.question import Triple
from kitlog.fault import InputFault

Pct = Annotated[float, Field(ge=0, le=100)]
Hours = Annotated[float, Field(gt=0, le=MOST_H)]


class Current(Given):
    """A current, and the volts at which it was measured or is printed: mA x V / 1000 W."""

    mA: Annotated[float, Field(ge=0, le=MOST_MA)]
    V: Annotated[float, Field(gt=0, le=MOST_V)]


class Runtime(Given):
    """It lasts so many hours like this, from full to switched off at 25 deg C.

    The draw is cell energy x health x (1 - cutoff) / hours; the rounding of the hours is its error (9 h: 8.5 to 9.5).
    """

    lasts_h: Hours


class Drop(Given):
    """A pilot's own measurement, unplugged: from 100 to 63 % in 4.5 h.

    The draw is cell energy x health x drop / hours; the gauge's rounding, one point over the drop, is its error.
    """

    from_pct: Pct
    to_pct: Pct
    hours: Hours


class CurrentMode(Current):
    """A way of use by its current, and its share of the time."""

    share: Share


class RuntimeMode(Runtime):
    """A way of use by how long the device lasts in it, and its share of the time."""

    share: Share


class DropMode(Drop):
    """A way of use by a measurement, and its share of the time."""

    share: Share


_TELLING = {
    "mA": "?current",
    "V": "?current",
    "lasts_h": "?runtime",
    "from_pct": "?drop",
    "to_pct": "?drop",
    "hours": "?drop",
}


def _kind_of_mode(value: object) -> str:
    keys = value if isinstance(value, Mapping) and "W" not in value else {}
    return next((_TELLING[key] for key in keys if key in _TELLING), "?watts")


def _kind_of_draw(value: object) -> str:
    if not isinstance(value, Mapping):
        return "?watts"
    return "?modes" if "modes" in value else next((_TELLING[key] for key in value if key in _TELLING), "?modes")


DescribedMode = Annotated[
    Annotated[Mode, Tag("?watts")]
    | Annotated[CurrentMode, Tag("?current")]
    | Annotated[RuntimeMode, Tag("?runtime")]
    | Annotated[DropMode, Tag("?drop")],
    Discriminator(_kind_of_mode),
]


class DescribedModes(Given):
    """Several ways of use within one phase; the shares add up to 1."""

    modes: Annotated[tuple[DescribedMode, ...], Field(strict=False)]


DescribedDraw = Annotated[
    Annotated[Amount, Tag("?watts")]
    | Annotated[DescribedModes, Tag("?modes")]
    | Annotated[Current, Tag("?current")]
    | Annotated[Runtime, Tag("?runtime")]
    | Annotated[Drop, Tag("?drop")],
    Discriminator(_kind_of_draw),
]


class DescribedDevice(DeviceFigures):
    """A device; draw_W: phase id -> W, modes, or a description; a phase that is not named draws nothing."""

    draw_W: dict[Name, DescribedDraw] = Field(default_factory=dict)


class DescribedDay(DayFrame):
    """One day: phases, devices, banks, and the plugs between them."""

    devices: Annotated[tuple[DescribedDevice, ...], Field(strict=False)] = ()


@dataclass(frozen=True, slots=True)
class KnownDay:
    """The day in W; and low, likely, high W by device and phase where a description has an error."""

    day: Day
    draws: Mapping[str, Mapping[str, Triple]]


def known_day(described: DescribedDay) -> KnownDay:
    """Turn each description into W.

    Raises:
        InputFault: cell codes and draw.drop_too_small, each with the id of the device.
    """
    devices, draws = [], {}
    for device in described.devices:
        found = {phase: _known(draw, device, phase) for phase, draw in device.draw_W.items()}
        fields = {name: getattr(device, name) for name in DeviceFigures.model_fields}
        devices.append(Device(**fields, draw_W={phase: draw for phase, (draw, _) in found.items()}))
        draws[device.id] = {phase: triple for phase, (_, triple) in found.items() if triple[0] < triple[2]}
    frame = {name: getattr(described, name) for name in DayFrame.model_fields if name != "devices"}
    return KnownDay(Day(**frame, devices=tuple(devices)), draws)


def _known(draw: object, device: DeviceFigures, phase: str) -> tuple[Draw, Triple]:
    if not isinstance(draw, DescribedModes):
        found = _in_w(draw, device, f"draw_W.{phase}")
        return found[1], found
    parts = [
        (_in_w(mode, device, f"draw_W.{phase}.modes.{place}"), mode.share) for place, mode in enumerate(draw.modes)
    ]
    low_w, likely_w, high_w = (sum(triple[at] * share for triple, share in parts) for at in range(3))
    return Modes(modes=tuple(Mode(W=triple[1], share=share) for triple, share in parts)), (low_w, likely_w, high_w)


def _in_w(draw: object, device: DeviceFigures, field: str) -> Triple:
    if isinstance(draw, Mode):
        return (draw.W, draw.W, draw.W)
    if isinstance(draw, int | float):
        return (draw, draw, draw)
    try:
        return _described(draw, device).triple
    except InputFault as fault:
        raise InputFault(fault.code, **{**fault.facts, **_place(fault, device, field)}) from None


def _place(fault: InputFault, device: DeviceFigures, field: str) -> dict[str, object]:
    """Whose draw it is; what is wrong with the cell is the cell's own."""
    if fault.code.startswith("cell."):
        return {"id": device.id}
    inner = fault.facts.get("field")
    return {"id": device.id, "field": inner if inner in ("cell_Wh", "health", "cutoff") else field}


def _described(draw: object, device: DeviceFigures) -> DrawRange:
    if isinstance(draw, Current):
        return draw_from_current(draw.mA, draw.V)
    check_cell(device, "device")
    cell_wh = device.label_wh or 0.0
    if isinstance(draw, Drop):
        return draw_from_drop(draw.from_pct, draw.to_pct, draw.hours, cell_wh, health=device.health)
    if isinstance(draw, Runtime):
        return draw_from_runtime(draw.lasts_h, cell_wh, health=device.health, cutoff=device.cutoff)
    raise TypeError(draw)
