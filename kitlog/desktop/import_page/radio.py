"""One answer of several, with its word."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QRadioButton, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.ring import draw_ring
from kitlog.paint.type_scale import Role

BOX = 18


class RadioField(QRadioButton):
    """An answer: a ring with a disc in it when it is the chosen one."""

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(words.replace("&", "&&"), parent)
        self.words = words
        self.setAccessibleName(words)

    def sizeHint(self) -> QSize:
        """The ring and its words."""
        return QSize(round(look.lettering().width(self.words, Role.BODY)) + look.px(38), look.px(28))

    def minimumSizeHint(self) -> QSize:
        """No narrower than its words."""
        return self.sizeHint()

    def hitButton(self, pos: object) -> bool:  # noqa: ARG002  # Qt's signature
        """All of it can be pressed."""
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Return chooses it, and nothing else: an answer never writes."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.click()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint ring and words."""
        t, px = look.tokens(), look.px
        box = QRectF(px(5), (self.height() - px(BOX)) / 2, px(BOX), px(BOX))
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(t.accent if self.isChecked() else t.outline, 1.5))
            painter.setBrush(t.surface)
            painter.drawEllipse(box.adjusted(0.75, 0.75, -0.75, -0.75))
            if self.isChecked():
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(t.accent)
                reach = px(5)
                painter.drawEllipse(QPointF(box.center()), reach, reach)
            row = QRectF(self.rect()).adjusted(px(32), 0, 0, 0)
            look.lettering().draw(painter, row, self.words, Role.NAME if self.isChecked() else Role.BODY, t.ink)
            if self.hasFocus():
                draw_ring(painter, box.adjusted(-4, -4, 4, 4), px(BOX) / 2 + 4)
