"""Steps that the tests of the import share: tables to read, waiting for a look, answering, choosing."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog

from kitlog.desktop.import_page.dialog import ImportDialog
from kitlog.desktop.import_page.leaves import Leaf
from kitlog.desktop.import_page.table_input import TableInput, of_file
from kitlog.desktop.kit_page.page import KitPage
from kitlog.desktop.window import Window
from kitlog.files.table.doubt import Question
from kitlog.files.table.targets import TARGETS

PLAIN = "Name,Kind,Mass (g),Maker\nSpare whistle,signal,14,Tolve\nHead torch,light,86,\n"
"""Nothing is doubtful."""

DOUBTFUL = (
    "Bezeichnung;Gewicht;Gekauft;Zzz\n"
    "Stirnlampe;86;03/04/2025;A1\n"
    "Trillerpfeife;14;05/06/2024;A2\n"
    "Rettungsdecke;61;11/12/2023;A3\n"
)
"""Masses without a unit, days of which nobody knows the order, a heading that says nothing."""

UNIT, ORDER = (1, Question.MASS_UNIT), (2, Question.DATES)
"""The questions of `DOUBTFUL`."""


def kit(window: Window) -> KitPage:
    page = window.open("kit")
    assert isinstance(page, KitPage)
    return page


def written(folder: Path, text: str, name: str = "list.csv") -> TableInput:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return of_file(path)


def seen(dialog: QDialog, qtbot) -> ImportDialog:
    """The dialog once it shows what was asked for."""
    assert isinstance(dialog, ImportDialog)
    qtbot.waitUntil(lambda: not dialog.background.busy)
    return dialog


def using(qtbot, use: Callable[[ImportDialog], object]) -> Callable[[QDialog], object]:
    return lambda dialog: use(seen(dialog, qtbot))


def answer(dialog: ImportDialog, qtbot, key: tuple[int, Question], given: str) -> None:
    dialog.leaves.open(Leaf.QUESTIONS)
    dialog.leaves.asked.columns[key].radios[given].click()
    seen(dialog, qtbot)


def choose_field(dialog: ImportDialog, qtbot, column: int, target: str) -> None:
    """Type the words of a field and take them with Return."""
    assert target in TARGETS
    from kitlog.wording.import_words import field_word

    dialog.leaves.open(Leaf.HEADINGS)
    field = dialog.leaves.headings.row_of(column).field
    field.setFocus()
    field.line.selectAll()
    qtbot.keyClicks(field.line, field_word(target))
    qtbot.keyClick(field, Qt.Key.Key_Return)
    seen(dialog, qtbot)


def heads(dialog: ImportDialog) -> dict[str, tuple[str, str]]:
    """What each heading stands for, and how that was found."""
    return {row.name: (row.field.held, row.column.how) for row in dialog.leaves.headings.rows}
