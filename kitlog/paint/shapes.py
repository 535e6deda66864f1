"""The four state shapes, told apart without colour, and the open disc of a recommended date."""

import math
from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from kitlog.paint.mark import Mark
from kitlog.paint.tokens import Tokens

RING_DASHES = 8


def draw_state(painter: QPainter, rect: QRectF, state: Mark | str, tokens: Tokens) -> None:
    """Draw the shape of `state` in the middle of `rect`, as large as the shorter side allows.

    The mark "none" draws nothing.

    Raises:
        ValueError: `state` is not one of the words of `Mark`.
    """
    draw = _DRAW.get(Mark(state))
    if draw is None:
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tokens.state(state))
    draw(painter, _square(rect), tokens)
    painter.restore()


def draw_open_disc(painter: QPainter, rect: QRectF, colour: QColor, ground: QColor) -> None:
    """Draw the open disc of a recommended date in the middle of `rect`, filled with `ground`."""
    square = _square(rect)
    stroke = square.width() * 0.17
    inset = square.width() * 0.04 + stroke / 2
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(colour, stroke))
    painter.setBrush(ground)
    painter.drawEllipse(square.adjusted(inset, inset, -inset, -inset))
    painter.restore()


def _square(rect: QRectF) -> QRectF:
    side = min(rect.width(), rect.height())
    return QRectF(rect.center().x() - side / 2, rect.center().y() - side / 2, side, side)


def _disc(painter: QPainter, square: QRectF, _tokens: Tokens) -> None:
    inset = square.width() * 0.07
    painter.drawEllipse(square.adjusted(inset, inset, -inset, -inset))


def _diamond(painter: QPainter, square: QRectF, _tokens: Tokens) -> None:
    centre, reach = square.center(), square.width() / 2
    corners = [QPointF(0, -reach), QPointF(reach, 0), QPointF(0, reach), QPointF(-reach, 0)]
    painter.drawPolygon(QPolygonF([centre + corner for corner in corners]))


def _barred_square(painter: QPainter, square: QRectF, tokens: Tokens) -> None:
    side = square.width()
    body = square.adjusted(side * 0.06, side * 0.06, -side * 0.06, -side * 0.06)
    painter.drawRoundedRect(body, side * 0.12, side * 0.12)
    painter.setBrush(tokens.paper if tokens.dark else tokens.surface)
    bar = QRectF(0, 0, side * 0.5, side * 0.17)
    bar.moveCenter(square.center())
    painter.drawRect(bar)


def _dashed_ring(painter: QPainter, square: QRectF, tokens: Tokens) -> None:
    stroke = square.width() * 0.15
    radius = square.width() * 0.46 - stroke / 2
    pen = QPen(tokens.state(Mark.NOT_KNOWN), stroke)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    step = 2 * math.pi * radius / stroke / RING_DASHES
    pen.setDashPattern([step * 0.62, step * 0.38])
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawEllipse(square.center(), radius, radius)


_DRAW: dict[Mark, Callable[[QPainter, QRectF, Tokens], None]] = {
    Mark.FINE: _disc,
    Mark.LOOK: _diamond,
    Mark.STOP: _barred_square,
    Mark.NOT_KNOWN: _dashed_ring,
}
