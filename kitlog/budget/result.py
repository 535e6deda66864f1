"""What a budget or a check has to say: findings with state, figure, margin, how sure, remedies. Codes, no sentences."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class State(StrEnum):
    """The state of a finding. *Stop* is kept rare; *not known* is a state of its own and never good."""

    FINE = "fine"
    LOOK = "look"
    STOP = "stop"
    NOT_KNOWN = "not known"


SEVERITY = (State.STOP, State.LOOK, State.NOT_KNOWN, State.FINE)
"""Worst first, for sorting."""


class Topic(StrEnum):
    """The tile a finding belongs to."""

    KIT = "kit"
    POWER = "power"
    WEIGHT = "weight"
    WATER = "water"
    WARMTH = "warmth"
    DAYLIGHT = "daylight"
    AIR = "air"
    PEOPLE = "people"


class Sure(StrEnum):
    """How sure a figure is, surest first."""

    ON_RECORD = "on record"
    MEASURED = "measured"
    MAKER = "maker's figure"
    ESTIMATE = "estimate"
    GUESS = "guess"
    NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Remedy:
    """A change that would help: a code, the items it is about and the figures of its sentence."""

    code: str
    items: tuple[str, ...] = ()
    facts: Mapping[str, object] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to say about an outing.

    Attributes:
        code: what it is about (``weight.takeoff_range``); subject: need, item or rule where one code has several.
        figure, unit, margin: the figure and what is left to the limit (negative: over), in `unit`.
        items: ids of the items concerned; phase: name of the phase concerned.
        source: where the limit or figure comes from.
        facts: what the sentence needs beyond that.
        override: the pilot's written reason, if the stop was closed with one.
    """

    code: str
    topic: Topic
    state: State
    subject: str = ""
    figure: float | None = None
    unit: str = ""
    margin: float | None = None
    sure: Sure = Sure.ON_RECORD
    items: tuple[str, ...] = ()
    phase: str = ""
    source: str = ""
    facts: Mapping[str, object] = field(default_factory=dict)
    remedies: tuple[Remedy, ...] = ()
    override: str = ""

    @property
    def key(self) -> str:
        """The name by which an override refers to it."""
        return f"{self.code}:{self.subject}" if self.subject else self.code


def worst_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings sorted by severity, otherwise in their order."""
    return tuple(sorted(findings, key=lambda finding: SEVERITY.index(finding.state)))
