"""One zone filled by the stowed share of its mass, and what of pilot and rucksack is no zone."""

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from kitlog.paint import zone_outlines as lines
from kitlog.paint.outline import outline
from kitlog.paint.strokes import hatch, pen, rect_path
from kitlog.paint.tokens import Tokens
from kitlog.paint.zone_picture import ZoneFill


def zone(painter: QPainter, path: QPainterPath, fill: ZoneFill | None, tokens: Tokens, *, is_selected: bool) -> None:
    """A zone: solid from the bottom = stowed, hatched = still to stow, outline only = empty or not shown."""
    box = path.boundingRect()
    painter.fillPath(path, tokens.sunk if fill is None else tokens.surface)
    if fill is not None and fill.share is not None:
        level = box.bottom() - fill.share * box.height()
        _part(painter, path, QRectF(box.left(), box.top(), box.width(), level - box.top()), tokens, is_stowed=False)
        _part(painter, path, QRectF(box.left(), level, box.width(), box.bottom() - level), tokens, is_stowed=True)
        if 0 < fill.share < 1:
            _level(painter, path, level, tokens)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.accent, 2.4) if is_selected else pen(tokens.ink, 1.5))
    painter.drawPath(path)


def _part(painter: QPainter, path: QPainterPath, part: QRectF, tokens: Tokens, *, is_stowed: bool) -> None:
    painter.save()
    painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
    ground(painter, part, tokens, is_stowed=is_stowed)
    painter.restore()


def ground(painter: QPainter, part: QRectF, tokens: Tokens, *, is_stowed: bool) -> None:
    """The ground of what is stowed, or the hatch of what is not, in `part`."""
    if part.height() <= 0:
        return
    painter.fillRect(part, tokens.filled if is_stowed else tokens.tint(tokens.accent, 0.1))
    if not is_stowed:
        hatch(painter, rect_path(part), tokens.tint(tokens.accent, 0.5), 4.0, 1.0)


def _level(painter: QPainter, path: QPainterPath, level: float, tokens: Tokens) -> None:
    painter.save()
    painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
    painter.setPen(pen(tokens.accent, 1.2))
    box = path.boundingRect()
    painter.drawLine(QLineF(box.left(), level, box.right(), level))
    painter.restore()


def behind_pilot(painter: QPainter, tokens: Tokens) -> None:
    """Risers and neck."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.muted, 1.2))
    painter.drawPath(outline(lines.RISERS))


def legs(painter: QPainter, tokens: Tokens) -> None:
    """The legs inside the harness, dashed."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.muted, 1.2, (3, 3)))
    painter.drawPath(outline(lines.LEGS_LINE))


def on_pilot(painter: QPainter, tokens: Tokens) -> None:
    """Face, neck and the lines of the arm, over what is worn."""
    skin = tokens.surface
    painter.setPen(pen(tokens.ink, 1.5))
    painter.setBrush(skin)
    painter.drawPath(outline(lines.FACE))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(outline(lines.ARM_LINE))
    painter.setPen(pen(tokens.ink, 1.2))
    painter.drawPath(outline(lines.SMILE))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(tokens.ink)
    x, y, radius = lines.EYE
    painter.drawEllipse(QPointF(x, y), radius, radius)


def neck(painter: QPainter, tokens: Tokens) -> None:
    """The neck, under helmet and collar."""
    painter.setPen(pen(tokens.ink, 1.3))
    painter.setBrush(tokens.surface)
    painter.drawPath(outline(lines.NECK))


def rucksack_behind(painter: QPainter, tokens: Tokens) -> None:
    """Straps and lid of the rucksack, under its body."""
    painter.setPen(pen(tokens.ink, 1.3))
    painter.setBrush(tokens.tint(tokens.ink, 0.16))
    painter.drawPath(outline(lines.SHOULDER_STRAP))
    painter.drawPath(outline(lines.HIP_BELT))


def rucksack_over(painter: QPainter, tokens: Tokens) -> None:
    """Lid, straps and buckles over the body of the rucksack."""
    painter.setPen(pen(tokens.ink, 1.5))
    painter.setBrush(tokens.surface)
    painter.drawPath(outline(lines.LID))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(tokens.ink, 1))
    painter.drawPath(outline(lines.STRAPS))
    painter.setBrush(tokens.surface)
    for x, y in lines.BUCKLES:
        painter.drawRoundedRect(QRectF(x - 3.5, y - 2.5, 7, 5), 1.5, 1.5)
