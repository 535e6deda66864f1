"""One lane of the power picture: charge in both cases, locked by cold, off, on the bank."""

from itertools import pairwise

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from kitlog.paint import power_fan
from kitlog.paint.lettering import LEFT
from kitlog.paint.mark import Mark
from kitlog.paint.power_layout import PowerLayout
from kitlog.paint.power_picture import Lane, OffMark
from kitlog.paint.shapes import draw_state
from kitlog.paint.shelf import Shelf
from kitlog.paint.strokes import hatch, pen, polyline
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role


class LanePainter:
    """Draws one lane into its room; keeps what is taken, so that words find a free place."""

    def __init__(
        self,
        painter: QPainter,
        layout: PowerLayout,
        tokens: Tokens,
        number: int,
        uprights: tuple[float, ...] = (),
    ) -> None:
        self._painter, self._layout, self._tokens = painter, layout, tokens
        self._lane: Lane = layout.picture.lanes[number]
        self._box = layout.lane(number)
        self._px = layout.text.px
        self._likely = layout.points(layout.likely, self._lane.likely, self._box)
        self._high = layout.points(layout.high, self._lane.high, self._box)
        spread = self._lane.spread
        self._low, self._top = ([], []) if spread is None else layout.spread(spread, self._box)
        self._floor = self._floor_steps()
        self._uprights = uprights
        self._words: list[QRectF] = []

    def paint(self) -> None:
        """Everything in the lane but its words, from the ground up."""
        self._rules()
        if not self._likely and not self._high:
            self._not_known()
            return
        self._charge()
        self._fan()
        self._locked()
        self._bank()
        self._curves()
        self._off_by()
        for off in self._lane.off:
            self._off_box(self._off_x(off))

    def write(self) -> None:
        """The words, above all that is drawn."""
        if self._likely or self._high:
            self._offs()
            self._remark()

    def _rules(self) -> None:
        box, painter = self._box, self._painter
        painter.setPen(pen(self._tokens.tint(self._tokens.ink, 0.16), self._px(1), (self._px(1), self._px(3))))
        painter.drawLine(box.topLeft(), box.topRight())
        painter.setPen(pen(self._tokens.tint(self._tokens.ink, 0.24), self._px(1)))
        painter.drawLine(box.bottomLeft(), box.bottomRight())

    def _not_known(self) -> None:
        px, tokens = self._px, self._tokens
        word = QRectF(self._box.left() + px(28), self._box.top(), self._box.width() - px(28), self._box.height())
        mark = QRectF(self._box.left() + px(8), self._box.center().y() - px(6), px(12), px(12))
        draw_state(self._painter, mark, Mark.NOT_KNOWN, tokens)
        taken = self._layout.text.draw(
            self._painter, word, self._layout.picture.words.not_known, Role.SMALL, tokens.muted
        )
        self._painter.setPen(pen(tokens.outline, px(1), (px(3), px(3))))
        middle = self._box.center().y()
        self._painter.drawLine(QLineF(taken.right() + px(8), middle, self._box.right(), middle))

    def _charge(self) -> None:
        colour = self._tokens.accent.toRgb()
        strong = 0.22 if self._tokens.dark else 0.15
        colour.setAlphaF(strong if self._lane.spread is None else strong / 3)
        self._painter.fillPath(self._layout.under(self._likely, self._box), colour)

    def _fan(self) -> None:
        if self._low:
            power_fan.band(self._painter, self._low, self._top, self._tokens, self._px(1))

    def _off_by(self) -> None:
        edges = self._layout.edges
        ticks = [(off.pct, self._layout.x(off.place(edges))) for off in self._lane.off_by]
        colour = self._tokens.state(self._lane.mark)
        power_fan.whisker(self._painter, ticks, self._box.bottom() - self._px(7), colour, self._px(1))

    def _locked(self) -> None:
        steps = self._floor
        if not steps:
            return
        path = self._layout.under(steps, self._box)
        colour = self._tokens.muted.toRgb()
        colour.setAlphaF(0.65)
        hatch(self._painter, path, colour, self._px(3.2), self._px(0.7))
        self._painter.setPen(pen(colour, self._px(1)))
        self._painter.drawPath(polyline(steps))

    def _floor_steps(self) -> list[QPointF]:
        steps: list[QPointF] = []
        for number, floor in enumerate(self._lane.locked[: len(self._layout.picture.phases)]):
            band, y = self._layout.band(number), self._box.bottom() - floor * self._box.height()
            steps += [QPointF(band.left(), y), QPointF(band.right(), y)]
        return steps if any(self._lane.locked) else []

    def _bank(self) -> None:
        foot = self._box.bottom() - self._px(1)
        pen_ = pen(self._tokens.accent, self._px(3))
        pen_.setCapStyle(Qt.PenCapStyle.FlatCap)
        self._painter.setPen(pen_)
        for start, end in self._lane.on_bank:
            left, right = (self._layout.x(self._layout.likely.share_at(hours)) for hours in (start, end))
            self._painter.drawLine(QLineF(left, foot, right, foot))

    def _curves(self) -> None:
        px = self._px
        self._painter.setPen(pen(self._tokens.ink, px(1.3), (px(4), px(3))))
        self._painter.drawPath(polyline(self._high))
        self._painter.setPen(pen(self._tokens.accent, px(2.2)))
        self._painter.drawPath(polyline(self._likely))

    def _offs(self) -> None:
        px, row = self._px, Shelf(self._box.left(), self._box.right(), self._px(4))
        placed = sorted(((self._off_x(off), off) for off in self._lane.off), key=lambda one: one[0])
        for x, _ in placed:
            row.block(x - px(5), x + px(5))
            self._words.append(QRectF(x - px(8), self._box.top(), px(16), self._box.height()))
        for x, off in placed:
            free = self._free_beside(x, off)
            if free is not None:
                row.block(free[0].left(), free[0].right())
                self._write(*free, Role.CHIP)
                continue
            left, width = row.beside(x + px(10), x - px(10), self._layout.text.width(off.text, Role.CHIP))
            self._write(QRectF(left, self._box.top() + px(2), width, px(16)), off.text, Role.CHIP)

    def _free_beside(self, x: float, off: OffMark) -> tuple[QRectF, str] | None:
        """A room beside a mark that no line crosses, and the words that fill it: rather the brief ones than a patch."""
        px, box = self._px, self._box
        for words in filter(None, (off.text, off.brief)):
            width = self._layout.text.width(words, Role.CHIP)
            for left in (x + px(10), x - px(10) - width):
                room = QRectF(left, box.top() + px(2), width, px(16))
                inside = box.left() <= left and room.right() <= box.right()
                if inside and not self._is_cut(room) and not self._is_crossed(room):
                    return room, words
        return None

    def _off_x(self, off: OffMark) -> float:
        clock = self._layout.high if off.in_high else self._layout.likely
        return self._layout.x(clock.share_at(off.at_h))

    def _off_box(self, x: float) -> None:
        """A box with a cross at the foot, on a stem from the words above."""
        px, painter = self._px, self._painter
        box = QRectF(x - px(5), self._box.bottom() - px(12), px(10), px(10))
        painter.setPen(pen(self._tokens.state(self._lane.mark), px(1.5)))
        painter.drawLine(QLineF(x, self._box.top() + px(2), x, box.top()))
        painter.setBrush(self._tokens.surface)
        painter.drawRoundedRect(box, px(2), px(2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        cross = box.adjusted(px(2.8), px(2.8), -px(2.8), -px(2.8))
        painter.drawLine(cross.topLeft(), cross.bottomRight())
        painter.drawLine(cross.bottomLeft(), cross.topRight())

    def _remark(self) -> None:
        words = self._lane.remark
        if not words:
            return
        width = min(self._layout.text.width(words, Role.SMALL), self._box.width() - self._px(16))
        spots = self._spots(width)
        clear = next((spot for spot in spots if not self._is_crossed(spot)), None)
        free = (spot for spot in spots if not any(spot.intersects(taken) for taken in self._words))
        self._write(clear or next(free, spots[0]), words, Role.SMALL)

    def _spots(self, width: float) -> list[QRectF]:
        """Where a remark may stand: at the start of each phase, the widest first; low before high in the lane.

        Where the lane is on the bank, it stands where that begins, and nowhere else.
        """
        px, box = self._px, self._box
        numbers = range(len(self._layout.picture.phases))
        order = sorted(numbers, key=lambda number: -self._layout.band(number).width())
        bands = [self._layout.band(number).left() for number in order]
        starts = [self._layout.x(self._layout.likely.share_at(start)) for start, _end in self._lane.on_bank]
        lefts = [max(box.left(), min(left + px(8), box.right() - px(8) - width)) for left in starts or bands]
        tops = [box.top() + share * (box.height() - px(16)) for share in (0.5, 0.65, 0.35, 0.05)]
        return [QRectF(left, top, width, px(16)) for left in lefts for top in tops]

    def _is_crossed(self, spot: QRectF) -> bool:
        px = self._px
        box = spot.adjusted(-px(3), px(2), px(3), -px(2))
        pieces = (piece for points in self._lines() for piece in pairwise(points))
        return any(_meets(*piece, box) for piece in pieces) or any(spot.intersects(taken) for taken in self._words)

    def _is_cut(self, room: QRectF) -> bool:
        """Whether the reading line or an edge that is held passes through."""
        near = self._px(5)
        return any(room.left() - near < x < room.right() + near for x in self._uprights)

    def _lines(self) -> tuple[list[QPointF], ...]:
        return self._likely, self._high, self._floor, self._low, self._top

    def _write(self, room: QRectF, words: str, role: Role) -> None:
        tokens = self._tokens
        edges = self._layout.edges[1:-1]
        is_over = any(room.left() < self._layout.x(edge) < room.right() for edge in edges)
        if is_over or self._is_cut(room) or self._is_crossed(room):
            ground = tokens.surface.toRgb()
            ground.setAlphaF(0.75)
            self._painter.fillRect(room.adjusted(-self._px(3), 0, self._px(3), 0), ground)
        colour = tokens.state(self._lane.mark) if role is Role.CHIP else tokens.ink
        self._words.append(self._layout.text.draw(self._painter, room, words, role, colour, LEFT))


def _meets(start: QPointF, end: QPointF, box: QRectF) -> bool:
    """Whether the straight piece from `start` to `end`, drawn from left to right, passes through `box`."""
    left, right = max(start.x(), box.left()), min(end.x(), box.right())
    if left > right:
        return False
    steep = (end.y() - start.y()) / (end.x() - start.x()) if end.x() > start.x() else 0.0
    ys = [start.y() + steep * (x - start.x()) for x in (left, right)]
    if end.x() <= start.x():
        ys = [start.y(), end.y()]
    return max(ys) >= box.top() and min(ys) <= box.bottom()
