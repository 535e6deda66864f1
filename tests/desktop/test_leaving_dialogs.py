"""A dialog in which something was changed asks before it is left; one without changes closes at once."""

from collections.abc import Callable
from datetime import date

import pytest
from desk_steps import Key, item_named, outing_of
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from kitlog.desktop.keys_dialog import CommandSearch
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.outing_page.override_dialog import OverrideDialog
from kitlog.desktop.outing_page.plan_editor import PlanEditor
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.pilot_dialog import PilotDialog
from kitlog.desktop.service_page.event_dialog import EventDialog
from kitlog.desktop.window import Window
from kitlog.kit.kinds import Kind

Open = Callable[[Callable[[Window], Dialog]], Dialog]

CHANGES: dict[str, tuple[Callable[[Window], Dialog], Callable[[Dialog], object]]] = {
    "a name": (lambda w: PilotDialog(w.desk, w), lambda d: d.name.setText("Ulla Farn")),
    "a figure": (lambda w: PilotDialog(w.desk, w), lambda d: d.mass.put(70.5)),
    "a figure half typed": (lambda w: PilotDialog(w.desk, w), lambda d: d.mass.lineEdit().setText("7")),
    "a day": (lambda w: EventDialog(w.desk, item_of(w).id, w), lambda d: d.day.put(date(2026, 5, 1))),
    "a choice": (lambda w: ItemEditor(w.desk, item_of(w), w), lambda d: d.main_fields.kind.choose(Kind.RADIO)),
    "a reason": (
        lambda w: OverrideDialog(w.desk, outing_of(w.desk.bench).id, "x", "x", "x", w),
        lambda d: d.reason_field.setPlainText("because"),
    ),
    "one more row": (lambda w: PlanEditor(w.desk, outing_of(w.desk.bench), w), lambda d: d.phases.add()),
    "a tick": (
        lambda w: PlanEditor(w.desk, outing_of(w.desk.bench), w),
        lambda d: next(iter(d.day.types.ticks.values())).toggle(),
    ),
}


def item_of(window: Window):
    return item_named(window.desk.bench, "Phone")


@pytest.fixture
def open_dialog(window: Window, qtbot) -> Open:
    def opened(make: Callable[[Window], Dialog]) -> Dialog:
        dialog = make(window)
        qtbot.addWidget(dialog)
        dialog.show()
        qtbot.waitUntil(lambda: dialog.isActiveWindow() and dialog.isAncestorOf(QApplication.focusWidget()))
        return dialog

    return opened


@pytest.mark.parametrize("what", CHANGES)
def test_esc_asks_once_something_was_changed(open_dialog: Open, qtbot, what: str) -> None:
    make, change = CHANGES[what]
    dialog = open_dialog(make)
    change(dialog)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Escape)
    assert dialog.isVisible()
    assert dialog.question.isVisible()
    assert QApplication.focusWidget() is dialog.question.stay_act


def test_keeping_goes_back_to_the_field_with_all_that_was_typed(open_dialog: Open, qtbot) -> None:
    dialog = open_dialog(lambda w: PilotDialog(w.desk, w))
    assert isinstance(dialog, PilotDialog)
    dialog.how.setFocus()
    qtbot.keyClicks(dialog.how, "after breakfast")
    for key in (Key.Key_Return, Key.Key_Escape):
        qtbot.keyClick(dialog.how, Key.Key_Escape)
        qtbot.keyClick(QApplication.focusWidget(), key)
        assert dialog.isVisible()
        assert not dialog.question.isVisible()
        assert QApplication.focusWidget() is dialog.how
    assert dialog.how.text() == "after breakfast"


def test_discarding_by_keyboard_leaves_it_and_writes_nothing(open_dialog: Open, window: Window, qtbot) -> None:
    before = window.desk.bench.pilot()
    dialog = open_dialog(lambda w: PilotDialog(w.desk, w))
    assert isinstance(dialog, PilotDialog)
    dialog.name.setText("Ulla Farn")
    qtbot.keyClick(dialog.name, Key.Key_Escape)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Left)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Return)
    assert not dialog.isVisible()
    assert window.desk.bench.pilot() == before


def test_closing_by_the_frame_of_the_window_asks_too(open_dialog: Open, qtbot) -> None:
    dialog = open_dialog(lambda w: PilotDialog(w.desk, w))
    assert isinstance(dialog, PilotDialog)
    dialog.name.setText("Ulla Farn")
    dialog.close()
    assert dialog.isVisible()
    assert dialog.question.isVisible()


def test_cancel_is_an_answer_and_asks_nothing(open_dialog: Open, qtbot) -> None:
    dialog = open_dialog(lambda w: PilotDialog(w.desk, w))
    assert isinstance(dialog, PilotDialog)
    dialog.name.setText("Ulla Farn")
    qtbot.mouseClick(dialog.leave, Qt.MouseButton.LeftButton)
    assert not dialog.isVisible()


def test_a_change_taken_back_is_none(open_dialog: Open, qtbot) -> None:
    dialog = open_dialog(lambda w: PilotDialog(w.desk, w))
    assert isinstance(dialog, PilotDialog)
    dialog.how.setFocus()
    qtbot.keyClicks(dialog.how, "9")
    qtbot.keyClick(dialog.how, Key.Key_Backspace)
    qtbot.keyClick(dialog.how, Key.Key_Escape)
    assert not dialog.isVisible()


def test_a_search_is_left_at_once(open_dialog: Open, qtbot) -> None:
    dialog = open_dialog(lambda w: CommandSearch(w.action_set.by_id, w))
    qtbot.keyClicks(QApplication.focusWidget(), "undo")
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Escape)
    assert not dialog.isVisible()


def test_closing_the_window_leaves_its_dialogs(window: Window, open_dialog: Open, qtbot) -> None:
    make, change = CHANGES["one more row"]
    dialog = open_dialog(make)
    assert isinstance(dialog, PlanEditor)
    change(dialog)
    assert dialog._later.isActive()
    window.close()
    assert not dialog.isVisible()
    assert not dialog._later.isActive()
