"""What a pilot does on the page Repack, through the window and on a real data file: where things ride."""

from collections.abc import Callable

from desk_steps import Key, Use, item_named, repack_page, stand_on
from PySide6.QtWidgets import QDialog

from kitlog.desktop.repack_page.drawing_dialog import DrawingDialog
from kitlog.desktop.repack_page.rows import RowKind
from kitlog.desktop.window import Window
from kitlog.outing.ticks import Step
from kitlog.workbench.workbench import Workbench


def test_lines_stand_in_the_zone_in_which_they_are_stowed(window: Window) -> None:
    page = repack_page(window, Step.STOW)
    zones: dict[str, str] = {}
    head = ""
    for row in page.list.rows.rows:
        head = row.title if row.kind is RowKind.HEAD else head
        zones[row.title] = head
    assert zones["Wing A"] == zones["Harness A"] == "Rucksack"
    assert zones["Reserve A"] == "Under seat"
    assert zones["Headlamp"] == "Back pocket"
    assert zones["Dry clothes"] == "Left in the car"


def test_the_drawing_fills_by_the_stowed_share_of_the_mass(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    stand_on(page, "Wing A")
    qtbot.keyClick(page.list, Key.Key_Space)
    fill = page.drawing._picture.fill("rucksack")
    assert fill is not None
    assert fill.stowed_g == item_named(window.desk.bench, "Wing A").mass_g
    assert page.drawing.selected == "rucksack"
    assert "Rucksack" in page.drawing.accessibleDescription()


def test_pointing_at_a_zone_and_standing_on_its_line_are_one_selection(window: Window, qtbot) -> None:
    page = repack_page(window, Step.STOW)
    page.drawing.setFocus()
    qtbot.keyClick(page.drawing, Key.Key_Right)
    zone = page.drawing.selected
    row = page.current()
    assert row is not None
    assert row.zone is not None
    assert row.zone.value == zone


def test_in_a_narrow_window_bars_stand_for_the_drawing(
    show: Callable[..., Window], demo_bench: Workbench, in_dialog: Use, qtbot
) -> None:
    page = repack_page(show(demo_bench, "repack", (1024, 600)), Step.STOW)
    assert page.bars.isVisible()
    assert not page.drawing.isVisible()
    assert page.strip.height() <= 44 * 1.2

    def look_at(dialog: QDialog) -> None:
        assert isinstance(dialog, DrawingDialog)
        assert "Rucksack" in dialog.view.accessibleDescription()

    in_dialog(page.drawing_act.click, look_at)
