"""Ticks of the repack: which step, which line, what was said of it, when and by whom."""

from enum import StrEnum

from pydantic import AwareDatetime

from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note


class Step(StrEnum):
    """The steps of the repack, in their order; the order is advice."""

    EMPTY = "empty"
    LAY_OUT = "lay out"
    CHARGE = "charge"
    STOW = "stow"
    CLOSE = "close"


class TickMark(StrEnum):
    """What a tick says."""

    DONE = "done"
    MISSING = "missing"


class Tick(Frozen):
    """One tick: `line` is the id of an item, of a check or of an own line; at most one tick a step and line."""

    outing_id: Name
    step: Step
    line: Name
    mark: TickMark = TickMark.DONE
    at: AwareDatetime
    who: Line = ""
    reason: Note = ""
