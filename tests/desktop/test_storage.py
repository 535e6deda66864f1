"""What lies unused, in the window: on Service, beside the charging, and in its own sheet."""

from collections.abc import Callable

import pytest
from desk_steps import Key, item_named, repack_page
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.text import Paragraph
from kitlog.desktop.service_page.page import ServicePage
from kitlog.desktop.service_page.storage_dialog import StorageDialog
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.outing.ticks import Step
from kitlog.workbench.workbench import Workbench

OLD = Item.model_validate(
    {"id": "old", "name": "Old bank", "kind": "power bank", "battery": {"wh": 20}, "bank": {"ports": 1}}
)


@pytest.fixture
def bench(demo_bench: Workbench) -> Workbench:
    """The demo with a bank at home that is in no flight."""
    demo_bench.add_item(OLD)
    return demo_bench


@pytest.fixture
def sheet(bench: Workbench, show: Callable[..., Window]) -> StorageDialog:
    window = show(bench)
    shown = StorageDialog(window.desk, window)
    shown.show()
    return shown


def said(widget: QWidget) -> str:
    return "\n".join(text.text() for text in widget.findChildren(Paragraph))


def typed(sheet: StorageDialog, name: str, keys: str, qtbot) -> None:
    field = sheet.rows[name].on_hand
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, keys)
    qtbot.keyClick(field, Key.Key_Return)


def test_service_counts_what_wants_a_charge_and_opens_it(bench: Workbench, show: Callable[..., Window]) -> None:
    page = show(bench).open("service")
    assert isinstance(page, ServicePage)
    assert page.storage.words == "Storage (1)…"
    assert "1 thing lies unused" in page.storage.accessibleName()
    assert page.storage.isVisible()
    bench.delete_items(["old"])
    assert not page.storage.isVisible()


def test_beside_the_charging_stands_what_stays_at_home(bench: Workbench, show: Callable[..., Window], qtbot) -> None:
    page = repack_page(show(bench), Step.CHARGE)
    qtbot.waitUntil(lambda: page.planner.plan is not None and not page.planner.busy, timeout=20_000)
    assert "Old bank: look at its charge" in said(page.evening)
    along = {charge.item.name for charge in page._charges()}
    assert not any(f"{name}: look at its charge" in said(page.evening) for name in along)
    assert any("Storage charge" in button.accessibleName() for button in page.evening.findChildren(Button))


def test_a_charge_typed_is_one_step_to_undo_and_says_what_to_do(sheet: StorageDialog, bench: Workbench, qtbot) -> None:
    """The rule's source: trade, 4.2 (40 to 60 %)."""
    sheet.season_over.setChecked(True)
    typed(sheet, "old", "90", qtbot)
    assert sheet.isVisible()
    battery = item_named(bench, "Old bank").battery
    assert battery is not None
    assert battery.on_hand_pct == 90
    assert "Use down to 50" in sheet.rows["old"].act.text()
    assert "90" in sheet.rows["old"].why.text()
    assert "Source: " in said(sheet)
    typed(sheet, "old", "30", qtbot)
    assert "Charge to 50" in sheet.rows["old"].act.text()
    bench.undo()
    battery = item_named(bench, "Old bank").battery
    assert battery is not None
    assert battery.on_hand_pct == 90


def test_what_is_no_charge_is_said_and_not_kept(sheet: StorageDialog, bench: Workbench, qtbot) -> None:
    typed(sheet, "old", "300", qtbot)
    assert sheet.wrong()
    battery = item_named(bench, "Old bank").battery
    assert battery is not None
    assert battery.on_hand_pct is None


def test_the_keys_reach_each_field_and_each_is_named(sheet: StorageDialog) -> None:
    reached, widget = set(), QApplication.focusWidget()
    for _step in range(4 * len(sheet.rows) + 8):
        sheet.focusNextChild()
        widget = sheet.focusWidget()
        reached.add(widget.accessibleName() if widget is not None else "")
    assert {row.on_hand.accessibleName() for row in sheet.rows.values()} <= reached
    assert all("Charge on hand of " in row.on_hand.accessibleName() for row in sheet.rows.values())
    assert all(row.on_hand.accessibleDescription() for row in sheet.rows.values())
