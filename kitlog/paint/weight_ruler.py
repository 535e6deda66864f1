"""The weight picture: the certified range as a rule, take-off and landing on it, the reserve and the zones below."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QPaintDevice, QPainter

from kitlog.paint import reserve_bar, ruler_above, ruler_below, zone_sums
from kitlog.paint.lettering import Lettering
from kitlog.paint.ruler_layout import BAR, RulerLayout
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.weight_bar import bar, marks, outside
from kitlog.paint.weight_picture import WeightPicture


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
    ruler_below.middle(painter, layout, tokens)
    if picture.take_off is not None:
        ruler_above.take_off(painter, layout, tokens, picture.take_off)
    ruler_above.ballast_arrow(painter, layout, tokens)
    ruler_below.landing_pointer(painter, layout, tokens)
    ruler_below.limit_words(painter, layout, tokens)
    _below(painter, layout, tokens)
    if current is not None:
        room = spots(picture, rect, painter.font())[current][0]
        painter.setBrush(Qt.BrushStyle.NoBrush)
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
