"""Dropping files: the page says what letting go would do, and the window takes the drop while the page is shown."""

from collections.abc import Callable, Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import QEvent, QObject, QRectF, Qt, QTimer, QUrl
from PySide6.QtGui import QDropEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from kitlog.desktop import look
from kitlog.desktop.import_page.table_input import TableInput, dropped
from kitlog.fault import Fault, InputFault
from kitlog.paint.lettering import CENTRE
from kitlog.paint.mark import Mark
from kitlog.paint.shapes import draw_state
from kitlog.paint.strokes import pen
from kitlog.paint.type_scale import Role
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper

T = TypeVar("T")

INSET, DASHES = 16, (6.0, 4.0)
VEIL = 0.96
"""How much the sheet covers of the page: what lies under it is guessed, not read."""


class DropSheet(QWidget):
    """A sheet laid over the page while something is held over it; `tell` says what letting go would do."""

    def __init__(self, page: QWidget, tell: Callable[[Sequence[QUrl]], tuple[str, str]]) -> None:
        super().__init__(page)
        self._page, self._tell = page, tell
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.what, self.more, self._fits = "", "", True
        self.hide()

    def show_urls(self, urls: Sequence[QUrl]) -> None:
        """Say what letting go would do."""
        try:
            self.what, self.more = self._tell(urls)
            self._fits = True
        except InputFault as fault:
            said = fault_text(fault)
            self.what, self.more, self._fits = first_upper(said.what), said.remedy, False
        self.setAccessibleName(f"{self.what}. {self.more}")
        self.setGeometry(self._page.rect())
        self.raise_()
        self.show()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Paint the sheet."""
        t, px = look.tokens(), look.px
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            veil = t.surface
            veil.setAlphaF(VEIL)
            painter.fillRect(box, veil)
            inset = px(INSET)
            painter.setPen(pen(t.accent if self._fits else t.stop, 2, DASHES))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box.adjusted(inset, inset, -inset, -inset), px(8), px(8))
            row = QRectF(inset * 2, box.center().y() - px(28), box.width() - inset * 4, px(28))
            room = look.lettering().draw(painter, row, self.what, Role.TITLE, t.ink, CENTRE)
            if not self._fits:
                side = px(16)
                shape = QRectF(room.left() - px(26), room.center().y() - side / 2, side, side)
                draw_state(painter, shape, Mark.STOP, t)
            look.lettering().draw(painter, row.translated(0, px(32)), self.more, Role.BODY, t.muted, CENTRE)


class FileDrop(QObject, Generic[T]):
    """Takes files dropped on a page, or on its window while the page is shown.

    Args:
        page: the page.
        see: makes of what is dropped what is taken, or raises an `InputFault`; tell: says what letting go would do.
        take: is called with what was dropped; refuse: with why it cannot be taken.
    """

    def __init__(
        self,
        page: QWidget,
        see: Callable[[Sequence[QUrl]], T],
        tell: Callable[[Sequence[QUrl]], tuple[str, str]],
        take: Callable[[T], object],
        refuse: Callable[[Fault], object],
    ) -> None:
        super().__init__(page)
        self._page, self._see, self._take, self._refuse = page, see, take, refuse
        self._window: QWidget | None = None
        self.sheet = DropSheet(page, tell)
        page.setAcceptDrops(True)
        page.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow what is dragged, and whether the page is shown."""
        kind = event.type()
        if kind in {QEvent.Type.DragEnter, QEvent.Type.DragMove, QEvent.Type.Drop} and isinstance(event, QDropEvent):
            return self._dragged(event)
        if kind == QEvent.Type.DragLeave:
            self.sheet.hide()
        elif watched is self._page and kind == QEvent.Type.Show:
            self._watch(self._page.window())
        elif watched is self._page and kind == QEvent.Type.Hide:
            self._watch(None)
        return False

    def _dragged(self, event: QDropEvent) -> bool:
        urls = event.mimeData().urls()
        if not urls:
            return False
        event.acceptProposedAction()
        if event.type() == QEvent.Type.DragEnter:
            self.sheet.show_urls(urls)
        elif event.type() == QEvent.Type.Drop:
            self.sheet.hide()
            QTimer.singleShot(0, self, lambda: self._drop(urls))  # once the drop is over: what follows takes its time
        return True

    def _drop(self, urls: Sequence[QUrl]) -> None:
        try:
            taken = self._see(urls)
        except InputFault as fault:
            self._refuse(fault)
        else:
            self._take(taken)

    def _watch(self, window: QWidget | None) -> None:
        """Take drops on this window, and no more on the one before."""
        if self._window is not None:
            self._window.removeEventFilter(self)
            self._window.setAcceptDrops(False)
        self._window = window
        if window is not None and window is not self._page:
            window.setAcceptDrops(True)
            window.installEventFilter(self)


class TableDrop(FileDrop[TableInput]):
    """Takes a table."""

    def __init__(self, page: QWidget, take: Callable[[TableInput], object], refuse: Callable[[Fault], object]) -> None:
        super().__init__(page, dropped, _said_of_table, take, refuse)


def _said_of_table(urls: Sequence[QUrl]) -> tuple[str, str]:
    said = _("Let go to look at {file}").format(file=dropped(urls).name)
    return said, _("Nothing is written before you import it.")
