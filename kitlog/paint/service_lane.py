"""One lane of the service band: marks, book-by bracket, fading bar of hours, and words that avoid them."""

from datetime import date

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QLinearGradient, QPainter

from kitlog.paint.mark import Mark
from kitlog.paint.service_layout import ServiceLayout
from kitlog.paint.service_picture import HoursLimit, ServiceLane, Stage
from kitlog.paint.shapes import draw_open_disc, draw_state
from kitlog.paint.shelf import Shelf
from kitlog.paint.strokes import back_text, pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

LEAST_WORDS = 40.0
"""Less room than this, in pixels at a body size of 14, is none."""


class ServiceLanePainter:
    """Draws one lane: first what has its place by date, then the words where there is room."""

    def __init__(self, painter: QPainter, layout: ServiceLayout, tokens: Tokens, number: int) -> None:
        self._painter, self._layout, self._tokens = painter, layout, tokens
        self._lane: ServiceLane = layout.picture.lanes[number]
        self._px = layout.text.px
        self._row = layout.lane(number)
        self._middle = self._row.center().y()
        self._shelf = Shelf(layout.band.left(), layout.band.right(), self._px(5))
        self._words: list[tuple[str, float, float, QColor, Role]] = []

    def paint(self) -> None:
        """Everything in the lane."""
        lane = self._lane
        self._block_today()
        if lane.hours is not None:
            self._hours(lane.hours)
        recommended = self._recommended()
        if lane.due is not None and recommended is not None:
            self._dots(recommended, lane.due)
        if lane.due is not None:
            self._book_by(lane.due.day, self._px(9))
        elif lane.hours is not None and lane.hours.likely is not None:
            self._book_by(lane.hours.likely, self._px(1))
        if recommended is not None:
            self._stage(recommended, is_due=False)
        if lane.due is not None:
            self._stage(lane.due, is_due=True)
        if lane.due is None and lane.hours is None and lane.unknown:
            self._unknown()
        if lane.due is None and lane.hours is None and lane.note:
            self._noted()
        self._place_words()

    def _recommended(self) -> Stage | None:
        """The recommended day; none once the due day has passed: nobody needs it beside *overdue*."""
        due = self._lane.due
        return None if due is not None and due.day < self._layout.picture.today else self._lane.recommended

    def _block_today(self) -> None:
        if self._layout.is_shown(self._layout.picture.today):
            x = self._layout.x(self._layout.picture.today)
            self._shelf.block(x - self._px(2), x + self._px(2))

    def _want(self, text: str, right_of: float, left_of: float, style: tuple[QColor, Role]) -> None:
        """Words wanted right of one place, or else left of another."""
        if text:
            self._words.append((text, right_of, left_of, *style))

    def _hours(self, hours: HoursLimit) -> None:
        layout, px = self._layout, self._px
        end = layout.band.right() if hours.late is None else layout.x(hours.late)
        bar = QRectF(QPointF(layout.x(layout.picture.today), self._middle - px(5)), QPointF(end, self._middle + px(5)))
        if bar.width() <= 0:
            self._want(hours.text, end + px(8), end, (self._tokens.ink, Role.SMALL_NAME))
            return
        self._painter.fillRect(bar, self._fading(bar, hours))
        if hours.likely is not None and layout.is_shown(hours.likely):
            x = layout.x(hours.likely)
            self._painter.setPen(pen(self._tokens.accent, px(2)))
            self._painter.drawLine(QLineF(x, self._middle - px(9), x, self._middle + px(8)))
        self._span(hours)
        self._shelf.block(bar.left(), bar.right())
        self._want(hours.text, bar.right() + px(10), bar.left() - px(8), (self._tokens.ink, Role.SMALL_NAME))

    def _fading(self, bar: QRectF, hours: HoursLimit) -> QLinearGradient:
        """Full up to the earliest day, gone at the latest; pale where the limit lies beyond the band."""
        full, faint = self._tint(0.5 if hours.early is not None else 0.3), self._tint(0.06 if hours.late else 0.15)
        fade = QLinearGradient(bar.left(), 0, bar.right(), 0)
        start = 0.0 if hours.early is None else (self._layout.x(hours.early) - bar.left()) / bar.width()
        fade.setColorAt(0.0, full)
        fade.setColorAt(min(max(start, 0.0), 1.0), full)
        fade.setColorAt(1.0, faint)
        return fade

    def _tint(self, share: float) -> QColor:
        colour = self._tokens.accent.toRgb()
        colour.setAlphaF(share)
        return colour

    def _span(self, hours: HoursLimit) -> None:
        if hours.early is None or hours.late is None or not self._layout.is_shown(hours.early):
            return
        left, right, y = self._layout.x(hours.early), self._layout.x(hours.late), self._middle + self._px(9)
        self._painter.setPen(pen(self._tokens.accent, self._px(1.4)))
        self._painter.drawLine(QLineF(left, y, right, y))
        for x, day in ((left, hours.early), (right, hours.late)):
            if self._layout.is_shown(day):
                self._painter.drawLine(QLineF(x, y - self._px(3), x, y + self._px(3)))

    def _dots(self, recommended: Stage, due: Stage) -> None:
        left, right = self._layout.x(recommended.day), self._layout.x(due.day)
        self._painter.setPen(pen(self._tokens.state(self._lane.mark), self._px(1), (self._px(1), self._px(3))))
        self._painter.drawLine(QLineF(left, self._middle, right, self._middle))

    def _book_by(self, due: date, gap: float) -> None:
        """The bracket and its dots up to `gap` before the due day."""
        book_by, px = self._lane.book_by, self._px
        if book_by is None or book_by >= self._layout.picture.end or book_by >= due:
            return
        left, right = self._layout.x(book_by), self._layout.x(due) - gap
        self._painter.setPen(pen(self._tokens.ink, px(1.2), (px(1), px(2.5))))
        self._painter.drawLine(QLineF(left, self._middle, max(left, right), self._middle))
        if self._layout.is_shown(book_by):
            self._painter.setPen(pen(self._tokens.ink, px(1.5)))
            self._painter.drawPolyline(bracket(left, self._middle, px(1)))
        self._shelf.block(left - px(2), max(left, right))

    def _stage(self, stage: Stage, *, is_due: bool) -> None:
        if stage.day >= self._layout.picture.end:
            end = self._layout.band.right()
            self._want(stage.text, end, end, (self._tokens.muted, Role.SMALL_NAME))
            return
        px, x, colour = self._px, self._layout.x(stage.day), self._tokens.state(self._lane.mark)
        box = QRectF(x - px(7), self._middle - px(7), px(14), px(14))
        if is_due:
            draw_state(self._painter, box.adjusted(px(0.5), px(0.5), -px(0.5), -px(0.5)), self._lane.mark, self._tokens)
        else:
            draw_open_disc(self._painter, box, colour, self._tokens.surface)
        self._shelf.block(box.left(), box.right())
        is_bad = self._lane.mark in {Mark.STOP, Mark.LOOK} and is_due
        style = (colour, Role.CHIP) if is_bad else (self._tokens.ink, Role.SMALL_NAME)
        self._want(stage.text, box.right() + px(7), box.left() - px(7), style)

    def _unknown(self) -> None:
        layout, px, x = self._layout, self._px, self._beside_today()
        self._painter.setPen(pen(self._tokens.outline, px(1), (px(3), px(3))))
        self._painter.drawLine(QLineF(x - px(12), self._middle, layout.band.right(), self._middle))
        self._shape(x, Mark.NOT_KNOWN)
        self._want(self._lane.unknown, x + px(15), x - px(7), (self._tokens.muted, Role.SMALL_NAME))

    def _noted(self) -> None:
        x, mark = self._beside_today(), self._lane.mark
        self._shape(x, mark)
        is_bad = mark in {Mark.STOP, Mark.LOOK}
        style = (self._tokens.state(mark), Role.CHIP) if is_bad else (self._tokens.ink, Role.SMALL_NAME)
        self._want(self._lane.note, x + self._px(15), x - self._px(7), style)

    def _beside_today(self) -> float:
        """Where a shape stands that belongs to no day."""
        layout, px = self._layout, self._px
        if layout.is_shown(layout.picture.today):
            return layout.x(layout.picture.today) + px(26)
        return layout.band.left() + px(12)

    def _shape(self, x: float, mark: Mark) -> None:
        px = self._px
        box = QRectF(x - px(7), self._middle - px(7), px(14), px(14))
        back_text(self._painter, box, self._tokens.surface, px(2))
        draw_state(self._painter, box.adjusted(px(1), px(1), -px(1), -px(1)), mark, self._tokens)
        self._shelf.block(box.left(), box.right())

    def _place_words(self) -> None:
        for text, right_of, left_of, colour, role in self._words:
            wanted = self._layout.text.width(text, role)
            left, width = self._shelf.beside(self._past_today(right_of), left_of, wanted)
            if width < min(wanted, self._px(LEAST_WORDS)):  # no room: at the end of the lane, over what is there
                width = min(wanted, self._layout.band.width() - self._px(8))
                left = self._layout.band.right() - self._px(4) - width
            room = QRectF(left, self._middle - self._px(8), width, self._px(16))
            back_text(self._painter, room, self._tokens.surface, self._px(3))
            self._layout.text.draw(self._painter, room, text, role, colour)

    def _past_today(self, x: float) -> float:
        """Words may step over the line of today, for it is no mark of the lane."""
        today = self._layout.x(self._layout.picture.today)
        return today + self._px(7) if today - self._px(40) < x < today + self._px(7) else x


def bracket(x: float, y: float, unit: float) -> list[QPointF]:
    """The book-by bracket, open to the right."""
    return [
        QPointF(x + 4 * unit, y - 7 * unit),
        QPointF(x, y - 7 * unit),
        QPointF(x, y + 7 * unit),
        QPointF(x + 4 * unit, y + 7 * unit),
    ]
