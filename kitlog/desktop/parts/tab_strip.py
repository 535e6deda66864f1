"""Tabs on a strip of paper, torn apart along perforations."""

from collections.abc import Sequence

from PySide6.QtCore import QLineF, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.pressable import Pressable
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import blend

DASHES = (3.0, 3.0)


class StripTab(Pressable):
    """One tab; what is on it is painted by those that are made of it."""

    ring_radius = None
    high = 48
    """Height, in px of the design."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(words, parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:
        """All share the strip."""
        return QSize(look.px(150), look.px(self.high))

    def minimumSizeHint(self) -> QSize:
        """Narrower, its words are cut."""
        return QSize(look.px(96), look.px(self.high))

    def draw_ground(self, painter: QPainter, *, current: bool) -> None:
        """The ground of the tab that is open, or that the mouse is over."""
        t, box = look.tokens(), QRectF(self.rect())
        if current:
            painter.fillRect(box, t.selection)
            painter.fillRect(QRectF(box.left(), box.bottom() - look.px(2), box.width(), look.px(2)), t.accent)
        elif self.underMouse():
            painter.fillRect(box, blend(t.ink, 0.06, t.sunk))


class TabStrip(QWidget):
    """The strip: ground, edge, and a perforation before each tab but the first."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._laid: list[StripTab] = []

    def lay(self, tabs: Sequence[StripTab]) -> None:
        """Lay tabs side by side."""
        row = QHBoxLayout(self)
        row.setContentsMargins(1, 1, 1, 1)
        row.setSpacing(1)
        self._laid = list(tabs)
        for tab in tabs:
            row.addWidget(tab, 1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the strip and its perforations."""
        t = look.tokens()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(t.strong_line, 1))
            painter.setBrush(t.sunk)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), look.px(6), look.px(6))
            painter.setPen(pen(t.strong_line, 1, DASHES))
            for tab in self._laid[1:]:
                x = tab.geometry().left() - 0.5
                painter.drawLine(QLineF(x, 2, x, self.height() - 2))
