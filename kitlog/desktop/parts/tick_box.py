"""The big tick of the repack, also used in forms."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPen, QPolygonF

from kitlog.desktop import look
from kitlog.paint.lettering import CENTRE
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

DASHES = (3.0, 3.0)


def draw_tick_box(painter: QPainter, box: QRectF, t: Tokens, *, ticked: bool, enabled: bool = True) -> None:
    """Draw a box, ticked or not."""
    radius = look.px(6) * min(1.0, box.width() / look.px(28) + 0.1)
    edge = t.accent if ticked else t.outline if enabled else t.tint(t.ink, 0.25)
    painter.setPen(QPen(edge, 1.2))
    painter.setBrush(t.selection if ticked else t.surface)
    painter.drawRoundedRect(box.adjusted(0.6, 0.6, -0.6, -0.6), radius, radius)
    if ticked:
        _draw_tick(painter, box, t)


def draw_missing_box(painter: QPainter, box: QRectF, mark: Mark, t: Tokens) -> None:
    """Draw the dashed box with an M: looked for and not found."""
    colour = t.state(mark)
    painter.setPen(pen(colour, 2, DASHES))
    painter.setBrush(t.surface)
    painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), look.px(6), look.px(6))
    look.lettering().draw(painter, box, "M", Role.GROUP, colour, CENTRE)


def draw_state_box(painter: QPainter, box: QRectF, mark: Mark, t: Tokens) -> None:
    """Draw the box of a line that is held up by a state."""
    painter.setPen(QPen(t.state(mark), 2))
    painter.setBrush(t.surface)
    painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), look.px(6), look.px(6))
    inset = box.width() * 0.3
    draw_state(painter, box.adjusted(inset, inset, -inset, -inset), mark, t)


def _draw_tick(painter: QPainter, box: QRectF, t: Tokens) -> None:
    painter.setPen(pen(t.accent, max(1.6, box.width() * 0.085)))
    points = (QPointF(0.20, 0.55), QPointF(0.42, 0.77), QPointF(0.82, 0.22))
    painter.drawPolyline(
        QPolygonF([QPointF(box.left() + p.x() * box.width(), box.top() + p.y() * box.height()) for p in points])
    )
