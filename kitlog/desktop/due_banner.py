"""What there is to be reminded of, in one line at the start; it asks nothing and waits for nobody."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.state_strip import StateStrip
from kitlog.paint.mark import Mark
from kitlog.wording.reminder_text import names_line, summary_line
from kitlog.wording.translate import _
from kitlog.workbench.change import Change
from kitlog.workbench.reminder_commands import ToRemember

CONCERNS = ("item", "rule", "record", "event", "flight")
"""Kinds of change that it hangs on."""


class DueBanner(StateStrip):
    """Hidden where nothing is overdue, due soon, or to go back; Esc or its button takes it away until the next start.

    Attributes:
        moved: it has come or gone, and the rest of the window has another place.
        wanted: the service list is asked for.
    """

    moved = Signal()
    wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Mark.LOOK, parent)
        self.show_act, self.close_act = Button(_("Show the service list"), Rank.ACT), Button(_("Close"), Rank.ACT)
        self.close_act.setAccessibleName(_("Close the reminder"))
        self.show_act.clicked.connect(self._go)
        self.close_act.clicked.connect(self.hide)
        self.setContentsMargins(0, look.px(6), 0, 0)
        row = QHBoxLayout(self)
        row.setContentsMargins(*(look.px(side) for side in (44, 8, 16, 8)))
        row.setSpacing(look.px(16))
        row.addLayout(self.words, 1)
        row.setAlignment(self.words, Qt.AlignmentFlag.AlignVCenter)
        for act in (self.show_act, self.close_act):
            row.addWidget(act, 0, Qt.AlignmentFlag.AlignVCenter)

    def say(self, found: ToRemember) -> None:
        """Show how much there is to do; nothing to do takes it away."""
        text = summary_line(len(found.overdue), len(found.due_soon), len(found.back))
        names = [row.item.name for row in (*found.overdue, *found.due_soon)] + [item.name for item in found.back]
        self.take_mark(Mark.STOP if found.overdue else Mark.LOOK)
        if text:
            self.put(_("{summary}: {names}").format(summary=text, names=names_line(names)), "")
        else:
            self.hide()

    def hears(self, change: Change) -> bool:
        """Whether it is there and says something of what changed."""
        return self.isVisible() and change.touches(*CONCERNS)

    def showEvent(self, event: QShowEvent) -> None:
        """Say that it takes room."""
        super().showEvent(event)
        if not event.spontaneous():
            self.moved.emit()

    def hideEvent(self, event: QHideEvent) -> None:
        """Say that its room is free."""
        super().hideEvent(event)
        if not event.spontaneous():
            self.moved.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc takes it away."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)

    def _go(self) -> None:
        self.hide()
        self.wanted.emit()
