"""Around the lanes of the service band: months, names, rules between items, outings, today, legend."""

from collections.abc import Callable
from datetime import date

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QLinearGradient, QPainter

from kitlog.paint.lettering import CENTRE, LEFT
from kitlog.paint.mark import Mark
from kitlog.paint.service_lane import bracket
from kitlog.paint.service_layout import ServiceLayout
from kitlog.paint.shapes import draw_open_disc, draw_state
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role


def months(painter: QPainter, layout: ServiceLayout, tokens: Tokens) -> None:
    """Every other month on sunk ground, names over them, years over their first month."""
    px, picture = layout.text.px, layout.picture
    step = _month_step(layout)
    for number, name in enumerate(picture.months):
        start = picture.month_start(number)
        left, right = layout.x(start), layout.x(picture.month_start(number + 1))
        head = QRectF(left, layout.band.top() - px(22), right - left, px(22))
        if number % 2 == 0:
            painter.fillRect(QRectF(head.topLeft(), QPointF(right, layout.band.bottom())), tokens.sunk)
        if (start.month - 1) % step == 0:
            head.setRight(layout.x(picture.month_start(number + step)))
            layout.text.draw(painter, head, name, Role.CHIP, tokens.muted, CENTRE if step == 1 else LEFT)
        if number == 0 or start.month == 1:
            _year(painter, layout, tokens, (start, left, number))


def _month_step(layout: ServiceLayout) -> int:
    """Every month is named where there is room, else every third."""
    month = layout.band.width() / len(layout.picture.months) - layout.text.px(2)
    widest = max(layout.text.width(name, Role.CHIP) for name in layout.picture.months)
    return 1 if widest <= month else 3


def _year(painter: QPainter, layout: ServiceLayout, tokens: Tokens, placed: tuple[date, float, int]) -> None:
    (start, left, number), px = placed, layout.text.px
    if number:
        painter.setPen(pen(tokens.hairline, layout.text.px(1)))
        painter.drawLine(QLineF(left, layout.rect.top(), left, layout.band.bottom()))
    next_year = layout.x(date(start.year + 1, 1, 1))
    room = QRectF(left + px(4), layout.rect.top() + px(2), max(0.0, next_year - left - px(8)), px(18))
    layout.text.draw(painter, room, str(start.year), Role.LABEL, tokens.ink)


def rules(painter: QPainter, layout: ServiceLayout, tokens: Tokens) -> None:
    """Lines between the lanes: whole between items, dashed within one."""
    px, rect = layout.text.px, layout.rect
    for number in range(len(layout.picture.lanes)):
        y = layout.lane(number).top()
        if layout.starts_item(number):
            painter.setPen(pen(tokens.strong_line, px(1)))
            painter.drawLine(QLineF(rect.left(), y, rect.right(), y))
        else:
            painter.setPen(pen(tokens.hairline, px(1), (px(3), px(2))))
            painter.drawLine(QLineF(rect.left() + layout.item_px, y, rect.right(), y))
    painter.setPen(pen(tokens.strong_line, px(1)))
    painter.drawLine(QLineF(rect.left(), layout.band.bottom(), rect.right(), layout.band.bottom()))


def names(painter: QPainter, layout: ServiceLayout, tokens: Tokens) -> None:
    """The item on its first lane, the rule on each."""
    px = layout.text.px
    for number, lane in enumerate(layout.picture.lanes):
        row = layout.lane(number)
        if layout.starts_item(number):
            room = QRectF(row.left(), row.top(), layout.item_px - px(8), row.height())
            layout.text.draw(painter, room, lane.item, Role.LABEL, tokens.ink)
        room = QRectF(row.left() + layout.item_px, row.top(), layout.rule_px - px(8), row.height())
        layout.text.draw(painter, room, _as_fits(lane.rule, room.width(), layout), Role.SMALL, tokens.muted)


def outings(painter: QPainter, layout: ServiceLayout, tokens: Tokens) -> None:
    """Planned outings as thin lines through all lanes."""
    painter.setPen(pen(tokens.tint(tokens.accent, 0.45), layout.text.px(1)))
    for day in layout.picture.outings:
        if layout.is_shown(day):
            painter.drawLine(QLineF(layout.x(day), layout.band.top(), layout.x(day), layout.band.bottom()))


def today(painter: QPainter, layout: ServiceLayout, tokens: Tokens) -> float:
    """The line of today with its words under the band; returns where the words end."""
    picture, px = layout.picture, layout.text.px
    if not layout.is_shown(picture.today):
        return layout.band.left()
    x = layout.x(picture.today)
    painter.setPen(pen(tokens.accent, px(2)))
    painter.drawLine(QLineF(x, layout.band.top() - px(4), x, layout.band.bottom() + px(4)))
    width = layout.text.width(picture.words.today, Role.CHIP) + 1
    left = max(layout.rect.left(), min(x - px(4), layout.rect.right() - width))
    room = QRectF(left, layout.band.bottom() + px(7), min(width, layout.rect.width()), px(16))
    return layout.text.draw(painter, room, picture.words.today, Role.CHIP, tokens.accent).right()


def legend(painter: QPainter, layout: ServiceLayout, tokens: Tokens, free_from: float) -> None:
    """The legend at the right of the foot; what has no room right of `free_from` is left out, the last first."""
    words, px = layout.picture.words, layout.text.px
    entries: list[tuple[str, float, Callable[[QPainter, QRectF, Tokens], None]]] = [
        (words.recommended, 14, _open_disc),
        (words.due, 14, _disc),
        (words.book_by, 14, _bracket),
        (words.hours, 44, _bar),
        (words.outing, 6, _line),
    ]
    shown = [entry for entry in entries if entry[0]]
    widths = [px(entry[1] + 8 + 18) + layout.text.width(entry[0], Role.SMALL) for entry in shown]
    while shown and sum(widths) > layout.rect.right() - free_from:
        shown.pop()
        widths.pop()
    left = layout.rect.right() - sum(widths) + px(18)
    for (word, sample, draw), width in zip(shown, widths, strict=True):
        box = QRectF(left, layout.band.bottom() + px(8), px(sample), px(14))
        draw(painter, box, tokens)
        room = QRectF(box.right() + px(8), box.top(), width - px(sample + 8 + 18) + 1, px(14))
        layout.text.draw(painter, room, word, Role.SMALL, tokens.muted)
        left += width


def _open_disc(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    draw_open_disc(painter, box, tokens.fine, tokens.surface)


def _disc(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    draw_state(painter, box, Mark.FINE, tokens)


def _bracket(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    unit = box.height() / 14
    painter.setPen(pen(tokens.ink, 1.5 * unit))
    painter.drawPolyline(bracket(box.left() + unit, box.center().y(), 0.8 * unit))
    painter.setPen(pen(tokens.ink, 1.2 * unit, (unit, 2.5 * unit)))
    painter.drawLine(QLineF(box.left() + 4 * unit, box.center().y(), box.right(), box.center().y()))


def _bar(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    unit = box.height() / 14
    fade = QLinearGradient(box.left(), 0, box.right(), 0)
    fade.setColorAt(0.4, tokens.tint(tokens.accent, 0.5))
    fade.setColorAt(1.0, tokens.tint(tokens.accent, 0.06))
    painter.fillRect(box.adjusted(0, 2 * unit, 0, -3 * unit), fade)
    painter.setPen(pen(tokens.accent, 1.5 * unit))
    painter.drawLine(QLineF(box.left() + 26 * unit, box.top(), box.left() + 26 * unit, box.bottom() - unit))
    painter.drawLine(QLineF(box.left() + 16 * unit, box.bottom(), box.right(), box.bottom()))


def _line(painter: QPainter, box: QRectF, tokens: Tokens) -> None:
    painter.setPen(pen(tokens.tint(tokens.accent, 0.45), box.height() / 14))
    painter.drawLine(QLineF(box.center().x(), box.top(), box.center().x(), box.bottom()))


def _as_fits(rule: str, width: float, layout: ServiceLayout) -> str:
    """A rule with its limit, or without it where there is no room: the marks of the lane say it too."""
    return rule if layout.text.width(rule, Role.SMALL) <= width else rule.partition(", ")[0]
