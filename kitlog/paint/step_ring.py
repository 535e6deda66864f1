"""The ring before each step of the repack: a tick, a state, how full, or its number."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPolygonF

from kitlog.paint.checked import share
from kitlog.paint.lettering import CENTRE, Lettering
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role


@dataclass(frozen=True, slots=True)
class StepRing:
    """One step.

    Attributes:
        number: its place, from 1.
        done: share of it that is done, 0 to 1.
        mark: *look* or *stop* if something in it is wrong.
        is_current: whether it is the step being worked on; then its number stands on the accent.
    """

    number: int
    done: float = 0.0
    mark: Mark = Mark.NONE
    is_current: bool = False

    def __post_init__(self) -> None:
        share(done=self.done)


def paint(painter: QPainter, rect: QRectF, ring: StepRing, tokens: Tokens) -> None:
    """Paint the ring into the middle of `rect`; the painter carries the application font."""
    side = min(rect.width(), rect.height())
    square = QRectF(rect.center().x() - side / 2, rect.center().y() - side / 2, side, side)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _ground(painter, square, ring, tokens)
    if ring.is_current:
        _number(painter, square, ring, tokens)
    elif ring.mark in {Mark.LOOK, Mark.STOP}:
        draw_state(painter, _inner(square, 0.25), ring.mark, tokens)
    elif ring.done >= 1.0:
        _tick(painter, square, tokens)
    elif ring.done > 0.0:
        _pie(painter, square, ring.done, tokens)
    else:
        _number(painter, square, ring, tokens)
    painter.restore()


def _inner(square: QRectF, inset: float) -> QRectF:
    by = square.width() * inset
    return square.adjusted(by, by, -by, -by)


def _ground(painter: QPainter, square: QRectF, ring: StepRing, tokens: Tokens) -> None:
    stroke = square.width() * 0.05
    painter.setPen(Qt.PenStyle.NoPen if ring.is_current else pen(tokens.outline, stroke))
    painter.setBrush(tokens.accent if ring.is_current else tokens.surface)
    painter.drawEllipse(square.adjusted(stroke / 2, stroke / 2, -stroke / 2, -stroke / 2))


def _tick(painter: QPainter, square: QRectF, tokens: Tokens) -> None:
    side = square.width()
    corners = [QPointF(0.29, 0.52), QPointF(0.44, 0.67), QPointF(0.72, 0.36)]
    painter.setPen(pen(tokens.accent, side * 0.085))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(QPolygonF([square.topLeft() + corner * side for corner in corners]))


def _pie(painter: QPainter, square: QRectF, done: float, tokens: Tokens) -> None:
    painter.setPen(pen(tokens.accent, square.width() * 0.06))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    disc = _inner(square, 0.16)
    painter.drawEllipse(disc)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tokens.accent)
    full_turn = 360 * 16  # Qt counts sixteenths of a degree, from 3 o'clock against the clock
    painter.drawPie(disc, full_turn // 4, -round(done * full_turn))


def _number(painter: QPainter, square: QRectF, ring: StepRing, tokens: Tokens) -> None:
    colour = tokens.on_accent if ring.is_current else tokens.muted
    Lettering.of(painter).draw(painter, square, str(ring.number), Role.GROUP, colour, CENTRE)
