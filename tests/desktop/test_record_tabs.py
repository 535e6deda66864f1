"""The way through the dialog of a record: Tab goes as it is seen, and nothing of it is cut."""

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.desktop.parts.tab_order import tab_stops
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.desktop.window import Window
from kitlog.kit.measurement import Measured
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def dialog(window: Window, demo_bench: Workbench, qtbot) -> RecordDialog:
    wing = next(item for item in demo_bench.items() if item.name == "Wing A")
    made = RecordDialog(window.desk, wing.id, "", window)
    qtbot.addWidget(made)
    with qtbot.waitExposed(made):
        made.show()
    return made


def way(dialog: RecordDialog, first: QWidget) -> list[QWidget]:
    QApplication.processEvents()
    stops = {
        stop for stop in tab_stops(dialog._inside) if stop.isVisible() and stop.isEnabled() and stop.window() is dialog
    }
    found, at = [first], first.nextInFocusChain()
    while at is not first:
        if at in stops:
            found.append(at)
        at = at.nextInFocusChain()
    assert set(found) == stops
    return found


def as_seen(dialog: RecordDialog, widgets: list[QWidget]) -> list[QWidget]:
    def place(widget: QWidget) -> tuple[int, int]:
        at = widget.mapTo(dialog, QPoint(0, widget.height() // 2))
        return round(at.y() / 8), at.x()

    return sorted(widgets, key=place)


def test_tab_goes_through_a_record_as_it_is_seen(dialog: RecordDialog, qtbot) -> None:
    found = way(dialog, dialog.item)
    assert found[1 : 1 + len(dialog.ticks)] == list(dialog.ticks.values())
    assert found == as_seen(dialog, found)
    dialog.item.setCurrentIndex(dialog.item.currentIndex() + 1)
    after = way(dialog, dialog.item)
    assert after[1 : 1 + len(dialog.ticks)] == list(dialog.ticks.values())


def test_tab_goes_through_measured_values_before_what_comes_after(dialog: RecordDialog) -> None:
    dialog.measured.add_act.click()
    dialog.measured.add_act.click()
    one, two = dialog.measured.rows
    found = way(dialog, dialog.item)
    places = [found.index(w) for w in (one.what, one.place, two.what, two.place, dialog.measured.add_act)]
    assert places == sorted(places)
    assert places[-1] < len(found) - 1


@pytest.mark.parametrize("what", list(Measured))
def test_no_unit_is_cut(what: Measured, dialog: RecordDialog) -> None:
    dialog.measured.add_act.click()
    row = dialog.measured.rows[0]
    row.what.choose(what.value)
    for number in range(row.unit.count()):
        row.unit.setCurrentIndex(number)
        assert row.unit.shown_text() == row.unit.currentText()
    assert row.what.shown_text() == row.what.currentText()
