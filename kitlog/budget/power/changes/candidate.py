"""A candidate: one change that a pilot could make."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from kitlog.budget.power.day import Day


@dataclass(frozen=True, slots=True)
class Candidate:
    """A change that can be tried on any day of the same phases, devices and banks.

    Attributes:
        code: `bank_instead`, `add_bank`, `plug_too`, `plug_below`, `use_less`, `flight_mode`, `carry_warmer`,
            `start_full` or `leave_off`.
        ids: whom it is about, device first, then banks (`bank_instead`: the one that stays, then the one that goes).
        facts: figures and names of its sentence.
        mass_g: what it adds to the load, in g (negative: less); None: not known.
        gives_up: devices that the pilot does without.
        make: the change itself.
    """

    code: str
    ids: tuple[str, ...]
    make: Callable[[Day], Day] = field(compare=False, repr=False)
    facts: Mapping[str, object] = field(default_factory=dict)
    mass_g: float | None = 0.0
    gives_up: frozenset[str] = frozenset()
