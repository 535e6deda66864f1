"""The pilot and a passenger: dated body masses."""

from collections.abc import Iterable
from datetime import date
from enum import StrEnum
from typing import Annotated

from pydantic import Field

from kitlog.kit.mass import body_tolerance_g
from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note


class BodyMass(Frozen):
    """A body mass in whole grams, the day it was taken and how (``naked, morning``)."""

    taken_on: Day
    mass_g: Annotated[int, Field(ge=20_000, le=250_000)]
    how: Line = ""

    def tolerance_g(self, on: date) -> int:
        """Tolerance in g on a day: 1,000 within 60 days, 2,500 after (common practice, no source)."""
        return body_tolerance_g((on - self.taken_on).days)


class BodyRole(StrEnum):
    """Whose body it is."""

    PILOT = "pilot"
    PASSENGER = "passenger"


class Pilot(Frozen):
    """The pilot (or a passenger) with all body masses ever taken, and what the flight note says of them."""

    id: Name
    name: Name
    role: BodyRole = BodyRole.PILOT
    masses: tuple[BodyMass, ...] = ()
    phone: Line = ""
    notes: Note = ""

    def mass_on(self, day: date) -> BodyMass | None:
        """The newest body mass taken on or before a day, None if there is none."""
        return newest_mass(self.masses, day)


def newest_mass(masses: Iterable[BodyMass], day: date) -> BodyMass | None:
    """The newest of the body masses taken on or before a day."""
    return max((m for m in masses if m.taken_on <= day), key=lambda mass: mass.taken_on, default=None)
