"""The band of the days in a lane, and the marks where they switch a device off."""

from collections.abc import Sequence

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from kitlog.paint.strokes import pen, polyline
from kitlog.paint.tokens import Tokens

TICKS_PX = {5: 4.0, 50: 6.0, 95: 4.0}
"""Half heights of the ticks: the middle one stands out."""


def edge_colour(tokens: Tokens) -> QColor:
    """The edges of the band, at least 3:1 on every ground of a lane (WCAG 1.4.11)."""
    return tokens.tint(tokens.accent, 0.8)


def ground_colour(tokens: Tokens) -> QColor:
    """The ground of the band: seen through, so that the bands of the phases go on under it."""
    colour = tokens.accent.toRgb()
    colour.setAlphaF(0.22)
    return colour


def band(painter: QPainter, low: Sequence[QPointF], high: Sequence[QPointF], tokens: Tokens, px: float) -> None:
    """Fill what lies between two edges, and draw both; `px` is one pixel of the design."""
    painter.save()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(ground_colour(tokens))
    painter.drawPolygon(QPolygonF([*low, *reversed(high)]))
    painter.restore()
    painter.setPen(pen(edge_colour(tokens), 0.9 * px))
    painter.drawPath(polyline(list(low)))
    painter.drawPath(polyline(list(high)))


def whisker(painter: QPainter, ticks: Sequence[tuple[int, float]], y: float, colour: QColor, px: float) -> None:
    """Ticks at (per cent of the days, x), joined by a line: from the days that go off early to those that do late."""
    if not ticks:
        return
    painter.setPen(pen(colour, 1.4 * px))
    xs = [x for _, x in ticks]
    painter.drawLine(QLineF(min(xs), y, max(xs), y))
    for pct, x in ticks:
        half = TICKS_PX.get(pct, 4.0) * px
        painter.drawLine(QLineF(x, y - half, x, y + half))
