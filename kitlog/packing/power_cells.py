"""Items as the cells of a simulated day: devices and banks, how warm they lie, what they start with."""

from collections.abc import Mapping

from kitlog.budget.power.day import Bank, Device
from kitlog.budget.power.describe import DrawRange
from kitlog.kit.facets import Battery
from kitlog.kit.item import Item
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing
from kitlog.packing.capacity import energy_wh, port_efficiency

DEVICE_CUTOFF_PCT = 5.0
"""Charge at which a device switches itself off where its own is not known (common practice, no source)."""

BANK_QUIESCENT_W = 0.05
"""What a bank that is on uses itself where its own figure is not known (common practice, no source)."""


def device_cell(item: Item, draws: Mapping[str, DrawRange], outing: Outing, library: Library) -> Device:
    """A device with its likely draws by phase name."""
    battery = item.battery or Battery()
    cutoff = DEVICE_CUTOFF_PCT if battery.cutoff_pct is None else battery.cutoff_pct
    return Device(
        id=item.id,
        cell_Wh=energy_wh(item),
        health=health(battery),
        start=start_share(item, outing),
        cutoff=cutoff / 100,
        temp_offset_C=offset_k(item, library),
        temp_fixed_C=battery.fixed_c,
        draw_W={phase: draw.likely_w for phase, draw in draws.items()},
        charge_max_W=battery.charge_max_w or 0.0,
    )


def bank_cell(item: Item, outing: Outing, library: Library) -> Bank:
    """A power bank; figures that are not on record have the values of the power budget."""
    battery, bank = item.battery or Battery(), item.bank
    return Bank(
        id=item.id,
        cell_Wh=energy_wh(item),
        health=health(battery),
        start=start_share(item, outing),
        cutoff=(battery.cutoff_pct or 0.0) / 100,
        temp_offset_C=offset_k(item, library),
        temp_fixed_C=battery.fixed_c,
        eff=port_efficiency(item),
        ports=bank.ports if bank and bank.ports is not None else 1,
        port_limit_W=bank.port_w if bank else None,
        total_limit_W=bank.total_w if bank else None,
        quiescent_W=bank.quiescent_w if bank and bank.quiescent_w is not None else BANK_QUIESCENT_W,
        min_out_W=bank.min_w if bank and bank.min_w is not None else 0.0,
        auto_off_s=bank.off_s if bank and bank.off_s is not None else 30.0,
    )


def health(battery: Battery) -> float:
    """Share of the label energy that age has left; not known = all of it."""
    return 1.0 if battery.health_pct is None else battery.health_pct / 100


def start_share(item: Item, outing: Outing) -> float:
    """Likely charge at the start of the day, 0..1; full where the outing names none."""
    return next((start.likely_pct / 100 for start in outing.starts if start.item == item.id), 1.0)


def offset_k(item: Item, library: Library) -> float:
    """What a cell is warmer than the air by: its own figure, its place, its kind's usual place, else nothing."""
    battery = item.battery or Battery()
    if battery.offset_k is not None:
        return battery.offset_k
    place = battery.place or library.facts(item.kind).place
    return library.place(place).offset_k if place else 0.0
