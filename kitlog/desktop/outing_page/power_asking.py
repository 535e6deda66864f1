"""What is asked of the outing being worked on, answered beside the window; answers of another plan are never shown."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, Signal

from kitlog.desktop.background import Background, Tell
from kitlog.desktop.turns import Turns
from kitlog.fault import Fault
from kitlog.packing.power_limits import KEEP_PCT, PowerLimits, power_limits
from kitlog.packing.power_mending import Mending, PowerAsked, power_mending

Key = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Answers:
    """The answers to one plan so far; `fault`: why there are no more."""

    limits: PowerLimits | None = None
    mending: Mending | None = None
    fault: Fault | None = None

    @property
    def is_complete(self) -> bool:
        """Whether nothing more comes."""
        return self.fault is not None or (self.mending is not None and self.mending.complete)


class PowerAsking(QObject):
    """Answers one plan at a time.

    Attributes:
        answered: there is more in `latest`.
        latest: of the plan that was asked about last; None before the first answer.
        is_open: whether the pilot wants the answers to be shown; keep_pct: what the phone is to keep, %.
    """

    answered = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.latest: Answers | None = None
        self.is_open, self.keep_pct = False, KEEP_PCT
        self._key: Key | None = None
        self._made: list[Answers] = []
        self._background, self._turns = Background(self), Turns(self)
        self._background.going.connect(lambda _seconds, _share: self._look())
        self._background.done.connect(lambda _result: self._look())
        self._background.done.connect(lambda _result: self._turns.end())
        self._background.broke.connect(self._turns.end)

    @property
    def busy(self) -> bool:
        """Whether answers are being worked out."""
        return self._background.busy

    def want(self, asked: PowerAsked) -> None:
        """Answer a plan; what was found of another one is dropped at once."""
        key = _key(asked)
        if key != self._key:
            self.drop()
            self._key = key
        if self._background.busy or (self.latest and self.latest.is_complete):
            return
        self._made = []
        self._turns.begin()
        self._background.ask(_work(asked, self._made, self._turns))

    def pause(self) -> None:
        """Work no more for now; what there is stays."""
        self._background.stop()
        self._turns.end()

    def drop(self) -> None:
        """Work no more, and forget what was found."""
        self.pause()
        self._made, self._key, self.latest = [], None, None

    def _look(self) -> None:
        if self._made and self._made[-1] is not self.latest:
            self.latest = self._made[-1]
            self.answered.emit()


def _key(asked: PowerAsked) -> Key:
    """All that the answers depend on; answers to the morning's questions and reasons on record change none of them."""
    assessment = asked.assessment
    plan = assessment.outing.model_copy(update={"answers": (), "overrides": ()})
    return plan, assessment.power.planned, assessment.power.longest, asked.items


def _work(asked: PowerAsked, made: list[Answers], turns: Turns) -> Callable[[Tell], None]:
    """The work of the thread: better and better answers go into the list."""

    def work(tell: Tell) -> None:
        found = Answers()

        def give(more: Answers) -> Answers:
            made.append(more)
            tell(0.0)
            turns.wait()
            return more

        try:
            for limits in power_limits(asked.assessment, asked.items, asked.library):
                found = give(replace(found, limits=limits))
            for mending in power_mending(asked):
                found = give(replace(found, mending=mending))
        except Fault as fault:
            give(replace(found, fault=fault))

    return work
