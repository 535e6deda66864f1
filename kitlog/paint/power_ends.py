"""The two columns of figures at the right of the power picture: at the end of the day, or at the reading line."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter

from kitlog.paint.lettering import RIGHT
from kitlog.paint.power_layout import PowerLayout
from kitlog.paint.power_picture import Lane, LaneReading, Reading
from kitlog.paint.shapes import draw_state
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role


def at_the_end(painter: QPainter, layout: PowerLayout, tokens: Tokens) -> None:
    """What is left at the end in both cases, and the state of each device."""
    words, text, px = layout.picture.words, layout.text, layout.text.px
    text.draw(painter, _head(layout), words.left_at_end, Role.SMALL, tokens.muted)
    for box, word in zip(_columns(layout, _head(layout).translated(0, px(17))), _case_words(layout), strict=True):
        text.draw(painter, box, word, Role.SMALL, tokens.muted, RIGHT)
    for number, lane in enumerate(layout.picture.lanes):
        likely, high = _columns(layout, layout.lane(number))
        text.draw(painter, likely, lane.end_likely, Role.GROUP, tokens.ink, RIGHT)
        text.draw(painter, high, lane.end_high, *_high_style(lane, tokens), RIGHT)
        mark = QRectF(high.right() + px(16), high.center().y() - px(6), px(12), px(12))
        draw_state(painter, mark, lane.mark, tokens)
    foot = _head(layout).translated(0, layout.bands.height() + px(1))
    text.draw(painter, foot.adjusted(0, 0, -px(8), 0), words.footnote, Role.SMALL, tokens.muted, RIGHT)


def at_the_line(painter: QPainter, layout: PowerLayout, tokens: Tokens, found: Reading, times: tuple[str, str]) -> None:
    """The values at the reading line in both cases, under the times of the cases."""
    text = layout.text
    for box, word in zip(_columns(layout, _head(layout)), _case_words(layout), strict=True):
        text.draw(painter, box, word, Role.SMALL, tokens.muted, RIGHT)
    for box, time in zip(_columns(layout, _head(layout).translated(0, text.px(17))), times, strict=True):
        text.draw(painter, box, time, Role.CHIP, tokens.accent, RIGHT)
    for number, lane in enumerate(found.lanes):
        for box, words in zip(_columns(layout, layout.lane(number)), _values(lane), strict=True):
            text.draw(painter, box, words, Role.BODY, tokens.accent, RIGHT)


def _values(lane: LaneReading) -> tuple[str, str]:
    likely, high = ("" if value is None else f"{value * 100:.0f}\u00a0%" for value in (lane.likely, lane.high))
    return likely, high


def _case_words(layout: PowerLayout) -> tuple[str, str]:
    return layout.picture.words.likely, layout.picture.words.high


def _high_style(lane: Lane, tokens: Tokens) -> tuple[Role, QColor]:
    goes_off = any(off.in_high for off in lane.off)
    return (Role.GROUP, tokens.state(lane.mark)) if goes_off else (Role.BODY, tokens.ink)


def _head(layout: PowerLayout) -> QRectF:
    px = layout.text.px
    return QRectF(layout.bands.right() + px(16), layout.bands.top() + px(4), layout.ends_px - px(16), px(16))


def _columns(layout: PowerLayout, row: QRectF) -> tuple[QRectF, QRectF]:
    left, wide, px = layout.bands.right() + layout.text.px(16), layout.value_px, layout.text.px
    likely = QRectF(left, row.top(), wide, row.height())
    return likely, likely.translated(wide + px(16), 0)
