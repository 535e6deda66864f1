"""The service band: the months ahead, one lane a rule, marks where something is due."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPaintDevice, QPainter

from kitlog.paint import service_frame
from kitlog.paint.lettering import Lettering
from kitlog.paint.service_lane import ServiceLanePainter
from kitlog.paint.service_layout import ServiceLayout
from kitlog.paint.service_picture import ServicePicture
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens


def measure(picture: ServicePicture, font: QFont, device: QPaintDevice | None = None) -> float:
    """Height in pixels that the band needs in the application font on `device`, or the screen, at any width."""
    return ServiceLayout(picture, QRectF(), Lettering(font, device)).height


def lane_at(picture: ServicePicture, rect: QRectF, font: QFont, point: QPointF) -> int | None:
    """Number of the lane under `point`; None beside them all."""
    return ServiceLayout(picture, rect, Lettering(font)).lane_at(point)


def paint(painter: QPainter, rect: QRectF, picture: ServicePicture, tokens: Tokens, current: int | None = None) -> None:
    """Paint the band from the top of `rect`; the painter carries the application font.

    Args:
        painter: on any device.
        rect: where; nothing is painted outside.
        picture: what.
        tokens: in which theme.
        current: number of the lane with the focus.
    """
    layout = ServiceLayout(picture, rect, Lettering.of(painter))
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    service_frame.months(painter, layout, tokens)
    service_frame.rules(painter, layout, tokens)
    service_frame.outings(painter, layout, tokens)
    service_frame.names(painter, layout, tokens)
    free_from = service_frame.today(painter, layout, tokens)
    for number in range(len(picture.lanes)):
        ServiceLanePainter(painter, layout, tokens, number).paint()
    service_frame.legend(painter, layout, tokens, free_from + layout.text.px(16))
    if current is not None and 0 <= current < len(picture.lanes):
        painter.setPen(pen(tokens.accent, layout.text.px(2)))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        px = layout.text.px
        lane = layout.lane(current).adjusted(max(0.0, layout.item_px - px(8)) + px(1), px(1), -px(1), -px(1))
        painter.drawRoundedRect(lane, px(4), px(4))
    painter.restore()
