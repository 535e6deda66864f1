"""The service book and the inventory from the window; loans, papers and photos of an item."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from item_editor_steps import Open
from pdf_reading import all_text, bare, pages
from PySide6.QtCore import Qt
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog
from small_photo import png

from kitlog.desktop.book_dialog import BookDialog, InventoryDialog
from kitlog.desktop.kit_page.photo_view import PhotoView
from kitlog.desktop.window import Window
from kitlog.files.papers import place_of
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.workbench.workbench import Workbench


def named(bench: Workbench, name: str) -> Item:
    return next(item for item in bench.items() if item.name == name)


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    file = tmp_path / "front.png"
    file.write_bytes(png())
    return file


@pytest.fixture
def pictured(demo_bench: Workbench, photo: Path) -> Item:
    """Wing A with a photo."""
    wing = named(demo_bench, "Wing A")
    demo_bench.edit_items([wing.model_copy(update={"papers": (demo_bench.attach(photo),), "value": 4_000.0})])
    return named(demo_bench, "Wing A")


def test_the_book_of_the_selected_item_is_saved_and_opened(
    window: Window, pictured: Item, tmp_path: Path, qtbot, in_dialog: Callable, monkeypatch: pytest.MonkeyPatch
) -> None:
    to, opened = tmp_path / "book.pdf", []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(to.with_suffix("")), ""))
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda url: opened.append(url.toLocalFile()))
    page = window.open("kit")
    page.select_ids([pictured.id])

    def use(dialog: BookDialog) -> None:
        assert dialog.item.chosen() == pictured.id
        assert "1 paper or photo" in dialog.remark.text()
        dialog.costs.setChecked(True)
        dialog.currency.setText("EUR")
        qtbot.keyClick(dialog, Qt.Key.Key_Return)
        assert dialog.saved == to
        assert dialog.done_note.text() == "Saved: book.pdf"
        assert not dialog.changed()
        dialog.open_act.click()

    in_dialog(page.acts.print_book, use)
    assert opened == [str(to)]
    text = bare(all_text(to.read_bytes()))
    assert bare("Service book") in text
    assert "4000EUR" in text
    assert sum(one.images for one in pages(to.read_bytes())) == 1
    assert window.desk.bench.preference("currency") == "EUR"


def test_nothing_is_written_where_no_file_is_chosen_and_a_fault_is_said(
    window: Window, tmp_path: Path, qtbot, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = BookDialog(window.desk, "", window)
    qtbot.addWidget(dialog)
    dialog.show()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("", ""))
    dialog.accept()
    assert dialog.saved is None
    assert not dialog.wrong()
    dialog.save(tmp_path / "no" / "book.pdf")
    assert "its folder does not exist" in dialog.wrong()
    assert dialog.saved is None
    assert dialog.main.isEnabled()


def test_the_inventory_of_what_is_selected_or_of_all(window: Window, pictured: Item, tmp_path: Path, qtbot) -> None:
    bench, to = window.desk.bench, tmp_path / "inventory.pdf"
    two = [pictured, named(bench, "Helmet A")]
    dialog = InventoryDialog(window.desk, two, window)
    qtbot.addWidget(dialog)
    assert dialog.remark.text().startswith("Listed: 2 items, 1 without a value, 1 without a photo or bill.")
    dialog.save(to)
    assert bare("2 items") in bare(all_text(to.read_bytes()))
    dialog.which.choose("all")
    assert dialog.remark.text().startswith(f"Listed: {len(bench.items())} items")
    one = InventoryDialog(window.desk, two[:1], window)
    qtbot.addWidget(one)
    assert one.which.chosen() == "all"


def test_an_empty_kit_has_nothing_to_print(show: Callable[..., Window], empty_bench: Workbench, qtbot) -> None:
    window = show(empty_bench)
    for dialog in (BookDialog(window.desk, "", window), InventoryDialog(window.desk, (), window)):
        qtbot.addWidget(dialog)
        assert not dialog.main.isEnabled()
        assert dialog.reason.text()


def test_naming_somebody_makes_it_lent_or_borrowed_and_the_form_says_so(edit: Open, demo_bench: Workbench) -> None:
    editor = edit(named(demo_bench, "Harness A"))
    loan, state = editor.more.loan, editor.more.state
    loan.belongs_to.setText("Club")
    assert state.chosen() is ItemState.BORROWED
    loan.lent_to.setText("Jorun")
    assert state.chosen() is ItemState.LENT
    assert loan.note.text().startswith("Lent, it is not packed.")
    loan.belongs_to.setText("")
    loan.back_by.put(date(2026, 6, 1))
    editor.accept()
    saved = named(demo_bench, "Harness A")
    assert (saved.state, saved.lent_to, saved.back_by) == (ItemState.LENT, "Jorun", date(2026, 6, 1))
    again = edit(saved)
    again.more.loan.lent_to.setText("")
    assert again.more.state.chosen() is ItemState.IN_SERVICE
    again.more.state.choose(ItemState.AWAY)
    again.more.loan.lent_to.setText("Leda")
    assert again.more.state.chosen() is ItemState.AWAY
    demo_bench.undo()
    assert named(demo_bench, "Harness A").state is ItemState.IN_SERVICE


def test_ground_handling_before_the_log_and_papers_are_saved_with_the_item(
    edit: Open, demo_bench: Workbench, photo: Path
) -> None:
    editor = edit(named(demo_bench, "Wing B"))
    assert not editor.changed()
    editor.more.ground.put(7.5)
    editor.papers.attach([photo, photo])
    assert editor.changed()
    editor.accept()
    saved = named(demo_bench, "Wing B")
    assert (saved.opening_ground_h, [paper.name for paper in saved.papers]) == (7.5, ["front.png"])
    assert demo_bench.paper_bytes(saved.papers[0]) == png()
    again = edit(saved)
    again.papers.remove(saved.papers[0])
    assert again.changed()
    again.accept()
    assert named(demo_bench, "Wing B").papers == ()


def view_of(window: Window, qtbot) -> PhotoView:
    """The well of the item that is shown; details follow the selection a little later."""

    def named_ones() -> list[PhotoView]:
        views = [view for view in window.findChildren(PhotoView) if view.isVisible()]
        return [view for view in views if view.accessibleName()]

    qtbot.waitUntil(lambda: bool(named_ones()))
    return named_ones()[0]


def test_details_show_the_photo_and_say_where_it_is_missing(window: Window, pictured: Item, qtbot) -> None:
    page = window.open("kit")
    page.select_ids([pictured.id])
    view = view_of(window, qtbot)
    qtbot.waitUntil(lambda: view.image() is not None)
    assert view.accessibleName() == "Photo: front.png"
    image = view.image()
    assert image is not None
    assert (image.width(), image.height()) == (40, 30)


def test_details_say_of_a_missing_photo_that_it_is(window: Window, pictured: Item, qtbot) -> None:
    place_of(window.desk.path, pictured.papers[0].sha256).unlink()
    page = window.open("kit")
    page.select_ids([pictured.id])
    view = view_of(window, qtbot)
    qtbot.waitUntil(lambda: view.accessibleName() == "Photo not shown: front.png")
    assert view.image() is None
