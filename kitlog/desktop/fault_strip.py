"""A calm strip that says what went wrong, why, and what to do."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.state_strip import StateStrip
from kitlog.paint.mark import Mark
from kitlog.wording.faults import FaultText
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

MOST_LINES = 4


class FaultStrip(StateStrip):
    """Hidden until there is something to say; Esc or its button takes it away.

    Attributes:
        gone: it has been taken away, and its room is free.
    """

    gone = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Mark.STOP, parent)
        self.close_act = Button(_("Close this message"), Rank.ACT)
        self.close_act.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(*(look.px(side) for side in (44, 10, 16, 10)))
        row.setSpacing(look.px(16))
        row.addLayout(self.words, 1)
        row.addWidget(self.close_act, 0, Qt.AlignmentFlag.AlignTop)

    def say(self, text: FaultText) -> None:
        """Show a fault."""
        what = f"{text.where}: {text.what}" if text.where else text.what
        self.put(first_upper(what), "\n".join((text.remedy, *text.more[:MOST_LINES])))

    def hideEvent(self, event: QHideEvent) -> None:
        """Say that it is gone."""
        super().hideEvent(event)
        if not event.spontaneous():
            self.gone.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc takes it away."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)
