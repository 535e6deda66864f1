"""A list and what belongs to its current row: beside each other, or one in place of the other if room is scarce."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.line import Hairline

ANY_WIDTH = 16_777_215
"""Qt's own number for a width without a limit."""


class TwoSides(QWidget):
    """Left a list, right its details.

    Args:
        left: the list.
        right: what belongs to it.
        to_right: words of the act that shows the right side in one column; the page puts it where it fits.
        to_left: words of the act that leads back; Esc does the same.
    """

    def __init__(self, left: QWidget, right: QWidget, to_right: str, to_left: str) -> None:
        super().__init__()
        self.left, self.right = left, right
        self.open_act = Button(to_right, Rank.ACT)
        self.back_act = Button(to_left, Rank.ACT)
        self._narrow = False
        self._line = Hairline(upright=True)
        self._beside = QWidget()
        column = QVBoxLayout(self._beside)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        back = QHBoxLayout()
        back.setContentsMargins(look.px(24), 0, 0, 0)
        back.addWidget(self.back_act)
        back.addStretch()
        column.addLayout(back)
        column.addWidget(right, 1)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        for widget, stretch in ((left, 1), (self._line, 0), (self._beside, 0)):
            row.addWidget(widget, stretch)
        self.open_act.clicked.connect(self.show_right)
        self.back_act.clicked.connect(self.show_left)

    def lay_out(self, *, narrow: bool, right_px: int) -> None:
        """Two columns with `right_px` (of the design) for the right one, or one column."""
        self._narrow = narrow
        self._beside.setMinimumWidth(0 if narrow else look.px(right_px))
        self._beside.setMaximumWidth(ANY_WIDTH if narrow else look.px(right_px))
        self.show_left()

    def show_left(self) -> None:
        """The list, and beside it the right side if there is room."""
        had_focus = self._beside.isAncestorOf(self.focusWidget())
        self.left.setVisible(True)
        self._beside.setVisible(not self._narrow)
        self._line.setVisible(not self._narrow)
        self.back_act.setVisible(False)
        self.open_act.setVisible(self._narrow)
        if self._narrow and had_focus:
            self.open_act.setFocus()

    def show_right(self) -> None:
        """The right side in place of the list."""
        if self._narrow:
            self.left.setVisible(False)
            self._beside.setVisible(True)
            self.back_act.setVisible(True)
            self.back_act.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc leads back to the list."""
        if event.key() == Qt.Key.Key_Escape and self.back_act.isVisible():
            self.show_left()
        else:
            super().keyPressEvent(event)
