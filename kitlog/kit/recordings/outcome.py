"""What became of one recording of a batch: proposed, imported, a duplicate or refused, and why."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from enum import StrEnum

from kitlog.kit.recordings.found import FlightFound


class Status(StrEnum):
    """Where a recording stands. Only the pilot's yes makes a proposal an import."""

    PROPOSED = "proposed"
    IMPORTED = "imported"
    DUPLICATE = "duplicate"
    REFUSED = "refused"


@dataclass(frozen=True, slots=True)
class Reason:
    """Why it is a duplicate or refused, or what is asked about a proposal.

    Attributes:
        code: as of a fault, for example ``recording.no_date``; facts: what its sentence needs.
    """

    code: str
    facts: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Outcome:
    """One file of a batch.

    Attributes:
        file: how it is called in what is said.
        status: where it stands; reasons: why, or for a proposal what the pilot is asked; none for a plain proposal.
        flight: what was found in it, None if it could not be read or holds no flight.
        content: SHA-256 of its fixes, the same whatever the file is called; empty if it could not be read.
        local_day: of the take-off, on the clocks of the place; zone: the name of its time zone, empty where none is
            known and the day is that of UTC.
        same_as: of a duplicate: the id of the flight in the log, or the file of this batch, that it repeats.
        in_log: whether `same_as` is a flight in the log.
        day_given: the file has no date, the day was given beside it.
        pilot, glider: texts of its header; broken: fix records that could not be read; out_of_order: fixes left out
            because their time does not go on from those about them.
    """

    file: str
    status: Status
    reasons: tuple[Reason, ...] = ()
    flight: FlightFound | None = None
    content: str = ""
    local_day: date | None = None
    zone: str = ""
    same_as: str = ""
    in_log: bool = False
    day_given: bool = False
    pilot: str = ""
    glider: str = ""
    broken: int = 0
    out_of_order: int = 0

    @property
    def is_asked(self) -> bool:
        """Whether a proposal has something that the pilot must answer before it counts."""
        return self.status is Status.PROPOSED and bool(self.reasons)

    def confirmed(self) -> "Outcome":
        """The same after the pilot's yes; what is no proposal stays as it is."""
        return replace(self, status=Status.IMPORTED) if self.status is Status.PROPOSED else self

    def declined(self) -> "Outcome":
        """The same after the pilot's no, or without an answer; what is no proposal stays as it is."""
        if self.status is not Status.PROPOSED:
            return self
        return replace(self, status=Status.REFUSED, reasons=(Reason("recording.not_confirmed"), *self.reasons))

    def left_alone(self) -> "Outcome":
        """A duplicate of a file of this batch whose flight is not entered: nothing of it stands in the log."""
        return replace(
            self, status=Status.REFUSED, reasons=(Reason("recording.same_not_entered", {"of": self.same_as}),)
        )


def refused(file: str, code: str, facts: Mapping[str, object]) -> Outcome:
    """A file that cannot be read."""
    return Outcome(file, Status.REFUSED, (Reason(code, facts),))
