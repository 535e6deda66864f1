"""The weight ruler as a widget: read by pointer and arrow keys, told in words to screen readers."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter
from PySide6.QtWidgets import QApplication, QToolTip, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.canvas import Canvas
from kitlog.paint import weight_ruler
from kitlog.paint.weight_picture import WeightPicture

_WEIGHT_KEYS: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}


class WeightView(Canvas):
    """The weight ruler; Left and Right step through its pointers.

    Attributes:
        current: number of the pointer on which the keys stand, None for none.
    """

    def __init__(self, name: str, picture: WeightPicture, sentences: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._picture, self._sentences = picture, sentences
        self.current: int | None = None
        self.setAccessibleDescription(sentences)

    def measure(self, width: float) -> float:
        """Ruler, reserve and zones."""
        return weight_ruler.measure(self._picture, width, QApplication.font())

    def draw(self, painter: QPainter, rect: QRectF) -> None:
        """Draw the ruler."""
        current = self.current if self.hasFocus() else None
        weight_ruler.paint(painter, rect, self._picture, look.tokens(), current)

    def reading(self) -> str:
        """What the pointer says on which the keys stand."""
        return "" if self.current is None else self._spots()[self.current][1]

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step through the pointers from left to right."""
        spots, key = self._spots(), event.key()
        if key in _WEIGHT_KEYS and spots:
            along = sorted(range(len(spots)), key=lambda number: spots[number][0].left())
            first = 0 if _WEIGHT_KEYS[key] > 0 else len(along) - 1
            at = first if self.current is None else along.index(self.current) + _WEIGHT_KEYS[key]
            self._stand_on(along[at % len(along)])
        elif key == Qt.Key.Key_Escape and self.current is not None:
            self._stand_on(None)
        else:
            super().keyPressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """A pointer tells its mass."""
        said = next((words for room, words in self._spots() if room.contains(event.position())), "")
        QToolTip.showText(event.globalPosition().toPoint(), said, self)

    def _stand_on(self, number: int | None) -> None:
        self.current = number
        self.setAccessibleDescription(self.reading() or self._sentences)
        self.update()

    def _spots(self) -> list[tuple[QRectF, str]]:
        return weight_ruler.spots(self._picture, QRectF(self.rect()), QApplication.font())
