"""How much energy is in a battery, from what is printed on it.

Best is Wh. mAh alone say nothing until it is known at how many volts: those of the cell, or (on power banks) those of
the 5 V port, behind the converter. The loss of the converter is already inside the second; it must not come off twice.
"""

from dataclasses import dataclass
from enum import StrEnum

from kitlog.budget.power.day import LEAST_EFF, PORT_V
from kitlog.budget.power.describe_bounds import MOST_MAH, MOST_V, MOST_WH, above_zero, within
from kitlog.fault import InputFault

CELL_V = (3.6, 3.7, 3.85)
"""Low, likely, high: nominal volts of one lithium-ion cell by chemistry, as printed on products."""

USUAL_EFF = 0.85
"""Port to cell. Averages of 80-85 % are reported for products, 93 % for the best (moruipower.com)."""


class Meaning(StrEnum):
    """At which voltage mAh are meant: that of the cell, or the 5 V of the port."""

    CELL = "cell"
    PORT_5V = "5v"


@dataclass(frozen=True, slots=True)
class CellEnergy:
    """Label energy of a cell, Wh; low and high differ where the volts are not known."""

    low_wh: float
    likely_wh: float
    high_wh: float


@dataclass(frozen=True, slots=True)
class BankEnergy:
    """A power bank as `day.Bank` takes it: energy in the cell, and efficiency from there to the port, in that order."""

    cell: CellEnergy
    eff: float

    @property
    def port_wh(self) -> float:
        """Energy at the ports, Wh: cell x efficiency. Health, cold and the bank's own consumption come off besides."""
        return self.cell.likely_wh * self.eff


def cell_from_wh(energy_wh: float) -> CellEnergy:
    """As printed. Above 0 to 10,000 Wh.

    Raises:
        InputFault: number codes.
    """
    above_zero(energy_wh, "cell_Wh", MOST_WH)
    return CellEnergy(energy_wh, energy_wh, energy_wh)


def cell_from_mah(capacity_mah: float, at_v: float | None = None) -> CellEnergy:
    """Energy from mAh x V / 1000, at the volts printed beside it; None: those of one lithium-ion cell (`CELL_V`).

    Raises:
        InputFault: number codes; above 0 to 1,000,000 mAh and 100 V.
    """
    ampere_hours = above_zero(capacity_mah, "mAh", MOST_MAH) / 1000.0
    volts = CELL_V if at_v is None else (above_zero(at_v, "nominal_V", MOST_V),) * 3
    return CellEnergy(*(ampere_hours * each_v for each_v in volts))


def bank_from_cell(cell: CellEnergy, eff: float = USUAL_EFF) -> BankEnergy:
    """From the energy in the cells: the loss comes off between cell and port.

    Raises:
        InputFault: number codes; eff from .01 to 1.
    """
    return BankEnergy(cell, within(eff, "eff", LEAST_EFF, 1))


def bank_from_mah(
    capacity_mah: float, meaning: Meaning, at_v: float | None = None, eff: float = USUAL_EFF
) -> BankEnergy:
    """From mAh that mean the cell (`at_v` as in `cell_from_mah`) or the 5 V port.

    Rated mAh at 5 V have the loss inside: what leaves the port is mAh x 5 / 1000 whatever `eff` is, and the cell holds
    that over `eff`, so that the loss comes off once. `at_v` plays no part then.

    Raises:
        InputFault: number codes.
    """
    within(eff, "eff", LEAST_EFF, 1)
    if meaning is Meaning.CELL:
        return BankEnergy(cell_from_mah(capacity_mah, at_v), eff)
    return BankEnergy(cell_from_wh(_port_wh(capacity_mah) / eff), eff)


def bank_from_both(cell: CellEnergy, rated_mah: float) -> BankEnergy:
    """From the cell's energy and the rated mAh at 5 V, both printed: the maker's own efficiency is their ratio.

    Raises:
        InputFault: number codes; cell.gives_more: port_wh, cell_wh. More comes out than is in: one is misread.
    """
    port_wh = _port_wh(rated_mah)
    if port_wh > cell.likely_wh:
        raise InputFault("cell.gives_more", port_wh=round(port_wh, 1), cell_wh=round(cell.likely_wh, 1))
    return BankEnergy(cell, within(port_wh / cell.likely_wh, "eff", LEAST_EFF, 1))


def _port_wh(rated_mah: float) -> float:
    return above_zero(rated_mah, "mAh", MOST_MAH) * PORT_V / 1000.0
