"""The strip of the five steps; their order is advice, every step can be opened at any time."""

from PySide6.QtCore import QLineF, QRectF, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QHBoxLayout, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.pressable import Pressable
from kitlog.desktop.parts.ring import draw_ring
from kitlog.desktop.repack_page.step_words import STEPS, StepWords
from kitlog.outing.ticks import Step
from kitlog.paint import step_ring
from kitlog.paint.mark import Mark
from kitlog.paint.strokes import pen
from kitlog.paint.tokens import Tokens, blend
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

HIGH, LOW, RING = 56, 44, 24
DASHES = (3.0, 3.0)


class StepTab(Pressable):
    """One step."""

    ring_radius = None

    def __init__(self, step: Step, parent: QWidget | None = None) -> None:
        super().__init__("", parent)
        self.step = step
        self.shown: StepWords | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_words(self, words: StepWords) -> None:
        """Show how far it is."""
        self.shown = words
        self.say(words.title)
        self.setAccessibleName(f"{words.ring.number}. {words.title}: {words.count}")
        self.setAccessibleDescription(_("open") if words.ring.is_current else "")
        self.update()

    def sizeHint(self) -> QSize:
        """All five share the strip."""
        return QSize(look.px(150), look.px(LOW))

    def minimumSizeHint(self) -> QSize:
        """Narrower, its words are cut."""
        return QSize(look.px(96), look.px(LOW))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ground, ring and words."""
        if self.shown is None:
            return
        t, px, words = look.tokens(), look.px, self.shown
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint_ground(painter, box, t)
            painter.setFont(QApplication.font())
            ring = QRectF(px(12), box.center().y() - px(RING) / 2, px(RING), px(RING))
            step_ring.paint(painter, ring, words.ring, t)
            row = box.adjusted(px(44), 0, -px(8), 0)
            text = look.lettering()
            top = QRectF(row.left(), box.center().y() - px(19), row.width(), px(20))
            text.draw(painter, top, words.title, Role.GROUP, t.ink)
            below = QRectF(row.left(), box.center().y() + px(1), row.width(), px(16))
            colour = t.state(words.mark) if words.mark in {Mark.STOP, Mark.LOOK} else t.muted
            text.draw(painter, below, words.count, Role.SMALL, colour)
            if self.hasFocus():
                draw_ring(painter, box.adjusted(2, 2, -2, -2), px(5))

    def _paint_ground(self, painter: QPainter, box: QRectF, t: Tokens) -> None:
        current = self.shown is not None and self.shown.ring.is_current
        if current:
            painter.fillRect(box, t.selection)
            painter.fillRect(QRectF(box.left(), box.bottom() - look.px(2), box.width(), look.px(2)), t.accent)
        elif self.underMouse():
            painter.fillRect(box, blend(t.ink, 0.06, t.sunk))


class StepStrip(QWidget):
    """All five steps on a strip of paper.

    Attributes:
        chosen: a step was pressed, by its word.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(_("Steps of the repack"))
        row = QHBoxLayout(self)
        row.setContentsMargins(1, 1, 1, 1)
        row.setSpacing(1)
        self.tabs = {step: StepTab(step, self) for step in STEPS}
        for step, tab in self.tabs.items():
            row.addWidget(tab, 1)
            tab.clicked.connect(lambda _on=False, name=step.value: self.chosen.emit(name))
        self.fold(low=False)

    def fold(self, *, low: bool) -> None:
        """44 instead of 56 where the window is low."""
        self.setFixedHeight(look.px(LOW if low else HIGH))

    def show_steps(self, words: list[StepWords]) -> None:
        """Show how far each step is."""
        for one in words:
            self.tabs[one.step].show_words(one)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the strip and its perforations."""
        t = look.tokens()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(t.strong_line, 1))
            painter.setBrush(t.sunk)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), look.px(6), look.px(6))
            painter.setPen(pen(t.strong_line, 1, DASHES))
            for tab in tuple(self.tabs.values())[1:]:
                x = tab.geometry().left() - 0.5
                painter.drawLine(QLineF(x, 2, x, self.height() - 2))
