"""Work beside the window takes its turns while the window has nothing to do.

Both share one interpreter. A painter lets go of it hundreds of times in one picture, and each time a thread that
computes would keep it for a while: a picture of 15 ms would take 300. So the thread works in slices of a few ms, and
waits between two of them as long as the window has something to do.
"""

import threading

from PySide6.QtCore import QAbstractEventDispatcher, QCoreApplication, QEvent, QObject

MOST_WAIT_S = 0.05
"""So long a slice waits at most, so that a window that is never at rest does not stop the work for good."""


class Turns(QObject):
    """Tells a thread when it may go on; made and used on the window's thread, but for `wait`."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._at_rest = threading.Event()
        self._at_rest.set()
        dispatcher = QAbstractEventDispatcher.instance()
        if dispatcher is not None:
            dispatcher.aboutToBlock.connect(self._at_rest.set)

    def begin(self) -> None:
        """There is work: look at what the window does."""
        application = QCoreApplication.instance()
        if application is not None:
            application.installEventFilter(self)

    def end(self) -> None:
        """There is none any more."""
        application = QCoreApplication.instance()
        if application is not None:
            application.removeEventFilter(self)
        self._at_rest.set()

    def wait(self) -> None:
        """Wait until the window is at rest, or long enough; called by the thread between two slices."""
        self._at_rest.wait(MOST_WAIT_S)

    def eventFilter(self, _watched: QObject, _event: QEvent) -> bool:
        """The window has something to do; its dispatcher says so too late on some platforms."""
        self._at_rest.clear()
        return False
