"""What a workshop measured, as it was measured: a figure of one gauge is never made into one of another."""

from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, StringConstraints, model_validator
from pydantic_core import PydanticCustomError

from kitlog.units.model import Frozen
from kitlog.units.text import Line


class Measured(StrEnum):
    """What a workshop or packer measures."""

    POROSITY = "porosity"
    LINE_STRENGTH = "line strength"
    TEAR_STRENGTH = "tear strength"
    RELEASE_FORCE = "release force"
    LINE_LENGTH = "line length"
    CAPACITY = "capacity"


_FORCES = ("daN", "N", "kg", "kN")

UNITS: dict[Measured, tuple[str, ...]] = {
    Measured.POROSITY: ("s", "l/m2/min"),
    Measured.LINE_STRENGTH: _FORCES,
    Measured.TEAR_STRENGTH: ("g", "mm", *_FORCES),
    Measured.RELEASE_FORCE: _FORCES,
    Measured.LINE_LENGTH: ("mm",),
    Measured.CAPACITY: ("%", "Wh", "mAh"),
}
"""The units in which each is written down; porosity in seconds is the time for a quarter of a litre of air."""


class Measurement(Frozen):
    """One measured value.

    Attributes:
        unit: one of `UNITS`; gauge: the instrument, empty where the paper does not say.
        place: where on the item: a cell, a line, a handle.
    """

    what: Measured
    value: Annotated[float, Field(ge=-100_000, le=1_000_000)]
    unit: Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=20)]
    gauge: Line = ""
    place: Line = ""

    @model_validator(mode="after")
    def _check(self) -> Self:
        if self.unit not in UNITS[self.what]:
            facts = {"what": self.what.value, "unit": self.unit, "units": ", ".join(UNITS[self.what])}
            raise PydanticCustomError("measurement.unit", "{unit}", facts)
        if self.value < 0 and self.what is not Measured.LINE_LENGTH:
            raise PydanticCustomError("measurement.negative", "{value}", {"what": self.what.value, "value": self.value})
        return self

    @property
    def series(self) -> tuple[Measured, str, str, str]:
        """What may be drawn in one line: the same thing by the same gauge, in the same unit, at the same place."""
        return self.what, self.unit, self.gauge.casefold(), self.place.casefold()
