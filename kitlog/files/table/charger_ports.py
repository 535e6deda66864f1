"""Ports of a wall charger: a table has one column of ports for banks and chargers."""

from kitlog.kit.facets import Bank, Charger, ChargerPort
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind


def with_own_ports(item: Item) -> Item:
    """A charger without a cell, with the ports that stand under headings of banks as its own; else the item as it is.

    What is on record of a port stays, unless the row gives another power.
    """
    bank = item.bank
    if item.kind is not Kind.CHARGER or bank is None or not bank.ports or _has_cell(item, bank):
        return item
    before = item.charger or Charger()
    known = (*before.ports, *(ChargerPort() for _port in range(bank.ports)))[: bank.ports]
    ports = known if bank.port_w is None else tuple(p.model_copy(update={"power_w": bank.port_w}) for p in known)
    total_w = before.total_w if bank.total_w is None else bank.total_w
    return item.model_copy(update={"bank": None, "charger": Charger(total_w=total_w, ports=ports)})


def _has_cell(item: Item, bank: Bank) -> bool:
    battery = item.battery
    in_cell = battery is not None and (battery.wh is not None or battery.mah is not None)
    return in_cell or any(figure is not None for figure in (bank.rated_mah, bank.efficiency_pct, bank.min_w))
