"""Empty states: nothing there yet, and nothing found."""

from collections.abc import Callable

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.parts.button import Button, Rank
from kitlog.desktop.parts.text import Paragraph, Text
from kitlog.paint import bench
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import _

CENTRED = Qt.AlignmentFlag.AlignHCenter


class BarePicture(QWidget):
    """The bare bench."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """The size of the drawing."""
        return QSize(look.px(bench.WIDTH), look.px(bench.HEIGHT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the bench."""
        with QPainter(self) as painter:
            bench.paint(painter, QRectF(self.rect()), look.tokens())


class EmptyState(QWidget):
    """Heading, what to do, and the acts that do it; the first act has the focus."""

    def __init__(self, heading: str, lines: str, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        px = look.px
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.rows = QVBoxLayout(self)
        self.rows.setSpacing(0)
        self.rows.addStretch(2)
        self.rows.addWidget(BarePicture(), 0, CENTRED)
        self.rows.addSpacing(px(24))
        self.rows.addWidget(Text(heading, Role.HEADING), 0, CENTRED)
        self.rows.addSpacing(px(8))
        said = Paragraph(lines, Role.SECTION, "muted")
        said.setFont(_lead())
        said.setAlignment(CENTRED)
        said.setMaximumWidth(px(560))
        self.rows.addLayout(_centred(said))
        self.rows.addSpacing(px(24))
        self._acts = QHBoxLayout()
        self._acts.setSpacing(px(16))
        self.rows.addLayout(self._acts)
        self._acts.addStretch()
        self._acts.addStretch()
        self.rows.addSpacing(px(12))
        self._below = QVBoxLayout()
        self._below.setSpacing(px(4))
        self.rows.addLayout(self._below)
        if hint:
            below = Paragraph(hint, Role.SECOND, "muted")
            below.setAlignment(CENTRED)
            self._below.addWidget(below)
        self.rows.addStretch(3)
        self.buttons: list[Button] = []

    def minimumSizeHint(self) -> QSize:
        """It asks for no room while the page is not empty."""
        return QSize(1, 1) if self.isHidden() else super().minimumSizeHint()

    def act(self, words: str, rank: Rank = Rank.PLAIN) -> Button:
        """Add an act beside the others, or one as text below them."""
        button = Button(words, rank, large=rank is not Rank.ACT)
        if rank is Rank.ACT:
            self._below.insertWidget(0, button, 0, CENTRED)
        else:
            button.setMinimumWidth(look.px(152))
            self._acts.insertWidget(self._acts.count() - 1, button)
        self.buttons.append(button)
        return button

    def offer_demo(self, open_demo: Callable[[], object] | None) -> None:
        """Add the act that opens the demo kit, if there is one to open."""
        if open_demo is not None:
            self.act(_("or open the demo kit to look around"), Rank.ACT).clicked.connect(open_demo)


class NothingFound(QWidget):
    """A filter that leaves nothing: one line and what to do about it.

    Attributes:
        cleared: the filter is to be cleared.
    """

    cleared = Signal()

    def __init__(self, words: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        rows = QVBoxLayout(self)
        rows.addSpacing(look.px(48))
        rows.addWidget(Text(words, Role.BODY, "muted"), 0, CENTRED)
        self.act = Button(_("Clear filter"), Rank.ACT)
        self.act.clicked.connect(self.cleared)
        rows.addWidget(self.act, 0, CENTRED)
        rows.addStretch()


def _centred(widget: QWidget) -> QHBoxLayout:
    """As wide as it may be, in the middle."""
    row = QHBoxLayout()
    row.addStretch(1)
    row.addWidget(widget, 100)
    row.addStretch(1)
    return row


def _lead() -> QFont:
    made = QFont(look.font(Role.SECTION))
    made.setWeight(QFont.Weight.Normal)
    return made
