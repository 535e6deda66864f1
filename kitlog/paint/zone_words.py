"""The words of the zone drawing: legend, labels with leader lines, the flag at the carabiners."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from kitlog.paint.lettering import Lettering
from kitlog.paint.shapes import draw_state
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.zone_body import ground
from kitlog.paint.zone_layout import FLAG, NOTE_LINE, SPOTS, TITLE_LINE, ZoneLayout
from kitlog.paint.zone_outlines import CARABINER
from kitlog.paint.zone_picture import ZoneFill, ZoneFlag


def head(painter: QPainter, layout: ZoneLayout, tokens: Tokens) -> None:
    """Title at the left, legend at the right."""
    if not layout.head_px:
        return
    text, px, rect = layout.text, layout.text.px, layout.rect
    row = QRectF(rect.left(), rect.top(), rect.width(), px(24))
    room = QRectF(row)
    for word, is_stowed in ((layout.picture.to_stow, False), (layout.picture.stowed, True)):
        left = room.right() - min(text.width(word, Role.SMALL), rect.width() / 3)
        text.draw(
            painter, QRectF(left, row.top(), room.right() - left + 1, row.height()), word, Role.SMALL, tokens.muted
        )
        box = QRectF(left - px(20), row.center().y() - px(5), px(13), px(10))
        ground(painter, box, tokens, is_stowed=is_stowed)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(pen(tokens.accent, px(1)))
        painter.drawRoundedRect(box, px(1.5), px(1.5))
        room.setRight(box.left() - px(16))
    text.draw(painter, room, layout.picture.title, Role.SECTION, tokens.ink)


def label(painter: QPainter, layout: ZoneLayout, fill: ZoneFill, tokens: Tokens, *, is_selected: bool) -> None:
    """Name and note of a zone on the pilot, with a line to it."""
    room, px, text = layout.labels[fill.zone], layout.text.px, layout.text
    if not layout.is_tight:
        spot = SPOTS[fill.zone]
        reach = min(text.width(fill.title, Role.LABEL), room.width())
        start = {
            "left": QPointF(room.left() - px(5), room.top() + px(15)),
            "right": QPointF(room.left() + reach + px(7), room.top() + px(10)),
            "top": QPointF(room.left() + min(px(34), room.width()), room.top() - px(2)),
        }[spot.side]
        _leader(painter, start, layout.pilot.map(QPointF(*spot.dot)), px(1), tokens.muted)
    title = QRectF(room.left(), room.top(), room.width(), px(TITLE_LINE))
    _title(painter, title, fill, (text, tokens), is_selected=is_selected)
    for number, words in enumerate(layout.note_lines(fill, room.width())):
        row = QRectF(room.left(), title.bottom() + number * px(NOTE_LINE), room.width(), px(NOTE_LINE))
        text.draw(painter, row, words, Role.SMALL, tokens.muted)


def _title(
    painter: QPainter, room: QRectF, fill: ZoneFill, style: tuple[Lettering, Tokens], *, is_selected: bool
) -> None:
    text, tokens = style
    px, marked = text.px, tokens.state(fill.mark) != tokens.muted
    colour = tokens.accent if is_selected else tokens.ink
    words = room.adjusted(0, 0, -px(18) if marked else 0, 0)
    done = text.draw(painter, words, fill.title, Role.LABEL, colour)
    if marked:
        draw_state(
            painter, QRectF(done.right() + px(6), room.center().y() - px(5.5), px(11), px(11)), fill.mark, tokens
        )


def _leader(painter: QPainter, start: QPointF, end: QPointF, unit: float, colour: QColor) -> None:
    painter.setPen(pen(colour, unit))
    painter.drawLine(start, end)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawEllipse(end, 2.2 * unit, 2.2 * unit)


def carabiner(painter: QPainter, layout: ZoneLayout, tokens: Tokens) -> None:
    """The ring of the carabiners, with its flag if something is wrong with them."""
    x, y, radius = CARABINER
    flag, unit = layout.picture.carabiner, layout.text.px(1)
    if flag is not None:
        painter.setPen(pen(tokens.state(flag.mark), unit))
        start = layout.pilot.map(QPointF(FLAG.x, FLAG.y)) + QPointF(-unit, 18 * unit)
        painter.drawLine(start, layout.pilot.map(QPointF(*FLAG.dot)))
    painter.setPen(pen(tokens.ink if flag is None else tokens.state(flag.mark), (1.6 if flag is None else 2.2) * unit))
    painter.setBrush(tokens.surface)
    painter.drawEllipse(layout.pilot.map(QPointF(x, y)), radius * layout.scale, radius * layout.scale)
    if flag is not None:
        _flag(painter, layout, tokens, flag)


def _flag(painter: QPainter, layout: ZoneLayout, tokens: Tokens, flag: ZoneFlag) -> None:
    px, corner = layout.text.px, layout.pilot.map(QPointF(FLAG.x, FLAG.y))
    width = layout.rect.right() - corner.x() if layout.is_tight else FLAG.width * layout.scale
    row = QRectF(corner.x(), corner.y(), width, px(18))
    draw_state(painter, QRectF(row.left(), row.center().y() - px(5.5), px(11), px(11)), flag.mark, tokens)
    row.setLeft(row.left() + px(16))
    layout.text.draw(painter, row, flag.text, Role.CHIP, tokens.state(flag.mark))
