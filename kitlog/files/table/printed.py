"""How finely a mass is printed: what a figure may be off by rounding."""

import re
from collections.abc import Iterator

from kitlog.files.table.cells import Cell, text_of
from kitlog.files.table.units import FACTOR, canonical_unit, dimension_of

_NUMBER = re.compile(r"[0-9]+(?:[.,'’ \u00a0\u202f][0-9]+)*")
_WORD = re.compile(r"[^\W\d_]+")
_UNITS = ("g", "kg", "oz", "lb")
_MOST_DECIMALS = 6
_HELD = 1
"""Grams by which a figure in whole grams may differ from what is printed."""


def half_step_g(cell: Cell, unit: str, value_g: int) -> float:
    """Half of the last digit that a cell prints of its mass, in g, but no less than half a gram.

    Args:
        cell: as it was read.
        unit: of its figures without one, empty = not known.
        value_g: what it was read as.
    """
    text = text_of(cell)
    numbers = list(_NUMBER.finditer(text))
    if not numbers:
        return 0.5
    last = numbers[-1]
    word = _WORD.match(text[last.end() :].lstrip(" .([\u00a0\u202f"))
    said = canonical_unit(word.group()) if word else ""
    units = [one for one in (said, unit) if dimension_of(one) == "mass"] or list(_UNITS)
    steps = _steps(last.group(), units, value_g) if len(numbers) == 1 else iter(())
    return max(0.5, next(steps, float(FACTOR[units[0], "g"]) if said else 1.0) / 2)


def _steps(number: str, units: list[str], value_g: int) -> Iterator[float]:
    """The size of the last digit under each unit and number of decimals that makes the value."""
    digits = int(re.sub(r"[^0-9]", "", number)[:18])
    for unit in units:
        one_g = float(FACTOR[unit, "g"])
        for decimals in range(_MOST_DECIMALS):
            step = one_g / 10**decimals
            if abs(digits * step - value_g) <= _HELD:
                yield step
