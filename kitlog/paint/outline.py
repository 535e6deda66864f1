"""Outlines written as short texts in the manner of SVG path data, and drawings fitted into a room."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath, QTransform

_POINTS = {"M": 1, "L": 1, "Q": 2, "C": 3, "Z": 0}


def outline(text: str) -> QPainterPath:
    """The path of `text`: absolute M, L, Q, C with points "x,y", and Z; parts separated by spaces.

    Raises:
        ValueError: a part is neither a command nor a point.
    """
    path = QPainterPath()
    parts = text.split()
    while parts:
        command = parts.pop(0)
        if command not in _POINTS:
            raise ValueError(f"{command!r} is no command of an outline")
        points = [_point(parts.pop(0)) for _ in range(_POINTS[command])]
        _extend(path, command, points)
    return path


def _point(text: str) -> QPointF:
    x, y = text.split(",")
    return QPointF(float(x), float(y))


def _extend(path: QPainterPath, command: str, points: list[QPointF]) -> None:
    if command == "M":
        path.moveTo(points[0])
    elif command == "L":
        path.lineTo(points[0])
    elif command == "Q":
        path.quadTo(points[0], points[1])
    elif command == "C":
        path.cubicTo(points[0], points[1], points[2])
    else:
        path.closeSubpath()


def fitted(width: float, height: float, room: QRectF) -> QTransform:
    """What puts a drawing of `width` by `height` into the middle of `room`, as large as it goes, its shape kept."""
    scale = max(0.0, min(room.width() / width, room.height() / height))
    left = room.center().x() - scale * width / 2
    top = room.center().y() - scale * height / 2
    return QTransform(scale, 0, 0, scale, left, top)
