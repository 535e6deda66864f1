"""While something long is written nothing else can be done: what is typed or clicked meanwhile is let fall.

It must not wait either: whoever presses Undo again out of impatience would take back one step more.
"""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QGuiApplication

WAIT_CURSOR_MS = 300
"""What is quicker shows no cursor of waiting."""

_Type = QEvent.Type
_BY_HAND = frozenset(
    {
        _Type.KeyPress,
        _Type.KeyRelease,
        _Type.ShortcutOverride,
        _Type.Shortcut,
        _Type.MouseButtonPress,
        _Type.MouseButtonRelease,
        _Type.MouseButtonDblClick,
        _Type.Wheel,
        _Type.ContextMenu,
        _Type.InputMethod,
        _Type.TouchBegin,
        _Type.TouchUpdate,
        _Type.TouchEnd,
        _Type.DragEnter,
        _Type.Drop,
        _Type.Close,
    }
)


class _HandsOff(QObject):
    """Lets fall what a hand does."""

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """Take what comes from keys, mouse and the frame of the window."""
        if event.type() not in _BY_HAND:
            return False
        event.ignore()
        return True


@contextmanager
def hands_off() -> Iterator[None]:
    """Nothing can be done until it is over; after a while the cursor says so."""
    application = QCoreApplication.instance()
    if application is None:
        yield
        return
    filtering, timer = _HandsOff(), QTimer()
    timer.setSingleShot(True)
    timer.timeout.connect(lambda: QGuiApplication.setOverrideCursor(Qt.CursorShape.WaitCursor))
    timer.start(WAIT_CURSOR_MS)
    application.installEventFilter(filtering)
    try:
        yield
    finally:
        QCoreApplication.processEvents()  # what was pressed until now is let fall as well
        application.removeEventFilter(filtering)
        if not timer.isActive():
            QGuiApplication.restoreOverrideCursor()
        timer.stop()
