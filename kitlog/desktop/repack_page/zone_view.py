"""The drawing and the bars as widgets: a zone is chosen by pointer or arrow keys, and the list goes to it."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.canvas import Canvas
from kitlog.desktop.repack_page.zone_words import zone_sentences
from kitlog.paint import zone_bars, zone_drawing
from kitlog.paint.zone_picture import ZonePicture
from kitlog.wording.translate import _

_STEPS: dict[int, int] = {
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Up: -1,
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Down: 1,
}
NOTHING = ZonePicture("", "", "", ())


class ZoneView(Canvas):
    """Zones filled by the stowed share of their mass.

    Attributes:
        chosen: a zone was pointed at, by its word.
        selected: the zone that is marked.
    """

    chosen = Signal(str)

    def __init__(self, *, bars: bool, parent: QWidget | None = None) -> None:
        super().__init__(_("Where it rides"), parent)
        self._picture, self._bars = NOTHING, bars
        self.selected: str | None = None
        if not bars:
            self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_zones(self, picture: ZonePicture) -> None:
        """Show how much is stowed where."""
        if picture != self._picture:
            self._picture = picture
            self.setAccessibleDescription(zone_sentences(picture))
            self.updateGeometry()
            self.update()

    def select(self, zone: str | None) -> None:
        """Mark a zone."""
        if zone != self.selected:
            self.selected = zone
            self.update()

    def hasHeightForWidth(self) -> bool:
        """The drawing takes the height there is, the bars their own."""
        return self._bars

    def measure(self, width: float) -> float:
        """Height at a width."""
        if self._bars:
            return zone_bars.measure(self._picture, QApplication.font())
        return zone_drawing.measure(self._picture, width, QApplication.font())

    def minimumSizeHint(self) -> QSize:
        """The drawing can be drawn smaller."""
        return super().minimumSizeHint() if self._bars else QSize(look.px(240), look.px(240))

    def draw(self, painter: QPainter, rect: QRectF) -> None:
        """Draw the zones."""
        paint = zone_bars.paint if self._bars else zone_drawing.paint
        paint(painter, rect, self._picture, look.tokens(), self.selected)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrow keys step from zone to zone."""
        zones = [fill.zone for fill in self._picture.zones if fill.mass_g > 0]
        if event.key() not in _STEPS or not zones:
            super().keyPressEvent(event)
            return
        step = _STEPS[event.key()]
        at = zones.index(self.selected) + step if self.selected in zones else 0 if step > 0 else -1
        self._choose(zones[at % len(zones)])

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The list goes to the zone."""
        super().mousePressEvent(event)
        at = zone_bars.zone_at if self._bars else zone_drawing.zone_at
        zone = at(self._picture, QRectF(self.rect()), QApplication.font(), event.position())
        if zone is not None:
            self._choose(zone)

    def _choose(self, zone: str) -> None:
        self.select(zone)
        self.chosen.emit(zone)
