"""Photos on a printed page: read from their bytes as large as they will be shown, turned upright, and painted."""

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QImageReader, QPainter

from kitlog.paint.sheet_block import Block
from kitlog.paint.sheet_lines import Style, lines, stack
from kitlog.paint.sheet_setting import MM_PER_INCH, Setting
from kitlog.paint.strokes import pen
from kitlog.paint.type_scale import Role

DOTS_PER_INCH = 300
"""As fine as a photo is printed; more only makes the file larger (common practice, no source)."""

_MUTED = Style(Role.SMALL, muted=True)


def pixels(mm: float) -> int:
    """How many pixels a photo of that width needs."""
    return round(mm / MM_PER_INCH * DOTS_PER_INCH)


def photo(content: bytes, longest_px: int) -> QImage | None:
    """The photo, its longer side at most so long; None where the bytes are no picture that can be read."""
    buffer = QBuffer()
    buffer.setData(QByteArray(content))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and max(size.width(), size.height()) > longest_px:
        reader.setScaledSize(_within(size, longest_px))
    image = reader.read()
    if image.isNull():
        return None
    if max(image.width(), image.height()) > longest_px:
        image = image.scaled(_within(image.size(), longest_px), mode=Qt.TransformationMode.SmoothTransformation)
    return _opaque(image)


def _within(size: QSize, longest_px: int) -> QSize:
    return size.scaled(longest_px, longest_px, Qt.AspectRatioMode.KeepAspectRatio).expandedTo(QSize(1, 1))


def _opaque(image: QImage) -> QImage:
    """On white: what can be seen through would be kept without loss in a PDF, ten times as large."""
    if not image.hasAlphaChannel():
        return image
    made = QImage(image.size(), QImage.Format.Format_RGB32)
    made.fill(QColor("#ffffff"))
    with QPainter(made) as painter:
        painter.drawImage(0, 0, image)
    return made


def size_in(image: QImage, width: float, height: float) -> tuple[float, float]:
    """Width and height of a photo in a box."""
    share = min(width / image.width(), height / image.height())
    return image.width() * share, image.height() * share


def photo_block(setting: Setting, image: QImage, width: float, height: float) -> Block:
    """A photo as large as the box allows, at its left; the block is as high as the photo."""
    wide, high = size_in(image, width, height)

    def paint(painter: QPainter, x: float, y: float) -> None:
        room = QRectF(x, y, wide, high)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(room, image)
        painter.setPen(pen(setting.tokens.outline, setting.px(0.6)))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(room)

    return Block(high, paint)


def empty_block(setting: Setting, words: str, width: float) -> Block:
    """What stands where a photo cannot be shown: its name and why, in a dashed frame."""
    px = setting.px
    said = stack(lines(setting, words, _MUTED, width - px(8), px(8)))
    high = said.height + px(12)

    def paint(painter: QPainter, x: float, y: float) -> None:
        painter.setPen(pen(setting.tokens.outline, px(0.8), (px(3), px(3))))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(x, y, width, high))
        said.paint(painter, x, y + px(6))

    return Block(high, paint)
