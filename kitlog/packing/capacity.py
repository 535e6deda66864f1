"""How much energy is in an item's cell, and what of a bank's reaches its ports."""

from kitlog.budget.power.describe_capacity import (
    USUAL_EFF,
    BankEnergy,
    Meaning,
    bank_from_both,
    bank_from_cell,
    bank_from_mah,
    cell_from_wh,
)
from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind


def is_bank(item: Item) -> bool:
    """Whether it feeds others."""
    return item.kind is Kind.POWER_BANK or item.bank is not None


NO_CELL = frozenset({Kind.CABLE, Kind.CHARGER})
"""Kinds whose battery facet, if any, tells their connectors alone."""


def is_swollen(item: Item) -> bool:
    """Whether its battery was seen swollen: such a thing is neither taken nor charged, and no charge of it counts."""
    return item.battery is not None and item.battery.swollen_on is not None


def has_cell(item: Item) -> bool:
    """Whether a battery is described that can be charged or can run flat."""
    return item.kind not in NO_CELL and (item.battery is not None or is_bank(item))


def energy_wh(item: Item) -> float | None:
    """Label energy of the cell in Wh; None: not known. mAh at the 5 V of the ports have the loss inside already."""
    label_wh = item.battery.energy_wh if item.battery else None
    if label_wh is not None:
        return label_wh
    known = _known_energy(item)
    return known.cell.likely_wh if known else None


def port_efficiency(item: Item) -> float:
    """Energy at a bank's ports per energy out of its cell: its own figure, else its label's, else the usual one."""
    if item.bank and item.bank.efficiency_pct:
        return item.bank.efficiency_pct / 100
    known = _known_energy(item)
    return known.eff if known else USUAL_EFF


def _known_energy(item: Item) -> BankEnergy | None:
    """A label that contradicts itself is refused where it is entered; in a day it says nothing."""
    try:
        return _bank_energy(item)
    except InputFault:
        return None


def refuse_more_out_than_in(item: Item) -> None:
    """Refuse a bank whose label says more of its ports than of its cell, whatever efficiency was given besides.

    Raises:
        InputFault: ``cell.gives_more``; ``number.out_of_range``: next to nothing of the cell would come out.
    """
    if item.bank is not None and item.bank.rated_mah:
        _bank_energy(item)


def _bank_energy(item: Item) -> BankEnergy | None:
    rated_mah = item.bank.rated_mah if item.bank else None
    cell_wh = item.battery.energy_wh if item.battery else None
    eff = item.bank.efficiency_pct / 100 if item.bank and item.bank.efficiency_pct else USUAL_EFF
    if rated_mah and cell_wh:
        return bank_from_both(cell_from_wh(cell_wh), rated_mah)
    if rated_mah:
        return bank_from_mah(rated_mah, Meaning.PORT_5V, eff=eff)
    return bank_from_cell(cell_from_wh(cell_wh), eff) if cell_wh else None
