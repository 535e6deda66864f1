"""The rows of the kit table for Qt: thin, already computed, never raising."""

from collections.abc import Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from kitlog.desktop.kit_page.columns import COLUMNS
from kitlog.outing.library import Library
from kitlog.wording.translate import _
from kitlog.workbench.reads import KitRow

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()


class KitModel(QAbstractTableModel):
    """The rows that are shown, in their order."""

    def __init__(self, library: Library) -> None:
        super().__init__()
        self._library = library
        self.rows: Sequence[KitRow] = ()

    def put(self, rows: Sequence[KitRow]) -> None:
        """Show other rows."""
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of rows."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of columns."""
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Words of a cell; the name cell tells maker and model as its tool tip."""
        if not index.isValid() or index.row() >= len(self.rows):
            return None
        row, column = self.rows[index.row()], COLUMNS[index.column()]
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole}:
            return column.text(row, self._library)
        if role == Qt.ItemDataRole.ToolTipRole and column.id == "name":
            return " ".join(part for part in (row.item.name, row.item.maker, row.item.model) if part)
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Heads of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return _(COLUMNS[section].title)
        return None

    def rows_of(self, ids: Sequence[str]) -> list[int]:
        """Where items stand, in their order; those that are not shown are left out."""
        numbers = {row.item.id: number for number, row in enumerate(self.rows)} if ids else {}
        return [numbers[item_id] for item_id in ids if item_id in numbers]
