"""Where things lie in the power picture, from the words' own widths."""

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from kitlog.paint.case_clock import CaseClock, Curve
from kitlog.paint.lettering import Lettering
from kitlog.paint.power_picture import PowerPicture
from kitlog.paint.power_spread import Spread
from kitlog.paint.strokes import polyline
from kitlog.paint.type_scale import Role

HEAD, BANDS, LANE, GAP, CLOCK = 40.0, 44.0, 44.0, 6.0, 18.0
COLUMN_GAP = 16.0
HEAD_LINE = 16.0
"""Height of one more line in the head of a phase."""

NAMES_SHARE, ENDS_SHARE = 0.24, 0.42
"""Most that names at the left and figures at the right may take of the width."""

WIDEST_READING, WIDEST_SPREAD, WIDEST_SPARE = "100\u00a0%", "100\u2013100", "\u221200:00\u00a0h"
"""Keep the columns where they are when the reading line comes up, or an end is moved."""


@dataclass(frozen=True)
class PowerLayout:
    """The picture laid out in `rect`: heads, bands, lanes, columns."""

    picture: PowerPicture
    rect: QRectF
    text: Lettering

    @cached_property
    def edges(self) -> tuple[float, ...]:
        """Edges of the bands as shares of the width."""
        return self.picture.edges

    @cached_property
    def likely(self) -> CaseClock:
        """The hours of the likely case on the bands."""
        return self.picture.likely

    @cached_property
    def high(self) -> CaseClock:
        """The hours of the high case on the bands."""
        return self.picture.high

    @cached_property
    def head_px(self) -> float:
        """Height of title and legend; two rows where they do not fit beside each other."""
        words, px = self.picture.words, self.text.px
        if not (words.title or words.caption or words.likely):
            return 0.0
        beside = self.title_px + self.legend_px + px(24) <= self.rect.width()
        return px(HEAD) if beside else px(HEAD + 20)

    @cached_property
    def title_px(self) -> float:
        """Width of title and caption."""
        words = self.picture.words
        if not words.title:
            return self.text.width(words.caption, Role.SMALL)
        title = self.text.width(words.title, Role.SECTION) + self.text.px(12)
        return title + self.text.width(words.caption, Role.SECOND)

    @cached_property
    def legend_px(self) -> float:
        """Width of the legend."""
        words = [word for word in self.legend_words if word]
        return sum(self.text.width(word, Role.SMALL) for word in words) + len(words) * self.text.px(32 + 16)

    @property
    def legend_words(self) -> tuple[str, ...]:
        """Names of the two lines, of the band of days and its marks, and of the hatch."""
        words = self.picture.words
        return words.likely, words.high, words.spread, words.off_by, words.locked

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
        lanes = self.picture.lanes
        texts = [text for lane in lanes for text in (lane.end_likely, lane.end_high)]
        small = [text for lane in lanes for text in (lane.spare_likely, lane.spare_high)]
        widths = [self.text.width(text, Role.GROUP) for text in (*texts, WIDEST_READING)]
        widths += [
            self.text.width(word, Role.SMALL)
            for word in (*small, WIDEST_SPARE if any(small) else "", words.likely, words.high)
        ]
        return max(0.0, min(max(widths), self._most_px))

    @cached_property
    def chance_px(self) -> float:
        """Width of the column of chances; none without a head for it."""
        words, lanes = self.picture.words, self.picture.lanes
        if not words.lasts:
            return 0.0
        texts = (words.lasts, words.middle, words.outer, WIDEST_SPREAD, *(lane.chance_error for lane in lanes))
        widths = [self.text.width(text, Role.SMALL) for text in texts]
        widths += [self.text.width(lane.chance, Role.GROUP) for lane in lanes]
        return max(0.0, min(max(widths), self._most_px))

    @property
    def _most_px(self) -> float:
        columns = 3 if self.picture.words.lasts else 2
        return (self.rect.width() * ENDS_SHARE - self.text.px(60 + COLUMN_GAP * (columns - 2))) / columns

    @property
    def ends_px(self) -> float:
        """Width of everything at the right of the bands: the columns and the mark."""
        chances = self.chance_px + self.text.px(COLUMN_GAP) if self.picture.words.lasts else 0.0
        return max(2 * self.value_px + chances + self.text.px(60), self.picture.ends_px)

    @cached_property
    def bands(self) -> QRectF:
        """The bands from their heads to the foot of the last lane."""
        left, top = self.rect.left() + self.names_px, self.rect.top() + self.head_px
        width = max(1.0, self.rect.width() - self.names_px - self.ends_px)
        high = self.heads_px + self.text.px(len(self.picture.lanes) * (LANE + GAP) - GAP)
        return QRectF(left, top, width, high)

    @cached_property
    def heads_px(self) -> float:
        """Height of the heads of the phases: a line more where a name needs it."""
        left = self.rect.width() - self.names_px - self.ends_px
        shares = pairwise(self.edges)
        rooms = [max(0.0, (high - low) * left - self.text.px(12)) for low, high in shares]
        labels = zip(self.picture.phases, rooms, strict=False)
        wraps = any(self.text.width(phase.label, Role.LABEL) > room and " " in phase.label for phase, room in labels)
        return self.text.px(BANDS + HEAD_LINE if wraps else BANDS)

    @property
    def is_cut(self) -> bool:
        """Whether there are hours past the right end of the bands."""
        return self.edges[-1] > 1.0 + 1e-9

    def lane(self, number: int) -> QRectF:
        """The room of one lane within the bands."""
        top = self.bands.top() + self.heads_px + self.text.px(number * (LANE + GAP))
        return QRectF(self.bands.left(), top, self.bands.width(), self.text.px(LANE))

    def band(self, number: int) -> QRectF:
        """One phase from head to foot, as far as it has room."""
        left, right = (self.x(min(self.edges[i], 1.0)) for i in (number, number + 1))
        return QRectF(left, self.bands.top(), right - left, self.bands.height())

    def x(self, share: float) -> float:
        """Pixels at a share of the width of the bands."""
        return self.bands.left() + share * self.bands.width()

    def points(self, clock: CaseClock, curve: Curve, lane: QRectF) -> list[QPointF]:
        """A curve in pixels."""
        return [QPointF(self.x(at), lane.bottom() - charge * lane.height()) for at, charge in clock.laid(curve)]

    def spread(self, spread: Spread, lane: QRectF) -> tuple[list[QPointF], list[QPointF]]:
        """The lower and the upper edge of a spread in pixels."""
        xs = [self.x(at) for at in spread.places(self.edges)]
        low, high = (
            [QPointF(x, lane.bottom() - charge * lane.height()) for x, charge in zip(xs, charges, strict=False)]
            for charges in (spread.low, spread.high)
        )
        return low, high

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
