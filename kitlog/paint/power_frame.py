"""Around the lanes of the power picture: legend, phase heads, names, clocks."""

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QPainter

from kitlog.paint import power_fan
from kitlog.paint.power_layout import BANDS, CLOCK, HEAD, HEAD_LINE, PowerLayout
from kitlog.paint.shelf import Shelf
from kitlog.paint.strokes import hatch, pen, rect_path
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role


def head(painter: QPainter, layout: PowerLayout, tokens: Tokens) -> None:
    """Title, caption and legend."""
    words, text, px = layout.picture.words, layout.text, layout.text.px
    if not layout.head_px:
        return
    row = QRectF(layout.rect.left(), layout.rect.top() + px(8), layout.rect.width(), px(24))
    done = text.draw(painter, row, words.title, Role.SECTION, tokens.ink)
    if words.title:
        beside = row.adjusted(done.width() + px(12), px(1), 0, px(1))
        text.draw(painter, beside, words.caption, Role.SECOND, tokens.muted)
    else:
        text.draw(painter, row, words.caption, Role.SMALL, tokens.muted)
    if layout.head_px > px(HEAD):
        row.translate(0, px(20))
    _legend(painter, layout, tokens, row)


def _legend(painter: QPainter, layout: PowerLayout, tokens: Tokens, row: QRectF) -> None:
    px = layout.text.px
    x = max(row.right() - layout.legend_px + px(16), row.left())
    for number, word in enumerate(layout.legend_words):
        if word:
            _legend_sample(painter, QRectF(x, row.center().y() - px(5), px(24), px(10)), number, tokens)
            room = QRectF(x + px(32), row.top(), max(0.0, row.right() - x - px(32)), row.height())
            x = layout.text.draw(painter, room, word, Role.SMALL, tokens.muted).right() + px(16)


def _legend_sample(painter: QPainter, box: QRectF, number: int, tokens: Tokens) -> None:
    middle = QLineF(box.left(), box.center().y(), box.right(), box.center().y())
    unit = box.height() / 10
    if number == 0:
        painter.setPen(pen(tokens.accent, 2 * unit))
        painter.drawLine(middle)
    elif number == 1:
        painter.setPen(pen(tokens.ink, 1.5 * unit, (4 * unit, 3 * unit)))
        painter.drawLine(middle)
    elif number == 2:
        edges = [QPointF(box.left(), box.bottom()), QPointF(box.right(), box.bottom())]
        upper = [QPointF(box.left(), box.top()), QPointF(box.right(), box.top())]
        power_fan.band(painter, edges, upper, tokens, unit)
    elif number == 3:
        ticks = [(5, box.left() + 2 * unit), (50, box.center().x()), (95, box.right() - 2 * unit)]
        power_fan.whisker(painter, ticks, box.center().y(), tokens.ink, unit)
    else:
        box = box.adjusted(2 * unit, 0, -2 * unit, 0)
        hatch(painter, rect_path(box), tokens.muted, 4 * unit, 0.8 * unit)
        painter.setPen(pen(tokens.strong_line, unit))
        painter.drawRect(box)


def bands(painter: QPainter, layout: PowerLayout, tokens: Tokens) -> None:
    """The grounds of the phases, their heads, and the lines between them."""
    for number, phase in enumerate(layout.picture.phases):
        band = layout.band(number)
        painter.fillRect(band, tokens.tint(tokens.ink, 0.075 if phase.cold else 0.02))
        _band_head(painter, layout, tokens, number)
    painter.setPen(pen(tokens.tint(tokens.ink, 0.3), layout.text.px(1)))
    for number in range(1, len(layout.picture.phases)):
        band = layout.band(number)
        if band.left() < layout.bands.right():
            painter.drawLine(band.topLeft(), band.bottomLeft())


def _band_head(painter: QPainter, layout: PowerLayout, tokens: Tokens, number: int) -> None:
    px, phase, band = layout.text.px, layout.picture.phases[number], layout.band(number)
    room = QRectF(band.left() + px(8), band.top() + px(4), band.width() - px(12), px(18))
    if room.width() < px(20):
        return
    most = 2 if layout.heads_px > px(BANDS) else 1
    for line in layout.text.wrap(phase.label, Role.LABEL, room.width(), most):
        layout.text.draw(painter, room, line, Role.LABEL, tokens.ink)
        room.translate(0, px(HEAD_LINE))
    room.translate(0, px(1))
    brief = phase.note.split(", ", maxsplit=1)[0]  # the shading says the rest
    fits = (note for note in (phase.note, brief) if layout.text.width(note, Role.SMALL) <= room.width())
    layout.text.draw(painter, room, next(fits, ""), Role.SMALL, tokens.ink if phase.cold else tokens.muted)


def lane_name(painter: QPainter, layout: PowerLayout, tokens: Tokens, number: int) -> None:
    """Name and note at the left of a lane."""
    lane, box, px = layout.picture.lanes[number], layout.lane(number), layout.text.px
    name = QRectF(layout.rect.left(), box.center().y() - px(20), layout.names_px - px(8), px(20))
    layout.text.draw(painter, name, lane.label, Role.NAME, tokens.ink)
    layout.text.draw(painter, name.translated(0, px(18)), lane.note, Role.SMALL, tokens.muted)


def clocks(painter: QPainter, layout: PowerLayout, tokens: Tokens, cursor: tuple[float, str, str] | None) -> None:
    """Two rows of clock times under the lanes; `cursor` is (share, likely time, high time) of the reading line."""
    picture = layout.picture
    rows = (
        (picture.words.likely, picture.clocks_likely, tokens.accent),
        (picture.words.high, picture.clocks_high, tokens.ink),
    )
    top = layout.bands.bottom() + layout.text.px(4)
    own_times = ("", "") if cursor is None else cursor[1:]
    for (word, times, colour), own_time in zip(rows, own_times, strict=True):
        if times:
            own = None if cursor is None else (cursor[0], own_time)
            _clock_row(painter, layout, (top, word, times, colour), own, tokens)
            top += layout.text.px(CLOCK)


def _clock_row(
    painter: QPainter,
    layout: PowerLayout,
    row: tuple[float, str, tuple[str, ...], QColor],
    cursor: tuple[float, str] | None,
    tokens: Tokens,
) -> None:
    (top, word, times, colour), text, px = row, layout.text, layout.text.px
    name = QRectF(layout.rect.left(), top, layout.names_px - px(8), px(CLOCK))
    text.draw(painter, name, word, Role.SMALL, colour)
    shelf = Shelf(layout.bands.left(), layout.bands.right(), px(8))
    wanted = [(share, time) for share, time in zip(layout.edges, times, strict=False) if share < 1.0 + 1e-9]
    ordered = [*wanted[:1], *wanted[:0:-1]]  # the ends of the day come before what lies between
    if cursor is not None:
        ordered.insert(0, cursor)
    for place, (share, time) in enumerate(ordered):
        is_cursor = cursor is not None and place == 0
        role, tone = (Role.CHIP, tokens.accent) if is_cursor else (Role.SMALL_NAME, colour)
        width = text.width(time, role)
        left = shelf.place(_clock_left(layout, share, width), width, reach=px(2))
        if left is not None:
            text.draw(painter, QRectF(left, top, width, px(CLOCK)), time, role, tone)


def _clock_left(layout: PowerLayout, share: float, width: float) -> float:
    centred = layout.x(share) - width / 2
    return min(max(centred, layout.bands.left()), layout.bands.right() - width)
