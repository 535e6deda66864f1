"""A day is typed whole, whatever was selected before; what cannot be read stays and is marked."""

from datetime import date

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtWidgets import QApplication

from kitlog.desktop.parts.date_field import DateField
from kitlog.desktop.parts.dialog import Dialog

WAS = date(2026, 11, 25)


@pytest.fixture
def field(styled: QApplication, qtbot) -> DateField:
    made = DateField()
    made.setLocale(QLocale(QLocale.Language.English, QLocale.Country.UnitedKingdom))
    qtbot.addWidget(made)
    made.put(WAS)
    with qtbot.waitExposed(made):
        made.show()
    made.activateWindow()
    made.setFocus()
    return made


def select_by_ctrl_a(field: DateField, qtbot) -> None:
    qtbot.keyClick(field, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)


def select_by_click(field: DateField, qtbot) -> None:
    field.clearFocus()
    qtbot.mouseClick(field.lineEdit(), Qt.MouseButton.LeftButton)


def select_from_home(field: DateField, qtbot) -> None:
    qtbot.keyClick(field, Qt.Key.Key_Home)
    qtbot.keyClick(field, Qt.Key.Key_End, Qt.KeyboardModifier.ShiftModifier)


@pytest.mark.parametrize("select", [select_by_ctrl_a, select_by_click, select_from_home])
@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("20.06.2026", date(2026, 6, 20)),
        ("2026-06-20", date(2026, 6, 20)),
        ("20 Jun 2026", date(2026, 6, 20)),
        ("14Jun2027", date(2027, 6, 14)),
        ("3/4/2026", date(2026, 4, 3)),
    ],
)
def test_a_whole_day_is_typed_over(select, typed: str, day: date, field: DateField, qtbot) -> None:
    select(field, qtbot)
    qtbot.keyClicks(field, typed)
    assert field.text() == typed
    assert field.day() == day
    assert not field.is_wrong()
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert field.text() == f"{day.day} {day:%b} {day.year}"


def test_numbers_alone_stand_in_the_order_of_the_locale(field: DateField, qtbot) -> None:
    """Short dates of the United States begin with the month (CLDR)."""
    field.setLocale(QLocale(QLocale.Language.English, QLocale.Country.UnitedStates))
    select_by_ctrl_a(field, qtbot)
    qtbot.keyClicks(field, "3/4/2026")
    assert field.day() == date(2026, 3, 4)


@pytest.fixture(params=["31.02.2026", "next week", "2026", "1.1.1969"])
def nonsense(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_what_is_no_day_stays_marked_and_the_day_before_it_holds(nonsense: str, field: DateField, qtbot) -> None:
    select_by_ctrl_a(field, qtbot)
    qtbot.keyClicks(field, nonsense)
    field.clearFocus()
    assert field.text() == nonsense
    assert field.is_wrong()
    assert field.property("wrong") is True
    assert nonsense in field.wrong_text()
    assert field.accessibleDescription() == field.wrong_text()
    assert field.day() == WAS


def test_a_day_that_cannot_be_read_is_not_saved(styled: QApplication, qtbot) -> None:
    dialog, written = Dialog("Day", "Save", None), list[int]()
    qtbot.addWidget(dialog)
    field = DateField()
    dialog.body.addWidget(field)
    qtbot.keyClicks(field, "someday")
    assert not dialog.attempt(lambda: written.append(1))
    assert "someday" in dialog.wrong()
    field.put(None)
    assert dialog.attempt(lambda: written.append(1))
    assert written == [1]


def test_a_day_is_never_cut(field: DateField) -> None:
    field.resize(field.minimumSizeHint())
    line = field.lineEdit()
    end = line.cursorRect().right()
    field.put(date(2028, 11, 28))
    line.end(False)
    assert line.cursorRect().right() < line.width() - 28 - line.textMargins().left() + 9, end


def test_arrows_move_day_month_and_year(field: DateField, qtbot) -> None:
    for keys, day in (
        ((Qt.Key.Key_Up,), date(2026, 11, 26)),
        ((Qt.Key.Key_Right, Qt.Key.Key_Down), date(2026, 10, 26)),
        ((Qt.Key.Key_Right, Qt.Key.Key_Up), date(2027, 10, 26)),
        ((Qt.Key.Key_Left, Qt.Key.Key_Left, Qt.Key.Key_Down), date(2027, 10, 25)),
    ):
        for key in keys:
            qtbot.keyClick(field, key)
        assert field.day() == day


def test_a_change_is_told_and_emptied_it_is_no_day(field: DateField, qtbot) -> None:
    told: list[date | None] = []
    field.dateChanged.connect(told.append)
    qtbot.keyClick(field, Qt.Key.Key_Delete)
    assert field.text() == "no date"
    qtbot.keyClicks(field, "1 May 2026")
    assert (told[0], told[-1], field.day()) == (None, date(2026, 5, 1), date(2026, 5, 1))
    select_by_ctrl_a(field, qtbot)
    qtbot.keyClick(field, Qt.Key.Key_Backspace)
    assert field.day() is None
    field.clearFocus()
    assert field.text() == "no date"


def test_a_day_is_chosen_on_the_calendar(field: DateField, qtbot) -> None:
    from PySide6.QtCore import QDate
    from PySide6.QtWidgets import QCalendarWidget

    qtbot.keyClick(field, Qt.Key.Key_F4)
    calendar = field.findChild(QCalendarWidget)
    assert calendar.selectedDate() == QDate(2026, 11, 25)
    calendar.clicked.emit(QDate(2026, 11, 3))
    assert field.day() == date(2026, 11, 3)
