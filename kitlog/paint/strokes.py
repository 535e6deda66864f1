"""Pens, hatches and grounds that several pictures share; all of them lines, so that paper and 2x show them sharp."""

import math

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen


def pen(colour: QColor, width: float, dashes: tuple[float, ...] = ()) -> QPen:
    """A pen with round joins; `dashes` are lengths in pixels, on and off in turn."""
    made = QPen(colour, width)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    made.setCapStyle(Qt.PenCapStyle.FlatCap if dashes else Qt.PenCapStyle.RoundCap)
    if dashes:
        made.setDashPattern([length / width for length in dashes])
    return made


def hatch(painter: QPainter, path: QPainterPath, colour: QColor, step: float, width: float) -> None:
    """Fill `path` with rising diagonal lines `step` pixels apart.

    The lines lie on one grid for the whole picture, so that neighbouring areas join without a seam.
    """
    box = path.boundingRect()
    if box.isEmpty():
        return
    painter.save()
    painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
    painter.setPen(QPen(colour, width))
    pitch = step * math.sqrt(2)
    first = math.ceil((box.left() + box.top()) / pitch) * pitch
    count = max(0, math.floor((box.right() + box.bottom() - first) / pitch) + 1)
    painter.drawLines([_diagonal(box, first + i * pitch) for i in range(count)])
    painter.restore()


def _diagonal(box: QRectF, total: float) -> QLineF:
    """The line on which x + y is `total`, from the top to the bottom of `box`."""
    return QLineF(total - box.top(), box.top(), total - box.bottom(), box.bottom())


def rect_path(rect: QRectF, radius: float = 0.0) -> QPainterPath:
    """A rectangle, with round corners if a radius is given, as a path."""
    path = QPainterPath()
    path.addRoundedRect(rect, radius, radius)
    return path


def polyline(points: list[QPointF]) -> QPainterPath:
    """The open path through `points`; empty for fewer than two."""
    path = QPainterPath()
    if len(points) > 1:
        path.moveTo(points[0])
        for point in points[1:]:
            path.lineTo(point)
    return path


def back_text(painter: QPainter, taken: QRectF, ground: QColor, margin: float) -> None:
    """Lay a little ground under a text that must stand on lines."""
    painter.fillRect(taken.adjusted(-margin, 1, margin, -1), ground)
