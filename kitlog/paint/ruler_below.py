"""Under the bar of the weight ruler: landing, the words of the limits, the middle."""

from collections.abc import Callable

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QPainter

from kitlog.paint.lettering import CENTRE
from kitlog.paint.mark import Mark
from kitlog.paint.ruler_layout import RulerLayout
from kitlog.paint.shelf import Shelf
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.weight_bar import pointer_up


def middle(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    """The middle of the range, dotted."""
    limits = layout.picture.range.limits
    if limits is None or not layout.picture.middle:
        return
    x, px = layout.rule.x(sum(limits) / 2), layout.text.px
    painter.setPen(pen(tokens.muted, px(1), (px(2), px(2))))
    painter.drawLine(QLineF(x, layout.bar.bottom(), x, layout.bar.bottom() + px(8)))


def landing_pointer(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
    """The open pointer of the mass at landing, with its words."""
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
        centre = min(max(x, layout.rect.left() + half), layout.rect.right() - half)
        room = QRectF(centre - half, layout.bar.bottom() + px(down), 2 * half, px(16))
        layout.text.draw(painter, room, word, role, colour, CENTRE)


def limit_words(painter: QPainter, layout: RulerLayout, tokens: Tokens) -> None:
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
