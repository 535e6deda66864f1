"""A measurement as one line of text: ``porosity 182 s, gauge A, cell 12``."""

import re

from kitlog.fault import InputFault
from kitlog.kit.measurement import UNITS, Measured, Measurement
from kitlog.units.number import parse_number

WHAT = "|".join(sorted((what.value.replace(" ", "[ _-]") for what in Measured), key=len, reverse=True))
"""Words for what is measured, as a part of a pattern."""

_LINE = re.compile(
    rf"\s*(?P<what>{WHAT})\s*:?\s+(?P<value>[-+\u2212]?[0-9]+(?:[.,][0-9]+)?)\s*(?P<unit>[^\s,0-9][^\s,]*)"
    r"(?:\s*,(?P<gauge>[^,]*)(?:,(?P<place>.*))?)?\s*",
    re.IGNORECASE,
)
_SAME = str.maketrans({"²": "2", "µ": "u"})
_SHOWN = 80


def parse_measurement(text: str) -> Measurement:
    """What, value and unit, then the gauge and the place where they are given; capitals do not matter.

    The value is taken as it stands: a figure of one gauge is never made into one of another.

    Raises:
        InputFault: ``measurement.unread`` with ``value``.
        ValidationError: by `Measurement`: the unit is none of that quantity.
    """
    match = _LINE.fullmatch(text)
    if match is None:
        raise InputFault("measurement.unread", value=text[:_SHOWN])
    what = what_of(match["what"])
    return Measurement(
        what=what,
        value=parse_number(match["value"].replace(",", ".").replace("\u2212", "-")),
        unit=unit_of(what, match["unit"]) or match["unit"],
        gauge=match["gauge"] or "",
        place=match["place"] or "",
    )


def what_of(typed: str) -> Measured:
    """What is measured, from a word that `WHAT` takes."""
    return Measured(re.sub("[_-]", " ", typed.casefold()))


def unit_of(what: Measured, typed: str) -> str | None:
    """The unit as it is written here; None for one that is none of the quantity."""
    plain = typed.translate(_SAME).casefold()
    return next((unit for unit in UNITS[what] if unit.casefold() == plain), None)
