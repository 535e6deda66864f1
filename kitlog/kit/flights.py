"""Flights: what was flown, how long, with what."""

from datetime import date
from typing import Annotated, Self

from pydantic import AwareDatetime, Field, model_validator
from pydantic_core import PydanticCustomError

from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note

DAY_MIN = 24 * 60


class Flight(Frozen):
    """One flight, or a typed total over several days.

    Attributes:
        on: local day of the take-off; the first day of a typed total.
        until: last day of a typed total, None for a flight.
        takeoff_at, landing_at: aware times, None if not known.
        airtime_min: minutes in the air; ground_handling_min: minutes of ground handling, booked apart.
        launches: take-offs; a relaunch after a slope landing is a second one.
        flown: ids of the items that get airtime and launches; carried: ids of what only rode along.
    """

    id: Name
    on: Day
    until: Day | None = None
    takeoff_at: AwareDatetime | None = None
    landing_at: AwareDatetime | None = None
    airtime_min: Annotated[float, Field(ge=0, le=10_000_000)] = 0.0
    ground_handling_min: Annotated[float, Field(ge=0, le=10_000_000)] = 0.0
    launches: Annotated[int, Field(ge=0, le=100_000)] = 1
    site: Line = ""
    note: Note = ""
    flown: tuple[Name, ...] = ()
    carried: tuple[Name, ...] = ()

    @model_validator(mode="after")
    def _check(self) -> Self:
        if self.until is None and self.airtime_min > DAY_MIN:
            raise PydanticCustomError("flight.longer_than_a_day", "{minutes}", {"minutes": self.airtime_min})
        if self.until is not None and self.until < self.on:
            raise PydanticCustomError("flight.ends_before_it_begins", "{until}", {"until": str(self.until)})
        if self.takeoff_at and self.landing_at and self.landing_at < self.takeoff_at:
            raise PydanticCustomError("flight.ends_before_it_begins", "", {})
        return self

    @property
    def last_day(self) -> date:
        """The last day it covers."""
        return self.until or self.on
