"""The band as a widget: lanes can be pointed at and walked through with the arrow keys."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QHelpEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QSizePolicy, QToolTip, QWidget

from kitlog.desktop import look
from kitlog.paint import service_band
from kitlog.paint.service_layout import FOOT, HEAD, ServiceLayout
from kitlog.paint.service_picture import ServicePicture
from kitlog.wording.translate import _


class BandEnd(QWidget):
    """The heads of the months, or the words under the band: they stay where they are when the lanes scroll."""

    def __init__(self, *, foot: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._foot = foot
        self._picture: ServicePicture | None = None
        self.setFixedHeight(look.px(FOOT if foot else HEAD))

    def show_picture(self, picture: ServicePicture) -> None:
        """Show another picture."""
        self._picture = picture
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the end of the band that this is."""
        if self._picture is None:
            return
        high = service_band.measure(self._picture, QApplication.font())
        top = self.height() - high if self._foot else 0.0
        with QPainter(self) as painter:
            painter.setFont(QApplication.font())
            service_band.paint(painter, QRectF(0, top, self.width(), high), self._picture, look.tokens())


class ServiceBand(QWidget):
    """The lanes of the months ahead.

    Attributes:
        chosen: the number of a lane.
    """

    chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.picture: ServicePicture | None = None
        self._told: Sequence[str] = ()
        self.current: int | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(_("Service, the months ahead"))

    def show_picture(self, picture: ServicePicture, told: Sequence[str]) -> None:
        """Show another picture; `told` is what each lane tells."""
        self.picture, self._told = picture, told
        if self.current is not None and self.current >= len(picture.lanes):
            self.current = None
        self.setAccessibleDescription(". ".join(told))
        self.updateGeometry()
        self.update()

    def point_at(self, lane: int | None) -> None:
        """Ring a lane."""
        self.current = lane
        self.update()

    def lane_rect(self, lane: int) -> QRectF:
        """Roughly where a lane lies, for scrolling to it."""
        if self.picture is None:
            return QRectF()
        return ServiceLayout(self.picture, self._whole(), look.lettering()).lane(lane)

    def sizeHint(self) -> QSize:
        """As high as its lanes."""
        high = 0.0 if self.picture is None else self._whole().height() - look.px(HEAD) - look.px(FOOT)
        return QSize(look.px(600), round(high) + 1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the band."""
        if self.picture is None:
            return
        with QPainter(self) as painter:
            painter.setFont(QApplication.font())
            service_band.paint(painter, self._whole(), self.picture, look.tokens(), self.current)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the lane under the pointer."""
        lane = self._lane_at(event.position())
        if lane is not None:
            self.chosen.emit(lane)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrow keys walk through the lanes."""
        step = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}.get(Qt.Key(event.key()), 0)
        count = len(self.picture.lanes) if self.picture else 0
        if not step or not count:
            super().keyPressEvent(event)
            return
        here = -1 if self.current is None else self.current
        self.chosen.emit(max(0, min(count - 1, here + step)))

    def event(self, event: QEvent) -> bool:
        """Tell rule, source and last record of the lane under the pointer."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            lane = self._lane_at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), "" if lane is None else self._told[lane], self)
            return True
        return super().event(event)

    def _lane_at(self, point: QPointF) -> int | None:
        if self.picture is None:
            return None
        return service_band.lane_at(self.picture, self._whole(), QApplication.font(), point)

    def _whole(self) -> QRectF:
        """Where the whole picture would lie, its heads above this widget."""
        high = 0.0 if self.picture is None else service_band.measure(self.picture, QApplication.font())
        return QRectF(0, -look.px(HEAD), self.width(), high)
