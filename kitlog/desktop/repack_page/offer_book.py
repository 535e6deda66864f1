"""What could go instead of the lines that are held up: found out one by one in quiet moments, and kept."""

from collections.abc import Callable, Iterable

from PySide6.QtCore import QTimer

from kitlog.desktop.repack_page.progress import Progress
from kitlog.desktop.repack_page.rows import Offers, Row, RowKind
from kitlog.desktop.repack_page.swaps import swaps
from kitlog.fault import Fault
from kitlog.packing.assessment import Assessment
from kitlog.workbench.workbench import Workbench

QUIET_MS = 15


class OfferBook:
    """The best swap of each line that was asked for; trying one is an assessment, so none is tried while one ticks.

    Args:
        bench: tries them.
        tell: called when one more is known.
    """

    def __init__(self, bench: Workbench, tell: Callable[[], object]) -> None:
        self._bench, self._tell = bench, tell
        self._assessment: Assessment | None = None
        self._known: dict[str, tuple[str, str] | None] = {}
        self._wanted: list[str] = []
        self._timer = QTimer()
        self._timer.setSingleShot(True)
        self._timer.setInterval(QUIET_MS)
        self._timer.timeout.connect(self._find_one)

    def turn_to(self, progress: Progress) -> None:
        """Forget what was found for another assessment."""
        if progress.assessment is not self._assessment:
            self._assessment = progress.assessment
            self._known.clear()
            self._wanted.clear()

    def known(self) -> Offers:
        """What is known so far."""
        return Offers({item: offer for item, offer in self._known.items() if offer is not None})

    def look_up(self, rows: Iterable[Row]) -> None:
        """Find out what could go instead of exceptions, soon."""
        items = (row.item_id for row in rows if row.kind is RowKind.EXCEPTION and row.item_id)
        self._wanted = [item for item in items if item not in self._known]
        if self._wanted:
            self._timer.start()

    def _find_one(self) -> None:
        if not self._wanted or self._assessment is None:
            return
        item = self._wanted.pop(0)
        line = self._assessment.line(item)
        try:
            found = None if line is None else next(swaps(line, self._assessment, self._bench), None)
        except Fault:
            found = None
        self._known[item] = None if found is None else (found.item.name, found.note)
        if found is not None:
            self._tell()
        if self._wanted:
            self._timer.start()
