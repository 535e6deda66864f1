"""How far the repack is: what each step asks to tick, what is ticked, what is missing, which stops are open."""

from collections.abc import Iterable
from dataclasses import dataclass

from kitlog.budget.result import Finding, State
from kitlog.kit.kinds import SET_KINDS
from kitlog.outing.library import Check, Library
from kitlog.outing.needs import Strength
from kitlog.outing.ticks import Step, Tick, TickMark
from kitlog.packing.assessment import Assessment, ListLine
from kitlog.packing.charging import Charge, charges
from kitlog.paint.mark import Mark

CLOSED = "repack"
"""The line of the tick that closes a repack."""

MISSING = "repack.missing"
"""Before the id of an item in the name under which a reason for going without it stays on record."""


@dataclass(frozen=True, slots=True)
class Count:
    """How many of a step's lines are ticked."""

    done: int
    of: int

    @property
    def share(self) -> float:
        """0 to 1; a step without lines is not done."""
        return self.done / self.of if self.of else 0.0

    @property
    def is_full(self) -> bool:
        """Whether nothing is left."""
        return self.of > 0 and self.done == self.of


@dataclass(frozen=True, slots=True)
class OpenStop:
    """A stop that closing asks a reason for: the key under which it stays, an item's id where it is a missing line."""

    key: str
    finding: Finding | None = None
    line: ListLine | None = None


class Progress:
    """Assessment, check lists and ticks of one outing, taken together.

    Args:
        assessment: of the outing.
        library: for the check lists.
        ticks: of its repack.
    """

    def __init__(self, assessment: Assessment, library: Library, ticks: Iterable[Tick]) -> None:
        self.assessment = assessment
        self._library = library
        self._ticks = {(tick.step, tick.line): tick for tick in ticks}
        self.charges: tuple[Charge, ...] = charges(assessment)
        self._reasons = {o.finding for o in assessment.outing.overrides if o.struck_at is None}

    @property
    def lines(self) -> tuple[str, ...]:
        """Names of the lines that are laid out and stowed: items by id, own lines by their text."""
        return (
            *(line.item.id for line in self.assessment.lines),
            *(own.text for own in self.assessment.outing.own_lines),
        )

    def checks(self, moment: str) -> tuple[Check, ...]:
        """The check list of a moment, without what this outing does not ask for."""
        holding = {truth.condition for truth in self.assessment.truths if truth.holds}
        return tuple(
            check
            for check in self._library.checks
            if check.moment == moment and (not check.only_when or not holding.isdisjoint(check.only_when))
        )

    def is_done(self, step: Step, line: str) -> bool:
        """Whether a line is ticked in a step."""
        tick = self._ticks.get((step, line))
        return tick is not None and tick.mark is TickMark.DONE

    def is_missing(self, line: str) -> bool:
        """Whether a line was looked for and not found: said where it is laid out, and true in every later step."""
        tick = self._ticks.get((Step.LAY_OUT, line))
        return tick is not None and tick.mark is TickMark.MISSING

    def wanted(self, step: Step) -> tuple[str, ...]:
        """The lines that a step asks to tick."""
        if step is Step.EMPTY:
            return tuple(check.id for check in self.checks("empty"))
        if step is Step.CHARGE:
            return (*(one.item.id for one in self.charges), *(check.id for check in self.checks("charge")))
        return (CLOSED,) if step is Step.CLOSE else self.lines

    def count(self, step: Step) -> Count:
        """How far a step is; what is missing is not stowed."""
        wanted = self.wanted(step)
        missing = step is Step.STOW
        done = sum(self.is_done(step, line) and not (missing and self.is_missing(line)) for line in wanted)
        return Count(done, len(wanted))

    @property
    def to_stow(self) -> tuple[str, ...]:
        """Lines that are neither stowed nor said to be missing."""
        return tuple(line for line in self.lines if not self.is_done(Step.STOW, line) and not self.is_missing(line))

    @property
    def missing(self) -> tuple[ListLine, ...]:
        """Lines of the list that were not found."""
        return tuple(line for line in self.assessment.lines if self.is_missing(line.item.id))

    @property
    def closed(self) -> Tick | None:
        """The tick that closes the repack."""
        return self._ticks.get((Step.CLOSE, CLOSED))

    def open_stops(self) -> tuple[OpenStop, ...]:
        """Stops without a reason on record, and essential lines that are missing without one."""
        stops = [
            OpenStop(finding.key, finding)
            for finding in self.assessment.findings
            if finding.state is State.STOP and not finding.override
        ]
        lacking = [
            OpenStop(missing_key(line), line=line)
            for line in self.missing
            if missing_mark(line) is Mark.STOP and missing_key(line) not in self._reasons
        ]
        return (*stops, *lacking)

    def reason(self, key: str) -> str:
        """The newest reason on record under a name, empty if there is none."""
        found = [o for o in self.assessment.outing.overrides if o.finding == key and o.struck_at is None]
        return max(found, key=lambda override: override.at).reason if found else ""


def missing_key(line: ListLine) -> str:
    """The name under which a reason for going without a line stays on record."""
    return f"{MISSING}:{line.item.id}"


def missing_mark(line: ListLine) -> Mark:
    """The state of a line that is missing: that of its need; what is part of the set counts as essential."""
    if line.strength is Strength.ESSENTIAL or (line.strength is None and line.item.kind in SET_KINDS):
        return Mark.STOP
    return Mark.LOOK if line.strength is Strength.ADVISED else Mark.NONE
