"""A wheel over a form scrolls the form: it focuses and changes no field that has not the focus."""

from desk_steps import item_named, outing_of
from item_editor_steps import Open
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QAbstractItemView, QAbstractSpinBox, QApplication, QComboBox, QPlainTextEdit, QWidget

from kitlog.desktop.outing_page.plan_editor import PlanEditor
from kitlog.desktop.outing_page.power_plan import PowerPlan
from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.entered import entered
from kitlog.desktop.window import Window
from kitlog.workbench.workbench import Workbench

FIELDS = (QAbstractSpinBox, QComboBox, QPlainTextEdit, QAbstractItemView)


def wheel(over: QWidget) -> None:
    """Turn the wheel one notch down over the middle of a widget, as the window system tells it."""
    here = over.rect().center()
    event = QWheelEvent(
        QPointF(here),
        QPointF(over.mapToGlobal(here)),
        QPoint(),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,  # Qt takes it by place alone
    )
    QApplication.sendEvent(over, event)


def fields_of(dialog: Dialog) -> list[QWidget]:
    """All fields of a dialog and what lies in them, but not what scrolls by itself: lists in which one chooses."""
    inside = dialog.scroller.widget()
    assert inside is not None
    found = [field for field in inside.findChildren(QWidget) if isinstance(field, FIELDS)]
    return [field for field in found if field.isVisible() and field.window() is dialog]


def check(dialog: Dialog) -> None:
    inside = dialog.scroller.widget()
    assert inside is not None
    before, focus = entered(inside), QApplication.focusWidget()
    fields = fields_of(dialog)
    assert fields
    for field in fields:
        assert field.focusPolicy() & Qt.FocusPolicy.WheelFocus != Qt.FocusPolicy.WheelFocus, field.accessibleName()
        parts = [part for part in field.findChildren(QWidget) if part.isVisible()]
        for part in (field, *parts):
            wheel(part)
    assert QApplication.focusWidget() is focus
    assert entered(inside) == before


def test_over_the_form_of_an_item(edit: Open, demo_bench: Workbench) -> None:
    check(edit(item_named(demo_bench, "Phone")))


def test_over_the_plan(window: Window, demo_bench: Workbench, qtbot) -> None:
    for made in (PlanEditor, PowerPlan):
        dialog = made(window.desk, outing_of(demo_bench), window)
        qtbot.addWidget(dialog)
        dialog.show()
        dialog.activateWindow()
        qtbot.waitUntil(dialog.isActiveWindow)
        check(dialog)


def test_a_note_scrolls_only_while_one_writes_in_it(edit: Open, demo_bench: Workbench) -> None:
    editor = edit(item_named(demo_bench, "Phone"))
    notes = editor.more.notes
    notes.setPlainText("\n".join("a line" for _line in range(40)))
    editor.scroller.ensureWidgetVisible(notes)
    wheel(notes.viewport())
    assert notes.verticalScrollBar().value() == 0
    notes.setFocus()
    wheel(notes.viewport())
    assert notes.verticalScrollBar().value() > 0
