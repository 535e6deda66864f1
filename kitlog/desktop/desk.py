"""The desk: the workbench and what all pages share; callbacks of the workbench become signals here."""

from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from PySide6.QtCore import QEventLoop, QObject, Qt, Signal

from kitlog.desktop.apart import apart
from kitlog.desktop.hands_off import hands_off
from kitlog.fault import Fault
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Assessment
from kitlog.paint.icons import IconSet
from kitlog.workbench.change import Change
from kitlog.workbench.workbench import Workbench

MANY = 200
"""So many items take a while to be written, a tenth of a second and more."""

NOT_ASSESSED = frozenset({"tick"})
"""Kinds of change that leave an assessment as it is."""


class Desk(QObject):
    """What the pages work on.

    Attributes:
        changed: something was written, with the `Change`.
        faulted: the world was at fault, with the `Fault`.
        selected: what can be done now may have changed.
        assessed: the outing being worked on has been assessed anew.
        wanted: another page is asked for: its name, and what is to be shown there.
        busy: something long is being written, in words; empty once it is over.
        ahead: each is asked, before something long is written, for what reads on the other thread what the window will
            show afterwards.
    """

    changed = Signal(object)
    faulted = Signal(object)
    selected = Signal()
    assessed = Signal()
    wanted = Signal(str, str)
    busy = Signal(str)
    _moved = Signal()

    def __init__(self, bench: Workbench, icons: IconSet, open_demo: Callable[[], object] | None = None) -> None:
        super().__init__()
        self.bench = bench
        self.icons = icons
        self.open_demo = open_demo
        self._assessed: dict[str, Assessment] = {}
        self._untold: list[Change] | None = None
        self.ahead: list[Callable[[], Callable[[], object]]] = []
        self._stop_listening = (bench.on_change(self._heard), bench.on_moved(self._moved.emit))
        self._left = False
        self._moved.connect(self.look_again, Qt.ConnectionType.QueuedConnection)

    @property
    def path(self) -> Path:
        """The data file."""
        return self.bench.path

    def outing(self) -> Outing | None:
        """The outing being worked on."""
        return self.bench.current_outing()

    def assessment(self) -> Assessment | None:
        """The assessment of the outing being worked on, kept until something changes."""
        if self.writes:
            return self.assessed_already()
        outing = self.outing()
        if outing is None:
            return None
        if outing.id not in self._assessed:
            self._assessed = {outing.id: self.bench.assess(outing)}
            self.assessed.emit()
        return self._assessed[outing.id]

    def judged(self) -> Assessment | None:
        """The same; a plan that cannot be assessed is said by the window, and None."""
        try:
            return self.assessment()
        except Fault as fault:
            self.faulted.emit(fault)
            return None

    def assessed_already(self) -> Assessment | None:
        """The assessment if there is one already; nothing is computed."""
        return next(iter(self._assessed.values()), None)

    def names(self) -> dict[str, str]:
        """Names of items by id."""
        return {item.id: item.name for item in self.bench.items()}

    def perform(self, write: Callable[[], object]) -> bool:
        """Do something that writes; whether it was done. A fault of the world is shown by the window.

        Nothing is done while something long is written.
        """
        if self.writes:
            return False
        try:
            write()
        except Fault as fault:
            self.faulted.emit(fault)
            return False
        return True

    @property
    def writes(self) -> bool:
        """Whether something long is being written; reading the data file would wait for its end."""
        return self._untold is not None

    def write_apart(self, write: Callable[[], object], said: str = "") -> None:
        """Write thousands of rows on another thread; the window hears of it when it is over, with all read anew.

        Nothing else can be done meanwhile, and what is asked for a second time is not done.

        Args:
            write: what writes.
            said: what it does, for the status line.
        """
        if not self.writes:
            with hands_off():
                self._write_apart(write, said)

    def _write_apart(self, write: Callable[[], object], said: str) -> None:
        ahead = [read() for read in self.ahead]
        untold = self._untold = []
        self.busy.emit(said)
        try:
            assessed = apart(lambda: self._written(write, ahead), QEventLoop.ProcessEventsFlag.AllEvents)
        finally:
            self._untold = None
            self.busy.emit("")
            for change in untold:
                self._heard(change)
            self._moved.emit()  # what another process wrote meanwhile could not be told
        if assessed:
            self._assessed = assessed
            self.assessed.emit()

    def _written(self, write: Callable[[], object], ahead: list[Callable[[], object]]) -> dict[str, Assessment]:
        """Write, and read what the window will show, so that it does not wait for it."""
        write()
        for read in ahead:
            read()
        outing = self.outing()
        with suppress(Fault):
            return {outing.id: self.bench.assess(outing)} if outing else {}
        return {}

    def show(self, page: str, what: str = "") -> None:
        """Ask the window for another page."""
        self.wanted.emit(page, what)

    def look_again(self) -> None:
        """Look whether another process wrote: then everything is shown anew."""
        if not self._left:
            self.perform(self.bench.look_again)

    def leave(self) -> None:
        """Hear no more of the workbench."""
        self._left = True
        for stop in self._stop_listening:
            stop()

    def _heard(self, change: Change) -> None:
        if self._untold is not None:
            self._untold.append(change)
            return
        if not change.kinds <= NOT_ASSESSED:
            self._assessed.clear()
        self.changed.emit(change)
