"""Flights: what was flown, how long, with what."""

from datetime import date
from typing import Annotated, Self

from pydantic import AwareDatetime, Field, model_validator
from pydantic_core import PydanticCustomError

from kitlog.kit.paper import ContentHash
from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note

DAY_MIN = 24 * 60

HeightM = Annotated[int, Field(ge=-1_000, le=50_000)]
"""Metres; below the sea where a recorder says so."""


class Flight(Frozen):
    """One flight, or a typed total over several days.

    Attributes:
        on: local day of the take-off; the first day of a typed total.
        until: last day of a typed total, None for a flight.
        takeoff_at, landing_at: aware times, None if not known.
        airtime_min: minutes in the air; ground_handling_min: minutes of ground handling, booked apart.
        launches: take-offs; a relaunch after a slope landing is a second one.
        time_zone: of the place of the take-off, an IANA name, empty if not known.
        max_gnss_m, max_pressure_m: greatest heights by satellite and by pressure, None if not recorded.
        flown: ids of the items that get airtime and launches; carried: ids of what only rode along.
        recordings: SHA-256 of the recordings of it; found_airtime_min: what was found in the first of them, before
            any correction.
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
    time_zone: Line = ""
    max_gnss_m: HeightM | None = None
    max_pressure_m: HeightM | None = None
    found_airtime_min: Annotated[float, Field(ge=0, le=DAY_MIN)] | None = None
    recordings: tuple[ContentHash, ...] = ()

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
