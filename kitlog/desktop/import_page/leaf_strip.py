"""The leaves of the import on a strip of paper: questions, headings, items, how it was read."""

from PySide6.QtCore import QLineF, QRectF, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.pressable import Pressable
from kitlog.desktop.parts.ring import draw_ring
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import blend
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

HIGH, SHAPE = 48, 12
DASHES = (3.0, 3.0)


class LeafTab(Pressable):
    """One leaf: its title, and below it in a few words what it holds, with a shape where something is open."""

    ring_radius = None

    def __init__(self, title: str, parent: QWidget) -> None:
        super().__init__(title, parent)
        self.count, self.mark = "", Mark.NONE
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def tell(self, count: str, mark: Mark) -> None:
        """Say what it holds."""
        self.count, self.mark = count, mark
        self.setAccessibleName(f"{self.words}: {count}")
        self.update()

    def sizeHint(self) -> QSize:
        """All share the strip."""
        return QSize(look.px(150), look.px(HIGH))

    def minimumSizeHint(self) -> QSize:
        """Narrower, its words are cut."""
        return QSize(look.px(96), look.px(HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ground, title and count."""
        t, px, text, box = look.tokens(), look.px, look.lettering(), QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.isChecked():
                painter.fillRect(box, t.selection)
                painter.fillRect(QRectF(box.left(), box.bottom() - px(2), box.width(), px(2)), t.accent)
            elif self.underMouse():
                painter.fillRect(box, blend(t.ink, 0.06, t.sunk))
            top = QRectF(px(14), px(4), box.width() - px(22), px(20))
            text.draw(painter, top, self.words, Role.GROUP, t.ink)
            below = QRectF(px(14), px(25), box.width() - px(22), px(16))
            if self.mark is not Mark.NONE:
                draw_state(painter, QRectF(below.left(), below.top() + px(2), px(SHAPE), px(SHAPE)), self.mark, t)
                below.setLeft(below.left() + px(SHAPE + 6))
            text.draw(painter, below, self.count, Role.SMALL, t.state(self.mark))
            if self.hasFocus():
                draw_ring(painter, box.adjusted(2, 2, -2, -2), px(5))


class LeafStrip(QWidget):
    """The strip.

    Attributes:
        chosen: a leaf was chosen, by its number.
    """

    chosen = Signal(int)

    def __init__(self, titles: tuple[str, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(_("Leaves of the import"))
        self.setFixedHeight(look.px(HIGH) + 2)
        row = QHBoxLayout(self)
        row.setContentsMargins(1, 1, 1, 1)
        row.setSpacing(1)
        self.tabs = [LeafTab(title, self) for title in titles]
        for number, tab in enumerate(self.tabs):
            row.addWidget(tab, 1)
            tab.clicked.connect(lambda _on=False, n=number: self.chosen.emit(n))

    def open(self, number: int) -> None:
        """Mark a leaf as the open one."""
        self.tabs[number].setChecked(True)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the strip and its perforations."""
        t = look.tokens()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(t.strong_line, 1))
            painter.setBrush(t.sunk)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), look.px(6), look.px(6))
            painter.setPen(pen(t.strong_line, 1, DASHES))
            for tab in self.tabs[1:]:
                x = tab.geometry().left() - 0.5
                painter.drawLine(QLineF(x, 2, x, self.height() - 2))
