"""The evening's plan, worked out away from the window's thread; what would help follows after it."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from kitlog.desktop.background import Background
from kitlog.fault import Fault
from kitlog.packing.evening_asked import AskedEvening
from kitlog.packing.evening_plan import EveningPlan, planned, with_help


class ChargePlanner(QObject):
    """Keeps the newest plan.

    Attributes:
        changed: another plan is there, or the one that is there has become outdated.
        faulted: an evening cannot be planned, with the `Fault`.
        plan: the newest plan; None: there is none yet.
        outdated: whether it is of what was asked before, and a new one is being worked out.
    """

    changed = Signal()
    faulted = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.plan: EveningPlan | None = None
        self._asked: AskedEvening | None = None
        self._of = ""
        self._helped_too = False
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

    def turn_to(self, outing_id: str, asked: AskedEvening, *, helped: bool) -> None:
        """Ask for the plan of an evening, `helped` with what would help; that of another outing is not shown."""
        self._helped_too = helped
        if outing_id == self._of and asked == self._asked:
            self._ask_help()
            return
        if outing_id != self._of:
            self.plan = None
        self._of, self._asked = outing_id, asked
        self._helps.stop()
        self._plans.ask(lambda _tell: _tried(asked, planned))
        self.changed.emit()

    def stop(self) -> None:
        """The window closes: want nothing any more."""
        self._plans.stop()
        self._helps.stop()

    def _planned(self, result: tuple[AskedEvening, EveningPlan | Fault]) -> None:
        _asked, plan = result
        if isinstance(plan, Fault):
            self.plan = None
            self.faulted.emit(plan)
        else:
            self.plan = plan
            self._ask_help()
        self.changed.emit()

    def _ask_help(self) -> None:
        """What would help takes longer, and is worked out only where it is shown."""
        asked, plan = self._asked, self.plan
        wanted = self._helped_too and not self._plans.busy and not self._helps.busy
        if wanted and asked is not None and plan is not None and plan.helps is None:
            self._helps.ask(lambda _tell: _tried(asked, lambda same: with_help(same, plan)))

    def _helped(self, result: tuple[AskedEvening, EveningPlan | Fault]) -> None:
        asked, plan = result
        if asked is self._asked and not isinstance(plan, Fault):
            self.plan = plan
            self.changed.emit()


def _tried(
    asked: AskedEvening, work: Callable[[AskedEvening], EveningPlan]
) -> tuple[AskedEvening, EveningPlan | Fault]:
    """A fault of the kit's figures is handed over like a result: the window says it."""
    try:
        return asked, work(asked)
    except Fault as fault:
        return asked, fault
