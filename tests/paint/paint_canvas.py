"""Painting on an image, and asking what was painted where."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QFont, QGuiApplication, QImage, QPainter

from kitlog.paint.lettering import Lettering

GROUND = QColor("#ff00ff")  # a colour no theme has: what is left of it was not painted


def font_px(size: int = 14) -> QFont:
    made = QGuiApplication.font()
    made.setPixelSize(size)
    return made


def painted(
    size: tuple[float, float],
    paint: Callable[[QPainter], None],
    ratio: float = 1.0,
    px: int = 14,
    ground: QColor = GROUND,
) -> QImage:
    image = QImage(round(size[0] * ratio), round(size[1] * ratio), QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(ground)
    with QPainter(image) as painter:
        painter.setFont(font_px(px))
        paint(painter)
    return image


def changed(one: QImage, other: QImage, rect: QRectF | None = None) -> int:
    """Number of pixels that differ, within `rect` if one is given."""
    box = (rect or QRectF(one.rect())).toAlignedRect().intersected(one.rect())
    return sum(
        one.pixel(x, y) != other.pixel(x, y)
        for x in range(box.left(), box.right() + 1)
        for y in range(box.top(), box.bottom() + 1)
    )


def only_inside(image: QImage, rect: QRectF, ground: QColor = GROUND) -> bool:
    """Whether nothing was painted outside `rect` (one pixel of edge smoothing allowed)."""
    box = rect.toAlignedRect().adjusted(-1, -1, 1, 1)
    plain = ground.rgba()
    return all(
        image.pixel(x, y) == plain
        for x in range(image.width())
        for y in range(image.height())
        if not box.contains(x, y)
    )


def words_drawn(monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, QRectF]]:
    """From now on every word drawn, with the room it takes; filled while painting."""
    drawn: list[tuple[str, QRectF]] = []
    draw = Lettering.draw

    def watched(self: Lettering, painter: QPainter, rect: QRectF, text: str, *style: object) -> QRectF:
        room = draw(self, painter, rect, text, *style)
        if room.width() > 0.5:
            # ascent to descent is less than the line: a line may stand close under another
            drawn.append((text, room.adjusted(0, room.height() * 0.12, 0, -room.height() * 0.12)))
        return room

    monkeypatch.setattr(Lettering, "draw", watched)
    return drawn


def overlapping(drawn: list[tuple[str, QRectF]]) -> list[tuple[str, str]]:
    return [
        (one, other)
        for i, (one, room) in enumerate(drawn)
        for other, other_room in drawn[i + 1 :]
        if room.adjusted(0.5, 0.5, -0.5, -0.5).intersects(other_room.adjusted(0.5, 0.5, -0.5, -0.5))
    ]
