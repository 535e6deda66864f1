"""The table of what comes in: thin rows, words made when they are shown."""

from collections.abc import Sequence
from functools import lru_cache

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from kitlog.desktop import look
from kitlog.desktop.import_page.entries import Entry, said_of
from kitlog.desktop.parts.chip import draw_mark_and_word
from kitlog.desktop.parts.paper_table import PaperTable, cell_box, draw_row_ground
from kitlog.kit.kinds import MassSource
from kitlog.outing.library import Library
from kitlog.paint.lettering import LEFT, RIGHT
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.figures import number_text
from kitlog.wording.translate import N_, _
from kitlog.wording.words import word

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()

TITLES = (N_("Row"), N_("Becomes"), N_("Name"), N_("Kind"), N_("Mass, g"), N_("Source"), N_("To be said"))
WIDE = (44, 104, 176, 96, 80, 104, 180)
ROW, BECOMES, NAME, KIND, MASS, SOURCE, SAID = range(7)


class ItemsModel(QAbstractTableModel):
    """The entries that are shown."""

    def __init__(self, library: Library) -> None:
        super().__init__()
        self._library = library
        self.entries: Sequence[Entry] = ()
        self._said = lru_cache(maxsize=256)(lambda number: said_of(self.entries[number], library))

    def put(self, entries: Sequence[Entry]) -> None:
        """Show other entries."""
        self.beginResetModel()
        self.entries = entries
        self._said.cache_clear()
        self.endResetModel()

    def said(self, number: int) -> str:
        """All that is to be said of a row."""
        return self._said(number)

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of rows."""
        return 0 if parent.isValid() else len(self.entries)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of columns."""
        return 0 if parent.isValid() else len(TITLES)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Heads of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return _(TITLES[section])
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Words of a cell."""
        if not index.isValid() or index.row() >= len(self.entries):
            return None
        if role in {Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole}:
            return self._text(index.row(), index.column())
        return None

    def _text(self, number: int, column: int) -> str:
        entry = self.entries[number]
        item = entry.item
        if column == SAID:
            return self.said(number)
        if column == MASS:
            return word("not known") if item.mass_g is None else number_text(item.mass_g)
        texts = {
            ROW: str(entry.row or ""),
            BECOMES: _becomes(entry),
            NAME: item.name if item.quantity == 1 else f"{item.name}  {item.quantity} ×",
            KIND: word(self._library.facts(item.kind).label),
            SOURCE: "" if item.mass_g is None else word(item.mass_source.value),
        }
        return texts[column]


class ItemCells(QStyledItemDelegate):
    """How a cell of it looks."""

    def __init__(self, table: PaperTable, model: ItemsModel) -> None:
        super().__init__(table)
        self._model = model

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """Rows are 32 high."""
        return QSize(look.px(64), look.px(32))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint ground and words."""
        rect, t, column = option.rect, look.tokens(), index.column()
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        over = bool(option.state & QStyle.StateFlag.State_MouseOver)
        entry, text = self._model.entries[index.row()], str(index.data() or "")
        painter.save()
        draw_row_ground(painter, rect, selected=selected, over=over)
        box = cell_box(rect, right=column in {ROW, MASS})
        mark = _mark(column, entry)
        if mark is not Mark.NONE:
            draw_mark_and_word(painter, QRectF(box), text, mark, t)
        else:
            role, colour = self._style(column, entry)
            look.lettering().draw(painter, box, text, role, colour, RIGHT if column in {ROW, MASS} else LEFT)
        painter.restore()

    def _style(self, column: int, entry: Entry) -> tuple[Role, QColor]:
        t = look.tokens()
        if column == NAME:
            return Role.NAME, t.ink
        if column == MASS:
            known = entry.item.mass_g is not None
            return (Role.GROUP, t.look if entry.band else t.ink) if known else (Role.SMALL, t.muted)
        if column == SOURCE:
            return Role.SMALL, t.look if entry.item.mass_source is MassSource.GUESS else t.muted
        if column == BECOMES:
            return (Role.SMALL, t.muted) if entry.before is None else (Role.CHIP, t.ink)
        return Role.SMALL, t.muted


def _becomes(entry: Entry) -> str:
    if entry.undecided:
        return _("undecided")
    return _("new") if entry.before is None else _("changed")


def _mark(column: int, entry: Entry) -> Mark:
    """The shape before the words of a cell."""
    if column == BECOMES and entry.undecided:
        return Mark.NOT_KNOWN
    return Mark.LOOK if column == SAID and entry.asks else Mark.NONE
