"""What a power calculation is given: phases, devices, power banks and the plugs between them.

Field names are the keys of the JSON, letter for letter, so that one definition reads the file, prints its schema and is
built by the outing. Units are in the names: h, Wh, mAh, V, W, deg C, s; a share or a state of charge is 0..1.
"""
# ruff: noqa: N815  # the keys of the JSON keep the capitals of their units

from collections.abc import Mapping
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Discriminator, Field, Tag

LARGEST = 1e9
"""No figure of a day is larger: it keeps every product finite. Far above anything a person carries."""

LEAST_EFF = 0.01
"""An efficiency under 1 % is a slip of the pen, and 0 would divide by nothing."""

PORT_V = 5.0
"""Volts of a bank's ports, for which rated_mAh is meant."""

TEMP_TABLE = ((-20.0, 0.60), (-10.0, 0.75), (0.0, 0.85), (25.0, 1.00))
"""(deg C, usable share of the energy). -20 and 0 C: least values on cell data sheets; 25 C: the label; -10 C: the line
between, rounded up, no source. One table for all cells is a guess: makers' cells differ by more than the rounding."""

Real = Annotated[float, Field(ge=-LARGEST, le=LARGEST)]
Amount = Annotated[float, Field(ge=0, le=LARGEST)]
Share = Annotated[float, Field(ge=0, le=1)]
Name = Annotated[str, Field(min_length=1, max_length=200, pattern=r"^[^\x00-\x1f\x7f-\x9f\u2028\u2029]+$")]
TempPoint = Annotated[tuple[Real, Annotated[float, Field(gt=0, le=1)]], Field(strict=False)]
TempTable = Annotated[tuple[TempPoint, ...], Field(strict=False, min_length=1)]


class Given(BaseModel):
    """Comes from outside: unknown keys, text for numbers, NaN and infinity are refused; nothing changes afterwards."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True, allow_inf_nan=False)


class Phase(Given):
    """A stretch of the day. Zero hours: the phase is skipped whole."""

    id: Name
    hours: Amount
    ambient_C: Real


class Mode(Given):
    """One way of use: the power drawn and its share of the time."""

    W: Amount
    share: Share


class Modes(Given):
    """Several ways of use within one phase; the shares add up to 1."""

    modes: Annotated[tuple[Mode, ...], Field(strict=False)]

    @property
    def mean_w(self) -> float:
        """Mean power, W: the sum of power times share."""
        return sum(mode.W * mode.share for mode in self.modes)


def _kind_of_draw(value: object) -> str:
    return "?modes" if isinstance(value, Mapping | Modes) else "?watts"


Draw = Annotated[
    Annotated[Amount, Tag("?watts")] | Annotated[Modes, Tag("?modes")],
    Discriminator(_kind_of_draw),
]


class Cell(Given):
    """What devices and banks share: the energy on the label, its age and charge, and the temperature of the place.

    Attributes:
        cell_Wh: energy at 25 deg C; or cell_mAh and nominal_V, never both.
        health: share of the label energy that age has left.
        start: state of charge at the start of the day.
        cutoff: share of the energy left when the thing switches itself off at 25 deg C.
        temp_offset_C: warmer than the air by this much (worn in a pocket); temp_fixed_C, if given, counts instead.
    """

    id: Name
    cell_Wh: Amount | None = None
    cell_mAh: Amount | None = None
    nominal_V: Amount | None = None
    health: Share = 1.0
    start: Share = 1.0
    cutoff: Annotated[float, Field(ge=0, lt=1)] = 0.0
    temp_table: TempTable | None = None
    temp_offset_C: Real = 0.0
    temp_fixed_C: Real | None = None

    @property
    def label_wh(self) -> float | None:
        """Energy of the cell when new, Wh; None if none is given (a bank: supply without end)."""
        if self.cell_mAh is not None and self.nominal_V is not None:
            return self.cell_mAh / 1000.0 * self.nominal_V
        return self.cell_Wh


class DeviceFigures(Cell):
    """All of a device but what it draws.

    Attributes:
        charge_max_W: most input power the charger takes for the cell; 0: cannot be charged.
        input_limit_W: cap on load and charging together; None: no cap.
        charge_eff: share of the charging power that reaches the cell. Default .9: common practice, no source.
        knee: state of charge from which the charging power falls, straight to 0 at full.
        charge_min_C, charge_max_C: outside this band the cell takes no charge (0..45 on several cell specifications).
        restart_margin: charge above the floor at which a device that went off comes back in a later phase; None: never.
            Default .05: common practice, no source.
    """

    charge_max_W: Amount = 0.0
    input_limit_W: Amount | None = None
    charge_eff: Share = 0.9
    knee: Share = 0.8
    charge_min_C: Real = 0.0
    charge_max_C: Real = 45.0
    restart_margin: Share | None = 0.05


class Device(DeviceFigures):
    """Something that draws power, and may be charged. draw_W: phase id -> W, or modes; a phase not named: nothing."""

    draw_W: dict[Name, Draw] = Field(default_factory=dict)


class Bank(Cell):
    """A power bank; with cell_Wh null, a car or wall socket.

    Attributes:
        rated_mAh: capacity as rated at the 5 V of the ports, instead of cell_Wh or cell_mAh: the loss is inside it
            already, so that rated_mAh x 5 / 1000 Wh leave the ports (when new) whatever eff is.
        eff: energy at the ports for each unit from the cell. Default .85: between 80-85 % average and 93 % best.
        port_limit_W, total_limit_W: at the ports; None: no limit.
        quiescent_W: what the electronics take from the cell while on.
        min_out_W, auto_off_s: with less output than this for so long, the bank switches itself off.
        low_current_mode: min_out_W is ignored.
    """

    rated_mAh: Amount | None = None
    eff: Annotated[float, Field(ge=LEAST_EFF, le=1)] = 0.85
    ports: Annotated[int, Field(ge=0, le=1000)] = 1
    port_limit_W: Amount | None = None
    total_limit_W: Amount | None = None
    quiescent_W: Amount = 0.0
    min_out_W: Amount = 0.0
    auto_off_s: Amount = 30.0
    low_current_mode: bool = False

    @property
    def label_wh(self) -> float | None:
        """Energy of the cell when new, Wh; from rated_mAh so much that eff of it is what leaves the ports."""
        if self.rated_mAh is not None:
            return self.rated_mAh * PORT_V / 1000.0 / self.eff
        return super().label_wh


class Plug(Given):
    """A device put on a bank in one phase.

    Attributes:
        connect_below: state of charge at or under which it is put on; None: from the start of the phase.
        charge_to: state of charge at which charging ends.
    """

    phase: Name
    device: Name
    bank: Name
    connect_below: Share | None = None
    charge_to: Share = 1.0


class DayFrame(Given):
    """What a day is made of, whatever its devices are described by."""

    phases: Annotated[tuple[Phase, ...], Field(strict=False, min_length=1)]
    devices: Annotated[tuple[DeviceFigures, ...], Field(strict=False)] = ()
    banks: Annotated[tuple[Bank, ...], Field(strict=False)] = ()
    plugs: Annotated[tuple[Plug, ...], Field(strict=False)] = ()
    temp_table: TempTable = TEMP_TABLE


class Day(DayFrame):
    """One day, before anything is computed. `checks.check_day` looks at what one field alone cannot show."""

    devices: Annotated[tuple[Device, ...], Field(strict=False)] = ()
