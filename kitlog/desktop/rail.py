"""The rail of index tabs that grow out of the sheet."""

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from kitlog.desktop import look
from kitlog.desktop.page import PAGES
from kitlog.desktop.parts.pressable import Pressable
from kitlog.desktop.parts.ring import draw_ring
from kitlog.paint.icons import IconSet
from kitlog.paint.lettering import CENTRE
from kitlog.paint.type_scale import Role
from kitlog.wording.translate import N_, _

NAMES = {
    "kit": N_("Kit"),
    "service": N_("Service"),
    "outing": N_("Outing"),
    "repack": N_("Repack"),
    "flights": N_("Flights"),
}

LEAST_PX = 28
"""The least height of a tab without its word, in px of the design."""


class Tab(Pressable):
    """One index tab: icon over word, or the icon alone."""

    ring_radius = None

    def __init__(self, name: str, icons: IconSet) -> None:
        super().__init__(_(NAMES[name]))
        self.name = name
        self._icons = icons
        self._bare = False
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Maximum)

    def bare(self, *, bare: bool) -> None:
        """Show the icon alone, with the word as tool tip."""
        self._bare = bare
        self.setToolTip(self.words if bare else "")
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        """64 high, 48 without the word."""
        return QSize(look.px(48 if self._bare else 80), look.px(48 if self._bare else 64))

    def minimumSizeHint(self) -> QSize:
        """Lower without the word, where large letters meet a low screen."""
        hint = self.sizeHint()
        return QSize(hint.width(), look.px(LEAST_PX) if self._bare else hint.height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint icon, word and the stroke of the open tab; the ground is the window's."""
        t, px, box = look.tokens(), look.px, QRectF(self.rect())
        lit = self.isChecked() or self.underMouse()
        colour = t.accent if self.isChecked() else t.ink if lit else t.muted
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.isChecked():
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(t.accent)
                stroke = QRectF(0, px(12), px(3), box.height() - px(24))
                painter.drawRoundedRect(stroke, 1.5, 1.5)
            middle = box.center().y() if self._bare else box.top() + px(25)
            side = px(26)
            self._icons.draw(
                painter, QRectF(box.center().x() - side / 2, middle - side / 2, side, side), self.name, colour
            )
            if not self._bare:
                word = QRectF(box.left(), box.top() + px(40), box.width(), px(16))
                look.lettering().draw(painter, word, self.words, Role.CHIP, colour, CENTRE)
            if self.hasFocus():
                draw_ring(painter, box.adjusted(px(6), px(3), -px(4), -px(3)), px(6))


class Rail(QWidget):
    """The tabs of the pages, in the order of a pilot's year.

    Attributes:
        chosen: the name of the page asked for.
    """

    chosen = Signal(str)

    def __init__(self, icons: IconSet, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tabs = {name: Tab(name, icons) for name in PAGES}
        rows = QVBoxLayout(self)
        rows.setContentsMargins(look.px(8), look.px(8), 0, 0)
        rows.setSpacing(look.px(8))
        for tab in self.tabs.values():
            rows.addWidget(tab)
            tab.clicked.connect(lambda _on=False, name=tab.name: self.chosen.emit(name))
        rows.addStretch()
        self.setAccessibleName(_("Pages"))

    def open(self, name: str) -> None:
        """Mark a page as open."""
        self.tabs[name].setChecked(True)

    def open_tab(self) -> Tab:
        """The tab of the open page."""
        return next(tab for tab in self.tabs.values() if tab.isChecked())

    def bare(self, *, bare: bool) -> None:
        """Show icons alone."""
        for tab in self.tabs.values():
            tab.bare(bare=bare)
        self.setFixedWidth(look.px(56 if bare else 88))
