"""What a pilot does on the page Repack, through the window and on a real data file: what is missing, and swaps."""

import pytest
from desk_steps import Key, Use, item_named, repack_page, row_of, stand_on, ticks_of
from PySide6.QtCore import QRectF, Qt
from PySide6.QtWidgets import QApplication, QDialog

from kitlog.desktop.repack_page.row_paint import act_rect
from kitlog.desktop.repack_page.rows import RowKind
from kitlog.desktop.repack_page.swap_dialog import SwapDialog
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.ticks import Step, TickMark
from kitlog.paint.mark import Mark
from kitlog.workbench.workbench import Workbench


def test_what_is_missing_is_pinned_on_top_and_keeps_its_mass(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    before = page.footer.mass.text()
    stand_on(page, "Headlamp")
    qtbot.keyClick(page.list, Key.Key_M)
    rows = page.list.rows.rows
    assert rows[0].title == "Before anything else"
    assert rows[1].key == item_named(window.desk.bench, "Headlamp").id
    assert rows[1].kind is RowKind.EXCEPTION
    assert (rows[1].missing, rows[1].mark, rows[1].word) == (True, Mark.STOP, "missing, essential")
    assert page.footer.mass.text() == before
    assert "1 missing" in page.footer.left_note.text()
    assert "1 missing" in page.strip.tabs[Step.LAY_OUT].accessibleName()
    current = page.current()
    assert current is not None
    assert current.title == "Headlamp"
    page.open_step(Step.LAY_OUT)
    assert row_of(page, "Headlamp").missing


@pytest.mark.parametrize(("name", "mark"), [("Hook knife", Mark.LOOK), ("Socks", Mark.NONE), ("Wing A", Mark.STOP)])
def test_what_is_missing_takes_the_state_of_its_need(window: Window, qtbot, name: str, mark: Mark) -> None:
    page = repack_page(window, Step.LAY_OUT)
    stand_on(page, name)
    qtbot.keyClick(page.list, Key.Key_M)
    assert row_of(page, name).mark is mark


def test_what_was_missing_is_found_by_space_or_m(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    for key, found in ((Key.Key_M, None), (Key.Key_Space, TickMark.DONE)):
        stand_on(page, "Headlamp")
        qtbot.keyClick(page.list, Key.Key_M)
        assert row_of(page, "Headlamp").missing
        qtbot.keyClick(page.list, key)
        assert not row_of(page, "Headlamp").missing
        lamp = item_named(window.desk.bench, "Headlamp").id
        assert ticks_of(window.desk.bench).get((Step.LAY_OUT, lamp)) is found


def bike_lamp(bench: Workbench, mass_g: int = 62) -> Item:
    lamp = Item(id="bike-lamp", name="Bike lamp", kind=Kind.LIGHT, mass_g=mass_g)
    bench.add_item(lamp)
    return lamp


def test_s_offers_what_meets_the_same_needs_with_its_mass(window: Window, in_dialog: Use, qtbot) -> None:
    bench = window.desk.bench
    lamp = bike_lamp(bench)
    page = repack_page(window, Step.STOW)
    stand_on(page, "Headlamp")

    def take(dialog: QDialog) -> None:
        assert isinstance(dialog, SwapDialog)
        assert "62" in dialog.choice.currentText()
        assert "8\u00a0g heavier" in dialog.choice.currentText()
        qtbot.keyClick(dialog, Key.Key_Return)

    in_dialog(lambda: qtbot.keyClick(page.list, Key.Key_S), take)
    keys = {row.key for row in page.list.rows.rows}
    assert lamp.id in keys
    assert item_named(bench, "Headlamp").id not in keys
    window.acts.undo()
    assert item_named(bench, "Headlamp").id in {row.key for row in page.list.rows.rows}


def test_a_missing_line_shows_its_swap_after_a_moment(window: Window, qtbot) -> None:
    bike_lamp(window.desk.bench, 38)
    page = repack_page(window, Step.STOW)
    stand_on(page, "Headlamp")
    qtbot.keyClick(page.list, Key.Key_M)
    qtbot.waitUntil(lambda: row_of(page, "Headlamp").right == "Swap: Bike lamp", timeout=3000)
    assert row_of(page, "Headlamp").right_note == "38\u00a0g, 16\u00a0g lighter"


def test_s_says_so_when_nothing_could_go_instead(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    stand_on(page, "Helmet B")
    qtbot.keyClick(page.list, Key.Key_S)
    assert "Helmet B" in page.remark.text()
    assert page.remark.isVisible()


def test_wing_harness_reserve_and_helmet_are_never_offered_for_their_mass(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    for name in ("Wing A", "Harness A", "Reserve A", "Helmet B"):
        stand_on(page, name)
        qtbot.keyClick(page.list, Key.Key_S)
        assert QApplication.activeModalWidget() is None
        assert name in page.remark.text()


def test_a_press_on_the_act_of_an_exception_acts(window: Window, in_dialog: Use, qtbot) -> None:
    bike_lamp(window.desk.bench)
    page = repack_page(window, Step.STOW)
    stand_on(page, "Headlamp")
    qtbot.keyClick(page.list, Key.Key_M)
    qtbot.waitUntil(lambda: row_of(page, "Headlamp").right != "", timeout=3000)
    row = stand_on(page, "Headlamp")
    rect = QRectF(page.list.visualRect(page.list.currentIndex()))
    at = act_rect(row, rect)
    assert min(at.width(), at.height()) >= 24

    def seen(dialog: QDialog) -> None:
        assert isinstance(dialog, SwapDialog)

    press = Qt.MouseButton.LeftButton
    in_dialog(lambda: qtbot.mouseClick(page.list.viewport(), press, pos=at.center().toPoint()), seen)
