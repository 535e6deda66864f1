"""The strip of the five steps; their order is advice, every step can be opened at any time."""

from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.ring import draw_ring
from kitlog.desktop.parts.tab_strip import StripTab, TabStrip
from kitlog.desktop.repack_page.step_words import STEPS, StepWords
from kitlog.outing.ticks import Step
from kitlog.paint import step_ring
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

HIGH, LOW, RING = 56, 44, 24


class StepTab(StripTab):
    """One step."""

    high = LOW

    def __init__(self, step: Step, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.step = step
        self.shown: StepWords | None = None

    def show_words(self, words: StepWords) -> None:
        """Show how far it is."""
        self.shown = words
        self.say(words.title)
        self.setAccessibleName(f"{words.ring.number}. {words.title}: {words.count}")
        self.setToolTip(words.count)
        self.setAccessibleDescription(_("open") if words.ring.is_current else "")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ground, ring and words."""
        if self.shown is None:
            return
        t, px, words = look.tokens(), look.px, self.shown
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self.draw_ground(painter, current=words.ring.is_current)
            painter.setFont(QApplication.font())
            ring = QRectF(px(12), box.center().y() - px(RING) / 2, px(RING), px(RING))
            row = box.adjusted(px(44), 0, -px(8), 0)
            if look.lettering().width(words.title, Role.GROUP) > row.width():
                row.setLeft(px(8))
            else:
                step_ring.paint(painter, ring, words.ring, t)
            self._paint_words(painter, row, words)
            if self.hasFocus():
                draw_ring(painter, box.adjusted(2, 2, -2, -2), px(5))

    def _paint_words(self, painter: QPainter, row: QRectF, words: StepWords) -> None:
        """The title, and the count under it unless large letters leave no room for it; the tool tip has it too."""
        t, px, text, middle = look.tokens(), look.px, look.lettering(), row.center().y()
        fits = text.width(words.count, Role.SMALL) <= row.width()
        top = QRectF(row.left(), middle - px(19 if fits else 10), row.width(), px(20))
        text.draw(painter, top, words.title, Role.GROUP, t.ink)
        if fits:
            below = QRectF(row.left(), middle + px(1), row.width(), px(16))
            colour = t.state(words.mark) if words.mark in {Mark.STOP, Mark.LOOK} else t.muted
            text.draw(painter, below, words.count, Role.SMALL, colour)


class StepStrip(TabStrip):
    """All five steps on a strip of paper.

    Attributes:
        chosen: a step was pressed, by its word.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(_("Steps of the repack"), parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.tabs = {step: StepTab(step, self) for step in STEPS}
        self.lay(tuple(self.tabs.values()))
        for step, tab in self.tabs.items():
            tab.clicked.connect(lambda _on=False, name=step.value: self.chosen.emit(name))
        self.fold(low=False)

    def fold(self, *, low: bool) -> None:
        """44 instead of 56 where the window is low."""
        self.setFixedHeight(look.px(LOW if low else HIGH))

    def show_steps(self, words: list[StepWords]) -> None:
        """Show how far each step is."""
        for one in words:
            self.tabs[one.step].show_words(one)
