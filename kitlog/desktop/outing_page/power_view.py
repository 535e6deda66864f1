"""The power picture as a widget: read by pointer and keys, its phases dragged, told in words to screen readers."""

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter
from PySide6.QtWidgets import QApplication, QToolTip, QWidget

from kitlog.desktop import look
from kitlog.desktop.outing_page.phase_edges import EdgeHold, Scale, edge_near, hold, stepped
from kitlog.desktop.outing_page.power_said import reading_text
from kitlog.desktop.parts.canvas import Canvas
from kitlog.paint import power_lanes
from kitlog.paint.power_picture import PowerPicture, reading

STEP = 0.02
"""How far one press of an arrow key moves the reading line, as a share of the day."""

REACH = 5
"""How near to an edge a pointer takes it, in px of the design."""

_READ_KEYS: dict[int, float] = {Qt.Key.Key_Left: -STEP, Qt.Key.Key_Right: STEP}
_MOVE_KEYS: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
_EDGE_KEYS: dict[int, int] = {Qt.Key.Key_BracketLeft: -1, Qt.Key.Key_BracketRight: 1}
_DONE_KEYS = frozenset({Qt.Key.Key_Return, Qt.Key.Key_Enter})


class PowerView(Canvas):
    """Charge over the day.

    Left and Right, Home and End move the reading line. The end of a phase is dragged; with keys, [ and ] choose one, or
    it is the one next to the reading line; Ctrl with Left and Right moves it by five minutes, Enter keeps that. Esc
    gives a move up, then takes the reading line away.

    Attributes:
        cursor_at: where the reading line stands as a share of the day, None without one.
        edge: number of the phase whose end is chosen or under the pointer, None for none.
        moving: whether an edge has been moved, and neither kept nor given up.
        moved: an edge is at a likely duration: number of the phase, h. kept, given_up: it stays, or goes back.
    """

    moved = Signal(int, float)
    kept = Signal()
    given_up = Signal()

    def __init__(self, name: str, picture: PowerPicture, sentences: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self.setObjectName("power picture")
        self.picture, self._sentences = picture, sentences
        self._measured: dict[tuple[float, str], float] = {}
        self.cursor_at: float | None = None
        self.edge: int | None = None
        self.moving = False
        self._hold: EdgeHold | None = None
        self._scale = Scale(0.0, 0.0)
        self.setAccessibleDescription(sentences)

    def show_picture(self, picture: PowerPicture, sentences: str) -> None:
        """Show another picture of the same outing; reading line and edge stay, while one is moved the scale too."""
        before = self.measure(self.width())
        self.picture = self._scale.lay(picture, self.edge or 0) if self.moving else picture
        self._sentences = sentences
        self._measured.clear()
        if self.measure(self.width()) != before:
            self.updateGeometry()
        self.setAccessibleDescription(self.reading() or self._sentences)
        self.update()

    def measure(self, width: float) -> float:
        """As high as the lanes are many; a layout asks for it again and again."""
        font = QApplication.font()
        asked = (width, font.key())
        if asked not in self._measured:
            self._measured[asked] = power_lanes.measure(self.picture, width, font)
        return self._measured[asked]

    def draw(self, painter: QPainter, rect: QRectF) -> None:
        """Draw the lanes."""
        power_lanes.paint(painter, rect, self.picture, look.tokens(), self.cursor_at, self.edge)

    def ring(self) -> QRectF:
        """Around the lanes: the words beside them stay whole."""
        out = look.px(4)
        return self._bands().adjusted(-out, -out, out, out)

    def reading(self) -> str:
        """What stands under the reading line, as text; empty without one."""
        found = None if self.cursor_at is None else reading(self.picture, self.cursor_at)
        return "" if found is None else reading_text(self.picture, found)

    def move_to(self, at: float | None) -> None:
        """Stand the reading line at a share of the day, or take it away."""
        self.cursor_at = None if at is None else min(max(at, 0.0), 1.0)
        self.setAccessibleDescription(self.reading() or self._sentences)
        self.update()

    def choose_edge(self, number: int | None) -> None:
        """Choose the end of a phase, or none."""
        if number != self.edge:
            self.edge = number
            self.update()

    def give_up(self) -> None:
        """Put the edge back where it was."""
        self._hold = None
        if self.moving:
            self.moving = False
            self.given_up.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the reading line or an edge."""
        if not (self._edge_key(event) or self._reading_key(event)):
            super().keyPressEvent(event)

    def _reading_key(self, event: QKeyEvent) -> bool:
        at, key = self.cursor_at, event.key()
        if key in _READ_KEYS:
            self.move_to(0.0 if at is None else at + _READ_KEYS[key])
        elif key in {Qt.Key.Key_Home, Qt.Key.Key_End}:
            self.move_to(0.0 if key == Qt.Key.Key_Home else 1.0)
        elif key == Qt.Key.Key_Escape and at is not None:
            self.move_to(None)
        else:
            return False
        return True

    def _edge_key(self, event: QKeyEvent) -> bool:
        key, is_move = event.key(), bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if self._hold is not None:  # the pointer has it
            if key == Qt.Key.Key_Escape:
                self.give_up()
            return True
        if key in _EDGE_KEYS:
            self._step_edge(_EDGE_KEYS[key])
        elif is_move and key in _MOVE_KEYS:
            self._nudge(_MOVE_KEYS[key])
        elif key in _DONE_KEYS and self.moving:
            self._keep()
        elif key == Qt.Key.Key_Escape and (self.moving or self.edge is not None):
            self.give_up()
            self.choose_edge(None)
        else:
            return False
        return True

    def _step_edge(self, by: int) -> None:
        count = len(self.picture.phases)
        if self.moving or not count:
            return
        first = 0 if by > 0 else count - 1
        self.choose_edge(first if self.edge is None else (self.edge + by) % count)
        edge = self.edge or 0
        self.move_to(self.picture.edges[edge + 1])
        self.moved.emit(edge, self.picture.phases[edge].likely_h)

    def _nudge(self, by: int) -> None:
        if not self.picture.phases:
            return
        if self.edge is None:
            self.choose_edge(edge_near(self.picture, self.cursor_at or 0.0, reach=1.0) or 0)
        edge = self.edge or 0
        self._begin()
        self.moved.emit(edge, stepped(self.picture.phases[edge].likely_h, by))
        self.move_to(self.picture.edges[edge + 1])

    def _begin(self) -> None:
        """An edge begins to move, or goes on: the scale is that of the beginning."""
        if not self.moving:
            self.moving = True
            self._scale = Scale(self.picture.lasts_h, self.rect().right() + 1 - self._bands().right())

    def _keep(self) -> None:
        self._hold, self.moving = None, False
        self.kept.emit()

    def _bands(self) -> QRectF:
        return power_lanes.bands_rect(self.picture, QRectF(self.rect()), QApplication.font())

    def _edge_at(self, point: QPointF) -> int | None:
        bands = self._bands()
        reach = look.px(REACH)
        if bands.width() <= 0 or not bands.adjusted(-reach, 0, reach, 0).contains(point):
            return None
        return edge_near(self.picture, (point.x() - bands.left()) / bands.width(), reach / bands.width())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take an edge."""
        number = self._edge_at(event.position())
        if event.button() != Qt.MouseButton.LeftButton or number is None:
            super().mousePressEvent(event)
            return
        self.give_up()
        self._hold = hold(self.picture, number, self._place(event))
        self.choose_edge(number)
        self.move_to(None)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag the edge that is held; else the reading line follows the pointer over the bands."""
        if self._hold is None:
            self._read_at(event)
            return
        likely_h = self._hold.likely_at(self._place(event))
        if self.moving or abs(likely_h - self._hold.likely_h) > 1e-6:
            self._begin()
            self.moved.emit(self._hold.number, likely_h)

    def _place(self, event: QMouseEvent) -> float:
        """Where the pointer is, as a share of the bands' width."""
        bands = self._bands()
        return (event.position().x() - bands.left()) / max(1.0, bands.width())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Keep what was dragged."""
        if self._hold is None:
            super().mouseReleaseEvent(event)
        elif self.moving:
            self._keep()
        else:
            self._hold = None

    def _read_at(self, event: QMouseEvent) -> None:
        if self.moving:
            return
        bands, point = self._bands(), event.position()
        self.choose_edge(self._edge_at(point))
        shape = Qt.CursorShape.ArrowCursor if self.edge is None else Qt.CursorShape.SplitHCursor
        self.setCursor(shape)
        inside = bands.width() > 0 and bands.contains(point)
        self.move_to((point.x() - bands.left()) / bands.width() if inside else None)
        spots = power_lanes.spots(self.picture, QRectF(self.rect()), QApplication.font())
        said = next((words for room, words in spots if room.contains(point)), "")
        QToolTip.showText(event.globalPosition().toPoint(), said, self)

    def leaveEvent(self, event: QEvent) -> None:
        """The reading line goes with the pointer, unless the keys hold it."""
        super().leaveEvent(event)
        if not self.hasFocus() and not self.moving:
            self.move_to(None)
            self.choose_edge(None)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """What the keys have moved and not kept goes back; a menu or another window takes nothing away."""
        super().focusOutEvent(event)
        passing = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.MenuBarFocusReason)
        if event.reason() not in (*passing, Qt.FocusReason.ActiveWindowFocusReason):
            self.give_up()
            self.choose_edge(None)
