"""The project's own icons: stroke drawings on a grid of 24, tinted when they are painted."""

from enum import StrEnum
from pathlib import Path

from PySide6.QtCore import QByteArray, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from kitlog.fault import SystemFault

RATIOS = (1.0, 2.0, 3.0)


class Icon(StrEnum):
    """Each icon; the value is the name of its file."""

    KITLOG = "kitlog"
    KIT = "kit"
    SERVICE = "service"
    OUTING = "outing"
    REPACK = "repack"
    FLIGHTS = "flights"
    TICK = "tick"
    CHEVRON_DOWN = "chevron-down"
    CHEVRON_UP = "chevron-up"
    CHEVRON_RIGHT = "chevron-right"
    PLUS = "plus"
    SEARCH = "search"
    UNDO = "undo"
    REDO = "redo"
    SUN = "sun"
    MOON = "moon"
    FILE = "file"
    PRINTER = "printer"
    CLOSE = "close"


class IconSet:
    """The icons of one folder.

    Args:
        folder: where the SVG files lie; they are read when first used.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._drawings: dict[Icon, bytes] = {}

    def draw(self, painter: QPainter, rect: QRectF, icon: Icon | str, colour: QColor) -> None:
        """Draw an icon into the middle of `rect`, as large as the shorter side allows.

        Raises:
            SystemFault: ``icon.missing`` if its file cannot be read, ``icon.broken`` if it is no drawing.
        """
        side = min(rect.width(), rect.height())
        square = QRectF(rect.center().x() - side / 2, rect.center().y() - side / 2, side, side)
        renderer = QSvgRenderer(QByteArray(self._drawing(Icon(icon)).replace(b"currentColor", colour.name().encode())))
        if not renderer.isValid():
            raise SystemFault("icon.broken", file=str(self._file(Icon(icon))))
        renderer.render(painter, square)

    def pixmap(self, icon: Icon | str, size: int, colour: QColor, ratio: float = 1.0) -> QPixmap:
        """An icon of `size` pixels for a screen of `ratio` device pixels each."""
        made = QPixmap(QSize(round(size * ratio), round(size * ratio)))
        made.setDevicePixelRatio(ratio)
        made.fill(Qt.GlobalColor.transparent)
        painter = QPainter(made)
        try:
            self.draw(painter, QRectF(0, 0, size, size), icon, colour)
        finally:
            painter.end()
        return made

    def icon(self, icon: Icon | str, size: int, colour: QColor, disabled: QColor | None = None) -> QIcon:
        """An icon for every usual screen, in a second colour where it is disabled if one is given."""
        made = QIcon()
        for ratio in RATIOS:
            made.addPixmap(self.pixmap(icon, size, colour, ratio))
            if disabled is not None:
                made.addPixmap(self.pixmap(icon, size, disabled, ratio), QIcon.Mode.Disabled)
        return made

    def _file(self, icon: Icon) -> Path:
        return self._folder / f"{icon.value}.svg"

    def _drawing(self, icon: Icon) -> bytes:
        if icon not in self._drawings:
            try:
                self._drawings[icon] = self._file(icon).read_bytes()
            except OSError as error:
                raise SystemFault("icon.missing", file=str(self._file(icon)), reason=str(error)) from error
        return self._drawings[icon]
