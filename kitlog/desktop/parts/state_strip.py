"""A calm strip in the colour of a state: what it is, in a line, and more below it."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.text import Paragraph
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.type_scale import Role


class StateStrip(QWidget):
    """Hidden until there is something to say; what stands beside the words is up to those that are made of it."""

    def __init__(self, mark: Mark, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._mark = mark
        self.what, self.more = Paragraph("", Role.NAME, "ink"), Paragraph("", Role.SECOND, "muted")
        self.words = QVBoxLayout()
        self.words.setSpacing(look.px(2))
        self.words.addWidget(self.what)
        self.words.addWidget(self.more)
        self.hide()

    def put(self, what: str, more: str) -> None:
        """Show these words."""
        self.what.setText(what)
        self.more.setText(more)
        self.more.setVisible(bool(more))
        self.setAccessibleName(what)
        self.setAccessibleDescription(more)
        self.show()

    def take_mark(self, mark: Mark) -> None:
        """Take the colour and the shape of another state."""
        self._mark = mark
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the strip."""
        t, px = look.tokens(), look.px
        there = QRectF(self.contentsRect())
        box = there.adjusted(0.5, 0.5, -0.5, -0.5)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(t.tint(t.state(self._mark), 0.3), 1))
            painter.setBrush(t.tile(self._mark))
            painter.drawRoundedRect(box, px(6), px(6))
            draw_state(painter, QRectF(px(18), there.top() + px(13), px(14), px(14)), self._mark, t)
