"""Work away from the window's thread, one thing at a time: what was asked for last is what comes back."""

import gc
import sys
import threading
import time
from collections.abc import Callable
from typing import ClassVar

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
    """One piece of work on its thread; the window reads its fields, the thread writes them.

    No collection while any thread works: it would stop the window as well, and let go of what belongs to the window on
    a thread where Qt may not.
    """

    _working: ClassVar[set["_Run"]] = set()
    _lock: ClassVar = threading.Lock()

    def __init__(self, work: Callable[[Tell], object]) -> None:
        self._work = work
        self.share = 0.0
        self.unwanted = False
        self.result: object = None
        self.error: BaseException | None = None
        self._thread = threading.Thread(target=self._go, name="work beside the window", daemon=True)
        with self._lock:
            self._working.add(self)
            gc.disable()
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
        try:
            self.result = self._work(self._tell)
        except Stopped:
            self.unwanted = True
        except BaseException as error:  # noqa: BLE001  # raised again on the window's thread
            self.error = error
        finally:
            self._end()

    def _end(self) -> None:
        with self._lock:
            self._working.remove(self)
            if not self._working:
                gc.freeze()  # else the next collection looks through all that was made: 0.2 s for 10 000 rows
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
        """Ask for something in place of what was asked for before; it begins once the window has had its turn."""
        self._since = time.monotonic()
        self._next = work
        if self._run is not None:
            self._run.unwanted = True
        self._timer.start()

    def stop(self) -> None:
        """Want nothing any more: a thread that still works ends by itself."""
        self._timer.stop()
        self._next = None
        if self._run is not None:
            self._run.unwanted = True

    def let_go(self) -> None:
        """Want nothing any more, nor what was made: what of it is left is looked through for circles again."""
        self.stop()
        gc.unfreeze()

    def _look(self) -> None:
        run = self._run
        if run is not None and not run.over:
            self.going.emit(time.monotonic() - self._since, 0.0 if run.unwanted else run.share)
            return
        self._run = None
        if self._next is not None:
            work, self._next = self._next, None
            self._run = _Run(work)
            return
        self._timer.stop()
        if run is None:
            return
        if run.error is not None:
            self.broke.emit()
            raise run.error
        if not run.unwanted:
            self.done.emit(run.result)
