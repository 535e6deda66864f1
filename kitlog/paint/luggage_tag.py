"""The outing being worked on as a luggage tag: cut corners and a hole at the left."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath

from kitlog.paint.lettering import Lettering
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens

CUT, RADIUS, HOLE, HOLE_AT, WORDS_AT = 14.0, 6.0, 4.5, 16.0, 36.0
"""In pixels at a body size of 14: cut corner, round corner, radius and place of the hole, where the words begin."""


def outline_of(rect: QRectF, scale: float) -> QPainterPath:
    """The edge of the tag in `rect`, its hole left out."""
    cut = min(CUT * scale, rect.height() / 2, rect.width())
    radius = min(RADIUS * scale, rect.height() / 2)
    path = QPainterPath(QPointF(rect.left() + cut, rect.top()))
    path.lineTo(rect.right() - radius, rect.top())
    path.quadTo(rect.topRight(), QPointF(rect.right(), rect.top() + radius))
    path.lineTo(rect.right(), rect.bottom() - radius)
    path.quadTo(rect.bottomRight(), QPointF(rect.right() - radius, rect.bottom()))
    path.lineTo(rect.left() + cut, rect.bottom())
    path.lineTo(rect.left(), rect.bottom() - cut)
    path.lineTo(rect.left(), rect.top() + cut)
    path.closeSubpath()
    hole = QPainterPath()
    hole.addEllipse(QPointF(rect.left() + HOLE_AT * scale, rect.center().y()), HOLE * scale, HOLE * scale)
    return path.subtracted(hole)


def paint(painter: QPainter, rect: QRectF, tokens: Tokens) -> None:
    """Paint the empty tag into `rect`; what lies under it shows through the hole. Words begin at `WORDS_AT`."""
    scale = Lettering.of(painter).scale
    inside = rect.adjusted(scale / 2, scale / 2, -scale / 2, -scale / 2)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(pen(tokens.strong_line, scale))
    painter.setBrush(tokens.surface)
    painter.drawPath(outline_of(inside, scale))
    painter.restore()
