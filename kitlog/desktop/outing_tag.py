"""The luggage tag above the sheet: the outing being worked on, with its counts."""

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.chip import ChipButton
from kitlog.desktop.parts.line import Hairline
from kitlog.desktop.parts.text import CutText, Text
from kitlog.paint import luggage_tag
from kitlog.paint.mark import Mark
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

HIGH = 40


class OutingTag(QWidget):
    """What the tag says; it is told everything.

    Attributes:
        opened: a count was pressed: the state whose worst finding is wanted.
        other: another outing, or a first one, is wanted.
    """

    opened = Signal(str)
    other = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(look.px(HIGH))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.day = Text("", Role.GROUP)
        self.type = Text("")
        self.site = CutText("", Role.BODY, "muted")
        self.site.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        self.near = Text("", Role.BODY, "muted")
        self.chips = {mark: ChipButton("", mark) for mark in (Mark.STOP, Mark.LOOK, Mark.NOT_KNOWN)}
        self._line = Hairline(upright=True)
        self.act = Button("", Rank.ACT)
        self._assemble()
        for mark, chip in self.chips.items():
            chip.clicked.connect(lambda _on=False, state=mark.value: self.opened.emit(state))
        self.act.clicked.connect(self.other)
        self.show_none()

    def show_none(self) -> None:
        """No outing yet."""
        self._say("", "", _("No outing yet"), "")
        self.show_counts({})
        self.act.say(_("New outing"))
        self.act.setVisible(True)
        self._line.setVisible(False)

    def show_outing(self, day: str, types: str, site: str, near: str) -> None:
        """Show the outing being worked on; its counts come separately."""
        self._say(day, types, site, near)
        self.act.say(_("Other outing"))

    def show_counts(self, counts: dict[Mark, tuple[int, str]]) -> None:
        """Show how many findings are in which state, with the words for it; a count of none is left out."""
        for mark, chip in self.chips.items():
            number, words = counts.get(mark, (0, ""))
            chip.say(words)
            chip.setVisible(number > 0)

    def lay_out(self, *, brief: bool, thin: bool = False) -> None:
        """Leave out what a narrow window has no room for; the menu and the plan have it."""
        empty = not self.day.text()
        self.type.setVisible(not thin and bool(self.type.text()))
        self.near.setVisible(not brief and bool(self.near.text()))
        self.act.setVisible(empty or not brief)
        self._line.setVisible(not empty and not brief)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the tag; the paper shows through its hole."""
        with QPainter(self) as painter:
            painter.setFont(look.font(Role.BODY))
            luggage_tag.paint(painter, QRectF(self.rect()), look.tokens())

    def _say(self, day: str, types: str, site: str, near: str) -> None:
        for label, words in ((self.day, day), (self.type, types), (self.site, site), (self.near, near)):
            label.setText(words)
            label.setVisible(bool(words))

    def _assemble(self) -> None:
        px = look.px
        row = QHBoxLayout(self)
        row.setContentsMargins(px(luggage_tag.WORDS_AT), 0, px(16), 0)
        row.setSpacing(px(16))
        for label in (self.day, self.type, self.site, self.near):
            row.addWidget(label)
        row.addStretch(1)
        chips = QHBoxLayout()
        chips.setSpacing(px(8))
        for chip in self.chips.values():
            chips.addWidget(chip)
        row.addLayout(chips)
        self._line.setFixedHeight(px(20))
        row.addWidget(self._line, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.act)
