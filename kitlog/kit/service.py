"""Service: rules (what must be done and when), records (that it was done), events (what calls for it at once)."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import AwareDatetime, Field, model_validator
from pydantic_core import PydanticCustomError

from kitlog.kit.kinds import Kind
from kitlog.kit.measurement import Measurement
from kitlog.kit.paper import Paper
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


class Limits(Frozen):
    """When something must be done; whichever limit comes first governs.

    Attributes:
        rule: its name, free or from the starters (``wing.full``).
        months, recommended_months: due and recommended interval; hours: of airtime; launches: take-offs.
        due_on: a typed date (printed expiry, paid to). The due date itself is still in date.
        events: what calls for it (``water``, ``blow`` ...), within `event_days` (0 = at once).
        counts_from: ``record`` = last record, else first use, else bought, else made; the others are that date always.
        ground_handling: whether ground handling counts as hours.
        lead_days: how long before the due date to book; warn_days: how long before it is *due soon*.
    """

    rule: Name
    months: Months | None = None
    recommended_months: Months | None = None
    hours: Annotated[float, Field(gt=0, le=100_000)] | None = None
    launches: Annotated[int, Field(gt=0, le=1_000_000)] | None = None
    due_on: Day | None = None
    events: tuple[Name, ...] = ()
    event_days: Annotated[int, Field(ge=0, le=3_650)] = 0
    counts_from: CountsFrom = CountsFrom.RECORD
    ground_handling: bool = False
    lead_days: Annotated[int, Field(ge=0, le=3_650)] = 0
    warn_days: Annotated[int, Field(ge=0, le=3_650)] = WARN_DAYS
    grounds: Grounds = Grounds.NO
    source: Line = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        limits = (self.months, self.recommended_months, self.hours, self.launches, self.due_on)
        if not self.events and all(limit is None for limit in limits):
            raise PydanticCustomError("rule.no_limit", "{rule}", {"rule": self.rule})
        if self.months and self.recommended_months and self.recommended_months > self.months:
            raise PydanticCustomError("rule.recommended_after_due", "{rule}", {"rule": self.rule})
        return self

    @property
    def waits_for_event_only(self) -> bool:
        """Whether nothing but an event calls for it: no month, hour, launch or date."""
        limits = (self.months, self.recommended_months, self.hours, self.launches, self.due_on)
        return bool(self.events) and all(limit is None for limit in limits)


class ServiceRule(Limits):
    """What must be done to an item, and when.

    Attributes:
        applies: False = the pilot said that it does not apply.
        of_model: id of the `ModelRule` that it follows, None where it is the item's own.
    """

    id: Name
    item_id: Name
    applies: bool = True
    of_model: Name | None = None


class ModelRule(Limits):
    """What must be done to every item of one model: from its maker's manual.

    Each item of the model follows it by a rule of its own, which is changed along with it.

    Attributes:
        kind, maker, model: which items; maker and model without regard to capitals.
    """

    id: Name
    kind: Kind
    maker: Line = ""
    model: Name


class Result(StrEnum):
    """How an inspection ended."""

    PASSED = "passed"
    WITH_REMARKS = "passed with remarks"
    FAILED = "failed"


class ServiceRecord(Frozen):
    """That a service was done.

    Attributes:
        rules: ids of the rules it satisfies; if it failed, they are open from that day instead.
        hours, launches: the item's totals on that day, None = taken from the log.
        result: None = the paper does not say.
        cost, currency: what it cost, in the currency that the pilot writes.
        next_due_on, next_within_h: the next time as the inspector set it, a day or hours from then; stands over the
            months and hours of the rules it satisfies, not of those that
            wait for an event alone, unless that is all it satisfies.
        answers: ids of events that it answers; those before its day it answers anyway.
    """

    id: Name
    item_id: Name
    rules: tuple[Name, ...]
    done_on: Day
    hours: Annotated[float, Field(ge=0, le=1_000_000)] | None = None
    launches: Annotated[int, Field(ge=0, le=10_000_000)] | None = None
    who: Line = ""
    result: Result | None = None
    cost: Annotated[float, Field(ge=0, le=1e9)] | None = None
    currency: Line = ""
    remarks: Note = ""
    next_due_on: Day | None = None
    next_within_h: Annotated[float, Field(gt=0, le=100_000)] | None = None
    measurements: tuple[Measurement, ...] = ()
    papers: tuple[Paper, ...] = ()
    answers: tuple[Name, ...] = ()
    struck_at: AwareDatetime | None = None

    @model_validator(mode="after")
    def _check(self) -> Self:
        if self.next_due_on is not None and self.next_due_on < self.done_on:
            days = {"next": str(self.next_due_on), "done": str(self.done_on)}
            raise PydanticCustomError("record.next_before_done", "{next} {done}", days)
        return self

    def sets_next_of(self, rule: Limits) -> bool:
        """Whether the inspector's next time is that of this rule."""
        return len(self.rules) == 1 or not rule.waits_for_event_only

    @property
    def failed(self) -> bool:
        """Whether what was looked at may not be used as it is."""
        return self.result is Result.FAILED


class Event(Frozen):
    """Something that happened to an item and calls for service: a blow, water, a reserve thrown, a new pairing."""

    id: Name
    item_id: Name
    on: Day
    kind: Name
    note: Note = ""
    struck_at: AwareDatetime | None = None
