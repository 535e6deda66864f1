"""Steps that the tests of several pages of the window share: open a page, find an item, stand on a line."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QWidget

from kitlog.desktop.outing_page.page import OutingPage
from kitlog.desktop.repack_page.page import RepackPage
from kitlog.desktop.repack_page.rows import Row
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.outing.outing import Outing
from kitlog.outing.ticks import Step, TickMark
from kitlog.workbench.workbench import Workbench

Use = Callable[[Callable[[], object], Callable[[QDialog], object]], None]
"""What the fixture `in_dialog` is."""

Key = Qt.Key

LEAST_PX = 24
"""The least side of what can be pressed: WCAG 2.2, success criterion 2.5.8 (24 by 24 CSS px)."""


def outing_page(window: Window) -> OutingPage:
    page = window.open("outing")
    assert isinstance(page, OutingPage)
    return page


def repack_page(window: Window, step: Step | None = None) -> RepackPage:
    page = window.open("repack")
    assert isinstance(page, RepackPage)
    if step is not None:
        page.open_step(step)
    return page


def outing_of(bench: Workbench) -> Outing:
    outing = bench.current_outing()
    assert outing is not None
    return outing


def work_on(bench: Workbench, words: str) -> Outing:
    outing = next(one for one in bench.outings() if words in one.name)
    bench.work_on(outing.id)
    return outing


def item_named(bench: Workbench, name: str) -> Item:
    return next(item for item in bench.items() if item.name == name)


def stand_on(page: RepackPage, name: str) -> Row:
    assert page.list.stand_on_key(item_named(page.desk.bench, name).id)
    row = page.current()
    assert row is not None
    return row


def row_of(page: RepackPage, name: str) -> Row:
    item = item_named(page.desk.bench, name)
    return next(row for row in page.list.rows.rows if row.key == item.id)


def ticks_of(bench: Workbench) -> dict[tuple[Step, str], TickMark]:
    return {(tick.step, tick.line): tick.mark for tick in bench.ticks(outing_of(bench).id)}


def check_controls(page: QWidget) -> None:
    """Whatever takes the focus has a name and can be hit."""
    for widget in page.findChildren(QWidget):
        if widget.focusPolicy() == Qt.FocusPolicy.NoFocus or not widget.isVisibleTo(page) or widget.width() == 0:
            continue
        if widget.metaObject().className().startswith(("QAbstract", "QScroll", "QLineEdit", "QStacked")):
            continue
        assert widget.accessibleName().strip(), widget
        assert min(widget.width(), widget.height()) >= LEAST_PX, (widget, widget.accessibleName(), widget.size())
