"""The leaves of the import on a strip of paper: questions, headings, items, how it was read."""

from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.ring import draw_ring
from kitlog.desktop.parts.tab_strip import StripTab, TabStrip
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

SHAPE = 12


class LeafTab(StripTab):
    """One leaf: its title, and below it in a few words what it holds, with a shape where something is open."""

    def __init__(self, title: str, parent: QWidget) -> None:
        super().__init__(title, parent)
        self.count, self.mark = "", Mark.NONE
        self.setCheckable(True)
        self.setAutoExclusive(True)

    def tell(self, count: str, mark: Mark) -> None:
        """Say what it holds."""
        self.count, self.mark = count, mark
        self.setAccessibleName(f"{self.words}: {count}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ground, title and count."""
        t, px, text, box = look.tokens(), look.px, look.lettering(), QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self.draw_ground(painter, current=self.isChecked())
            top = QRectF(px(14), px(4), box.width() - px(22), px(20))
            text.draw(painter, top, self.words, Role.GROUP, t.ink)
            below = QRectF(px(14), px(25), box.width() - px(22), px(16))
            if self.mark is not Mark.NONE:
                draw_state(painter, QRectF(below.left(), below.top() + px(2), px(SHAPE), px(SHAPE)), self.mark, t)
                below.setLeft(below.left() + px(SHAPE + 6))
            text.draw(painter, below, self.count, Role.SMALL, t.state(self.mark))
            if self.hasFocus():
                draw_ring(painter, box.adjusted(2, 2, -2, -2), px(5))


class LeafStrip(TabStrip):
    """The strip.

    Attributes:
        chosen: a leaf was chosen, by its number.
    """

    chosen = Signal(int)

    def __init__(self, titles: tuple[str, ...], parent: QWidget | None = None) -> None:
        super().__init__(_("Leaves of the import"), parent)
        self.setFixedHeight(look.px(LeafTab.high) + 2)
        self.tabs = [LeafTab(title, self) for title in titles]
        self.lay(self.tabs)
        for number, tab in enumerate(self.tabs):
            tab.clicked.connect(lambda _on=False, n=number: self.chosen.emit(n))

    def open(self, number: int) -> None:
        """Mark a leaf as the open one."""
        self.tabs[number].setChecked(True)
