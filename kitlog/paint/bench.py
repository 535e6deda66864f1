"""The empty bench: dashed outlines of what will lie on it, for when nothing is owned yet."""

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QPainter

from kitlog.paint.outline import fitted, outline
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens

WIDTH, HEIGHT = 448.0, 146.0

WING_BAG = (
    "M 52,100 C 34,100 27,84 28,70 C 29,54 36,47 52,45 C 78,41 104,41 130,45 "
    "C 146,48 153,56 153,72 C 153,86 147,100 130,100 Z"
)
WING_BAG_STRAPS = "M 66,43 C 70,62 70,82 66,100 M 112,43 C 116,62 116,82 112,100"
HARNESS = (
    "M 176,100 C 168,74 168,38 182,14 C 186,7 190,4 195,4 C 202,4 204,10 204,20 C 205,36 210,48 218,60 "
    "C 228,68 240,69 252,71 C 264,73 270,77 270,84 C 270,94 262,100 252,100 Z"
)
HARNESS_PARTS = "M 182,84 C 206,88 240,88 268,83 M 218,60 C 226,49 242,48 250,64 M 196,24 C 210,28 212,46 219,61"
HELMET = (
    "M 290,100 C 286,88 287,74 293,64 C 300,52 312,46 322,46 "
    "C 340,46 350,60 350,76 L 350,80 L 328,80 C 322,80 320,86 320,100 Z"
)
HELMET_BAND = "M 294,74 C 310,69 330,69 349,74"
PHONE = (
    "M 370,60 L 384,60 Q 388,60 388,64 L 388,96 Q 388,100 384,100 L 370,100 Q 366,100 366,96 L 366,64 Q 366,60 370,60 Z"
)
PHONE_EAR = "M 375,65 L 379,65"
BOTTLE = (
    "M 410,28 L 420,28 L 420,42 C 420,46 426,48 426,54 L 426,97 Q 426,100 423,100 "
    "L 407,100 Q 404,100 404,97 L 404,54 C 404,48 410,46 410,42 Z"
)
BOTTLE_CAP = "M 410,35 L 420,35"

THINGS = (WING_BAG, WING_BAG_STRAPS, HARNESS, HARNESS_PARTS, HELMET, HELMET_BAND, PHONE, PHONE_EAR, BOTTLE, BOTTLE_CAP)


def paint(painter: QPainter, rect: QRectF, tokens: Tokens) -> None:
    """Paint the bench into the middle of `rect`, its shape kept."""
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setTransform(fitted(WIDTH, HEIGHT, rect), combine=True)
    _table(painter, tokens)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.muted, 1.5, (3.5, 3)))
    for thing in THINGS:
        painter.drawPath(outline(thing))
    painter.restore()


def _table(painter: QPainter, tokens: Tokens) -> None:
    painter.setPen(pen(tokens.strong_line, 1))
    painter.drawLine(QLineF(36, 132, 412, 132))
    painter.setBrush(tokens.sunk)
    for left in (28, 412):
        painter.drawRoundedRect(QRectF(left, 110, 8, 33), 3, 3)
    painter.setPen(pen(tokens.ink, 1.2))
    painter.drawRoundedRect(QRectF(1, 102, 446, 9), 4, 4)
