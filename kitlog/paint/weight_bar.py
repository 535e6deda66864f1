"""The bar of the weight ruler and of the reserve: certified stretch, hatch outside, kg marks, limits."""

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from kitlog.paint.lettering import CENTRE, LEFT, RIGHT, Lettering
from kitlog.paint.mark import Mark
from kitlog.paint.rule import Rule
from kitlog.paint.strokes import hatch, pen, rect_path
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role


def bar(
    painter: QPainter, box: QRectF, rule: Rule, limits: tuple[float, float] | None, style: tuple[Tokens, Mark, float]
) -> None:
    """The bar itself; `style` is the theme, the state and one design pixel. Dashed and without colour if not known."""
    tokens, mark, unit = style
    painter.setBrush(tokens.sunk)
    if limits is None:
        painter.setPen(pen(tokens.outline, unit, (3 * unit, 3 * unit)))
        painter.drawRoundedRect(box, 4 * unit, 4 * unit)
        return
    painter.setPen(pen(tokens.strong_line, unit))
    painter.drawRoundedRect(box, 4 * unit, 4 * unit)
    painter.setBrush(range_ground(tokens, mark))
    painter.setPen(pen(range_edge(tokens, mark), 1.4 * unit))
    left, right = (rule.x(limit) for limit in limits)
    painter.drawRect(QRectF(left, box.top(), right - left, box.height()))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def range_edge(tokens: Tokens, mark: Mark) -> QColor:
    """Edge of the certified stretch: green only where the state is fine; the range itself is never a warning."""
    return tokens.fine if mark is Mark.FINE else tokens.outline


def range_ground(tokens: Tokens, mark: Mark) -> QColor:
    """Ground of the certified stretch."""
    return tokens.tint(tokens.fine, 0.12) if mark is Mark.FINE else tokens.tint(tokens.ink, 0.06)


def outside(
    painter: QPainter, box: QRectF, rule: Rule, limits: tuple[float, float], style: tuple[Tokens, float]
) -> None:
    """The hatch over what lies outside the range."""
    tokens, unit = style
    colour = tokens.stop.toRgb()
    colour.setAlphaF(0.35)
    low = QRectF(box.left(), box.top(), rule.x(limits[0]) - box.left(), box.height())
    high = QRectF(rule.x(limits[1]), box.top(), box.right() - rule.x(limits[1]), box.height())
    for part in (low, high):
        hatch(painter, rect_path(part.intersected(box)), colour, 4 * unit, unit)


def marks(
    painter: QPainter, box: QRectF, rule: Rule, text: Lettering, tokens: Tokens, limits: tuple[float, float] | None
) -> None:
    """Marks each kg from the foot of the bar, long and with a figure each five or more; limits in bold."""
    px, figures = text.px, rule.marks(text.px(36), least_kg=5)
    painter.setPen(pen(tokens.ink, px(1)))
    for kg in rule.marks(px(6)):
        x, reach = rule.x(kg), 14 if kg in figures and _is_inside(kg, limits) else 6
        painter.drawLine(QLineF(x, box.bottom(), x, box.bottom() - px(reach)))
    for kg in figures:
        if _is_inside(kg, limits) and all(abs(rule.x(kg) - rule.x(limit)) >= px(40) for limit in limits or ()):
            _figure(painter, box, text, (str(kg), rule.x(kg) - px(24), CENTRE), tokens)
    if limits is not None and rule.x(limits[1]) - rule.x(limits[0]) > px(96):
        for limit, inset, align in ((limits[0], 7, LEFT), (limits[1], -55, RIGHT)):
            _figure(painter, box, text, (f"{limit:g}", rule.x(limit) + px(inset), align), tokens, Role.LABEL)


def _figure(
    painter: QPainter,
    box: QRectF,
    text: Lettering,
    words: tuple[str, float, Qt.AlignmentFlag],
    tokens: Tokens,
    role: Role = Role.SECOND,
) -> None:
    room = QRectF(words[1], box.top() + text.px(4), text.px(48), text.px(18))
    text.draw(painter, room, words[0], role, tokens.ink, words[2])


def _is_inside(kg: float, limits: tuple[float, float] | None) -> bool:
    return limits is None or limits[0] <= kg <= limits[1]


def pointer_down(painter: QPainter, tip: QPointF, unit: float, colour: QColor) -> None:
    """A filled pointer above a bar, its tip on the bar."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawPolygon(QPolygonF([tip, tip + QPointF(-7 * unit, -11 * unit), tip + QPointF(7 * unit, -11 * unit)]))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def pointer_up(painter: QPainter, tip: QPointF, unit: float, tokens: Tokens) -> None:
    """An open pointer under a bar, its tip on the bar."""
    painter.setPen(pen(tokens.ink, 1.5 * unit))
    painter.setBrush(tokens.surface)
    painter.drawPolygon(QPolygonF([tip, tip + QPointF(-6 * unit, 11 * unit), tip + QPointF(6 * unit, 11 * unit)]))
    painter.setBrush(Qt.BrushStyle.NoBrush)
