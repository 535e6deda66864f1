"""The zone drawing: the pilot in the harness from the side and the rucksack, each zone filled by its stowed share."""

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QFont, QPaintDevice, QPainter

from kitlog.paint import rucksack_words, zone_body, zone_words
from kitlog.paint.lettering import Lettering
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens
from kitlog.paint.zone_layout import ZoneLayout
from kitlog.paint.zone_outlines import ON_FOOT, ON_PILOT_ZONES, WORN, zone_path
from kitlog.paint.zone_picture import ZonePicture


def measure(picture: ZonePicture, width: float, font: QFont, device: QPaintDevice | None = None) -> float:
    """Height in pixels that the drawing wants at `width` in the application font on `device`, or the screen.

    In less height it is drawn smaller.
    """
    layout = ZoneLayout.fitting(picture, QRectF(0, 0, width, 0), Lettering(font, device))
    return max(layout.height, rucksack_words.bottom(layout))


def zone_at(picture: ZonePicture, rect: QRectF, font: QFont, point: QPointF) -> str | None:
    """The zone under `point`, on its outline or its words; None beside them all."""
    layout = ZoneLayout.fitting(picture, rect, Lettering(font))
    for zone, room in layout.labels.items():
        if room.contains(point):
            return zone
    if _shown(layout, ON_FOOT) and layout.rucksack.map(zone_path(ON_FOOT)).contains(point):
        return ON_FOOT
    for zone in reversed(ON_PILOT_ZONES):
        if _shown(layout, zone) and layout.pilot.map(zone_path(zone)).contains(point):
            return zone
    return None


def paint(painter: QPainter, rect: QRectF, picture: ZonePicture, tokens: Tokens, selected: str | None = None) -> None:
    """Paint the drawing into `rect`; the painter carries the application font.

    Args:
        painter: on any device.
        rect: where; nothing is painted outside.
        picture: what.
        tokens: in which theme.
        selected: the zone whose outline and name are in accent.
    """
    layout = ZoneLayout.fitting(picture, rect, Lettering.of(painter))
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    zone_words.head(painter, layout, tokens)
    _pilot(painter, layout, tokens, selected)
    for zone in layout.labels:
        fill = picture.fill(zone)
        if fill is not None:
            zone_words.label(painter, layout, fill, tokens, is_selected=zone == selected)
    zone_words.carabiner(painter, layout, tokens)
    painter.setPen(pen(tokens.hairline, layout.text.px(1)))
    painter.drawLine(QLineF(rect.left(), layout.rule_y, rect.right(), layout.rule_y))
    _rucksack(painter, layout, tokens, selected)
    rucksack_words.paint(painter, layout, tokens, is_selected=selected == ON_FOOT)
    painter.restore()


def _shown(layout: ZoneLayout, zone: str) -> bool:
    return layout.picture.fill(zone) is not None


def _pilot(painter: QPainter, layout: ZoneLayout, tokens: Tokens, selected: str | None) -> None:
    painter.save()
    painter.setTransform(layout.pilot, combine=True)
    zone_body.behind_pilot(painter, tokens)
    for zone in ON_PILOT_ZONES:
        if zone == WORN:
            zone_body.neck(painter, tokens)
        zone_body.zone(painter, zone_path(zone), layout.picture.fill(zone), tokens, is_selected=zone == selected)
        if zone == "harness":
            zone_body.legs(painter, tokens)
        if zone == WORN:
            zone_body.on_pilot(painter, tokens)
    painter.restore()


def _rucksack(painter: QPainter, layout: ZoneLayout, tokens: Tokens, selected: str | None) -> None:
    painter.save()
    painter.setTransform(layout.rucksack, combine=True)
    zone_body.rucksack_behind(painter, tokens)
    fill = layout.picture.fill(ON_FOOT)
    zone_body.zone(painter, zone_path(ON_FOOT), fill, tokens, is_selected=selected == ON_FOOT)
    zone_body.rucksack_over(painter, tokens)
    painter.restore()
