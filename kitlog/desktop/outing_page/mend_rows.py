"""Changes that would help the power as rows: what to do, what it gains, and the act that takes it into the plan."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from kitlog.budget.result import Remedy
from kitlog.desktop import look
from kitlog.desktop.outing_page.tile_words import short_act
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.section import clear
from kitlog.desktop.parts.text import Paragraph
from kitlog.packing.power_mending import Mend, Mending
from kitlog.paint.type_scale import Role
from kitlog.wording.findings import Names
from kitlog.wording.power_mending_text import MendWords, mend_words
from kitlog.wording.translate import ngettext

Doing = Callable[[], object]
Act = Callable[[Remedy], Doing | None]
"""What a change does when it is pressed, None for advice alone."""

MOST_SHOWN = 5
"""So many changes are shown at first. A choice: more is a list to be studied."""


class MendRow(QWidget):
    """One change; a change that would make something worse has no act."""

    def __init__(self, mend: Mend, words: MendWords, names: Names, do: Doing | None) -> None:
        super().__init__()
        self.mend, self.words = mend, words
        rows = QVBoxLayout(self)
        rows.setContentsMargins(look.px(12), look.px(4), 0, look.px(6))
        rows.setSpacing(look.px(2))
        self.said = Paragraph(words.said)
        rows.addWidget(Paragraph(words.what, Role.NAME, "ink"))
        rows.addWidget(self.said)
        self.act: Button | None = None
        if do is not None and not mend.brings:
            self.act = Button(short_act(mend.remedy, names), Rank.ACT).give_way()
            self.act.setObjectName(f"mend/{mend.remedy.code}/{'/'.join(mend.remedy.items)}")
            self.act.setAccessibleName(f"{self.act.words}: {words.what}")
            self.act.clicked.connect(lambda _on=False: do())
            rows.addWidget(self.act)
        self.setAccessibleName(f"{words.what}: {words.said}")

    def show_words(self, words: MendWords) -> None:
        """The chance has been drawn."""
        if words != self.words:
            self.words = words
            self.said.say(words.said)
            self.setAccessibleName(f"{words.what}: {words.said}")

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint a hairline below."""
        with QPainter(self) as painter:
            painter.fillRect(0, self.height() - 1, self.width(), 1, look.tokens().hairline)


class MendRows(QWidget):
    """The changes that gain something, best first.

    Attributes:
        rows: those that are shown; more: shows the others; grown: it has shown them.
    """

    grown = Signal()

    def __init__(self, names: Names, act: Act, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._names, self._act = names, act
        self._mending: Mending | None = None
        self._all = False
        self.rows: list[MendRow] = []
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        self._places = QVBoxLayout()
        self._places.setSpacing(0)
        whole.addLayout(self._places)
        self.more = Button("", Rank.ACT, quiet=True)
        self.more.setObjectName("more changes")
        self.more.clicked.connect(self._show_all)
        whole.addWidget(self.more)
        self.more.hide()

    def show_mending(self, mending: Mending) -> bool:
        """Show what is known; whether there are other rows now: those that were there already only say more."""
        self._mending = mending
        wanted = [one for one in mending.mends if one.gains]
        shown = wanted if self._all else wanted[:MOST_SHOWN]
        is_other = [_same(row.mend) for row in self.rows] != [_same(one) for one in shown]
        if is_other:
            self._lay_out(shown, mending)
        for row, one in zip(self.rows, shown, strict=True):
            row.mend = one
            row.show_words(mend_words(one, mending, self._names))
        left = len(wanted) - len(shown)
        if left:
            self.more.say(ngettext("Show {n} more change", "Show {n} more changes", left).format(n=left))
        self.more.setVisible(bool(left))
        self.setVisible(bool(shown))
        return is_other

    def _lay_out(self, shown: Sequence[Mend], mending: Mending) -> None:
        clear(self._places)
        self.rows = [
            MendRow(one, mend_words(one, mending, self._names), self._names, self._act(one.remedy)) for one in shown
        ]
        for row in self.rows:
            self._places.addWidget(row)

    def _show_all(self) -> None:
        self._all = True
        first = len(self.rows)
        if self._mending is not None:
            self.show_mending(self._mending)
            self.grown.emit()
        for row in self.rows[first:]:
            if row.act is not None:
                row.act.setFocus()
                return


def _same(one: Mend) -> tuple[str, tuple[str, ...], str]:
    """What tells one change from another."""
    return one.remedy.code, one.remedy.items, repr(one.weighed.candidate.facts)
