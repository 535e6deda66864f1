"""The leaf of what comes in: every item that would be added or changed."""

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.entries import Entry, entries_of
from kitlog.desktop.import_page.items_model import MASS, NAME, ROW, SAID, WIDE, ItemCells, ItemsModel
from kitlog.desktop.parts.chip import FilterChip
from kitlog.desktop.parts.paper_table import PaperTable
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.outing.library import Library
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _
from kitlog.workbench.kit_preview import KitPreview


class ItemsLeaf(QWidget):
    """The items, with filters for those that are new, changed, undecided, or to be looked at."""

    def __init__(self, library: Library, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._all: list[Entry] = []
        self.model = ItemsModel(library)
        self.table = PaperTable(_("What would be added or changed"), frozenset({ROW, MASS}))
        self.table.setSelectionMode(PaperTable.SelectionMode.SingleSelection)
        self.table.setModel(self.model)
        self.table.setItemDelegate(ItemCells(self.table, self.model))
        self.whole = Paragraph("", Role.SECOND, "ink")
        self.none = Text(_("Nothing would be written."), Role.BODY, "muted")
        self.chips = {
            "asks": FilterChip(_("To be looked at")),
            "new": FilterChip(_("New")),
            "changed": FilterChip(_("Changed")),
            "undecided": FilterChip(_("Undecided")),
        }
        self._assemble()
        for chip in self.chips.values():
            chip.toggled.connect(lambda _on: self._sift())
        self.table.selectionModel().currentRowChanged.connect(lambda _now, _before: self._say())

    def show_preview(self, preview: KitPreview | None) -> None:
        """Show what a preview would write."""
        self._all = entries_of(preview) if preview else []
        for name, chip in self.chips.items():
            n = sum(_is(entry, name) for entry in self._all)
            chip.count(n if name == "asks" or n != len(self._all) else 0)
        self._sift()

    def listed(self) -> int:
        """How many items there are, whatever is filtered out."""
        return len(self._all)

    def asking(self) -> int:
        """How many items are to be looked at."""
        return sum(entry.asks for entry in self._all)

    def _sift(self) -> None:
        wanted = [name for name, chip in self.chips.items() if chip.isChecked()]
        row = max(0, self.table.currentIndex().row())
        self.model.put([entry for entry in self._all if all(_is(entry, name) for name in wanted)])
        rows = self.model.rowCount()
        self.table.setVisible(rows > 0)
        self.none.setVisible(rows == 0)
        if rows:
            self.table.select(min(row, rows - 1))
        self._say()

    def _say(self) -> None:
        row = self.table.currentIndex().row()
        self.whole.setText(self.model.said(row) if 0 <= row < self.model.rowCount() else "")

    def _assemble(self) -> None:
        px = look.px
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(px(6))
        filters = QHBoxLayout()
        filters.setContentsMargins(px(4), px(4), 0, px(4))  # room for the ring of the focus
        filters.setSpacing(px(8))
        for chip in self.chips.values():
            filters.addWidget(chip)
        filters.addStretch()
        rows.addLayout(filters)
        rows.addWidget(self.none)
        rows.addWidget(self.table, 1)
        self.whole.setMinimumHeight(px(20))
        rows.addWidget(self.whole)
        rows.addStretch(0)
        for place, wide in enumerate(WIDE):
            self.table.setColumnWidth(place, px(wide))
        self.table.head.setSectionResizeMode(NAME, self.table.head.ResizeMode.Interactive)
        self.table.head.setSectionResizeMode(SAID, self.table.head.ResizeMode.Stretch)
        self.table.head.setSectionsClickable(False)


def _is(entry: Entry, name: str) -> bool:
    if name == "asks":
        return entry.asks
    if name == "undecided" or entry.undecided:
        return entry.undecided and name == "undecided"
    return (entry.before is None) == (name == "new")
