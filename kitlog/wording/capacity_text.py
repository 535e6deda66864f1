"""How much energy is in a cell and at the ports of a bank, and which printed figure says so."""

from kitlog.budget.power.describe_capacity import Meaning, bank_from_mah
from kitlog.kit.facets import MAH_AT_PORT, Battery
from kitlog.kit.item import Item
from kitlog.packing.capacity import energy_wh, is_bank, port_efficiency
from kitlog.wording.draw_text import short_text
from kitlog.wording.figures import percent_text
from kitlog.wording.translate import _


def capacity_text(item: Item) -> str:
    """All on one line: ``10 000 mAh × 3.7 V = 37 Wh; 31.45 Wh at the port (85 %, usual)``.

    Raises:
        InputFault: ``cell.gives_more``: the ports are said to give more than the cell holds.
    """
    return "; ".join(part for part in (cell_text(item), port_text(item)) if part)


def cell_text(item: Item) -> str:
    """Energy in the cell as it is on the label, and what it was worked out from.

    Raises:
        InputFault: ``cell.gives_more``.
    """
    known = energy_wh(item)
    if known is None:
        return ": ".join(part for part in (_("not known"), cell_from(item)) if part)
    energy = short_text(known, "Wh")
    if item.battery is not None and item.battery.given == "mAh x V":
        return f"{cell_from(item)} = {energy}"
    return f"{energy}, {cell_from(item)}"


def cell_from(item: Item) -> str:
    """What the energy of the cell was worked out from; what is missing where it is not known.

    Raises:
        InputFault: ``cell.gives_more``.
    """
    battery = item.battery
    given = battery.given if battery is not None else ""
    if given == "Wh":
        return _("as printed")
    if battery is not None and given == "mAh x V":
        return f"{short_text(battery.mah or 0, 'mAh')} × {short_text(battery.v or 0, 'V')}"
    if energy_wh(item) is not None:
        return _("worked back from the port")
    if battery is None or given not in {"mAh", MAH_AT_PORT}:
        return ""
    return _mah_alone(battery, feeds=is_bank(item))


def port_text(item: Item) -> str:
    """Energy at the ports of a bank and the share of the cell's that it is; empty for what feeds nobody.

    Raises:
        InputFault: ``cell.gives_more``.
    """
    known = energy_wh(item)
    if known is None or not is_bank(item):
        return ""
    at_port = _("{energy} at the port").format(energy=short_text(known * port_efficiency(item), "Wh"))
    return f"{at_port} ({port_from(item)})"


def port_from(item: Item) -> str:
    """The share of the cell's energy that comes out of a bank, and where that share comes from.

    Raises:
        InputFault: ``cell.gives_more``.
    """
    return f"{percent_text(port_efficiency(item) * 100)}, {_efficiency_from(item)}"


def rated_text(item: Item) -> str:
    """``6 000 mAh × 5 V = 30 Wh``: what the label says of the ports; empty where it says nothing."""
    rated_mah = item.bank.rated_mah if item.bank else None
    if not rated_mah:
        return ""
    energy = short_text(bank_from_mah(rated_mah, Meaning.PORT_5V).port_wh, "Wh")
    return f"{short_text(rated_mah, 'mAh')} × {short_text(5, 'V')} = {energy}"


def _efficiency_from(item: Item) -> str:
    """Where the share between cell and port comes from."""
    rated = rated_text(item)
    if item.bank and item.bank.efficiency_pct:
        return _("given")
    if rated and item.battery and item.battery.energy_wh:
        return _("as the label says: {rated}").format(rated=rated)
    return _("usual; the label says {rated}").format(rated=rated) if rated else _("usual")


def _mah_alone(battery: Battery, *, feeds: bool) -> str:
    mah = short_text(battery.mah or 0, "mAh")
    if feeds:
        return _("are the {mah} those of the cell, or of the 5 V port?").format(mah=mah)
    if battery.v is None:
        return _("mAh without volts")
    return _("are the {mah} those of the cell, or at {volts}?").format(mah=mah, volts=short_text(battery.v, "V"))
