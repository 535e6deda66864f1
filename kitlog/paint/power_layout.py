"""Where things lie in the power picture, from the words' own widths."""

from dataclasses import dataclass
from functools import cached_property

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from kitlog.paint.case_clock import CaseClock, Curve
from kitlog.paint.lettering import Lettering
from kitlog.paint.power_picture import PowerPicture
from kitlog.paint.strokes import polyline
from kitlog.paint.type_scale import Role

HEAD, BANDS, LANE, GAP, CLOCK = 40.0, 44.0, 44.0, 6.0, 18.0
NAMES_SHARE, ENDS_SHARE = 0.24, 0.42
"""Most that names at the left and figures at the right may take of the width."""

WIDEST_READING = "100\u00a0%"
"""Keeps the columns where they are when the reading line comes up."""


@dataclass(frozen=True)
class PowerLayout:
    """The picture laid out in `rect`: heads, bands, lanes, columns."""

    picture: PowerPicture
    rect: QRectF
    text: Lettering

    @cached_property
    def head_px(self) -> float:
        """Height of title and legend; two rows where they do not fit beside each other."""
        words, px = self.picture.words, self.text.px
        if not (words.title or words.likely):
            return 0.0
        beside = self.title_px + self.legend_px + px(24) <= self.rect.width()
        return px(HEAD) if beside else px(HEAD + 20)

    @cached_property
    def title_px(self) -> float:
        """Width of title and caption."""
        words = self.picture.words
        return (
            self.text.width(words.title, Role.SECTION) + self.text.px(12) + self.text.width(words.caption, Role.SECOND)
        )

    @cached_property
    def legend_px(self) -> float:
        """Width of the legend."""
        words = [word for word in self.legend_words if word]
        return sum(self.text.width(word, Role.SMALL) for word in words) + len(words) * self.text.px(32 + 16)

    @property
    def legend_words(self) -> tuple[str, str, str]:
        """Names of the two lines and the hatch."""
        return self.picture.words.likely, self.picture.words.high, self.picture.words.locked

    @cached_property
    def names_px(self) -> float:
        """Width of the names at the left."""
        widths = [
            max(self.text.width(lane.label, Role.NAME), self.text.width(lane.note, Role.SMALL))
            for lane in self.picture.lanes
        ]
        return min(max(widths, default=0.0) + self.text.px(16), self.rect.width() * NAMES_SHARE)

    @cached_property
    def value_px(self) -> float:
        """Width of one of the two columns of figures at the right."""
        words = self.picture.words
        texts = [text for lane in self.picture.lanes for text in (lane.end_likely, lane.end_high)]
        texts.append(WIDEST_READING)
        widths = [self.text.width(text, Role.GROUP) for text in texts]
        widths += [self.text.width(word, Role.SMALL) for word in (words.likely, words.high)]
        most = (self.rect.width() * ENDS_SHARE - self.text.px(60)) / 2
        return max(0.0, min(max(widths), most))

    @property
    def ends_px(self) -> float:
        """Width of everything at the right of the bands: two columns and the mark."""
        return 2 * self.value_px + self.text.px(60)

    @cached_property
    def bands(self) -> QRectF:
        """The bands from their heads to the foot of the last lane."""
        left, top = self.rect.left() + self.names_px, self.rect.top() + self.head_px
        width = max(1.0, self.rect.width() - self.names_px - self.ends_px)
        return QRectF(left, top, width, self.text.px(BANDS + len(self.picture.lanes) * (LANE + GAP) - GAP))

    def lane(self, number: int) -> QRectF:
        """The room of one lane within the bands."""
        top = self.bands.top() + self.text.px(BANDS + number * (LANE + GAP))
        return QRectF(self.bands.left(), top, self.bands.width(), self.text.px(LANE))

    def band(self, number: int) -> QRectF:
        """One phase from head to foot."""
        left, right = (self.x(self.picture.edges[i]) for i in (number, number + 1))
        return QRectF(left, self.bands.top(), right - left, self.bands.height())

    def x(self, share: float) -> float:
        """Pixels at a share of the width of the bands."""
        return self.bands.left() + share * self.bands.width()

    def points(self, clock: CaseClock, curve: Curve, lane: QRectF) -> list[QPointF]:
        """A curve in pixels."""
        return [QPointF(self.x(at), lane.bottom() - charge * lane.height()) for at, charge in clock.laid(curve)]

    def under(self, points: list[QPointF], lane: QRectF) -> QPainterPath:
        """The area under a curve."""
        path = polyline(points)
        if not path.isEmpty():
            path.lineTo(points[-1].x(), lane.bottom())
            path.lineTo(points[0].x(), lane.bottom())
            path.closeSubpath()
        return path

    @property
    def height(self) -> float:
        """Height of the whole picture."""
        rows = bool(self.picture.clocks_likely) + bool(self.picture.clocks_high)
        rows = max(rows, bool(self.picture.words.footnote))
        return self.head_px + self.bands.height() + self.text.px(4 + rows * CLOCK + 2)
