"""The list under the band: every rule, the soonest first."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from kitlog.desktop import look
from kitlog.desktop.due_marks import MARKS
from kitlog.desktop.parts.chip import draw_chip
from kitlog.desktop.parts.paper_table import PaperTable, cell_box, draw_row_ground
from kitlog.desktop.service_page.band_lanes import state_word
from kitlog.desktop.service_page.list_words import book_text, due_text, first_limit_text, who_text
from kitlog.desktop.service_page.rule_words import WHILE_OPEN
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.rules import rule_text
from kitlog.wording.translate import N_, _
from kitlog.workbench.reads import DueLine

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()

COLUMNS: tuple[tuple[str, int, Callable[[DueLine], str]], ...] = (
    (N_("State"), 128, lambda line: state_word(line.due)),
    (N_("Item and service"), 250, lambda line: line.item.name),
    (N_("Due"), 124, due_text),
    (N_("Which limit comes first"), 220, first_limit_text),
    (N_("Book by"), 96, lambda line: book_text(line.due)),
    (N_("Last done by"), 120, lambda line: who_text(line.due)),
    (N_("While open"), 140, lambda line: _(WHILE_OPEN[line.rule.grounds])),
)
"""Title, width in px of the design, words. The fourth takes what is left."""

STATE, NAME, DUE, LIMITS, BOOK = 0, 1, 2, 3, 4


class DueModel(QAbstractTableModel):
    """The rules with their states."""

    def __init__(self) -> None:
        super().__init__()
        self.lines: Sequence[DueLine] = ()

    def put(self, lines: Sequence[DueLine]) -> None:
        """Show other lines."""
        self.beginResetModel()
        self.lines = lines
        self.endResetModel()

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of rows."""
        return 0 if parent.isValid() else len(self.lines)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Number of columns."""
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Words of a cell; the name cell names the rule too."""
        if not index.isValid() or index.row() >= len(self.lines):
            return None
        line = self.lines[index.row()]
        text = COLUMNS[index.column()][2](line)
        if role == Qt.ItemDataRole.DisplayRole:
            return text
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{text}, {rule_text(line.due.rule)}" if index.column() == NAME else text
        return text if role == Qt.ItemDataRole.ToolTipRole and index.column() in {NAME, LIMITS} else None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Heads of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return _(COLUMNS[section][0])
        return None

    def row_of(self, rule_id: str) -> int | None:
        """Where a rule stands."""
        return next((n for n, line in enumerate(self.lines) if line.rule.id == rule_id), None)


class DueCells(QStyledItemDelegate):
    """How a cell looks."""

    def __init__(self, table: PaperTable, model: DueModel) -> None:
        super().__init__(table)
        self._model = model

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """Rows are 32 high."""
        return QSize(look.px(64), look.px(32))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint ground and words."""
        line, t = self._model.lines[index.row()], look.tokens()
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        over = bool(option.state & QStyle.StateFlag.State_MouseOver)
        painter.save()
        draw_row_ground(painter, option.rect, selected=selected, over=over)
        box, text = cell_box(option.rect), str(index.data() or "")
        mark, words = MARKS[line.due.state], look.lettering()
        if index.column() == STATE and mark is not Mark.NONE:
            draw_chip(painter, box, text, mark, t)
        elif index.column() == NAME:
            room = words.draw(painter, box, text, Role.NAME, t.ink)
            box.setLeft(room.right() + look.px(8))
            words.draw(painter, box, rule_text(line.due.rule), Role.SECOND, t.muted)
        else:
            words.draw(painter, box, text, *_style(index.column(), mark))
        painter.restore()


def _style(column: int, mark: Mark) -> tuple[Role, QColor]:
    t = look.tokens()
    if column == DUE:
        return Role.BODY, t.state(mark) if mark in {Mark.STOP, Mark.LOOK} else t.ink
    return (Role.SECOND, t.ink) if column in {LIMITS, BOOK} else (Role.SMALL, t.muted)
