"""Fields that cannot be wrong."""

from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QEvent, QLocale, Qt
from PySide6.QtGui import QHelpEvent, QPalette
from PySide6.QtWidgets import QApplication, QPlainTextEdit, QToolTip, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.fields import ChoiceField, DateField, LineField, NumberField, TickField
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.units.days import FIRST_DAY, LAST_DAY

ONCE = settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None)


def typed(field: NumberField, text: str, qtbot) -> None:
    field.selectAll()
    qtbot.keyClicks(field, text)
    field.interpretText()


def test_a_number_is_unknown_until_it_is_typed_and_again_when_it_is_emptied(styled: QApplication, qtbot) -> None:
    field = NumberField("g", most=200_000)
    qtbot.addWidget(field)
    assert field.number() is None
    typed(field, "4350", qtbot)
    assert field.number() == 4350
    assert field.text().replace("\u00a0", " ") == "4350 g"
    field.selectAll()
    qtbot.keyClick(field, Qt.Key.Key_Delete)
    field.interpretText()
    assert field.number() is None


def test_nought_is_a_number(styled: QApplication, qtbot) -> None:
    field = NumberField("W", decimals=2, most=10)
    qtbot.addWidget(field)
    typed(field, "0", qtbot)
    assert field.number() == 0


@pytest.mark.parametrize("text", ["12.5", "12,5"])
def test_comma_and_point_both_part_the_fraction_in_any_locale(text: str, styled: QApplication, qtbot) -> None:
    QLocale.setDefault(QLocale(QLocale.Language.German))
    try:
        field = NumberField("kg", decimals=1, most=1000)
        qtbot.addWidget(field)
        typed(field, text, qtbot)
        assert field.number() == 12.5
        assert field.text().startswith("12.5")
    finally:
        QLocale.setDefault(QLocale.c())


def test_letters_in_a_number_are_marked_and_never_left_out(styled: QApplication, qtbot) -> None:
    field = NumberField("kg", decimals=1, most=1000)
    qtbot.addWidget(field)
    typed(field, "1x2", qtbot)
    assert field.number() is None
    assert field.is_wrong()
    assert field.text() == "1x2\u00a0kg"


@ONCE
@given(st.none() | st.integers(min_value=0, max_value=200_000))
def test_whole_numbers_come_back(styled: QApplication, number: int | None) -> None:
    field = NumberField("g", most=200_000)
    field.put(number)
    assert field.whole() == number


@ONCE
@given(st.none() | st.dates(FIRST_DAY, LAST_DAY))
def test_days_come_back(styled: QApplication, day: date | None) -> None:
    field = DateField()
    field.put(day)
    assert field.day() == day


def test_a_day_begins_at_today_and_del_empties_it(styled: QApplication, qtbot) -> None:
    field = DateField()
    qtbot.addWidget(field)
    field.show()
    assert field.text() == "no date"
    qtbot.keyClick(field, Qt.Key.Key_Up)
    assert field.day() is not None
    qtbot.keyClick(field, Qt.Key.Key_Delete)
    assert field.day() is None


def test_a_choice_keeps_what_was_chosen_when_others_are_offered(styled: QApplication, qtbot) -> None:
    field = ChoiceField([(1, "one"), (2, "two")])
    qtbot.addWidget(field)
    field.choose(2)
    field.offer([(3, "three"), (2, "two")])
    assert field.chosen() == 2
    field.offer([(3, "three")])
    assert field.chosen() == 3
    field.choose(99)
    assert field.chosen() == 3


def test_a_tick_shows_an_ampersand_as_it_is(styled: QApplication, qtbot) -> None:
    tick = TickField("Rope & hook")
    qtbot.addWidget(tick)
    assert tick.accessibleName() == "Rope & hook"
    assert tick.words == "Rope & hook"
    qtbot.keyClick(tick, Qt.Key.Key_Space)
    assert tick.isChecked()


@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
@pytest.mark.parametrize("made", [LineField, QPlainTextEdit])
def test_hints_in_empty_fields_have_the_contrast_of_text(
    scheme: Scheme, made: type[QWidget], styled: QApplication, qtbot
) -> None:
    lay_over(scheme, styled)
    field = made()
    qtbot.addWidget(field)
    field.show()
    hint = field.palette().color(QPalette.ColorRole.PlaceholderText)
    assert hint == look.tokens().muted  # 4.5:1 and more on the surface: tests/paint/test_tokens.py
    lay_over(Scheme.LIGHT, styled)


@pytest.mark.parametrize("month", range(1, 13))
def test_a_day_is_never_cut(styled: QApplication, qtbot, month: int) -> None:
    """“25 Nov 202(” stood in the boxes: their margins were not counted."""
    field = DateField()
    qtbot.addWidget(field)
    field.put(date(2026, month, 28))
    field.resize(field.minimumSizeHint())
    field.show()
    line = field.lineEdit()
    margins = line.textMargins()
    room = line.width() - margins.left() - margins.right() - 4  # Qt keeps two pixels at each side
    assert line.fontMetrics().horizontalAdvance(line.text()) <= room


@pytest.mark.parametrize(("wide", "told"), [(90, "Bank with a long name"), (400, "")])
def test_a_choice_that_is_cut_is_told_whole_under_the_pointer(
    styled: QApplication, qtbot, wide: int, told: str
) -> None:
    field = ChoiceField([("big", "Bank with a long name")])
    qtbot.addWidget(field)
    field.resize(wide, 32)
    field.show()
    QToolTip.hideText()
    qtbot.waitUntil(lambda: not QToolTip.isVisible())
    here = field.rect().center()
    QApplication.sendEvent(field, QHelpEvent(QEvent.Type.ToolTip, here, field.mapToGlobal(here)))
    assert QToolTip.isVisible() == bool(told)
    if told:
        assert QToolTip.text() == told
    QToolTip.hideText()
