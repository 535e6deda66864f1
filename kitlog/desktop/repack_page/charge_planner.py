"""The evening's plan, worked out away from the window's thread; what would help follows after it."""

from PySide6.QtCore import QObject, Signal

from kitlog.desktop.background import Background
from kitlog.packing.evening_asked import AskedEvening
from kitlog.packing.evening_plan import EveningPlan, planned, with_help


class ChargePlanner(QObject):
    """Keeps the newest plan.

    Attributes:
        changed: another plan is there, or the one that is there has become outdated.
        plan: the newest plan; None: there is none yet.
        outdated: whether it is of what was asked before, and a new one is being worked out.
    """

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.plan: EveningPlan | None = None
        self._asked: AskedEvening | None = None
        self._of = ""
        self._plans, self._helps = Background(self), Background(self)
        self._plans.done.connect(self._planned)
        self._helps.done.connect(self._helped)

    @property
    def outdated(self) -> bool:
        """Whether a newer plan is on its way."""
        return self._plans.busy

    @property
    def busy(self) -> bool:
        """Whether anything is still being worked out."""
        return self._plans.busy or self._helps.busy

    def turn_to(self, outing_id: str, asked: AskedEvening) -> None:
        """Ask for the plan of an evening; that of another outing is not shown meanwhile."""
        if outing_id == self._of and asked == self._asked:
            return
        if outing_id != self._of:
            self.plan = None
        self._of, self._asked = outing_id, asked
        self._helps.stop()
        self._plans.ask(lambda _tell: (asked, planned(asked)))
        self.changed.emit()

    def stop(self) -> None:
        """The window closes: want nothing any more."""
        self._plans.stop()
        self._helps.stop()

    def _planned(self, result: tuple[AskedEvening, EveningPlan]) -> None:
        asked, plan = result
        self.plan = plan
        self._helps.ask(lambda _tell: (asked, with_help(asked, plan)))
        self.changed.emit()

    def _helped(self, result: tuple[AskedEvening, EveningPlan]) -> None:
        asked, plan = result
        if asked is self._asked:
            self.plan = plan
            self.changed.emit()
