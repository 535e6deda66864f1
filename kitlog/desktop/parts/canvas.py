"""A picture on the page: as high as it needs to be at its width, with its content as text for screen readers."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.ring import draw_ring


class Canvas(QWidget):
    """The base of pictures; a subclass measures and draws."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName(name)

    def measure(self, width: float) -> float:
        """Height in px at a width."""
        raise NotImplementedError

    def draw(self, painter: QPainter, rect: QRectF) -> None:
        """Draw into `rect`."""
        raise NotImplementedError

    def ring(self) -> QRectF:
        """Where the ring of the focus goes: around what the keys work on."""
        return QRectF(self.rect())

    def hasHeightForWidth(self) -> bool:
        """A picture is as high as it needs to be."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Height at a width."""
        return round(self.measure(width)) + 1

    def sizeHint(self) -> QSize:
        """At the width it has."""
        width = max(self.width(), look.px(320))
        return QSize(look.px(320), self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        """Narrow pictures get higher."""
        return QSize(look.px(240), self.heightForWidth(max(self.width(), look.px(320))))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may want another height."""
        super().resizeEvent(event)
        if event.oldSize().width() != event.size().width():
            self.updateGeometry()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the ring."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take it away."""
        super().focusOutEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the picture, and the ring of the focus."""
        with QPainter(self) as painter:
            painter.setFont(QApplication.font())
            self.draw(painter, QRectF(self.rect()))
            if self.hasFocus():
                draw_ring(painter, self.ring(), look.px(6))
