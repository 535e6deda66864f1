"""The day as it runs: where it stands, and what has happened so far."""

from dataclasses import dataclass, field

from kitlog.budget.power.plan import Plan
from kitlog.budget.power.state import BankState, DeviceState

PLUGGED, SWITCHED_OFF, SWITCHED_ON = "plugged", "switched_off", "switched_on"

LogEntry = tuple[str, int, int, float, int]
"""What happened, to which device or bank, in which phase, when (h), and on which bank (plugs only, else -1)."""


@dataclass(slots=True)
class Run:
    """A day on its way, and afterwards its end.

    Attributes:
        last_phase: index of the last phase that has a duration; of the last one if none has.
        log: every plug, switch and change of a bank's state, in order.
        phase_end_soc: by phase, then by device.
    """

    plan: Plan
    devices: list[DeviceState]
    banks: list[BankState]
    last_phase: int
    phase: int = 0
    now_h: float = 0.0
    log: list[LogEntry] = field(default_factory=list)
    phase_end_soc: list[list[float]] = field(default_factory=list)

    def note(self, what: str, index: int, bank: int = -1) -> None:
        """Write it in the log."""
        self.log.append((what, index, self.phase, self.now_h, bank))
