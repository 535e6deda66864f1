"""The pictures under the board as widgets: read by pointer and arrow keys, told in words to screen readers."""

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter
from PySide6.QtWidgets import QApplication, QToolTip, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.power_words import reading_text
from kitlog.desktop.parts.canvas import Canvas
from kitlog.paint import power_lanes, weight_ruler
from kitlog.paint.power_picture import PowerPicture, reading
from kitlog.paint.weight_picture import WeightPicture

STEP = 0.02
"""How far one press of an arrow key moves the reading line, as a share of the day."""

_POWER_KEYS: dict[int, float] = {Qt.Key.Key_Left: -STEP, Qt.Key.Key_Right: STEP}
_WEIGHT_KEYS: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}


class PowerView(Canvas):
    """Charge over the day; Left and Right, Home and End move the reading line, Esc takes it away.

    Attributes:
        cursor_at: where the reading line stands as a share of the day, None without one.
    """

    def __init__(self, name: str, picture: PowerPicture, sentences: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._picture, self._sentences = picture, sentences
        self.cursor_at: float | None = None
        self.setAccessibleDescription(sentences)

    def measure(self, width: float) -> float:
        """As high as the lanes are many."""
        return power_lanes.measure(self._picture, width, QApplication.font())

    def draw(self, painter: QPainter, rect: QRectF) -> None:
        """Draw the lanes."""
        power_lanes.paint(painter, rect, self._picture, look.tokens(), self.cursor_at)

    def reading(self) -> str:
        """What stands under the reading line, as text; empty without one."""
        found = None if self.cursor_at is None else reading(self._picture, self.cursor_at)
        return "" if found is None else reading_text(self._picture, found)

    def move_to(self, at: float | None) -> None:
        """Stand the reading line at a share of the day, or take it away."""
        self.cursor_at = None if at is None else min(max(at, 0.0), 1.0)
        self.setAccessibleDescription(self.reading() or self._sentences)
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the reading line."""
        at, key = self.cursor_at, event.key()
        if key in _POWER_KEYS:
            self.move_to(0.0 if at is None else at + _POWER_KEYS[key])
        elif key in {Qt.Key.Key_Home, Qt.Key.Key_End}:
            self.move_to(0.0 if key == Qt.Key.Key_Home else 1.0)
        elif key == Qt.Key.Key_Escape and at is not None:
            self.move_to(None)
        else:
            super().keyPressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """The reading line follows the pointer over the bands."""
        bands = power_lanes.bands_rect(self._picture, QRectF(self.rect()), QApplication.font())
        inside = bands.width() > 0 and bands.contains(event.position())
        self.move_to((event.position().x() - bands.left()) / bands.width() if inside else None)

    def leaveEvent(self, event: QEvent) -> None:
        """The reading line goes with the pointer, unless the keys hold it."""
        super().leaveEvent(event)
        if not self.hasFocus():
            self.move_to(None)


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
