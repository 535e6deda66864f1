"""The editor of an item, opened by a remedy: it begins at the field that is meant."""

import pytest
from desk_steps import item_named
from item_editor_steps import Open, battery
from PySide6.QtCore import QPoint, QRect
from PySide6.QtWidgets import QApplication, QWidget

from kitlog.desktop.kit_page.cable_form import CableForm
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.outing_page.remedies import EDITS_ITEM
from kitlog.desktop.window import Window
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.workbench.workbench import Workbench


def in_view(editor: ItemEditor, field: QWidget) -> bool:
    """Whether all of a field stands within what is seen of the form."""
    room = editor.scroller.viewport()
    return room.rect().contains(QRect(field.mapTo(room, QPoint(0, 0)), field.size()))


def begun(window: Window, qtbot, item: Item, name: str) -> ItemEditor:
    editor = ItemEditor(window.desk, item, window)
    qtbot.addWidget(editor)
    editor.begin_at(name)
    editor.show()
    editor.activateWindow()
    qtbot.waitUntil(editor.isActiveWindow)
    return editor


def test_carry_warmer_begins_at_where_it_lies(window: Window, demo_bench: Workbench, qtbot) -> None:
    editor = begun(window, qtbot, item_named(demo_bench, "Phone"), EDITS_ITEM["carry_warmer"])
    field = battery(editor).fields["place"]
    assert QApplication.focusWidget() is field
    assert in_view(editor, field)
    assert not editor.changed()


@pytest.mark.parametrize(("item", "code"), [("Phone", "enter_use"), ("Power bank", "enter_ports"), ("Phone", "weigh")])
def test_remedies_begin_at_their_fields(window: Window, demo_bench: Workbench, qtbot, item: str, code: str) -> None:
    editor = begun(window, qtbot, item_named(demo_bench, item), EDITS_ITEM[code])
    focus = QApplication.focusWidget()
    assert focus is not editor.main_fields.name
    assert editor.scroller.widget().isAncestorOf(focus)


def test_a_cable_begins_at_its_end(window: Window, qtbot) -> None:
    editor = begun(window, qtbot, Item(id="lead", name="Lead", kind=Kind.CABLE), EDITS_ITEM["name_cable"])
    form = editor.facets["battery"]
    assert isinstance(form, CableForm)
    assert form.one.hasFocus() or form.one.isAncestorOf(QApplication.focusWidget())


@pytest.mark.parametrize("name", sorted(set(EDITS_ITEM.values())))
def test_every_field_that_a_remedy_means_is_there(edit: Open, demo_bench: Workbench, name: str) -> None:
    editor = edit(item_named(demo_bench, "Phone"))
    editor.begin_at(name)
    assert QApplication.focusWidget() is not editor.main_fields.name
