"""A calm strip that says what went wrong, why, and what to do."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.text import Paragraph
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import FaultText
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

MOST_LINES = 4


class FaultStrip(QWidget):
    """Hidden until there is something to say; Esc or its button takes it away."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.what = Paragraph("", Role.NAME, "ink")
        self.why = Paragraph("", Role.SECOND, "muted")
        self.close_act = Button(_("Close this message"), Rank.ACT)
        self.close_act.clicked.connect(self.hide)
        px = look.px
        row = QHBoxLayout(self)
        row.setContentsMargins(px(44), px(10), px(16), px(10))
        row.setSpacing(px(16))
        words = QVBoxLayout()
        words.setSpacing(px(2))
        words.addWidget(self.what)
        words.addWidget(self.why)
        row.addLayout(words, 1)
        row.addWidget(self.close_act, 0, Qt.AlignmentFlag.AlignTop)
        self.hide()

    def say(self, text: FaultText) -> None:
        """Show a fault."""
        what = f"{text.where}: {text.what}" if text.where else text.what
        self.what.setText(first_upper(what))
        self.why.setText("\n".join((text.remedy, *text.more[:MOST_LINES])))
        self.setAccessibleName(self.what.text())
        self.setAccessibleDescription(self.why.text())
        self.show()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc takes it away."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the strip."""
        t, px = look.tokens(), look.px
        box = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(t.tint(t.stop, 0.3), 1))
            painter.setBrush(t.tile(Mark.STOP))
            painter.drawRoundedRect(box, px(6), px(6))
            draw_state(painter, QRectF(px(18), px(13), px(14), px(14)), Mark.STOP, t)
