"""Text in pictures: measured, cut or wrapped to the room there is, in the roles of the type scale."""

from dataclasses import dataclass, field
from functools import lru_cache

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QGuiApplication, QPaintDevice, QPainter

from kitlog.paint.type_scale import Role, font, scale

LEFT = Qt.AlignmentFlag.AlignLeft
CENTRE = Qt.AlignmentFlag.AlignHCenter
RIGHT = Qt.AlignmentFlag.AlignRight

_CENTRED = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextSingleLine | Qt.TextFlag.TextDontClip


MOST_KINDS, MOST_WIDTHS = 12, 2_000
"""So many kinds of devices and font are remembered, and so many widths on each."""

LEAST_LEFT = 3
"""A cut text of fewer letters than this, the ellipsis included, says nothing."""


def _one_line(text: str) -> str:
    """Breaks and tabs as plain spaces; thin and no-break spaces stay as they are."""
    return text.replace("\n", " ").replace("\t", " ")


@dataclass(slots=True)
class _Known:
    """Fonts, and widths of words, on one kind of device: pictures ask for the same ones again and again."""

    fonts: dict[Role, tuple[QFont, QFontMetricsF]] = field(default_factory=dict)
    widths: dict[tuple[str, Role], float] = field(default_factory=dict)


@lru_cache(maxsize=MOST_KINDS)
def _known(_font: str, _features: tuple[tuple[int, int], ...], _device: tuple[float, float, float]) -> _Known:
    return _Known()


def _known_of(base: QFont, device: QPaintDevice | None) -> _Known:
    """What is known of a font on devices of the same fineness; the key of a font leaves out its features."""
    features = tuple(sorted((tag.value(), base.featureValue(tag)) for tag in base.featureTags()))
    if device is None:
        screen = QGuiApplication.primaryScreen()
        return _known(base.key(), features, (screen.logicalDotsPerInchX(), screen.logicalDotsPerInchY(), 0.0))
    return _known(base.key(), features, (device.logicalDpiX(), device.logicalDpiY(), device.devicePixelRatioF()))


class Lettering:
    """The application font in all its roles on one device, with the scale that all measures follow.

    Args:
        base: the application font.
        device: what is painted on; the first screen if none is given.
    """

    def __init__(self, base: QFont, device: QPaintDevice | None = None) -> None:
        self._base = base
        self._device = device
        known = _known_of(base, device)
        self._fonts, self._widths = known.fonts, known.widths
        self.scale = scale(base, device)

    @classmethod
    def of(cls, painter: QPainter) -> "Lettering":
        """The lettering of a painter that carries the application font."""
        return cls(painter.font(), painter.device())

    def px(self, design_px: float) -> float:
        """A measure of the design, given at a body size of 14 px, in pixels of this device."""
        return design_px * self.scale

    def line(self, role: Role) -> float:
        """Line height of `role` in pixels."""
        return self.px(role.line)

    def width(self, text: str, role: Role) -> float:
        """Width of one line of `text` in pixels."""
        width = self._widths.get((text, role))
        if width is None:
            if len(self._widths) >= MOST_WIDTHS:
                self._widths.clear()
            width = self._widths[text, role] = self._made(role)[1].horizontalAdvance(text)
        return width

    def cut(self, text: str, role: Role, width: float) -> str:
        """`text` as far as `width` pixels go, with an ellipsis where it was cut; empty if next to nothing is left."""
        whole, slack = _one_line(text), 0.5
        if self.width(whole, role) <= width + slack:
            return whole
        made = self._made(role)[1].elidedText(whole, Qt.TextElideMode.ElideRight, width)
        return made if len(made) >= LEAST_LEFT and self.width(made, role) <= width + slack else ""

    def wrap(self, text: str, role: Role, width: float, most: int) -> list[str]:
        """`text` in at most `most` lines of `width` pixels, broken at plain spaces; what is cut is the last line."""
        lines: list[str] = []
        words = text.split(" ")
        while words and len(lines) < most - 1:
            taken = 1
            while taken < len(words) and self.width(" ".join(words[: taken + 1]), role) <= width:
                taken += 1
            line = _one_line(" ".join(words[:taken]))
            lines.append(self.cut(line, role, width))
            if lines[-1] != line:  # "out" under nothing would be another word than "walk out"
                return lines
            words = words[taken:]
        return [*lines, self.cut(" ".join(words), role, width)] if words else lines

    def draw(
        self,
        painter: QPainter,
        rect: QRectF,
        text: str,
        role: Role,
        colour: QColor,
        align: Qt.AlignmentFlag = LEFT,
    ) -> QRectF:
        """Draw one line of `text`, cut to `rect` and centred in its height; returns the room it takes."""
        shown = self.cut(text, role, rect.width())
        taken = self.room(rect, shown, role, align)
        if shown:
            painter.setFont(self._made(role)[0])
            painter.setPen(colour)
            painter.drawText(taken.adjusted(-1, 0, 1, 0), _CENTRED, shown)
        return taken

    def room(self, rect: QRectF, text: str, role: Role, align: Qt.AlignmentFlag = LEFT) -> QRectF:
        """The room that one line of `text` takes when it is drawn into `rect`."""
        width, height = self.width(text, role), self.line(role)
        left = {LEFT: rect.left(), CENTRE: rect.center().x() - width / 2, RIGHT: rect.right() - width}[align]
        return QRectF(left, rect.center().y() - height / 2, width, height)

    def _made(self, role: Role) -> tuple[QFont, QFontMetricsF]:
        if role not in self._fonts:
            made = font(self._base, role)
            metrics = QFontMetricsF(made) if self._device is None else QFontMetricsF(made, self._device)
            self._fonts[role] = (made, metrics)
        return self._fonts[role]
