"""Capacities and charges on hand as a pilot enters them in the editor of an item."""

from datetime import UTC, datetime

import pytest
from item_editor_steps import Open, battery, capacity, figure, new_phone, plain
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.kit.facets import Battery
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind


class TestCapacity:
    def bank(self, edit: Open) -> ItemEditor:
        editor = edit(None)
        editor.main_fields.name.setText("Bank")
        editor.main_fields.kind.choose(Kind.POWER_BANK)
        figure(battery(editor), "mah", 10_000)
        QApplication.processEvents()
        return editor

    def test_mah_of_the_cell(self, edit: Open) -> None:
        editor = self.bank(edit)
        form = battery(editor)
        assert form.meaning is not None
        assert form.meaning.isVisible()
        assert "are the 10,000 mAh those of the cell" in capacity(editor)
        form.answered.emit("cell")
        assert capacity(editor) == "10,000 mAh × 3.7 V = 37 Wh; 31.45 Wh at the port (85 %, usual)"
        assert not form.meaning.isVisible()

    def test_mah_at_the_port_go_to_the_bank_and_lose_nothing_twice(self, edit: Open) -> None:
        editor = self.bank(edit)
        battery(editor).answered.emit("port")
        item = editor.draft()
        assert item.bank is not None
        assert item.bank.rated_mah == 10_000
        assert item.battery is None
        assert capacity(editor).startswith("58.82 Wh, worked back from the port; 50 Wh at the port")

    def test_more_out_than_in_is_refused(self, edit: Open) -> None:
        editor = self.bank(edit)
        battery(editor).answered.emit("cell")
        figure(editor.facets["bank"], "rated_mah", 10_000)  # type: ignore[arg-type]
        assert "50.0 Wh at the port are more than the 37.0 Wh in the cell" in capacity(editor)
        editor.accept()
        assert editor.isVisible()
        assert "more than" in editor.wrong()

    def test_contradicting_labels_are_told_at_once(self, edit: Open) -> None:
        editor = self.bank(edit)
        battery(editor).answered.emit("cell")
        figure(battery(editor), "wh", 74)
        assert "does not agree" in capacity(editor)

    @pytest.mark.parametrize("volts", [4.75, 5.0, 5.1, 5.5])
    def test_mah_beside_the_volts_of_a_port_are_asked_about(self, edit: Open, volts: float) -> None:
        # One lithium cell has 3.6 to 3.85 V: 10,000 mAh of it are 36 to 38.5 Wh, never 50.
        editor = self.bank(edit)
        figure(battery(editor), "v", volts)
        meaning = battery(editor).meaning
        assert meaning is not None
        assert meaning.isVisible()
        assert capacity(editor) == "not known: are the 10,000 mAh those of the cell, or of the 5 V port?"
        battery(editor).answered.emit("cell")
        assert capacity(editor) == "10,000 mAh × 3.7 V = 37 Wh; 31.45 Wh at the port (85 %, usual)"
        assert not meaning.isVisible()

    def test_mah_beside_5_v_that_are_those_of_the_port_lose_nothing_twice(self, edit: Open) -> None:
        editor = self.bank(edit)
        figure(battery(editor), "v", 5)
        battery(editor).answered.emit("port")
        item = editor.draft()
        assert item.battery is None
        assert item.bank is not None
        assert item.bank.rated_mah == 10_000
        assert capacity(editor).startswith("58.82 Wh, worked back from the port; 50 Wh at the port")

    def test_5_v_that_contradict_the_wh_are_asked_about(self, edit: Open) -> None:
        editor = self.bank(edit)
        figure(battery(editor), "wh", 37)
        figure(battery(editor), "v", 5)
        meaning = battery(editor).meaning
        assert meaning is not None
        assert meaning.isVisible()
        battery(editor).answered.emit("cell")
        assert capacity(editor).startswith("37 Wh, as printed")

    @pytest.mark.parametrize("volts", [3.7, 3.85, 4.5, 7.4])
    def test_volts_of_cells_are_not_asked_about(self, edit: Open, volts: float) -> None:
        # 4.5 V are three alkaline cells, 7.4 V two of lithium.
        editor = self.bank(edit)
        figure(battery(editor), "v", volts)
        meaning = battery(editor).meaning
        assert meaning is not None
        assert not meaning.isVisible()
        assert f"{10 * volts:g} Wh" in capacity(editor)

    def test_of_a_device_too_5_v_are_asked_about(self, edit: Open) -> None:
        editor = edit(None)
        editor.main_fields.kind.choose(Kind.PHONE)
        figure(battery(editor), "mah", 4_500)
        figure(battery(editor), "v", 5)
        QApplication.processEvents()
        meaning = battery(editor).meaning
        assert meaning is not None
        assert meaning.isVisible()
        assert [plain(meaning.itemText(n)) for n in (1, 2)] == ["of the cell (3.7 V)", "at 5 V all the same"]
        assert capacity(editor) == "not known: are the 4,500 mAh those of the cell, or at 5 V?"
        battery(editor).answered.emit("port")
        assert capacity(editor) == "22.5 Wh, as printed"
        assert not meaning.isVisible()

    def test_a_device_is_not_asked_about_ports(self, edit: Open) -> None:
        editor = edit(None)
        editor.main_fields.kind.choose(Kind.PHONE)
        figure(battery(editor), "mah", 4_500)
        assert battery(editor).meaning is not None
        assert not battery(editor).meaning.isVisible()  # type: ignore[union-attr]
        assert capacity(editor) == "not known: mAh without volts"


class TestOnHand:
    def test_a_charge_is_seen_now_unless_told_otherwise(self, edit: Open) -> None:
        editor = edit(None)
        new_phone(editor)
        figure(battery(editor), "on_hand_pct", 40)
        item = editor.draft()
        assert item.battery is not None
        assert item.battery.on_hand_at == datetime(2026, 5, 8, 18, 41, tzinfo=UTC)

    def test_another_charge_is_another_moment(self, edit: Open) -> None:
        at = datetime(2026, 5, 1, 8, 0, 59, tzinfo=UTC)
        item = Item(id="x", name="X", kind=Kind.PHONE, battery=Battery(wh=1, on_hand_pct=40, on_hand_at=at))
        editor = edit(item)
        assert editor.draft() == item
        figure(battery(editor), "on_hand_pct", 80)
        changed = editor.draft().battery
        assert changed is not None
        assert (changed.on_hand_pct, changed.on_hand_at) == (80, datetime(2026, 5, 8, 18, 41, tzinfo=UTC))

    def test_the_same_charge_typed_again_is_seen_now(self, edit: Open) -> None:
        at = datetime(2026, 5, 1, 8, 0, 59, tzinfo=UTC)
        item = Item(id="x", name="X", kind=Kind.PHONE, battery=Battery(wh=1, on_hand_pct=40, on_hand_at=at))
        editor = edit(item)
        field = battery(editor).fields["on_hand_pct"]
        field.setFocus()
        QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
        assert editor.draft() == item
        field.setFocus()
        field.selectAll()  # type: ignore[attr-defined]
        QTest.keyClicks(QApplication.focusWidget(), "40")
        seen = editor.draft().battery
        assert seen is not None
        assert (seen.on_hand_pct, seen.on_hand_at) == (40, datetime(2026, 5, 8, 18, 41, tzinfo=UTC))
        assert battery(editor).fields["on_hand_at"].text() == "now"  # type: ignore[attr-defined]
