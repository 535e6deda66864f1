"""One column of a table read: numbers with their units, counts, days."""

from collections.abc import Sequence
from decimal import Decimal

from kitlog.files.table.cells import Cell, Figure
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.count_column import read_counts
from kitlog.files.table.day_column import read_days
from kitlog.files.table.doubt import Answers
from kitlog.files.table.electric_column import read_electric
from kitlog.files.table.figure_column import read_figures
from kitlog.files.table.mass_column import read_mass_unit, read_masses
from kitlog.files.table.mass_range import read_ranges
from kitlog.files.table.moment_column import read_moments
from kitlog.files.table.money_column import read_money
from kitlog.files.table.reading import gathered
from kitlog.files.table.targets import Target, Way

_NO_NUMBER = Figure(Decimal(-1), "")
"""Stands in for a figure that is none (NaN, infinite), which cannot be kept in a table by its value."""


def read_column(
    target: Target,
    unit: str,
    cells: Sequence[Cell],
    answers: Answers,
    *,
    own: bool = False,
    units: Sequence[str] = (),
    evidence: int = 0,
) -> ColumnReading:
    """Read the cells of a column; never raises for anything that a cell holds.

    Args:
        target: what the column stands for; not one of text, notes, several names or words of a list.
        cells: the cells in order.
        unit: unit of bare numbers as the heading gives it; empty if it gives none.
        answers: to the questions of this column.
        own: the file is in kitlog's own form: decimals have a point, bare masses are in the unit of the heading.
        units: for masses, a unit for each cell from its row (empty = none there).
        evidence: for masses, so many cells at the end are totals: they count as evidence, nothing is said of them.

    Returns:
        MASS: whole grams. FIGURE: float in ``target.unit``, int for ml, `Milliamps` for a power given as a current.
        COUNT: int. DAY: date. MOMENT: datetime in UTC. ELECTRIC: a part of ``{"battery_wh", "battery_mah",
        "battery_v"}``. MASS_RANGE: a pair of grams, either None. MASS_UNIT: the unit.

    Raises:
        KeyError: for a way of reading that is not of a number or a day.
    """
    cells = [_NO_NUMBER if isinstance(cell, Figure) and not cell.value.is_finite() else cell for cell in cells]
    if target.way is Way.MASS:
        return read_masses(target, unit, cells, answers, own=own, units=units, evidence=evidence)
    if target.way is Way.FIGURE:
        return _figures(target, unit, cells, answers, own=own)
    if target.way is Way.MASS_RANGE:
        return read_ranges(target, unit, cells, answers, own=own, units=units)
    if target.way is Way.ELECTRIC:
        return read_electric(unit, cells, answers, own=own)
    if target.way is Way.COUNT:
        return read_counts(target, cells, answers, own=own)
    if target.way is Way.DAY:
        return read_days(cells, answers)
    if target.way is Way.MOMENT:
        return read_moments(cells, answers)
    if target.way is Way.MASS_UNIT:
        return gathered(cells, {}, {cell: read_mass_unit(cell) for cell in cells}, answers)
    raise KeyError(target.way)


def _figures(target: Target, unit: str, cells: Sequence[Cell], answers: Answers, *, own: bool) -> ColumnReading:
    if not target.unit:
        return read_money(target, cells, answers, own=own)
    return read_figures(target, unit, cells, answers, own=own)
