"""Painting the rows of the repack: big ticks, names, reasons, masses, and what stands before anything else."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from kitlog.desktop import look
from kitlog.desktop.parts.tick_box import draw_missing_box, draw_state_box, draw_tick_box
from kitlog.desktop.repack_page.rows import Row, RowKind
from kitlog.paint.lettering import RIGHT
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

Index = QModelIndex | QPersistentModelIndex
ROW_ROLE = int(Qt.ItemDataRole.UserRole)

HEAD, FIRST_HEAD, LINE, EXCEPTION, GAP = 40, 28, 44, 48, 4
BOX, BOX_AT, WORDS_AT, END = 28, 8, 52, 12
RIGHT_SHARE = 0.46
KEY = "S"


def row_height(row: Row) -> int:
    """Height of a row in px of the design."""
    if row.kind is RowKind.HEAD:
        return HEAD if row.note or row.right else FIRST_HEAD
    return EXCEPTION + GAP if row.kind is RowKind.EXCEPTION else LINE


def box_rect(rect: QRectF) -> QRectF:
    """Where the tick box of a row lies."""
    side = look.px(BOX)
    return QRectF(rect.left() + look.px(BOX_AT), rect.center().y() - side / 2, side, side)


def body_rect(row: Row, rect: QRectF) -> QRectF:
    """The ground of a row: an exception leaves a gap to the next one."""
    return rect.adjusted(0, 0, 0, -look.px(GAP)) if row.kind is RowKind.EXCEPTION else rect


def act_rect(row: Row, rect: QRectF) -> QRectF:
    """Where the act of an exception lies; empty for others."""
    if row.kind is not RowKind.EXCEPTION or not row.right:
        return QRectF()
    body, px = body_rect(row, rect), look.px
    wide = min(look.lettering().width(row.right, Role.NAME) + px(30), body.width() * RIGHT_SHARE)
    return QRectF(body.right() - px(END) - wide, body.top() + px(2), wide, px(24))


class RowPaint(QStyledItemDelegate):
    """Paints rows; the current one has accent ground and a ring while the list has the focus."""

    def sizeHint(self, _option: QStyleOptionViewItem, index: Index) -> QSize:
        """Height by the kind of row."""
        return QSize(look.px(200), look.px(row_height(index.data(ROW_ROLE))))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paint one row."""
        row: Row = index.data(ROW_ROLE)
        t, rect = look.tokens(), QRectF(option.rect)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if row.kind is RowKind.HEAD:
            _head(painter, rect, row, t)
        else:
            chosen = bool(option.state & QStyle.StateFlag.State_Selected)
            over = bool(option.state & QStyle.StateFlag.State_MouseOver)
            focus = chosen and bool(option.state & QStyle.StateFlag.State_HasFocus)
            body = body_rect(row, rect)
            _ground(painter, body, row, t, chosen=chosen, over=over, focus=focus)
            _box(painter, box_rect(body), row, t)
            _words(painter, body, row, t)
        painter.restore()


def _head(painter: QPainter, rect: QRectF, row: Row, t: Tokens) -> None:
    px, text = look.px, look.lettering()
    foot = QRectF(rect.left() + px(8), rect.bottom() - px(27), rect.width() - px(8 + END), px(20))
    quiet = not (row.note or row.right)
    mass = text.draw(painter, foot, row.right, Role.GROUP if row.zone else Role.SMALL, t.muted, RIGHT)
    words = QRectF(foot.left(), foot.top(), mass.left() - foot.left() - px(8), foot.height())
    title = text.draw(painter, words, row.title, Role.LABEL if quiet else Role.GROUP, t.muted if quiet else t.ink)
    words.setLeft(title.right() + px(12))
    text.draw(painter, words, row.note, Role.SECOND, t.muted)
    if not quiet:
        painter.fillRect(QRectF(rect.left(), rect.bottom() - 1, rect.width(), 1), t.strong_line)


def _ground(painter: QPainter, body: QRectF, row: Row, t: Tokens, *, chosen: bool, over: bool, focus: bool) -> None:
    radius, box = look.px(6), body.adjusted(0.5, 0.5, -0.5, -0.5)
    is_exception = row.kind is RowKind.EXCEPTION
    if is_exception:
        painter.setPen(QPen(t.tint(t.state(row.mark), 0.35), 1))
        painter.setBrush(t.tile(row.mark) if row.mark is not Mark.NONE else t.surface)
        painter.drawRoundedRect(box, radius, radius)
    if chosen:
        painter.setPen(QPen(t.accent, 2 if focus else 1))
        painter.setBrush(Qt.BrushStyle.NoBrush if is_exception else t.selection)
        painter.drawRoundedRect(body.adjusted(1, 1, -1, -1), radius, radius)
    elif over and not is_exception:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(t.sunk)
        painter.drawRoundedRect(box, radius, radius)


def _box(painter: QPainter, box: QRectF, row: Row, t: Tokens) -> None:
    if row.missing:
        draw_missing_box(painter, box, row.mark, t)
    elif row.kind is RowKind.EXCEPTION and not row.ticked:
        draw_state_box(painter, box, row.mark, t)
    else:
        draw_tick_box(painter, box, t, ticked=row.ticked)


def _words(painter: QPainter, body: QRectF, row: Row, t: Tokens) -> None:
    px, text = look.px, look.lettering()
    left, end = body.left() + px(WORDS_AT), body.right() - px(END)
    top = QRectF(left, body.center().y() - px(19), end - left, px(20))
    below = QRectF(left, body.center().y() + px(1), end - left, px(16))
    if row.kind is RowKind.EXCEPTION:
        free = _act(painter, body, row, t)
        above_end, below_end = free
    else:
        above_end = below_end = _figures(painter, body, row, t)
    if not row.note:
        top.moveTop(body.center().y() - px(10))
    top.setRight(above_end - px(8))
    below.setRight(below_end - px(8))
    done = text.draw(painter, top, row.title, Role.GROUP if row.kind is RowKind.EXCEPTION else Role.NAME, t.ink)
    for words, role, colour in ((row.more, Role.BODY, t.muted), (row.word, Role.LABEL, t.state(row.mark))):
        if words:
            top.setLeft(done.right() + px(8))
            if role is Role.LABEL and row.kind is RowKind.LINE:
                draw_state(painter, QRectF(top.left(), top.center().y() - px(5.5), px(11), px(11)), row.mark, t)
                top.setLeft(top.left() + px(16))
            done = text.draw(painter, top, words, role, colour)
    text.draw(painter, below, row.note, Role.SMALL, t.state(row.mark) if _is_reasoned(row) else t.muted)


def _is_reasoned(row: Row) -> bool:
    """A stop that was closed with a reason shows it in its colour."""
    return row.kind is RowKind.LINE and row.mark is Mark.STOP and not row.word


def _figures(painter: QPainter, body: QRectF, row: Row, t: Tokens) -> float:
    """Mass at the right, the charge before it; returns where they begin."""
    px, text = look.px, look.lettering()
    room = QRectF(body.left(), body.top(), body.width() - px(END), body.height())
    mass = text.draw(painter, room, row.right, Role.NAME, t.muted if row.faded else t.ink, RIGHT)
    if not row.right_note:
        return mass.left()
    if row.right:
        room.setRight(min(mass.left() - px(16), body.right() - px(END + 68)))
    return text.draw(painter, room, row.right_note, Role.SMALL, t.muted, RIGHT).left()


def _act(painter: QPainter, body: QRectF, row: Row, t: Tokens) -> tuple[float, float]:
    """The act with its key, and its note below; returns where each begins."""
    px, text = look.px, look.lettering()
    end = body.right() - px(END)
    top = QRectF(end - body.width() * RIGHT_SHARE, body.center().y() - px(19), body.width() * RIGHT_SHARE, px(20))
    begins = end
    if row.right:
        key = text.draw(painter, top, KEY, Role.GROUP, t.accent, RIGHT)
        top.setRight(key.left() - px(10))
        begins = text.draw(painter, top, row.right, Role.NAME, t.accent, RIGHT).left()
    below = QRectF(end - body.width() * RIGHT_SHARE, body.center().y() + px(1), body.width() * RIGHT_SHARE, px(16))
    note = text.draw(painter, below, row.right_note, Role.SMALL, t.muted, RIGHT)
    return begins, note.left()
