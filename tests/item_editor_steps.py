"""Steps that the tests of the editor of an item share: its form of a battery, figures put in, a new phone."""

from collections.abc import Callable

from PySide6.QtWidgets import QApplication

from kitlog.desktop.kit_page.facet_form import FacetForm
from kitlog.desktop.kit_page.item_editor import ItemEditor
from kitlog.desktop.kit_page.ways_form import WaysForm
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind

Open = Callable[[Item | None], ItemEditor]
"""What the fixture `edit` is."""


def battery(editor: ItemEditor) -> FacetForm:
    form = editor.facets["battery"]
    assert isinstance(form, FacetForm)
    return form


def ways(editor: ItemEditor) -> WaysForm:
    found = battery(editor).ways
    assert found is not None
    return found


def figure(form: FacetForm, name: str, number: float | None) -> None:
    form.fields[name].put(number)  # type: ignore[attr-defined]


def capacity(editor: ItemEditor) -> str:
    shown = battery(editor).capacity
    assert shown is not None
    return plain(shown.text())


def plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u2009", ",")


def new_phone(editor: ItemEditor, wh: float | None = 17.3) -> WaysForm:
    editor.main_fields.name.setText("New phone")
    editor.main_fields.kind.choose(Kind.PHONE)
    figure(battery(editor), "wh", wh)
    QApplication.processEvents()
    return ways(editor)
