"""A card of paper for one question: what it is about, its state, and what can be answered."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.chip import StateMark
from kitlog.desktop.parts.text import CutText, Paragraph, Text
from kitlog.paint.mark import Mark
from kitlog.paint.strokes import pen
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

DASHES = (3.0, 3.0)
ANSWER_PX = 208
"""Room of an answer's words, the same on every card, in px of the design."""


class Card(QWidget):
    """A question on a card: dashed while it is open."""

    def __init__(self, about: str, question: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        px = look.px
        self.about, self.question = about, question
        self.setAccessibleName(f"{about}: {question}")
        self.rows = QVBoxLayout(self)
        self.rows.setContentsMargins(px(16), px(12), px(16), px(14))
        self.rows.setSpacing(px(4))
        head = QHBoxLayout()
        head.setSpacing(px(10))
        title = CutText(about, Role.GROUP)
        title.setMaximumWidth(px(260))
        head.addWidget(title)
        head.addWidget(CutText(question, Role.BODY), 1)
        self.chip = StateMark(_("open"), Mark.NOT_KNOWN)
        self.answered = Text(_("answered"), Role.SMALL, "muted")
        head.addWidget(self.chip)
        head.addWidget(self.answered)
        self.rows.addLayout(head)
        self.is_open = True
        self.show_state(is_open=True)

    def note(self, text: str) -> Paragraph:
        """A remark under what stands there."""
        said = Paragraph(text, Role.SMALL)
        self.rows.addWidget(said)
        return said

    def show_state(self, *, is_open: bool) -> None:
        """Say whether it waits for an answer."""
        self.is_open = is_open
        self.chip.setVisible(is_open)
        self.answered.setVisible(not is_open)
        self.setAccessibleDescription(self.chip.accessibleName() if is_open else self.answered.text())
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the card."""
        t = look.tokens()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(pen(t.outline, 1, DASHES) if self.is_open else pen(t.hairline, 1))
            painter.setBrush(t.sunk if self.is_open else t.surface)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), look.px(6), look.px(6))
