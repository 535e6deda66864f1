"""Measured values over the years: a lane for each series, a point for each value, lines only within a series."""

from dataclasses import dataclass
from functools import cached_property
from itertools import groupby

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QFont, QPaintDevice, QPainter

from kitlog.paint.lettering import CENTRE, LEFT, Lettering
from kitlog.paint.measurement_picture import MeasuredLine, MeasuredPoint, MeasurementPicture
from kitlog.paint.strokes import back_text, pen, polyline
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

LABEL, ABOVE, PLOT, BELOW, FOOT = 18.0, 18.0, 44.0, 10.0, 20.0
"""Heights of a lane's label, the room for figures over its plot, the plot, the gap below; and of the days."""
SIDE = 28.0
POINT = 3.5


@dataclass(frozen=True)
class MeasurementLayout:
    """Where things lie in the picture, laid out in `rect`."""

    picture: MeasurementPicture
    rect: QRectF
    text: Lettering

    @property
    def height(self) -> float:
        """Height of the whole picture."""
        return self.text.px((LABEL + ABOVE + PLOT + BELOW) * len(self.picture.lines) + FOOT)

    @cached_property
    def _inner(self) -> tuple[float, float]:
        side = self.text.px(SIDE)
        return self.rect.left() + side, max(1.0, self.rect.width() - 2 * side)

    def label(self, number: int) -> QRectF:
        """The room for what a lane shows."""
        top = self.rect.top() + self.text.px((LABEL + ABOVE + PLOT + BELOW) * number)
        return QRectF(self.rect.left(), top, self.rect.width(), self.text.px(LABEL))

    def plot(self, number: int) -> QRectF:
        """The room for the values of a lane."""
        top = self.label(number).bottom() + self.text.px(ABOVE)
        return QRectF(self.rect.left(), top, self.rect.width(), self.text.px(PLOT))

    def at(self, number: int, share: float, value: float) -> QPointF:
        """The point of a value on a day, the day as a share of the width."""
        line, plot, (left, width) = self.picture.lines[number], self.plot(number), self._inner
        high = (value - line.least) / (line.most - line.least)
        return QPointF(left + share * width, plot.bottom() - high * plot.height())

    def place(self, number: int, point: MeasuredPoint) -> QPointF:
        """Where a measured value lies."""
        return self.at(number, self.picture.share(point.day), point.value)


def measure(picture: MeasurementPicture, font: QFont, device: QPaintDevice | None = None) -> float:
    """Height in pixels that the picture needs in the application font on `device`, or the screen, at any width."""
    return MeasurementLayout(picture, QRectF(), Lettering(font, device)).height


def paint(painter: QPainter, rect: QRectF, picture: MeasurementPicture, tokens: Tokens) -> None:
    """Paint the lanes from the top of `rect`; the painter carries the application font.

    Args:
        painter: on any device.
        rect: where; nothing is painted outside.
        picture: what.
        tokens: in which theme.
    """
    layout = MeasurementLayout(picture, rect, Lettering.of(painter))
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for number, line in enumerate(picture.lines):
        _ground(painter, layout, tokens, number)
        _limits(painter, layout, tokens, number)
        _values(painter, layout, tokens, number)
        layout.text.draw(painter, layout.label(number), line.label, Role.CHIP, tokens.ink)
    _days(painter, layout, tokens)
    painter.restore()


def _ground(painter: QPainter, layout: MeasurementLayout, tokens: Tokens, number: int) -> None:
    plot = layout.plot(number)
    painter.setPen(pen(tokens.hairline, layout.text.px(1)))
    for day, _text in layout.picture.ticks:
        x = layout.at(number, layout.picture.share(day), 0.0).x()
        painter.drawLine(QLineF(x, plot.top(), x, plot.bottom()))
    painter.setPen(pen(tokens.strong_line, layout.text.px(1)))
    zero = layout.at(number, 0.0, 0.0).y()
    painter.drawLine(QLineF(plot.left(), zero, plot.right(), zero))


def _limits(painter: QPainter, layout: MeasurementLayout, tokens: Tokens, number: int) -> None:
    """A limit is a dashed line with its words: it is told by them, not by a colour of good and bad."""
    px, plot = layout.text.px, layout.plot(number)
    for value, text in layout.picture.lines[number].limits:
        y = layout.at(number, 0.0, value).y()
        painter.setPen(pen(tokens.ink, px(1.2), (px(4), px(3))))
        painter.drawLine(QLineF(plot.left(), y, plot.right(), y))
        room = QRectF(plot.left(), y - px(17), plot.width(), px(16))
        taken = layout.text.room(room, layout.text.cut(text, Role.SMALL, room.width()), Role.SMALL, LEFT)
        back_text(painter, taken, tokens.surface, px(2))
        layout.text.draw(painter, room, text, Role.SMALL, tokens.muted)


def _values(painter: QPainter, layout: MeasurementLayout, tokens: Tokens, number: int) -> None:
    """Points; lines from day to day through the least and the greatest of each day."""
    line, px = layout.picture.lines[number], layout.text.px
    days = [list(group) for _day, group in groupby(line.points, key=lambda point: point.day)]
    painter.setPen(pen(tokens.accent, px(1.5)))
    for ends in {0, -1} if any(len(day) > 1 for day in days) else {0}:
        painter.drawPath(polyline([layout.place(number, day[ends]) for day in days]))
    painter.setBrush(tokens.accent)
    for point in line.points:
        painter.drawEllipse(layout.place(number, point), px(POINT), px(POINT))
    _figures(painter, layout, tokens, (number, line))


def _figures(painter: QPainter, layout: MeasurementLayout, tokens: Tokens, of: tuple[int, MeasuredLine]) -> None:
    """The figure over each point that has room for it, the last one always."""
    (number, line), px, text = of, layout.text.px, layout.text
    taken: list[QRectF] = []
    for point in reversed(line.figures):
        place, width = layout.place(number, point), text.width(point.text, Role.SMALL) + 1
        left = min(max(place.x() - width / 2, layout.rect.left()), layout.rect.right() - width)
        room = QRectF(left, place.y() - px(POINT + 18), width, px(16))
        if not any(room.adjusted(-px(4), 0, px(4), 0).intersects(other) for other in taken):
            back_text(painter, room, tokens.surface, 0)
            text.draw(painter, room, point.text, Role.SMALL, tokens.ink, CENTRE)
            taken.append(room)


def _days(painter: QPainter, layout: MeasurementLayout, tokens: Tokens) -> None:
    """Words of the ticks under the last lane; what has no room is left out."""
    px, text, last = layout.text.px, layout.text, len(layout.picture.lines) - 1
    free, top = layout.rect.left(), layout.plot(last).bottom() + px(4)
    for day, words in layout.picture.ticks:
        width = text.width(words, Role.SMALL) + 1
        x = layout.at(last, layout.picture.share(day), 0.0).x()
        left = min(max(x - width / 2, layout.rect.left()), layout.rect.right() - width)
        if left >= free:
            text.draw(painter, QRectF(left, top, width, px(16)), words, Role.SMALL, tokens.muted, CENTRE)
            free = left + width + px(8)
