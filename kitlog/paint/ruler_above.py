"""Over the bar of the weight ruler: take-off with its whisker, and the arrow of an optional ballast."""

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QPainter

from kitlog.paint.lettering import RIGHT
from kitlog.paint.mark import Mark
from kitlog.paint.ruler_layout import RulerLayout
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.weight_bar import pointer_down
from kitlog.paint.weight_picture import TakeOff, WeightPicture


def _pointer_colour(picture: WeightPicture, tokens: Tokens) -> QColor:
    mark = picture.range.mark
    if picture.range.limits is None:
        return tokens.muted
    return tokens.state(mark) if mark in {Mark.LOOK, Mark.STOP} else tokens.ink


def take_off(painter: QPainter, layout: RulerLayout, tokens: Tokens, mass: TakeOff) -> None:
    """The pointer of the mass at take-off, its whisker and its words."""
    px, top = layout.text.px, layout.bar.top()
    colour, y = _pointer_colour(layout.picture, tokens), top - px(19)
    low, high = (layout.rule.x(mass.kg + sign * mass.tolerance_kg) for sign in (-1, 1))
    painter.setPen(pen(colour, px(1.6)))
    painter.drawLine(QLineF(low, y, high, y))
    for x in (low, high):
        painter.drawLine(QLineF(x, y - px(4), x, y + px(4)))
    pointer_down(painter, QPointF(layout.rule.x(mass.kg), top - px(1)), px(1), colour)
    _take_off_words(painter, layout, tokens, mass)


def _take_off_words(painter: QPainter, layout: RulerLayout, tokens: Tokens, mass: TakeOff) -> None:
    text, px = layout.text, layout.text.px
    parts = (
        (mass.label, Role.NAME, tokens.ink),
        (mass.figure, Role.TITLE, tokens.ink),
        (mass.tolerance, Role.SECOND, tokens.muted),
    )
    width = sum(text.width(word, role) for word, role, _ in parts) + px(14)
    left = min(layout.rule.x(mass.kg) - width / 2, layout.rect.right() - width)
    left = max(left, layout.rect.left())
    for word, role, colour in parts:
        room = QRectF(left, layout.bar.top() - px(52), max(0.0, layout.rect.right() - left), px(28))
        left = text.draw(painter, room, word, role, colour).right() + px(7)


def ballast_arrow(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    """The arrow from the mass at take-off to where an optional ballast would lead."""
    ballast, take_off, px = layout.picture.ballast, layout.picture.take_off, layout.text.px
    if ballast is None or take_off is None:
        return
    x, y = layout.rule.x(ballast.kg), layout.bar.top() - px(7)
    painter.setPen(pen(tokens.muted, px(1), (px(2), px(2))))
    painter.drawLine(QLineF(x, layout.bar.top() - px(24), x, layout.bar.top()))
    start = layout.rule.x(take_off.kg) + px(14)
    if x - start > px(8):
        painter.setPen(pen(tokens.accent, px(1.5), (px(5), px(3))))
        painter.drawLine(QLineF(start, y, x - px(3), y))
        painter.setPen(pen(tokens.accent, px(1.5)))
        painter.drawPolyline([QPointF(x - px(7), y - px(4)), QPointF(x - px(2), y), QPointF(x - px(7), y + px(4))])
    _ballast_words(painter, layout, tokens, x)


def _ballast_words(painter: QPainter, layout: RulerLayout, tokens: Tokens, x: float) -> None:
    ballast, take_off, px = layout.picture.ballast, layout.picture.take_off, layout.text.px
    if ballast is None or take_off is None:
        return
    whisker = layout.rule.x(take_off.kg + take_off.tolerance_kg) + px(8)
    start, top = max(x, whisker) + px(8), layout.bar.top() - px(27)
    right = layout.rect.right() - start
    left_end = layout.rule.x(take_off.kg - take_off.tolerance_kg) - px(10)
    left = left_end - layout.rect.left()
    if layout.text.width(ballast.text, Role.SECOND) <= right or right >= left:
        layout.text.draw(painter, QRectF(start, top, max(0.0, right), px(18)), ballast.text, Role.SECOND, tokens.accent)
    else:
        layout.text.draw(
            painter, QRectF(layout.rect.left(), top, left, px(18)), ballast.text, Role.SECOND, tokens.accent, RIGHT
        )
