"""Everything can be reached by Tab, has a name for screen readers, and is large enough to be pressed.

Target size: WCAG 2.2, criterion 2.5.8 (24 by 24 px). Names: WCAG 2.2, criterion 4.1.2. Keyboard: 2.1.1 and 2.4.3.
"""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractButton, QApplication, QDialog, QLabel, QLineEdit, QMenuBar, QWidget

from kitlog.desktop.about import AboutDialog
from kitlog.desktop.book_dialog import BookDialog, InventoryDialog
from kitlog.desktop.flights_page.flight_editor import FlightEditor
from kitlog.desktop.keys_dialog import CommandSearch, KeysDialog
from kitlog.desktop.kit_page.bulk_editor import BulkEditor
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.outing_choice import OutingChoice
from kitlog.desktop.page import PAGES
from kitlog.desktop.pilot_dialog import PilotDialog
from kitlog.desktop.service_page.event_dialog import EventDialog
from kitlog.desktop.service_page.model_rules_dialog import ModelRulesDialog
from kitlog.desktop.service_page.notices_dialog import NoticesDialog
from kitlog.desktop.service_page.record_dialog import RecordDialog
from kitlog.desktop.service_page.rule_editor import RuleEditor
from kitlog.desktop.service_page.season_dialog import SeasonDialog
from kitlog.desktop.service_page.starters_dialog import StartersDialog
from kitlog.desktop.service_page.stops_dialog import StopsDialog
from kitlog.desktop.window import Window
from kitlog.workbench.workbench import Workbench

LEAST_PX = 24
SIZES = {"wide": (1280, 800), "middle": (1024, 600)}

DIALOGS: dict[str, Callable[[Window], QDialog]] = {
    "about": AboutDialog,
    "keys": KeysDialog,
    "commands": lambda w: CommandSearch(w.action_set.by_id, w),
    "item": lambda w: ItemEditor(w.desk, next(i for i in w.desk.bench.items() if i.name == "Phone"), w),
    "new item": lambda w: ItemEditor(w.desk, None, w),
    "bulk": lambda w: BulkEditor(w.desk, w.desk.bench.items()[:3], w),
    "pilot": lambda w: PilotDialog(w.desk, w),
    "outings": lambda w: OutingChoice(w.desk, w),
    "record": lambda w: RecordDialog(w.desk, w.desk.bench.items()[0].id, "", w),
    "event": lambda w: EventDialog(w.desk, w.desk.bench.items()[0].id, w),
    "starters": lambda w: StartersDialog(w.desk, w.desk.bench.items()[1], w),
    "rule": lambda w: RuleEditor(w.desk, w.desk.bench.items()[0], w.desk.bench.rules()[0], None, w),
    "models": lambda w: ModelRulesDialog(w.desk, w),
    "notices": lambda w: NoticesDialog(w.desk, w.desk.bench.items()[0].id, w),
    "stops": lambda w: StopsDialog(w.desk, w),
    "season": lambda w: SeasonDialog(w.desk, w),
    "flight": lambda w: FlightEditor(w.desk, w.desk.bench.flights()[0], w),
    "book": lambda w: BookDialog(w.desk, w.desk.bench.items()[0].id, w),
    "inventory": lambda w: InventoryDialog(w.desk, w.desk.bench.items()[:2], w),
    "new flight": lambda w: FlightEditor(w.desk, None, w),
}


def focusable(top: QWidget) -> list[QWidget]:
    """What can have the focus: not what is inside of a field."""
    return [
        widget
        for widget in top.findChildren(QWidget)
        if widget.focusPolicy() is not Qt.FocusPolicy.NoFocus
        and widget.isVisible()
        and widget.isEnabled()
        and not isinstance(widget, QMenuBar | QLabel)
        and widget.focusProxy() is None
        and not (isinstance(widget, QLineEdit) and widget.objectName() == "qt_spinbox_lineedit")
        and widget.window() is top
        and not widget.objectName().startswith("qt_scrollarea")
    ]


def name_of(widget: QWidget) -> str:
    return QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)


def by_tab(top: QWidget, qtbot) -> set[QWidget]:
    """What Tab reaches, all the way round."""
    reached: list[QWidget] = []
    for _step in range(400):
        widget = QApplication.focusWidget()
        if widget is None or (reached and widget is reached[0]):
            break
        reached.append(widget)
        qtbot.keyClick(widget, Qt.Key.Key_Tab)
    return set(reached)


def wants_tab(widget: QWidget) -> bool:
    return bool(widget.focusPolicy().value & Qt.FocusPolicy.TabFocus.value)


def small_targets(top: QWidget) -> list[str]:
    buttons = [b for b in top.findChildren(QAbstractButton) if b.isVisible() and b.window() is top]
    own = [b for b in buttons if not b.objectName().startswith("qt_") and not isinstance(b.parent(), QLineEdit)]
    return [f"{name_of(b)} {b.width()}x{b.height()}" for b in own if min(b.width(), b.height()) < LEAST_PX]


@pytest.mark.parametrize("size", list(SIZES))
@pytest.mark.parametrize("page", PAGES)
def test_pages_can_be_reached_named_and_pressed(
    page: str, size: str, show: Callable[..., Window], demo_bench: Workbench, qtbot
) -> None:
    window = show(demo_bench, page, SIZES[size])
    qtbot.waitUntil(lambda: QApplication.focusWidget() is not None)
    wanted = focusable(window)
    assert [type(w).__name__ for w in wanted if not name_of(w)] == []
    assert small_targets(window) == []
    reached = by_tab(window, qtbot)
    assert [(type(w).__name__, name_of(w)) for w in wanted if wants_tab(w) and w not in reached] == []


@pytest.mark.parametrize("page", PAGES)
def test_empty_pages_can_be_reached_named_and_pressed(
    page: str, show: Callable[..., Window], empty_bench: Workbench, qtbot
) -> None:
    window = show(empty_bench, page, open_demo=lambda: None)
    qtbot.waitUntil(lambda: QApplication.focusWidget() is not None)
    wanted = focusable(window)
    assert [type(w).__name__ for w in wanted if not name_of(w)] == []
    assert small_targets(window) == []
    reached = by_tab(window, qtbot)
    assert [(type(w).__name__, name_of(w)) for w in wanted if wants_tab(w) and w not in reached] == []


@pytest.mark.parametrize("name", list(DIALOGS))
def test_dialogs_can_be_reached_named_pressed_and_left_with_esc(name: str, window: Window, qtbot) -> None:
    dialog = DIALOGS[name](window)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitUntil(lambda: dialog.isActiveWindow() and dialog.isAncestorOf(QApplication.focusWidget()))
    wanted = focusable(dialog)
    assert [type(w).__name__ for w in wanted if not name_of(w)] == []
    assert small_targets(dialog) == []
    reached = by_tab(dialog, qtbot)
    assert [(type(w).__name__, name_of(w)) for w in wanted if wants_tab(w) and w not in reached] == []
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()


@pytest.mark.parametrize("name", list(DIALOGS))
def test_dialogs_fit_on_a_small_screen(name: str, window: Window, qtbot) -> None:
    dialog = DIALOGS[name](window)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.height() <= dialog.screen().availableGeometry().height()
    assert dialog.minimumSizeHint().height() <= 600
