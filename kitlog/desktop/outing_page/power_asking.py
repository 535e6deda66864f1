"""What is asked of the outing being worked on, answered beside the window; answers of another plan are never shown."""

from collections.abc import Generator
from dataclasses import dataclass, replace

from PySide6.QtCore import QObject

from kitlog.desktop.outing_page.beside import Beside
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
    def is_final(self) -> bool:
        """Whether nothing more comes."""
        return self.fault is not None or (self.mending is not None and self.mending.complete)


class PowerAsking(Beside[Answers]):
    """Answers one plan at a time.

    Attributes:
        is_open: whether the pilot wants the answers to be shown; keep_pct: what the phone is to keep, %.
    """

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.is_open, self.keep_pct = False, KEEP_PCT

    def want(self, asked: PowerAsked) -> None:
        """Answer a plan."""
        self.ask(_key(asked), lambda: _steps(asked))


def _key(asked: PowerAsked) -> Key:
    """All that the answers depend on; answers to the morning's questions and reasons on record change none of them."""
    assessment = asked.assessment
    plan = assessment.outing.model_copy(update={"answers": (), "overrides": ()})
    return plan, assessment.power.planned, assessment.power.longest, asked.items


def _steps(asked: PowerAsked) -> Generator[Answers, None, None]:
    found = Answers()
    try:
        for limits in power_limits(asked.assessment, asked.items, asked.library):
            found = replace(found, limits=limits)
            yield found
        for mending in power_mending(asked):
            found = replace(found, mending=mending)
            yield found
    except Fault as fault:
        yield replace(found, fault=fault)
