"""The ground of the window: paper, the sheet on it with its soft shadow, and the open tab growing out of it."""

from PySide6.QtCore import QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from kitlog.desktop import look
from kitlog.paint.tokens import Tokens

RADIUS = 8
SHADOW = ((3.0, 0.02), (2.0, 0.03), (1.0, 0.04))
"""Reach in px and share of ink of each layer of the shadow, from the outside in."""


class Ground(QWidget):
    """What lies under all parts of the window; told where sheet and open tab are."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sheet = QRect()
        self._tab = QRect()
        self._outline = QPainterPath()

    def lay(self, sheet: QRect, tab: QRect) -> None:
        """Where the sheet and the open tab lie now."""
        if (sheet, tab) == (self._sheet, self._tab):
            return
        self._sheet, self._tab = sheet, tab
        self._outline = _outline(QRectF(sheet), QRectF(tab))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint paper, shadow and sheet."""
        t = look.tokens()
        with QPainter(self) as painter:
            painter.fillRect(event.rect(), t.paper)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if not t.dark:
                self._shadow(painter, t)
            painter.setPen(QPen(t.hairline if not t.dark else t.strong_line, 1))
            painter.setBrush(t.surface)
            painter.drawPath(self._outline)

    def _shadow(self, painter: QPainter, t: Tokens) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        for reach, share in SHADOW:
            shade = QColor(t.ink)
            shade.setAlphaF(share)
            painter.setBrush(shade)
            box = QRectF(self._sheet).adjusted(-reach / 2, 0, reach / 2, reach)
            painter.drawRoundedRect(box, RADIUS + reach / 2, RADIUS + reach / 2)


def _outline(sheet: QRectF, tab: QRectF) -> QPainterPath:
    radius = look.px(RADIUS)
    path = QPainterPath()
    path.setFillRule(Qt.FillRule.WindingFill)
    path.addRoundedRect(sheet.adjusted(0.5, 0.5, -0.5, -0.5), radius, radius)
    grown = QPainterPath()
    grown.setFillRule(Qt.FillRule.WindingFill)
    grown.addRoundedRect(tab.adjusted(0.5, 0.5, radius * 2, -0.5), radius, radius)
    return path.united(grown).simplified()
