"""The focus ring: two pixels of accent, two pixels outside of what has the focus."""

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractScrollArea, QWidget
from shiboken6 import isValid

from kitlog.desktop import look

RING, GAP = 2.0, 2.0


class FocusRing(QWidget):
    """A ring around one widget, lying over its neighbours; it never takes an event.

    It is drawn in the nearest parent that has room for all of it, at most in what is scrolled.
    """

    def __init__(self, around: QWidget, radius: float) -> None:
        host, between = _host(around)
        super().__init__(host)
        self._around = around
        self._radius = radius
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        for widget in (around, *between):
            widget.installEventFilter(self)
        around.destroyed.connect(self.deleteLater)
        self._follow()
        self.show()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow what the ring is around."""
        if event.type() in {QEvent.Type.Move, QEvent.Type.Resize} and isValid(self._around):
            self._follow()
        return super().eventFilter(watched, event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the ring."""
        with QPainter(self) as painter:
            draw_ring(painter, QRectF(self.rect()), self._radius + GAP + RING)

    def _follow(self) -> None:
        host = self.parentWidget()
        if host is not None and host.isAncestorOf(self._around):
            self.setGeometry(_room(self._around, host))
            self.raise_()


def _room(around: QWidget, host: QWidget) -> QRect:
    """Where the ring goes in a parent."""
    reach = round(RING + GAP)
    return QRect(around.mapTo(host, QPoint(0, 0)), around.size()).adjusted(-reach, -reach, reach, reach)


def _host(around: QWidget) -> tuple[QWidget | None, list[QWidget]]:
    """The nearest parent that does not cut the ring, and those between; else the nearest parent of all."""
    nearest = around.parentWidget()
    host, between = nearest, list[QWidget]()
    while host is not None:
        if host.rect().contains(_room(around, host)):
            return host, between
        above = host.parentWidget()
        if host.isWindow() or above is None or isinstance(above.parentWidget(), QAbstractScrollArea):
            break
        between.append(host)
        host = above
    return nearest, []


def draw_ring(painter: QPainter, box: QRectF, radius: float) -> None:
    """Draw the ring just inside `box`."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(look.tokens().accent, RING))
    half = RING / 2
    painter.drawRoundedRect(box.adjusted(half, half, -half, -half), radius, radius)
