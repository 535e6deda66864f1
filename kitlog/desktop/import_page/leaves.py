"""The leaves of the import: the strip that names them, and the one that is open."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import IntEnum

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.column_row import Means
from kitlog.desktop.import_page.decisions import Decisions, Key
from kitlog.desktop.import_page.fault_leaf import FaultLeaf
from kitlog.desktop.import_page.heading_choice import HeadingChoice
from kitlog.desktop.import_page.headings_leaf import HeadingsLeaf, headings_text
from kitlog.desktop.import_page.items_leaf import ItemsLeaf
from kitlog.desktop.import_page.leaf_strip import LeafStrip
from kitlog.desktop.import_page.look_at_table import Look
from kitlog.desktop.import_page.notes_leaf import NotesLeaf
from kitlog.desktop.import_page.question_book import Asked
from kitlog.desktop.import_page.questions_leaf import Answering, QuestionsLeaf
from kitlog.desktop.parts.tab_order import tab_stops
from kitlog.fault import Fault
from kitlog.files.table.cells import Grid
from kitlog.outing.library import Library
from kitlog.paint.mark import Mark
from kitlog.wording.import_words import open_text
from kitlog.wording.translate import _, ngettext
from kitlog.workbench.kit_preview import KitPreview

LOW = 180
"""Least height of a leaf, in px of the design."""


class Leaf(IntEnum):
    """What is shown: the leaves of the strip, then what stands in place of them all."""

    QUESTIONS = 0
    HEADINGS = 1
    ITEMS = 2
    NOTES = 3
    CHOICE = 4
    FAULT = 5
    NOTHING = 6


@dataclass(frozen=True, slots=True)
class Calls:
    """What is called when the pilot decides something: answers, meanings, the row of the headings."""

    answering: Answering
    means: Means
    begin_at: Callable[[int | None], object]
    other_row: Callable[[], object]


class Leaves(QWidget):
    """Strip and leaf."""

    def __init__(self, library: Library, calls: Calls, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.strip = LeafStrip((_("Questions"), _("Headings"), _("What comes in"), _("How it was read")))
        self.asked = QuestionsLeaf(calls.answering)
        self.headings = HeadingsLeaf(calls.means, calls.other_row)
        self.items, self.notes = ItemsLeaf(library), NotesLeaf()
        self.choice = HeadingChoice(calls.begin_at, lambda: self.open(Leaf.HEADINGS))
        self.fault = FaultLeaf()
        self._stack = QStackedWidget()
        for leaf in (self.asked, self.headings, self.items, self.notes, self.choice, self.fault, QWidget()):
            self._stack.addWidget(leaf)
        self._stack.setMinimumHeight(look.px(LOW))
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(look.px(16))
        rows.addWidget(self.strip)
        rows.addWidget(self._stack, 1)
        self.strip.chosen.connect(lambda number: self.open(Leaf(number)))
        self.open(Leaf.NOTHING)

    @property
    def shown(self) -> Leaf:
        """The leaf that is open."""
        return Leaf(self._stack.currentIndex())

    def open(self, leaf: Leaf) -> None:
        """Open a leaf."""
        if leaf <= Leaf.NOTES:
            self.strip.open(leaf)
        self.strip.setVisible(leaf <= Leaf.NOTES)
        self._stack.setCurrentIndex(leaf)

    def show_preview(
        self, seen: Look, preview: KitPreview, questions: Mapping[Key, Asked], decisions: Decisions
    ) -> None:
        """Show on every leaf what a look brought."""
        self.asked.show_all(preview, questions, decisions, seen.service_fault)
        self.headings.show_columns(preview.columns)
        self.items.show_preview(preview)
        self.notes.show_preview(preview)
        self._tell(preview)

    def open_first(self, preview: KitPreview, *, headings: bool = False, focus: bool = True) -> None:
        """Open the headings if wanted or none is understood, the questions if there are any, else what comes in."""
        if headings or not any(column.target for column in preview.columns):
            self.open(Leaf.HEADINGS)
        else:
            self.open(Leaf.QUESTIONS if self.asked.open_count() else Leaf.ITEMS)
        if focus:
            held = self.window().focusWidget()
            QTimer.singleShot(0, self, lambda: self._focus(held))  # new cards are shown by then

    def ask_for_headings(self, grid: Grid, *, found: bool, focus: bool = True) -> None:
        """Ask which row holds the headings."""
        self.choice.show_grid(grid, found=found)
        self.open(Leaf.CHOICE)
        if focus:
            self.choice.table.setFocus()

    def show_fault(self, fault: Fault) -> None:
        """Say why there is nothing to be shown."""
        self.fault.show_fault(fault)
        self.open(Leaf.FAULT)

    def _focus(self, held: QWidget | None) -> None:
        """Put the keyboard on what comes first, unless the person has moved it from `held` meanwhile."""
        if self.window().focusWidget() is not held:
            return
        if self.shown is Leaf.ITEMS and self.items.table.isVisible():
            self.items.table.setFocus()
            return
        leaf = self._stack.currentWidget()
        stops = [stop for stop in tab_stops(leaf) if stop.isVisible()] if leaf is not None else []
        (stops[0] if stops else self.strip.tabs[Leaf.QUESTIONS]).setFocus()

    def _tell(self, preview: KitPreview) -> None:
        """Say on the strip what each leaf holds."""
        tabs, n, notes = self.strip.tabs, self.asked.open_count(), self.notes.count()
        tabs[Leaf.QUESTIONS].tell(open_text(n) if self.asked.cards() else _("none"), Mark.NOT_KNOWN if n else Mark.NONE)
        said, lost = headings_text(preview.columns)
        tabs[Leaf.HEADINGS].tell(said, Mark.LOOK if lost else Mark.NONE)
        items, asks = self.items.listed(), self.items.asking()
        listed = ngettext("{n} item", "{n} items", items).format(n=items)
        more = ngettext("{n} to be looked at", "{n} to be looked at", asks).format(n=asks)
        tabs[Leaf.ITEMS].tell(f"{listed}, {more}" if asks else listed, Mark.LOOK if asks else Mark.NONE)
        tabs[Leaf.NOTES].tell(ngettext("{n} remark", "{n} remarks", notes).format(n=notes), Mark.NONE)
