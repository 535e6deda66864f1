"""Some lines of text in a form: Tab leaves it, and the wheel scrolls the form unless one writes in it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from kitlog.desktop import look
from kitlog.paint.type_scale import Role


class NoteField(QPlainTextEdit):
    """Text of several lines; `high` is in px of the design."""

    def __init__(self, high: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFont(look.font(Role.BODY))
        self.setTabChangesFocus(True)
        self.setFixedHeight(look.px(high))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """It scrolls its own lines only while it has the focus."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()
