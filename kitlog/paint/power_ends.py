"""The columns of figures at the right of the power picture: at the end of the day, or at the reading line."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter

from kitlog.paint.lettering import RIGHT
from kitlog.paint.power_layout import COLUMN_GAP, PowerLayout
from kitlog.paint.power_picture import Lane, LaneReading, Reading
from kitlog.paint.shapes import draw_state
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role

Style = tuple[Role, QColor]


def at_the_end(painter: QPainter, layout: PowerLayout, tokens: Tokens) -> None:
    """What is left at the end in both cases, how much longer it would go on, how many days it lasts, and its state."""
    words, text, px = layout.picture.words, layout.text, layout.text.px
    text.draw(painter, _head(layout), words.left_at_end, Role.SMALL, tokens.muted)
    for box, word in zip(_columns(layout, _head(layout).translated(0, px(17))), _case_words(layout), strict=True):
        text.draw(painter, box, word, Role.SMALL, tokens.muted, RIGHT)
    for number, lane in enumerate(layout.picture.lanes):
        _ends(painter, layout, tokens, number)
        row = layout.lane(number)
        left = _columns(layout, row)[2 if words.lasts else 1].right() + px(16)
        mark = QRectF(left, row.center().y() - px(6), px(12), px(12))
        draw_state(painter, mark, lane.mark, tokens)
    foot = _head(layout).translated(0, layout.bands.height() + px(1))
    text.draw(painter, foot.adjusted(0, 0, -px(8), 0), words.footnote, Role.SMALL, tokens.muted, RIGHT)


def _ends(painter: QPainter, layout: PowerLayout, tokens: Tokens, number: int) -> None:
    lane = layout.picture.lanes[number]
    styles = ((Role.GROUP, tokens.ink), _high_style(lane, tokens), (Role.BODY, tokens.ink))
    firsts = (lane.end_likely, lane.end_high, lane.chance)
    seconds = (lane.spare_likely, lane.spare_high, lane.chance_error)
    row = layout.lane(number)
    for box, first, second, style in zip(_columns(layout, row), firsts, seconds, styles, strict=True):
        _cell(painter, layout, box, (first, second), style, tokens.muted)


def at_the_line(painter: QPainter, layout: PowerLayout, tokens: Tokens, found: Reading, times: tuple[str, str]) -> None:
    """The values at the reading line in both cases, under the times of the cases, and those of the days."""
    text, words = layout.text, layout.picture.words
    has_days = any(lane.spread is not None for lane in found.lanes)
    heads = (words.likely, words.high, words.middle if has_days else "")
    for box, word in zip(_columns(layout, _head(layout)), heads, strict=True):
        text.draw(painter, box, word, Role.SMALL, tokens.muted, RIGHT)
    likely, high, days = _columns(layout, _head(layout).translated(0, text.px(17)))
    for box, time in ((likely, times[0]), (high, times[1])):
        text.draw(painter, box, time, Role.CHIP, tokens.accent, RIGHT)
    text.draw(painter, days, words.outer if has_days else "", Role.SMALL, tokens.muted, RIGHT)
    for number, lane in enumerate(found.lanes):
        for box, value in zip(_columns(layout, layout.lane(number)), _values(lane), strict=True):
            _cell(painter, layout, box, value, (Role.BODY, tokens.accent), tokens.accent)


def _cell(
    painter: QPainter, layout: PowerLayout, box: QRectF, lines: tuple[str, str], style: Style, muted: QColor
) -> None:
    """One or two lines, centred in the height of the lane."""
    text, px = layout.text, layout.text.px
    first, second = lines
    if second:
        box = QRectF(box.left(), box.center().y() - px(20), box.width(), px(20))
        text.draw(painter, box.translated(0, px(18)), second, Role.SMALL, muted, RIGHT)
    text.draw(painter, box, first, *style, RIGHT)


def _values(lane: LaneReading) -> tuple[tuple[str, str], tuple[str, str], tuple[str, str]]:
    likely, high = ("" if value is None else f"{value * 100:.0f}\u00a0%" for value in (lane.likely, lane.high))
    if lane.spread is None:
        return (likely, ""), (high, ""), ("", "")
    low, middle, top = (f"{value * 100:.0f}" for value in lane.spread)
    return (likely, ""), (high, ""), (f"{middle}\u00a0%", f"{low}\u2013{top}")


def _case_words(layout: PowerLayout) -> tuple[str, str, str]:
    return layout.picture.words.likely, layout.picture.words.high, layout.picture.words.lasts


def _high_style(lane: Lane, tokens: Tokens) -> Style:
    goes_off = any(off.in_high for off in lane.off)
    return (Role.GROUP, tokens.state(lane.mark)) if goes_off else (Role.BODY, tokens.ink)


def _head(layout: PowerLayout) -> QRectF:
    px = layout.text.px
    return QRectF(layout.bands.right() + px(16), layout.bands.top() + px(4), layout.ends_px - px(16), px(16))


def _columns(layout: PowerLayout, row: QRectF) -> tuple[QRectF, QRectF, QRectF]:
    left, gap = layout.bands.right() + layout.text.px(16), layout.text.px(COLUMN_GAP)
    wide = (layout.value_px, layout.value_px, layout.chance_px)
    starts = (left, left + wide[0] + gap, left + wide[0] + wide[1] + 2 * gap)
    likely, high, chance = (
        QRectF(start, row.top(), width, row.height()) for start, width in zip(starts, wide, strict=True)
    )
    return likely, high, chance
