"""A question in the page or the dialog itself: what is at stake, the act, and staying, which has the focus."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button
from kitlog.desktop.parts.state_strip import StateStrip
from kitlog.paint.mark import Mark


class QuestionStrip(StateStrip):
    """Hidden until something is asked; Esc stays, as the button that has the focus does.

    Args:
        below: the buttons stand under the words, for narrow places.

    Attributes:
        do_act: does what was asked about; stay_act: leaves everything as it is.
    """

    def __init__(self, parent: QWidget | None = None, *, below: bool = False) -> None:
        super().__init__(Mark.LOOK, parent)
        self._do: Callable[[], object] = _nothing
        self._stay: Callable[[], object] = _nothing
        self.do_act, self.stay_act = Button(""), Button("")
        px = look.px
        whole = QVBoxLayout(self) if below else QHBoxLayout(self)
        whole.setContentsMargins(px(44), px(8), px(16), px(8))
        whole.setSpacing(px(8 if below else 12))
        whole.addLayout(self.words, 1)
        row = QHBoxLayout()
        row.setSpacing(px(12))
        row.addStretch()
        whole.addLayout(row)
        row.addWidget(self.do_act, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.stay_act, 0, Qt.AlignmentFlag.AlignVCenter)
        self.do_act.clicked.connect(self._done)
        self.stay_act.clicked.connect(self._stayed)

    def ask(
        self, what: str, more: str, do: tuple[str, Callable[[], object]], stay: tuple[str, Callable[[], object]]
    ) -> None:
        """Ask; `do` and `stay` are the words of the two buttons and what they do."""
        self.do_act.say(do[0])
        self.stay_act.say(stay[0])
        self._do, self._stay = do[1], stay[1]
        self.put(what, more)
        self.stay_act.setFocus(Qt.FocusReason.OtherFocusReason)

    def withdraw(self) -> bool:
        """Ask no more, without doing anything; whether the focus was here and has to go elsewhere."""
        had_focus = self.isAncestorOf(self.focusWidget())
        self.hide()
        return had_focus

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc stays; the arrows go from one button to the other, as Tab does."""
        if event.key() == Qt.Key.Key_Escape:
            self._stayed()
        elif event.key() in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            other = self.do_act if self.stay_act.hasFocus() else self.stay_act
            other.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            super().keyPressEvent(event)

    def _done(self) -> None:
        self.hide()
        self._do()

    def _stayed(self) -> None:
        self.hide()
        self._stay()


def _nothing() -> None:
    """What an unasked question does."""
