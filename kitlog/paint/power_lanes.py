"""The power picture: charge over the day, one lane a device, phases as bands."""

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPaintDevice, QPainter

from kitlog.paint import power_ends, power_frame
from kitlog.paint.lettering import Lettering
from kitlog.paint.power_lane import LanePainter
from kitlog.paint.power_layout import PowerLayout
from kitlog.paint.power_picture import PowerPicture, Reading, clock_text, reading
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens


def measure(picture: PowerPicture, width: float, font: QFont, device: QPaintDevice | None = None) -> float:
    """Height in pixels that the picture needs at `width` in the application font on `device`, or the screen."""
    return PowerLayout(picture, QRectF(0, 0, width, 0), Lettering(font, device)).height


def bands_rect(picture: PowerPicture, rect: QRectF, font: QFont) -> QRectF:
    """The room of the bands: the share of a pointer across its width is what `reading` takes."""
    return PowerLayout(picture, rect, Lettering(font)).bands


def spots(picture: PowerPicture, rect: QRectF, font: QFont) -> list[tuple[QRectF, str]]:
    """Rooms in which a pointer finds words: around the marks where days switch a device off."""
    layout = PowerLayout(picture, rect, Lettering(font))
    half = layout.text.px(6)
    return [
        (
            QRectF(
                layout.x(off.place(layout.edges)) - half, layout.lane(number).bottom() - 3 * half, 2 * half, 3 * half
            ),
            off.text,
        )
        for number, lane in enumerate(picture.lanes)
        for off in lane.off_by
    ]


def paint(
    painter: QPainter,
    rect: QRectF,
    picture: PowerPicture,
    tokens: Tokens,
    cursor: float | None = None,
    edge: int | None = None,
) -> None:
    """Paint the picture from the top of `rect`; the painter carries the application font.

    Args:
        painter: on any device.
        rect: where; nothing is painted outside.
        picture: what.
        tokens: in which theme.
        cursor: share (0 to 1) of the width of the bands at which the reading line stands.
        edge: number of the phase whose end is held, or could be.
    """
    layout = PowerLayout(picture, rect, Lettering.of(painter))
    found = None if cursor is None else reading(picture, cursor)
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    power_frame.head(painter, layout, tokens)
    power_frame.bands(painter, layout, tokens)
    uprights = _uprights(painter, layout, tokens, None if found is None else cursor, edge)
    lanes = [LanePainter(painter, layout, tokens, number, uprights) for number in range(len(picture.lanes))]
    for number in range(len(lanes)):
        power_frame.lane_name(painter, layout, tokens, number)
    if layout.is_cut:
        painter.setClipRect(layout.bands, Qt.ClipOperation.IntersectClip)
    for lane in lanes:
        lane.paint()
    if cursor is not None and found is not None:
        _dots(painter, layout, tokens, cursor, found)
    for lane in lanes:
        lane.write()
    painter.setClipRect(rect)
    if cursor is None or found is None:
        power_frame.clocks(painter, layout, tokens, None)
        power_ends.at_the_end(painter, layout, tokens)
    else:
        times = (clock_text(picture.start_min, found.likely_h), clock_text(picture.start_min, found.high_h))
        power_frame.clocks(painter, layout, tokens, (cursor, *times))
        power_ends.at_the_line(painter, layout, tokens, found, times)
    painter.restore()


def _uprights(
    painter: QPainter, layout: PowerLayout, tokens: Tokens, cursor: float | None, edge: int | None
) -> tuple[float, ...]:
    """The reading line and the edge that is held, under what is written into the lanes; where they stand."""
    px, bands, found = layout.text.px, layout.bands, list[float]()
    if cursor is not None:
        found.append(layout.x(cursor))
        painter.setPen(pen(tokens.accent, px(1.5)))
        painter.drawLine(QLineF(found[-1], bands.top() + layout.heads_px, found[-1], bands.bottom()))
    if edge is not None and edge < len(layout.picture.phases):
        found.append(layout.band(edge).right())
        painter.setPen(pen(tokens.accent, px(2)))
        painter.drawLine(QLineF(found[-1], bands.top(), found[-1], bands.bottom()))
        _grip(painter, QPointF(found[-1], bands.top()), tokens, px(1))
    return tuple(found)


def _grip(painter: QPainter, at: QPointF, tokens: Tokens, px: float) -> None:
    """What says that an edge can be taken."""
    left, right, foot = (QPointF(x * px, y * px) for x, y in ((-5, -5), (5, -5), (0, 7)))
    painter.setPen(pen(tokens.surface, px))
    painter.setBrush(tokens.accent)
    painter.drawPolygon([at + left, at + right, at + foot])
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _dots(painter: QPainter, layout: PowerLayout, tokens: Tokens, cursor: float, found: Reading) -> None:
    """Where the reading line meets the curves."""
    x, px = layout.x(cursor), layout.text.px
    for number, lane in enumerate(found.lanes):
        box = layout.lane(number)
        for value, colour in ((lane.high, tokens.ink), (lane.likely, tokens.accent)):
            if value is not None:
                painter.setPen(pen(tokens.surface, px(1.5)))
                painter.setBrush(colour)
                painter.drawEllipse(QPointF(x, box.bottom() - value * box.height()), px(4), px(4))
