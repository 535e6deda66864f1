"""The reserve's printed load as a bar, with the masses that are held against it."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from kitlog.paint.heading import Heading
from kitlog.paint.lettering import RIGHT, Lettering
from kitlog.paint.rule import Rule, rule_for
from kitlog.paint.shelf import Shelf
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.weight_bar import bar, pointer_down
from kitlog.paint.weight_picture import Pointer, ReserveBar

ABOVE, POINTERS, BAR, BELOW = 8.0, 26.0, 16.0, 18.0


def height(reserve: ReserveBar, width: float, text: Lettering) -> float:
    """Height in pixels at `width`."""
    return text.px(ABOVE + POINTERS + BAR + BELOW) + _heading(reserve).height(width, text)


def paint(painter: QPainter, rect: QRectF, reserve: ReserveBar, text: Lettering, tokens: Tokens) -> None:
    """Paint from the top of `rect`."""
    px, heading = text.px, _heading(reserve)
    heading.draw(painter, rect.adjusted(0, px(ABOVE), 0, 0), text, tokens)
    top = rect.top() + px(ABOVE + POINTERS) + heading.height(rect.width(), text)
    box = QRectF(rect.left() + px(16), top, max(1.0, rect.width() - px(32)), px(BAR))
    rule = rule_for(reserve.range.limits, [pointer.kg for pointer in reserve.pointers], box.left(), box.right())
    bar(painter, box, rule, reserve.range.limits, (tokens, reserve.range.mark, px(1)))
    _limits(painter, box, rule, reserve, (text, tokens))
    _pointers(painter, box, rule, reserve.pointers, (text, tokens))


def _heading(reserve: ReserveBar) -> Heading:
    return Heading(reserve.title, reserve.caption, Role.GROUP)


def _limits(painter: QPainter, box: QRectF, rule: Rule, reserve: ReserveBar, style: tuple[Lettering, Tokens]) -> None:
    text, tokens = style
    if reserve.range.limits is None:
        text.draw(painter, box.adjusted(text.px(6), 0, 0, 0), reserve.range.low_text, Role.SMALL, tokens.muted)
        return
    low, high = (rule.x(limit) for limit in reserve.range.limits)
    room = QRectF(low + text.px(6), box.top(), max(0.0, (high - low) / 2 - text.px(8)), box.height())
    text.draw(painter, room, reserve.range.low_text, Role.SMALL_NAME, tokens.ink)
    room.moveRight(high - text.px(6))
    text.draw(painter, room, reserve.range.high_text, Role.SMALL_NAME, tokens.ink, RIGHT)


def _pointers(
    painter: QPainter, box: QRectF, rule: Rule, pointers: tuple[Pointer, ...], style: tuple[Lettering, Tokens]
) -> None:
    """Pointers over the bar, the lightest with its words at the left, the others at the right."""
    text, tokens = style
    px, row = text.px, Shelf(box.left() - text.px(16), box.right() + text.px(16), text.px(6))
    ordered = sorted(pointers, key=lambda pointer: pointer.kg)
    for pointer in ordered:
        pointer_down(painter, QPointF(rule.x(pointer.kg), box.top() - px(1)), px(0.75), tokens.ink)
        row.block(rule.x(pointer.kg) - px(5), rule.x(pointer.kg) + px(5))
    for number, pointer in enumerate(ordered):
        width = text.width(pointer.text, Role.SECOND) + 1
        left = row.place(rule.x(pointer.kg) + (px(11) if number else -px(11) - width), width)
        if left is not None:
            text.draw(painter, QRectF(left, box.top() - px(22), width, px(18)), pointer.text, Role.SECOND, tokens.ink)
