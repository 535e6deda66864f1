"""Room for a page: it fills what there is, and is scrolled where it asks for more, so that nothing leaves the window.

Lists and pictures give way first: a page is only scrolled below the least size it asks for.
"""

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget


class PageArea(QScrollArea):
    """The room of one page."""

    def __init__(self, page: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._page = page
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(page)
        page.installEventFilter(self)

    def minimumSizeHint(self) -> QSize:
        """It can be any size."""
        return QSize(1, 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fill the room."""
        super().resizeEvent(event)
        self._fit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The page asks for another least size."""
        if event.type() == QEvent.Type.LayoutRequest and watched is self._page:
            self._fit()
        return super().eventFilter(watched, event)

    def _fit(self) -> None:
        """The least height counts, not the usual one that a resizable widget with wrapped lines would be given."""
        page, room = self._page, self.maximumViewportSize()
        bar = self.verticalScrollBar().sizeHint().width()
        least = page.minimumSizeHint().expandedTo(page.minimumSize())
        sideways, down = least.width() > room.width(), least.height() > room.height()
        down = down or (sideways and least.height() > room.height() - bar)
        sideways = sideways or (down and least.width() > room.width() - bar)
        free = QSize(room.width() - bar * down, room.height() - bar * sideways)
        page.resize(least.expandedTo(free))
