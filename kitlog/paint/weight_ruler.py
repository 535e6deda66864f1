"""The weight picture: the certified range as a rule, take-off and landing on it, the reserve and the zones below."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QPaintDevice, QPainter

from kitlog.paint import reserve_bar, zone_sums
from kitlog.paint.heading import Heading
from kitlog.paint.lettering import CENTRE, RIGHT, Lettering
from kitlog.paint.mark import Mark
from kitlog.paint.rule import Rule, rule_for
from kitlog.paint.shelf import Shelf
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.weight_bar import bar, marks, outside, pointer_down, pointer_up
from kitlog.paint.weight_picture import TakeOff, WeightPicture

ABOVE, BAR, BELOW = 64.0, 40.0, 58.0


@dataclass(frozen=True)
class RulerLayout:
    """The ruler laid out in `rect`."""

    picture: WeightPicture
    rect: QRectF
    text: Lettering

    @cached_property
    def bar(self) -> QRectF:
        """The bar of the rule."""
        px, rect = self.text.px, self.rect
        top = rect.top() + px(8) + self.heading.height(rect.width(), self.text) + px(ABOVE)
        return QRectF(rect.left() + px(16), top, max(1.0, rect.width() - px(32)), px(BAR))

    @property
    def heading(self) -> Heading:
        """Title and caption."""
        return Heading(self.picture.title, self.picture.caption)

    @cached_property
    def rule(self) -> Rule:
        """Where a mass lies on the bar."""
        return rule_for(self.picture.range.limits, self.picture.masses_kg, self.bar.left(), self.bar.right())

    @property
    def foot(self) -> float:
        """Where what stands below the ruler begins."""
        return self.bar.bottom() + self.text.px(BELOW)


def measure(picture: WeightPicture, width: float, font: QFont, device: QPaintDevice | None = None) -> float:
    """Height in pixels that the picture needs at `width` in the application font on `device`, or the screen."""
    layout = RulerLayout(picture, QRectF(0, 0, width, 0), Lettering(font, device))
    below = 0.0 if picture.reserve is None else reserve_bar.height(picture.reserve, width, layout.text)
    below += 0.0 if picture.zones is None else zone_sums.height(picture.zones, width, layout.text)
    return layout.foot + below


def spots(picture: WeightPicture, rect: QRectF, font: QFont) -> list[tuple[QRectF, str]]:
    """What can be pointed at on the ruler, from left to right as given: its room and what it says."""
    layout = RulerLayout(picture, rect, Lettering(font))
    px, found = layout.text.px, []
    if picture.take_off is not None:
        words = f"{picture.take_off.label} {picture.take_off.figure} {picture.take_off.tolerance}"
        found.append((layout.rule.x(picture.take_off.kg), -px(22), words))
    if picture.landing is not None:
        found.append((layout.rule.x(picture.landing.kg), px(BAR - 4), picture.landing.text))
    if picture.ballast is not None:
        found.append((layout.rule.x(picture.ballast.kg), -px(22), picture.ballast.text))
    return [(QRectF(x - px(12), layout.bar.top() + up, px(24), px(24)), words) for x, up, words in found]


def paint(painter: QPainter, rect: QRectF, picture: WeightPicture, tokens: Tokens, current: int | None = None) -> None:
    """Paint the picture from the top of `rect`; the painter carries the application font.

    Args:
        painter: on any device.
        rect: where; nothing is painted outside.
        picture: what.
        tokens: in which theme.
        current: number in `spots` of what the keys stand on.
    """
    layout = RulerLayout(picture, rect, Lettering.of(painter))
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    layout.heading.draw(painter, rect.adjusted(0, layout.text.px(8), 0, 0), layout.text, tokens)
    _ruler(painter, layout, tokens)
    _middle(painter, layout, tokens)
    if picture.take_off is not None:
        _take_off(painter, layout, tokens, picture.take_off)
    _ballast(painter, layout, tokens)
    _landing(painter, layout, tokens)
    _limit_words(painter, layout, tokens)
    _below(painter, layout, tokens)
    if current is not None:
        room = spots(picture, rect, painter.font())[current][0]
        painter.setPen(pen(tokens.accent, layout.text.px(2)))
        painter.drawRoundedRect(room, layout.text.px(4), layout.text.px(4))
    painter.restore()


def _below(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    picture, rect, text = layout.picture, layout.rect, layout.text
    room = QRectF(rect.left(), layout.foot, rect.width(), max(0.0, rect.bottom() - layout.foot))
    if picture.reserve is not None:
        reserve_bar.paint(painter, room, picture.reserve, text, tokens)
        room.translate(0, reserve_bar.height(picture.reserve, rect.width(), text))
    if picture.zones is not None:
        zone_sums.paint(painter, room, picture.zones, text, tokens)


def _ruler(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    limits, unit = layout.picture.range.limits, layout.text.px(1)
    bar(painter, layout.bar, layout.rule, limits, (tokens, layout.picture.range.mark, unit))
    if limits is not None:
        outside(painter, layout.bar, layout.rule, limits, (tokens, unit))
    marks(painter, layout.bar, layout.rule, layout.text, tokens, limits)


def _pointer_colour(picture: WeightPicture, tokens: Tokens) -> QColor:
    mark = picture.range.mark
    if picture.range.limits is None:
        return tokens.muted
    return tokens.state(mark) if mark in {Mark.LOOK, Mark.STOP} else tokens.ink


def _take_off(painter: QPainter, layout: RulerLayout, tokens: Tokens, mass: TakeOff) -> None:
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


def _middle(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    limits = layout.picture.range.limits
    if limits is None or not layout.picture.middle:
        return
    x, px = layout.rule.x(sum(limits) / 2), layout.text.px
    painter.setPen(pen(tokens.muted, px(1), (px(2), px(2))))
    painter.drawLine(QLineF(x, layout.bar.bottom(), x, layout.bar.bottom() + px(8)))


def _ballast(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
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


def _landing(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    landing, px = layout.picture.landing, layout.text.px
    if landing is None:
        return
    x = layout.rule.x(landing.kg)
    pointer_up(painter, QPointF(x, layout.bar.bottom() + px(1)), px(1), tokens)
    for word, down, role, colour in (
        (landing.text, 21, Role.SECOND, tokens.ink),
        (landing.note, 38, Role.SMALL, tokens.muted),
    ):
        half = min(layout.text.width(word, role) / 2 + 1, layout.rect.width() / 2)
        middle = min(max(x, layout.rect.left() + half), layout.rect.right() - half)
        room = QRectF(middle - half, layout.bar.bottom() + px(down), 2 * half, px(16))
        layout.text.draw(painter, room, word, role, colour, CENTRE)


def _limit_words(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    """Words of the limits in the row under the bar, around the landing pointer."""
    picture, px, row = layout.picture, layout.text.px, Shelf(layout.rect.left(), layout.rect.right(), layout.text.px(6))
    if picture.landing is not None:
        x = layout.rule.x(picture.landing.kg)
        row.block(x - px(8), x + px(8))
    for word, wanted, colour in _wanted_words(layout, tokens):
        width = layout.text.width(word, Role.SMALL_NAME)
        left = row.place(wanted(width), width, reach=px(48))
        if left is not None and word:
            room = QRectF(left, layout.bar.bottom() + px(5), width, px(16))
            layout.text.draw(painter, room, word, Role.SMALL_NAME, colour)


def _wanted_words(layout: RulerLayout, tokens: Tokens) -> list[tuple[str, Callable[[float], float], QColor]]:
    """Each word with where its left edge wants to be, given its width; what matters most comes first."""
    picture, px, limits = layout.picture, layout.text.px, layout.picture.range.limits
    if limits is None:
        return [(picture.not_known, lambda _: layout.bar.left(), tokens.muted)]
    low, high = (layout.rule.x(limit) for limit in limits)
    limit_colour = tokens.fine if picture.range.mark is Mark.FINE else tokens.ink
    return [
        (picture.range.low_text, lambda _: low + px(8), limit_colour),
        (picture.range.high_text, lambda width: high - px(8) - width, limit_colour),
        (picture.out, lambda width: low - px(6) - width, tokens.stop),
        (picture.out, lambda _: high + px(6), tokens.stop),
        (picture.middle, lambda width: (low + high - width) / 2, tokens.muted),
    ]
