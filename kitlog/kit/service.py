"""Service: rules (what must be done and when), records (that it was done), events (what calls for it at once)."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import AwareDatetime, Field, model_validator
from pydantic_core import PydanticCustomError

from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note

WARN_DAYS = 45
WARN_HOURS = 10.0
WARN_LAUNCHES = 10

Months = Annotated[int, Field(ge=1, le=1_200)]


class Grounds(StrEnum):
    """What an open rule means for an outing.

    Yes: a stop. By law: a stop where the pilot ticked law, school or event, else a look. No: never more than a look.
    """

    YES = "yes"
    BY_LAW = "by law"
    NO = "no"


class CountsFrom(StrEnum):
    """The date an interval in months counts from."""

    RECORD = "record"
    FIRST_USE = "first use"
    BOUGHT = "bought"
    MADE = "made"


class ServiceRule(Frozen):
    """What must be done to an item, and when; whichever limit comes first governs.

    Attributes:
        rule: its name, free or from the starters (``wing.full``).
        months, recommended_months: due and recommended interval; hours: of airtime; launches: take-offs.
        due_on: a typed date (printed expiry, paid to). The due date itself is still in date.
        events: what calls for it at once (``water``, ``blow`` ...).
        counts_from: ``record`` = last record, else first use, else bought, else made; the others are that date always.
        ground_handling: whether ground handling counts as hours.
        lead_days: how long before the due date to book; warn_days: how long before it is *due soon*.
        applies: False = the pilot said that it does not apply.
    """

    id: Name
    item_id: Name
    rule: Name
    months: Months | None = None
    recommended_months: Months | None = None
    hours: Annotated[float, Field(gt=0, le=100_000)] | None = None
    launches: Annotated[int, Field(gt=0, le=1_000_000)] | None = None
    due_on: Day | None = None
    events: tuple[Name, ...] = ()
    counts_from: CountsFrom = CountsFrom.RECORD
    ground_handling: bool = False
    lead_days: Annotated[int, Field(ge=0, le=3_650)] = 0
    warn_days: Annotated[int, Field(ge=0, le=3_650)] = WARN_DAYS
    grounds: Grounds = Grounds.NO
    source: Line = ""
    applies: bool = True

    @model_validator(mode="after")
    def _check(self) -> Self:
        limits = (self.months, self.recommended_months, self.hours, self.launches, self.due_on)
        if not self.events and all(limit is None for limit in limits):
            raise PydanticCustomError("rule.no_limit", "{rule}", {"rule": self.rule})
        if self.months and self.recommended_months and self.recommended_months > self.months:
            raise PydanticCustomError("rule.recommended_after_due", "{rule}", {"rule": self.rule})
        return self


class ServiceRecord(Frozen):
    """That a service was done.

    Attributes:
        rules: ids of the rules it satisfies.
        hours, launches: the item's totals on that day, None = taken from the log.
    """

    id: Name
    item_id: Name
    rules: tuple[Name, ...]
    done_on: Day
    hours: Annotated[float, Field(ge=0, le=1_000_000)] | None = None
    launches: Annotated[int, Field(ge=0, le=10_000_000)] | None = None
    who: Line = ""
    result: Line = ""
    cost: Annotated[float, Field(ge=0, le=1e9)] | None = None
    remarks: Note = ""
    struck_at: AwareDatetime | None = None


class Event(Frozen):
    """Something that happened to an item and calls for service: a blow, water, a reserve thrown, a new pairing."""

    id: Name
    item_id: Name
    on: Day
    kind: Name
    note: Note = ""
    struck_at: AwareDatetime | None = None
