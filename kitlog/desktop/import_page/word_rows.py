"""A plain table of words on paper: rows of texts, nothing to change."""

from collections.abc import Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from kitlog.desktop import look
from kitlog.desktop.parts.paper_table import PaperTable, cell_box, draw_row_ground
from kitlog.paint.type_scale import Role

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()


class WordRows(QAbstractTableModel):
    """Rows of texts under heads."""

    def __init__(self, heads: Sequence[str]) -> None:
        super().__init__()
        self._heads = tuple(heads)
        self.rows: Sequence[tuple[str, ...]] = ()

    def put(self, rows: Sequence[tuple[str, ...]], heads: Sequence[str] | None = None) -> None:
        """Show other rows, under other heads if they are given."""
        self.beginResetModel()
        self.rows = rows
        self._heads = self._heads if heads is None else tuple(heads)
        self.endResetModel()

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of rows."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of columns."""
        return 0 if parent.isValid() else len(self._heads)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Heads of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return self._heads[section]
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A text, whole in its tool tip."""
        shown = {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole}
        if not index.isValid() or index.row() >= len(self.rows) or role not in shown:
            return None
        row = self.rows[index.row()]
        return row[index.column()] if index.column() < len(row) else ""


class WordCells(QStyledItemDelegate):
    """How a text looks; the first column is muted."""

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """Rows are 28 high."""
        return QSize(look.px(64), look.px(28))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint ground and text."""
        t = look.tokens()
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        draw_row_ground(painter, option.rect, selected=selected, over=False)
        colour = t.muted if index.column() == 0 else t.ink
        look.lettering().draw(painter, cell_box(option.rect), str(index.data() or ""), Role.SECOND, colour)
        painter.restore()


def word_table(name: str, model: WordRows, widths: Sequence[int]) -> PaperTable:
    """A table of such rows; the last column takes what is left."""
    table = PaperTable(name, high=28)
    table.setSelectionMode(PaperTable.SelectionMode.SingleSelection)
    table.setModel(model)
    table.setItemDelegate(WordCells(table))
    table.head.setSectionsClickable(False)
    for place, wide in enumerate(widths):
        table.setColumnWidth(place, look.px(wide))
    table.head.setStretchLastSection(True)
    return table
