"""The sign of something that opens downwards."""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from kitlog.desktop import look


def draw_chevron(painter: QPainter, centre: QPointF, colour: QColor) -> None:
    """The sign of something that opens downwards."""
    reach = look.px(4)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(colour, 1.6, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin))
    points = (QPointF(-reach, -reach / 2), QPointF(0, reach / 2), QPointF(reach, -reach / 2))
    painter.drawPolyline(QPolygonF([centre + point for point in points]))
