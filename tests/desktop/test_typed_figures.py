"""Figures as pilots type them, Return on what can be pressed, and the way of Tab through a form that grows."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.fields import NumberField
from kitlog.desktop.parts.tab_order import tab_stops
from kitlog.workbench.workbench import Workbench


@pytest.mark.parametrize(
    ("typed", "mass_g"),
    [
        ("5200", 5_200),
        ("5,2 kg", 5_200),
        ("5.2kg", 5_200),
        ("0.85 KG", 850),
        ("5.2", None),
        ("5,2", None),
        ("1,500", None),
        ("1e3", None),
        ("-5", None),
        ("", None),
    ],
)
def test_a_mass_is_read_whole_or_not_known(styled: QApplication, qtbot, typed: str, mass_g: int | None) -> None:
    field = NumberField("g", most=200_000)
    qtbot.addWidget(field)
    field.show()
    field.selectAll()
    if typed:
        QTest.keyClicks(field, typed)
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert field.whole() == mass_g


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space])
def test_return_presses_what_has_the_focus(styled: QApplication, qtbot, key: Qt.Key) -> None:
    button, pressed = Button("Add item"), []
    qtbot.addWidget(button)
    button.clicked.connect(lambda: pressed.append(1))
    button.show()
    QTest.keyClick(button, key)
    assert pressed == [1]


def test_tab_reaches_the_facets_of_a_new_wing(show, empty_bench: Workbench, qtbot) -> None:
    window = show(empty_bench)
    editor = ItemEditor(window.desk, None, window)
    qtbot.addWidget(editor)
    editor.show()
    wanted = {stop.accessibleName() for stop in tab_stops(editor.facets["wing"])}
    assert len(wanted) > 4
    reached, stop = set(), editor.main_fields.name
    for _ in range(200):
        stop = stop.nextInFocusChain()
        reached.add(stop.accessibleName())
    assert wanted <= reached
    order = [editor.main_fields.name, *tab_stops(editor.facets["wing"]), editor.more_facets]
    places = [_steps(editor.main_fields.name, widget) for widget in order]
    assert places == sorted(places)


def _steps(start, goal) -> int:
    steps, widget = 0, start
    while widget is not goal:
        widget, steps = widget.nextInFocusChain(), steps + 1
    return steps
