"""The bar of a reading that takes longer, with the act that stops it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.text import Text
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

AFTER_S = 0.5
"""What is quicker shows no bar."""
MOST = 1000


class Waiting(QWidget):
    """Hidden until the work has taken half a second.

    Attributes:
        stopped: the pilot does not want to wait.
    """

    stopped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = Text("", Role.SECOND, "muted")
        self.bar = QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(_("How far the reading is"))
        self.cancel = Button(_("Stop reading"))
        self.cancel.clicked.connect(self.stopped)
        column = QVBoxLayout()
        column.setSpacing(look.px(6))
        column.addWidget(self.words)
        column.addWidget(self.bar)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(16))
        row.addLayout(column, 1)
        row.addWidget(self.cancel)
        self.hide()

    def tell(self, seconds: float, share: float, what: str) -> None:
        """Show how far it is, once it has taken a while; a share of 1 or none means that nobody knows."""
        known = 0 < share < 1
        self.bar.setRange(0, MOST if known else 0)
        self.bar.setValue(round(share * MOST))
        self.words.setText(what)
        if seconds >= AFTER_S and self.isHidden():
            self.show()
