"""The focus ring: two pixels of accent, two pixels outside of what has the focus."""

from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from kitlog.desktop import look

RING, GAP = 2.0, 2.0


class FocusRing(QWidget):
    """A ring around one widget, lying over its neighbours; it never takes an event."""

    def __init__(self, around: QWidget, radius: float) -> None:
        super().__init__(around.parentWidget())
        self._around = around
        self._radius = radius
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        around.installEventFilter(self)
        self._follow()
        self.show()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow what the ring is around."""
        if event.type() in {QEvent.Type.Move, QEvent.Type.Resize}:
            self._follow()
        return super().eventFilter(watched, event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the ring."""
        with QPainter(self) as painter:
            draw_ring(painter, QRectF(self.rect()), self._radius + GAP + RING)

    def _follow(self) -> None:
        reach = round(RING + GAP)
        self.setGeometry(self._around.geometry().adjusted(-reach, -reach, reach, reach))
        self.raise_()


def draw_ring(painter: QPainter, box: QRectF, radius: float) -> None:
    """Draw the ring just inside `box`."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(look.tokens().accent, RING))
    half = RING / 2
    painter.drawRoundedRect(box.adjusted(half, half, -half, -half), radius, radius)
