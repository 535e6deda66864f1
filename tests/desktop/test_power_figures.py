"""Rows about power beside the table of the kit: figures with their source, and long lists kept short."""

from collections.abc import Iterator
from datetime import UTC, date, datetime

from kitlog.desktop.kit_page.power_figures import MOST_ROWS, Row, bank_rows, battery_rows, charger_rows
from kitlog.kit.facets import Bank, Battery, Charger, ChargerPort, WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind


def told(rows: Iterator[Row]) -> list[Row]:
    return [(label, figure.replace("\u00a0", " "), note.replace("\u00a0", " ")) for label, figure, note in rows]


def bank(battery: Battery | None, **figures: float) -> Item:
    return Item.model_validate(
        {"id": "b", "name": "Bank", "kind": Kind.POWER_BANK, "battery": battery, "bank": Bank.model_validate(figures)}
    )


def test_a_battery_and_how_it_is_used() -> None:
    tracking = WayOfUse(name="tracking", power_w=0.9, low_w=0.5, high_w=1.6, basis="starter", source="from practice")
    measured = WayOfUse(name="lit", from_pct=90, to_pct=50, over_h=2, basis="measured")
    cell = Battery(
        wh=17.3,
        health_pct=90,
        connector="USB-C",
        on_hand_pct=40,
        on_hand_at=datetime(2026, 5, 8, 12, tzinfo=UTC),
        swollen_on=date(2026, 5, 1),
        ways=(tracking, measured),
    )
    rows = told(battery_rows(Item(id="p", name="Phone", kind=Kind.PHONE, battery=cell)))
    assert rows[0] == ("Battery", "17.3 Wh", "as printed, health 90 %")
    assert rows[1] == ("Swollen", "1 May 2026", "neither charge it nor take it")
    assert rows[2][:2] == ("On hand", "40 %")
    assert rows[2][2].startswith("seen 8 May 2026")
    assert rows[3] == ("Connector", "USB-C", "")
    assert rows[4] == ("Draws", "0.90 W", "tracking, starter figure, not measured, 0.50–1.60, from practice")
    # 17.3 x 0.9 = 15.57 Wh; 40 % of it in 2 h = 3.114 W; 39 and 41 % give 3.036 and 3.192 W.
    assert rows[5] == ("Draws", "3.11 W", "lit, measured, 3.04–3.19, from 90 to 50 % in 2 h")


def test_a_bank_in_the_cell_and_at_the_port() -> None:
    item = bank(Battery(mah=10_000, v=3.7), ports=2, port_w=10, total_w=15, min_w=0.25, off_s=32)
    assert told(battery_rows(item)) == [("Battery", "37 Wh", "10\u2009000 mAh × 3.7 V")]
    assert told(bank_rows(item)) == [
        ("At the port", "31.45 Wh", "85 %, usual"),
        ("Ports", "2 ports", "10 W each, 15 W together"),
        ("Asleep under", "0.25 W", "after 32 s"),
    ]


def test_a_bank_that_has_aged_gives_what_its_health_leaves() -> None:
    """38.5 Wh x 85 % = 32.725 Wh when new; x 90 % = 29.4525 Wh."""
    label, figure, note = told(bank_rows(bank(Battery(wh=38.5, health_pct=90))))[0]
    assert (label, figure) == ("At the port", "29.45 Wh")
    assert note.startswith("85 %, usual, health 90 %; 32.7")


def test_what_is_not_known_says_what_is_missing() -> None:
    (row,) = told(battery_rows(bank(Battery(mah=10_000), ports=1)))
    assert row == ("Battery", "not known", "are the 10\u2009000 mAh those of the cell, or of the 5 V port?")
    assert told(bank_rows(bank(None, ports=1)))[0] == ("At the port", "not known", "")


def test_more_out_than_in_is_told() -> None:
    rows = told(bank_rows(bank(Battery(wh=37), rated_mah=10_000)))
    assert rows[0] == ("At the port", "not known", "50.0 Wh at the port are more than the 37.0 Wh in the cell")


def test_a_cable_shows_its_ends_alone() -> None:
    cable = Item(id="c", name="Cable", kind=Kind.CABLE, battery=Battery(connector="USB-C to USB-A"))
    assert told(battery_rows(cable)) == [("Connector", "USB-C to USB-A", "")]


def test_a_charger_and_a_long_list() -> None:
    ports = [ChargerPort(power_w=18, connector="USB-C"), ChargerPort(connector="barrel", fixed_cable=True)]
    charger = Item(id="c", name="C", kind=Kind.CHARGER, charger=Charger(total_w=28, ports=(*ports, *ports, *ports)))
    rows = told(charger_rows(charger))
    assert rows[0] == ("Port 1", "18 W", "USB-C")
    assert rows[1] == ("Port 2", "not known", "barrel, with a fixed cable")
    assert rows[MOST_ROWS:] == [("", "and 2 more", ""), ("Together", "28 W", "at most")]
