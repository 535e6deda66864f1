"""The zones as bars, where the drawing has no room: solid = stowed, hatched = still to stow."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPaintDevice, QPainter

from kitlog.paint.lettering import RIGHT, Lettering
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.strokes import hatch, pen, rect_path
from kitlog.paint.tokens import Tokens
from kitlog.paint.type_scale import Role
from kitlog.paint.zone_picture import ZoneFill, ZonePicture

HEAD, PITCH, WORDS, BAR = 32.0, 41.0, 20.0, 8.0


def measure(picture: ZonePicture, font: QFont, device: QPaintDevice | None = None) -> float:
    """Height in pixels that the bars need in the application font on `device`, or the screen, at any width."""
    text = Lettering(font, device)
    return text.px(_head(picture) + PITCH * len(picture.zones))


def zone_at(picture: ZonePicture, rect: QRectF, font: QFont, point: QPointF) -> str | None:
    """The zone of the row under `point`; None beside them all."""
    text = Lettering(font)
    found = (
        fill.zone for number, fill in enumerate(picture.zones) if _row(picture, rect, text, number).contains(point)
    )
    return next(found, None)


def paint(painter: QPainter, rect: QRectF, picture: ZonePicture, tokens: Tokens, selected: str | None = None) -> None:
    """Paint the bars from the top of `rect`, one a zone; the painter carries the application font."""
    text = Lettering.of(painter)
    painter.save()
    painter.setClipRect(rect)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if picture.title:
        text.draw(
            painter, QRectF(rect.left(), rect.top(), rect.width(), text.px(24)), picture.title, Role.LABEL, tokens.ink
        )
    for number, fill in enumerate(picture.zones):
        row = _row(picture, rect, text, number)
        _words(painter, row, fill, (text, tokens), is_selected=fill.zone == selected)
        bar = QRectF(row.left(), row.top() + text.px(WORDS + 2), row.width(), text.px(BAR))
        paint_share(painter, bar.adjusted(0.5, 0, -0.5, 0), fill.share, tokens, text.px(1))
    painter.restore()


def paint_share(painter: QPainter, bar: QRectF, share: float | None, tokens: Tokens, unit: float) -> None:
    """One bar, solid up to `share`, hatched from there; None = nothing belongs there, outline only."""
    path = rect_path(bar, 3 * unit)
    if share is not None:
        solid = QRectF(bar.left(), bar.top(), bar.width() * share, bar.height())
        painter.save()
        painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
        painter.fillRect(bar, tokens.tint(tokens.accent, 0.1))
        hatch(painter, rect_path(bar), tokens.tint(tokens.accent, 0.5), 3 * unit, unit)
        painter.fillRect(solid, tokens.filled)
        painter.restore()
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.accent, unit))
    painter.drawPath(path)


def _words(
    painter: QPainter, row: QRectF, fill: ZoneFill, style: tuple[Lettering, Tokens], *, is_selected: bool
) -> None:
    text, tokens = style
    px, words = text.px, QRectF(row.left(), row.top(), row.width(), text.px(WORDS))
    mass = min(text.width(fill.mass, Role.SECOND), row.width() / 2)
    text.draw(painter, words.adjusted(words.width() - mass - 1, 0, 0, 0), fill.mass, Role.SECOND, tokens.ink, RIGHT)
    if fill.mark in {Mark.LOOK, Mark.STOP}:
        draw_state(painter, QRectF(words.left(), words.center().y() - px(5.5), px(11), px(11)), fill.mark, tokens)
        words.setLeft(words.left() + px(16))
    role, colour = (Role.LABEL, tokens.accent) if is_selected else (Role.SECOND, tokens.ink)
    text.draw(painter, words.adjusted(0, 0, -mass - px(8), 0), fill.title, role, colour)


def _head(picture: ZonePicture) -> float:
    return HEAD if picture.title else 0.0


def _row(picture: ZonePicture, rect: QRectF, text: Lettering, number: int) -> QRectF:
    top = rect.top() + text.px(_head(picture) + number * PITCH)
    return QRectF(rect.left(), top, rect.width(), text.px(PITCH))
