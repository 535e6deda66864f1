"""A wall charger whose ports stand in the column that banks have too: they are ports of the charger."""

from itertools import count

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.charger_ports import with_own_ports
from kitlog.files.table.kit_items import KitItems, kit_items
from kitlog.files.table.kit_reading import Choices, read_kit_grid
from kitlog.files.table.open_grid import read_grid
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.facets import Bank, Battery, Charger, ChargerPort
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.capacity import is_bank

WORDS = load_vocabulary(resources_folder())


def brought(text: str) -> KitItems:
    ids = count(1)
    reading = read_kit_grid(read_grid(text.encode(), "kit.csv"), WORDS, Choices())
    return kit_items(reading, "kit.csv", (), lambda: f"id{next(ids)}", None, leave_out=False)


def test_ports_of_a_charger_are_its_own_and_it_is_no_bank() -> None:
    table = "name,kind,bank_ports,bank_port_w,charger_total_w,battery_wh\n"
    block, bank = brought(table + "Block,charger,2,20,30,\nBank,power bank,2,18,,37\n").new
    assert block.charger == Charger(total_w=30, ports=(ChargerPort(power_w=20), ChargerPort(power_w=20)))
    assert (block.bank, is_bank(block)) == (None, False)
    assert (bank.bank, bank.charger) == (Bank(ports=2, port_w=18), None)


def test_the_most_of_all_ports_comes_along() -> None:
    (block,) = brought("name,kind,ports,bank_total_w\nBlock,charger,1,45\n").new
    assert block.charger == Charger(total_w=45, ports=(ChargerPort(),))


def test_ports_on_record_keep_what_is_known_of_them() -> None:
    known = Charger(ports=(ChargerPort(power_w=20, connector="USB-C"), ChargerPort(power_w=12, connector="USB-A")))
    item = Item(id="a", name="Block", kind=Kind.CHARGER, charger=known, bank=Bank(ports=3))
    assert with_own_ports(item).charger == Charger(ports=(*known.ports, ChargerPort()))
    fewer = item.model_copy(update={"bank": Bank(ports=1, port_w=30)})
    assert with_own_ports(fewer).charger == Charger(ports=(ChargerPort(power_w=30, connector="USB-C"),))


@pytest.mark.parametrize(
    "told",
    [
        {"kind": Kind.CHARGER, "bank": Bank(ports=2), "battery": Battery(wh=37)},
        {"kind": Kind.CHARGER, "bank": Bank(ports=2, rated_mah=6000)},
        {"kind": Kind.CHARGER, "bank": Bank(port_w=20)},
        {"kind": Kind.POWER_BANK, "bank": Bank(ports=2)},
        {"kind": Kind.CHARGER},
    ],
)
def test_what_has_a_cell_or_does_not_say_how_many_is_left_as_it_is(told: dict[str, object]) -> None:
    item = Item.model_validate({"id": "a", "name": "Block", **told})
    assert with_own_ports(item) is item
