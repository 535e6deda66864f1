"""The line under the sheet: the stance, when it was last saved, what undo would take back."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.fold import Fold
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.text import CutText, Text
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import N_, _

STANCE = N_(
    "Planning figures, not a promise. The maker’s manual, national rules and licensed inspectors and packers have the "
    "last word."
)
STANCE_BRIEF = N_("Planning figures; manuals, rules and inspectors have the last word.")

LEAST_UNDO_PX = 120
"""Room for what undo would take back, in px of the design; it has more where the stance leaves more."""


class StatusLine(QWidget):
    """What stands under the sheet.

    Attributes:
        undo: the last step is to be taken back.
    """

    undo = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(look.px(32))
        self.stance = CutText(_(STANCE), Role.SMALL, "muted")
        self.saved = Text("", Role.SMALL, "muted")
        self._dot = Text("·", Role.SMALL, "muted")
        self.undo_act = Button("", Rank.ACT, quiet=True)
        self.undo_act.clicked.connect(self.undo)
        self.undo_act.give_way()
        self.nothing = Text(_("nothing to undo"), Role.SMALL, "muted")
        self.busy = Text("", Role.SMALL, "ink")
        self.busy.hide()
        self._narrow = False
        row = self._row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.px(10))
        row.addWidget(self.stance, 1)
        for widget in (self.busy, self.saved, self._dot, self.undo_act, self.nothing):
            row.addWidget(widget)
        self.show_undo("")

    def show_saved(self, text: str) -> None:
        """When it was last saved, or the name of the data file."""
        self.saved.setText(text)
        self._share()

    def show_undo(self, text: str) -> None:
        """What undo would take back, empty for nothing."""
        self.undo_act.say(text)
        self.undo_act.setToolTip(text)
        self.undo_act.setVisible(bool(text))
        self._share()
        self.nothing.setVisible(not text)

    def show_busy(self, text: str) -> None:
        """What is being done, in place of what was done last; empty for nothing any more."""
        self.busy.setText(text)
        self.busy.setVisible(bool(text))
        for label in (self.saved, self._dot):
            label.setVisible(not text and not self._narrow)
        for act in (self.undo_act, self.nothing):
            act.setVisible(not text)
        if not text:
            self.show_undo(self.undo_act.words)

    def lay_out(self, fold: Fold) -> None:
        """The short form for a narrow window; in one column the stance goes before the time of the last step."""
        self.stance.setText(_(STANCE_BRIEF if fold.middle else STANCE))
        self.stance.setAccessibleDescription(_(STANCE))
        self._narrow = fold.narrow
        for widget in (self.saved, self._dot):
            widget.setVisible(not fold.narrow and self.busy.isHidden())
        self._share()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """More room for what undo would take back."""
        super().resizeEvent(event)
        self._share()

    def _share(self) -> None:
        """The stance is whole first: a long name in what undo would take back must not push it away."""
        gap = self._row.spacing()
        taken = self.stance.sizeHint().width() + gap
        for widget in (self.saved, self._dot):
            taken += 0 if widget.isHidden() else widget.sizeHint().width() + gap
        self.undo_act.setMaximumWidth(max(self.width() - taken, look.px(LEAST_UNDO_PX)))
