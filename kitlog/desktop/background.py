"""Work away from the window's thread, one thing at a time: what was asked for last is what comes back."""

import gc
import sys
import threading
import time
from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer, Signal

POLL_MS = 15
"""How often the window looks whether the work is done."""

TURN_S = 0.0005
"""So long the work may hold the interpreter before the window has its turn: 5 ms, the usual, add up while it paints."""

_USUAL_S = sys.getswitchinterval()

Tell = Callable[[float], None]


class Stopped(Exception):  # noqa: N818  # it is no error: somebody wanted it so
    """Raised inside the work once nobody waits for it any more."""


class _Run:
    """One piece of work on its thread; the window reads its fields, the thread writes them."""

    def __init__(self, work: Callable[[Tell], object]) -> None:
        self._work = work
        self.share = 0.0
        self.unwanted = False
        self.result: object = None
        self.error: BaseException | None = None
        self._thread = threading.Thread(target=self._go, name="work beside the window", daemon=True)
        self._thread.start()

    @property
    def over(self) -> bool:
        return not self._thread.is_alive()

    def _tell(self, share: float) -> None:
        self.share = share
        if self.unwanted:
            raise Stopped

    def _go(self) -> None:
        sys.setswitchinterval(TURN_S)
        gc.disable()  # a full collection stops the window as well, for 90 ms and more; the work leaves no circles
        try:
            self.result = self._work(self._tell)
        except Stopped:
            self.unwanted = True
        except BaseException as error:  # noqa: BLE001  # raised again on the window's thread
            self.error = error
        finally:
            gc.enable()
            sys.setswitchinterval(_USUAL_S)


class Background(QObject):
    """Runs work on a thread.

    Attributes:
        done: the result of what was asked for last.
        broke: the work failed in a way that nobody foresaw; the error is raised here.
        going: it is still going on: seconds since it was asked for, and the share that is done.
    """

    done = Signal(object)
    broke = Signal()
    going = Signal(float, float)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._run: _Run | None = None
        self._next: Callable[[Tell], object] | None = None
        self._since = 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(POLL_MS)
        self._timer.timeout.connect(self._look)

    @property
    def busy(self) -> bool:
        """Whether something was asked for that has not come back."""
        return self._timer.isActive()

    def ask(self, work: Callable[[Tell], object]) -> None:
        """Ask for something in place of what was asked for before."""
        self._since = time.monotonic()
        if self._run is None:
            self._run = _Run(work)
        else:
            self._run.unwanted = True
            self._next = work
        self._timer.start()

    def stop(self) -> None:
        """Want nothing any more: a thread that still works ends by itself."""
        self._timer.stop()
        self._next = None
        if self._run is not None:
            self._run.unwanted = True

    def _look(self) -> None:
        run = self._run
        if run is None or not run.over:
            self.going.emit(time.monotonic() - self._since, run.share if run else 0.0)
            return
        self._run = None
        if self._next is not None:
            work, self._next = self._next, None
            self._run = _Run(work)
            return
        self._timer.stop()
        if run.error is not None:
            self.broke.emit()
            raise run.error
        if not run.unwanted:
            self.done.emit(run.result)
