"""What stands where an item has no photo yet: a simple outline of its kind."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from kitlog.paint.outline import fitted, outline
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens

WIDTH, HEIGHT = 240.0, 72.0


def _cell_wall(number: int) -> str:
    """The wall between two cells, `number` walls from the middle: shorter and slanting towards the tips."""
    out = abs(number) / 10
    x, top, foot = 120 + 11.6 * number, 3 + 26 * out**2.2, 34 + 10 * out**3
    return f"M {x:.1f},{top:.1f} L {x - 0.2 * number:.1f},{foot:.1f}"


_WING = (
    "M 4,32 C 30,12 70,3 120,3 C 170,3 210,12 236,32 L 236,46 C 210,36 170,34 120,34 C 70,34 30,36 4,46 Z",
    " ".join(_cell_wall(number) for number in range(-9, 10)),
)
_HARNESS_BODY = (
    "M 78,66 C 68,44 72,18 86,6 C 94,2 100,8 100,18 C 102,30 108,36 118,40 "
    "C 138,44 158,42 168,46 C 176,50 176,66 164,66 Z"
)
_HARNESS = (
    _HARNESS_BODY,
    "M 84,54 C 108,58 146,58 172,54 M 118,40 C 122,30 138,28 146,42 M 96,14 C 108,18 110,30 118,40",
)
_HELMET = (
    "M 86,66 C 80,54 82,36 90,25 C 98,13 110,6 122,6 C 144,6 158,22 158,42 L 158,47 L 132,47 C 125,47 122,54 122,66 Z",
    "M 90,38 C 108,32 136,32 157,38",
)
_BOX = (
    "M 76,24 L 120,8 L 164,24 L 164,54 L 120,68 L 76,54 Z",
    "M 76,24 L 120,38 L 164,24 M 120,38 L 120,68 M 98,16 L 142,31 L 142,40",
)
_SKETCHES = {"wing": _WING, "harness": _HARNESS, "helmet": _HELMET}


def paint(painter: QPainter, rect: QRectF, kind: str, tokens: Tokens) -> None:
    """Paint the sketch of `kind` into the middle of `rect`: wing, harness and helmet have their own, the rest a box."""
    body, lines = _SKETCHES.get(kind, _BOX)
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setTransform(fitted(WIDTH, HEIGHT, rect), combine=True)
    painter.fillPath(outline(body), tokens.tint(tokens.accent, 0.15))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.tint(tokens.accent, 0.45), 1))
    painter.drawPath(outline(lines))
    painter.setPen(pen(tokens.accent, 1.6))
    painter.drawPath(outline(body))
    painter.restore()
