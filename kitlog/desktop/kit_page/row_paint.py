"""Painting the cells of the kit table."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from kitlog.desktop import look
from kitlog.desktop.due_marks import MARKS
from kitlog.desktop.kit_page.columns import COLUMNS
from kitlog.desktop.kit_page.model import KitModel
from kitlog.desktop.parts.chip import draw_mark_and_word
from kitlog.desktop.parts.paper_table import PaperTable, cell_box, draw_row_ground
from kitlog.kit.kinds import MassSource
from kitlog.paint.lettering import LEFT, RIGHT
from kitlog.paint.mark import Mark
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.workbench.reads import KitRow


class KitCells(QStyledItemDelegate):
    """How a cell looks."""

    def __init__(self, table: PaperTable, model: KitModel) -> None:
        super().__init__(table)
        self._table, self._model = table, model

    def sizeHint(self, _option: QStyleOptionViewItem, _index: QModelIndex | QPersistentModelIndex) -> QSize:
        """Rows are 32 high."""
        return QSize(look.px(64), look.px(32))

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        """Paint ground and words."""
        row, column = self._model.rows[index.row()], COLUMNS[index.column()]
        rect, t = option.rect, look.tokens()
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        over = bool(option.state & QStyle.StateFlag.State_MouseOver)
        painter.save()
        draw_row_ground(painter, rect, selected=selected, over=over)
        box = cell_box(rect, right=column.right)
        if column.id == "name":
            _draw_name(painter, box, row, t)
        elif column.id == "service":
            _draw_service(painter, box, row, str(index.data() or ""), t)
        else:
            role, colour = _style(column.id, row, t)
            align = RIGHT if column.right else LEFT
            look.lettering().draw(painter, box, str(index.data() or ""), role, colour, align)
        painter.restore()


def _draw_name(painter: QPainter, box: QRectF, row: KitRow, t: Tokens) -> None:
    words = look.lettering()
    room = words.draw(painter, box, row.item.name, Role.NAME, t.ink)
    count = f"{row.item.quantity} ×" if row.item.quantity != 1 else ""
    second = " ".join(part for part in (count, row.item.maker, row.item.model) if part)
    box.setLeft(room.right() + look.px(8))
    words.draw(painter, box, second, Role.SMALL, t.muted)


def _draw_service(painter: QPainter, box: QRectF, row: KitRow, word: str, t: Tokens) -> None:
    mark = MARKS[row.due_state]
    if mark is Mark.NONE:
        look.lettering().draw(painter, box.adjusted(look.px(4), 0, 0, 0), word, Role.SMALL, t.muted)
    else:
        draw_mark_and_word(painter, box, word, mark, t)


def _style(column: str, row: KitRow, t: Tokens) -> tuple[Role, QColor]:
    if column == "mass":
        return (Role.SMALL, t.muted) if row.item.mass_g is None else (Role.GROUP, t.look if row.implausible else t.ink)
    if column == "source":
        return Role.SMALL, t.look if row.item.mass_source is MassSource.GUESS else t.muted
    if column in {"air", "foot"}:
        return Role.SMALL, t.ink
    return Role.SMALL, t.muted
