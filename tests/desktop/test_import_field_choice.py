"""Choosing what a heading stands for, by keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from kitlog.desktop.import_page.field_choice import FieldChoice, FieldList
from kitlog.wording.import_words import field_word


@pytest.fixture
def field(qtbot, styled: QApplication) -> FieldChoice:
    choice = FieldChoice(FieldList(styled), "Shelf")
    choice.hold("")
    qtbot.addWidget(choice)
    with qtbot.waitExposed(choice):
        choice.show()
    choice.activateWindow()
    choice.setFocus()
    qtbot.waitUntil(choice.hasFocus)
    return choice


def typed(field: FieldChoice, qtbot, words: str) -> None:
    """Type over what stands there, until the list of what holds it is open."""
    field.line.selectAll()
    qtbot.keyClicks(field, words)
    qtbot.waitUntil(field.line.completer().popup().isVisible)


class TestReturn:
    def test_takes_the_first_field_that_is_offered_and_closes_the_list(self, field: FieldChoice, qtbot) -> None:
        picked: list[str] = []
        field.picked.connect(picked.append)
        typed(field, qtbot, "not")
        qtbot.keyClick(field.line.completer().popup(), Qt.Key.Key_Return)
        assert (picked, field.held, field.line.text()) == (["notes"], "notes", field_word("notes"))
        assert not field.line.completer().popup().isVisible()

    def test_takes_the_one_that_the_arrows_led_to(self, field: FieldChoice, qtbot) -> None:
        typed(field, qtbot, "not")
        popup = field.line.completer().popup()
        second = popup.model().index(1, 0).data()
        qtbot.keyClick(popup, Qt.Key.Key_Down)
        qtbot.keyClick(popup, Qt.Key.Key_Down)
        qtbot.keyClick(popup, Qt.Key.Key_Return)
        assert field_word(field.held) == second
        assert not popup.isVisible()

    def test_leaves_what_was_there_where_no_field_holds_the_words(self, field: FieldChoice, qtbot) -> None:
        field.hold("colour")
        field.line.selectAll()
        qtbot.keyClicks(field, "zz")
        qtbot.keyClicks(field, "z")
        assert field.line.text() == "zzz"  # a list that closes for want of words does not select what was typed
        qtbot.keyClick(field, Qt.Key.Key_Return)
        assert (field.held, field.line.text()) == ("colour", field_word("colour"))


class TestLeaving:
    def test_takes_the_only_field_that_holds_the_words(self, field: FieldChoice, qtbot) -> None:
        typed(field, qtbot, "colo")
        field.line.completer().popup().hide()
        field.line.editingFinished.emit()
        assert field.held == "colour"

    def test_chooses_nothing_among_several(self, field: FieldChoice, qtbot) -> None:
        typed(field, qtbot, "not")
        field.line.completer().popup().hide()
        field.line.editingFinished.emit()
        assert (field.held, field.line.text()) == ("", field_word(""))
