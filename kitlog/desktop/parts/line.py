"""Hairlines between sections and rows."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from kitlog.desktop import look


class Hairline(QWidget):
    """One pixel of line across or down; `strong` for edges and heads."""

    def __init__(self, *, upright: bool = False, strong: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._upright, self._strong = upright, strong
        fixed, wide = QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding
        self.setSizePolicy(*((fixed, wide) if upright else (wide, fixed)))
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def sizeHint(self) -> QSize:
        """One pixel."""
        return QSize(1, 1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the line."""
        t = look.tokens()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), t.strong_line if self._strong else t.hairline)
