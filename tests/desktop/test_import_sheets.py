"""Which sheet of a workbook is read is seen and chosen; what was decided about one holds for no other by chance.

The workbooks are written by openpyxl (.xlsx) and odfdo (.ods).
"""

import threading
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pytest
from desk_steps import Use, check_controls, item_named
from import_steps import answer, choose_field, heads, kit, seen, using
from odfdo import Cell, Document, Row, Style, Table
from openpyxl import Workbook
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from kitlog.desktop.import_page import table_input
from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.leaves import Leaf
from kitlog.desktop.import_page.table_input import TableInput, of_file
from kitlog.desktop.window import Window
from kitlog.files.table.doubt import Question
from kitlog.workbench.workbench import Workbench

Sheets = Mapping[str, Sequence[Sequence[object]]]

UNIT, ORDER = (1, Question.MASS_UNIT), (2, Question.DATES)
HEADS = ("Name", "Gewicht", "Gekauft")
BOOK: Sheets = {
    "Summer": [HEADS, ("Whistle A", 14, "03/04/2025"), ("Torch A", 86, "05/06/2024")],
    "Winter": [HEADS, ("Whistle B", 15, "07/08/2025"), ("Torch B", 87, "09/10/2024")],
    "Old": [("Thing", "Mass (g)"), ("Whistle C", 16)],
    "Notes": [("qwx",), ("zzt",)],
}
"""Two sheets of the same headings, a hidden one of others, one that holds no headings at all."""


def xlsx(folder: Path, sheets: Sheets = BOOK) -> TableInput:
    book = Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
        sheet.sheet_state = "hidden" if name == "Old" else "visible"
    book.save(folder / "kit.xlsx")
    return of_file(folder / "kit.xlsx")


def ods(folder: Path, sheets: Sheets = BOOK) -> TableInput:
    document = Document("spreadsheet")
    document.body.clear()
    hidden = Style("table", name="unseen")
    hidden.set_properties({"table:display": "false"}, area="table")
    not_shown = document.insert_style(hidden, automatic=True)
    for name, rows in sheets.items():
        table = Table(name, style=not_shown if name == "Old" else None)
        for cells in rows:
            row = Row()
            for cell in cells:
                row.append_cell(Cell(cell))
            table.append_row(row)
        document.body.append(table)
    document.save(str(folder / "kit.ods"))
    return of_file(folder / "kit.ods")


@pytest.fixture(params=[xlsx, ods])
def book(request: pytest.FixtureRequest, tmp_path: Path) -> TableInput:
    make: Callable[[Path], TableInput] = request.param
    return make(tmp_path)


def take_sheet(dialog: ImportDialog, qtbot, words: str) -> None:
    """Go through the field with arrows until it says so."""
    field = dialog.sheet_row.field
    field.setFocus()
    way = Qt.Key.Key_Down if field.findText(words) > field.currentIndex() else Qt.Key.Key_Up
    while field.currentText() != words:
        before = field.currentIndex()
        qtbot.keyClick(field, way)
        assert field.currentIndex() != before
    seen(dialog, qtbot)


def names(dialog: ImportDialog) -> list[str]:
    return [entry.item.name for entry in dialog.leaves.items.model.entries]


def test_the_sheets_are_offered_and_another_one_is_read(
    window: Window, demo_bench: Workbench, book: TableInput, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        field = dialog.sheet_row.field
        assert field.isVisible()
        assert field.accessibleName() == f"Sheet of {book.name}"
        words = [field.itemText(number) for number in range(field.count())]
        assert words == ["Summer", "Winter", "Notes", "Old (hidden)"]
        assert field.currentText() == "Summer"
        assert names(dialog) == ["Whistle A", "Torch A"]
        take_sheet(dialog, qtbot, "Old (hidden)")
        assert [field.itemText(number) for number in range(field.count())] == words
        assert dialog.focusWidget() is field
        assert names(dialog) == ["Whistle C"]
        dialog.main.click()

    in_dialog(lambda: kit(window).acts.look_at(book), using(qtbot, use))
    assert item_named(demo_bench, "Whistle C").mass_g == 16


def test_it_says_what_was_not_read_in_words_of_the_window(
    window: Window, book: TableInput, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        said = [text for text in dialog.leaves.notes.sentences if "sheet" in text]
        assert said == [
            "The sheet “Summer” was read; not read: Winter, Notes, Old (hidden). Above it another can be chosen."
        ]

    in_dialog(lambda: kit(window).acts.look_at(book), using(qtbot, use))


def test_answers_about_one_sheet_hold_for_one_of_the_same_headings_and_can_be_changed(
    window: Window, demo_bench: Workbench, book: TableInput, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        answer(dialog, qtbot, UNIT, "g")
        answer(dialog, qtbot, ORDER, "dmy")
        take_sheet(dialog, qtbot, "Winter")
        cards = dialog.leaves.asked.columns
        assert list(cards) == [UNIT, ORDER]
        assert [cell.text for cell in cards[ORDER].asked.examples()] == ["07/08/2025", "09/10/2024"]
        assert cards[ORDER].radios["dmy"].isChecked()
        answer(dialog, qtbot, ORDER, "mdy")
        dialog.main.click()

    in_dialog(lambda: kit(window).acts.look_at(book), using(qtbot, use))
    torch = item_named(demo_bench, "Torch B")
    assert (torch.mass_g, str(torch.bought_on)) == (87, "2024-09-10")


def test_nothing_that_was_decided_is_kept_for_other_headings(
    window: Window, book: TableInput, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        answer(dialog, qtbot, UNIT, "kg")
        choose_field(dialog, qtbot, 0, "notes")
        take_sheet(dialog, qtbot, "Old (hidden)")
        assert not dialog.changed()
        assert heads(dialog) == {"Thing": ("name", "word"), "Mass (g)": ("mass_g", "word")}
        assert dialog.leaves.asked.cards() == []
        take_sheet(dialog, qtbot, "Summer")
        assert heads(dialog)["Name"] == ("name", "word")
        assert dialog.leaves.asked.open_count() == 2

    in_dialog(lambda: kit(window).acts.look_at(book), using(qtbot, use))


def test_what_columns_were_remembered_to_mean_holds_for_each_sheet(
    window: Window, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    """As for a new file of the same headings."""
    one = xlsx(tmp_path, {"Winter": [("Name", "Zzz"), ("Whistle B", "red")]})

    def first(dialog: ImportDialog) -> None:
        assert dialog.sheet_row.isHidden()
        choose_field(dialog, qtbot, 1, "colour")
        dialog.main.click()

    def second(dialog: ImportDialog) -> None:
        take_sheet(dialog, qtbot, "Winter")
        assert heads(dialog)["Zzz"] == ("colour", "remembered")

    in_dialog(lambda: kit(window).acts.look_at(one), using(qtbot, first))
    both = xlsx(tmp_path, {"First": BOOK["Old"], "Winter": [("Name", "Zzz"), ("Whistle D", "red")]})
    in_dialog(lambda: kit(window).acts.look_at(both), using(qtbot, second))


def test_what_becomes_of_rows_in_the_kit_is_asked_again_for_another_sheet(
    window: Window, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    rows = [("Name", "Mass (g)"), ("Whistle B", 14)]

    def second(dialog: ImportDialog) -> None:
        assert dialog.leaves.asked.meeting is not None
        dialog.leaves.asked.meeting.radios["skip"].click()
        seen(dialog, qtbot)
        assert dialog.leaves.asked.open_count() == 0
        take_sheet(dialog, qtbot, "Winter")
        assert dialog.leaves.asked.open_count() == 1
        assert not dialog.main.isEnabled()

    table = xlsx(tmp_path, {"Summer": rows, "Winter": rows})
    in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, lambda dialog: dialog.main.click()))
    in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, second))


def test_a_sheet_without_headings_is_asked_about_and_another_can_be_taken(
    window: Window, book: TableInput, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        take_sheet(dialog, qtbot, "Notes")
        assert dialog.leaves.shown == Leaf.CHOICE
        assert dialog.focusWidget() is dialog.sheet_row.field
        take_sheet(dialog, qtbot, "Winter")
        assert dialog.leaves.shown == Leaf.QUESTIONS

    in_dialog(lambda: kit(window).acts.look_at(book), using(qtbot, use))


def test_a_long_reading_of_a_sheet_can_be_stopped_and_the_one_before_stays(
    window: Window, book: TableInput, in_dialog: Use, qtbot, monkeypatch: pytest.MonkeyPatch
) -> None:
    let_go, grid = threading.Event(), TableInput.grid

    def slow(table: TableInput, tell: Callable[[float], None]) -> object:
        while table.sheet and not let_go.wait(0.005):
            tell(0.3)
        return grid(table, tell)

    monkeypatch.setattr(table_input.TableInput, "grid", slow)

    def use(dialog: ImportDialog) -> None:
        answer(dialog, qtbot, UNIT, "g")
        dialog.sheet_row.field.setFocus()
        qtbot.keyClick(dialog.sheet_row.field, Qt.Key.Key_Down)
        assert dialog.leaves.shown == Leaf.NOTHING
        assert not dialog.main.isEnabled()
        qtbot.waitUntil(dialog.waiting.isVisible)
        dialog.waiting.cancel.click()
        assert dialog.isVisible()
        assert dialog.sheet_row.field.currentText() == "Summer"
        assert names(dialog) == ["Whistle A", "Torch A"]
        assert dialog.leaves.asked.columns[UNIT].radios["g"].isChecked()
        let_go.set()
        take_sheet(dialog, qtbot, "Winter")
        assert names(dialog) == ["Whistle B", "Torch B"]

    in_dialog(lambda: kit(window).acts.look_at(book), using(qtbot, use))


def test_a_sheet_that_is_gone_is_told_and_those_there_are_offered(
    window: Window, tmp_path: Path, in_dialog: Use, qtbot
) -> None:
    table = xlsx(tmp_path)

    def use(dialog: ImportDialog) -> None:
        take_sheet(dialog, qtbot, "Winter")
        xlsx(tmp_path, {"Summer": BOOK["Summer"], "Late": BOOK["Winter"]})
        dialog.head.again.click()
        seen(dialog, qtbot)
        assert "no sheet “Winter”" in dialog.leaves.fault.what.text()
        take_sheet(dialog, qtbot, "Late")
        assert names(dialog) == ["Whistle B", "Torch B"]
        assert table.path is not None
        table.path.write_text("Name\nTorch X\n", encoding="utf-8")
        dialog.head.again.click()
        seen(dialog, qtbot)
        assert names(dialog) == ["Torch X"]
        assert dialog.sheet_row.isHidden()

    in_dialog(lambda: kit(window).acts.look_at(table), using(qtbot, use))


def test_it_is_reached_by_keys_before_the_leaves_and_can_be_hit(
    window: Window, book: TableInput, in_dialog: Use, qtbot
) -> None:
    def use(dialog: ImportDialog) -> None:
        check_controls(dialog)
        assert dialog.minimumSizeHint().height() <= 600
        field = dialog.sheet_row.field
        field.setFocus()
        qtbot.keyClick(field, Qt.Key.Key_Tab)
        assert QApplication.focusWidget() in dialog.leaves.strip.tabs
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Backtab)
        assert QApplication.focusWidget() is field

    in_dialog(lambda: kit(window).acts.look_at(book), using(qtbot, use))
