"""Numbers typed with mouse and keys: a click selects all, and what cannot be read stays, marked, over the old figure."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget

from kitlog.desktop.parts.dialog import Dialog
from kitlog.desktop.parts.number_field import NumberField

LEFT = Qt.MouseButton.LeftButton


def shown(field: NumberField, qtbot) -> None:
    """Show the field beside another one that has the focus."""
    form, other = QWidget(), QLineEdit()
    rows = QVBoxLayout(form)
    rows.addWidget(other)
    rows.addWidget(field)
    qtbot.addWidget(form)
    form.show()
    form.activateWindow()
    qtbot.waitUntil(lambda: QApplication.activeWindow() is form)
    other.setFocus()
    field.form = form


def clicked(field: NumberField, qtbot, x: int = 60) -> None:
    qtbot.mouseClick(field.lineEdit(), LEFT, pos=QPoint(x, field.lineEdit().height() // 2))


def number_field(unit: str = "", number: float | None = None, decimals: int = 0, most: float = 1e5) -> NumberField:
    field = NumberField(unit, decimals=decimals, most=most)
    field.setAccessibleName("mass")
    field.setFixedWidth(160)
    field.put(number)
    return field


@pytest.mark.parametrize("number", [None, 40])
def test_a_click_selects_all_so_that_typing_replaces(styled: QApplication, qtbot, number: float | None) -> None:
    field = number_field("g", number)
    shown(field, qtbot)
    clicked(field, qtbot)
    QTest.keyClicks(QApplication.focusWidget(), "190")
    QTest.keyClick(field, Qt.Key.Key_Tab)
    assert field.number() == 190
    assert field.text() == "190\u00a0g"
    assert not field.is_wrong()


def test_the_words_for_not_known_are_never_extended(styled: QApplication, qtbot) -> None:
    field = number_field("g")
    shown(field, qtbot)
    clicked(field, qtbot)
    clicked(field, qtbot, 30)
    assert not field.lineEdit().hasSelectedText()
    QTest.keyClicks(QApplication.focusWidget(), "190")
    QTest.keyClick(field, Qt.Key.Key_Tab)
    assert field.number() == 190


def test_a_second_click_places_the_cursor(styled: QApplication, qtbot) -> None:
    field = number_field("", 40)
    shown(field, qtbot)
    clicked(field, qtbot)
    assert field.lineEdit().selectedText() == "40"
    clicked(field, qtbot, 100)
    QTest.keyClicks(QApplication.focusWidget(), "5")
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert field.number() == 405


@pytest.mark.parametrize(
    ("decimals", "most", "typed"),
    [
        (0, 100, "200"),
        (1, 100_000, "1e9"),
        (1, 100, "150"),
        (1, 100, "5.25"),
        (0, 100, "40 %62"),
        (0, 100, "-1"),
        (0, 100, "1,500"),
    ],
)
@pytest.mark.parametrize("end", [Qt.Key.Key_Tab, Qt.Key.Key_Return])
def test_what_cannot_be_taken_stays_marked_and_the_old_figure_holds(
    styled: QApplication, qtbot, decimals: int, most: float, typed: str, end: Qt.Key
) -> None:
    field = number_field("%", 40, decimals, most)
    shown(field, qtbot)
    clicked(field, qtbot)
    QTest.keyClicks(QApplication.focusWidget(), typed)
    QTest.keyClick(field, end)
    assert field.text() == f"{typed}\u00a0%"
    assert field.number() == 40
    assert field.property("wrong") is True
    assert typed in field.accessibleDescription()
    assert "from 0 to" in field.toolTip()
    clicked(field, qtbot)
    field.lineEdit().selectAll()
    QTest.keyClicks(QApplication.focusWidget(), "62")
    QTest.keyClick(field, end)
    assert field.number() == 62
    assert field.property("wrong") is False
    assert field.toolTip() == ""


@pytest.mark.parametrize("typed", ["", "not known", "Not known"])
def test_only_an_emptied_field_and_the_words_mean_not_known(styled: QApplication, qtbot, typed: str) -> None:
    field = number_field("%", 40)
    shown(field, qtbot)
    clicked(field, qtbot)
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, typed)
    QTest.keyClick(field, Qt.Key.Key_Tab)
    assert field.number() is None
    assert not field.is_wrong()


@pytest.mark.parametrize("typed", ["-5", "\u22125", "-5 °C", "-5°C"])
def test_whole_figures_below_nought_are_read_where_they_may_stand(styled: QApplication, qtbot, typed: str) -> None:
    field = NumberField("°C", least=-60, most=60)
    shown(field, qtbot)
    clicked(field, qtbot)
    field.lineEdit().insert(typed)
    QTest.keyClick(field, Qt.Key.Key_Tab)
    assert field.number() == -5


def test_a_dialog_writes_nothing_while_a_figure_cannot_be_read(styled: QApplication, qtbot) -> None:
    dialog, field, written = Dialog("Pilot", "Save", None), number_field("kg", 80), []
    dialog.body.addWidget(field)
    qtbot.addWidget(dialog)
    dialog.show()
    field.selectAll()
    QTest.keyClicks(field, "8x")
    assert not dialog.attempt(lambda: written.append(field.number()))
    assert written == []
    assert dialog.wrong().startswith("Mass: “8x” cannot be read.")
    field.lineEdit().selectAll()
    QTest.keyClicks(field, "81")
    assert dialog.attempt(lambda: written.append(field.number()))
    assert written == [81]


def test_a_figure_put_in_takes_the_mark_away(styled: QApplication, qtbot) -> None:
    field = number_field("%", 40)
    shown(field, qtbot)
    clicked(field, qtbot)
    QTest.keyClicks(field, "4x")
    assert field.is_wrong()
    field.put(40)
    assert not field.is_wrong()
    assert field.property("wrong") is False
    assert field.text() == "40\u00a0%"
