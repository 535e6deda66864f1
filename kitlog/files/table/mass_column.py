"""Columns of masses: whole grams from g, kg, oz and lb."""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from kitlog.files.table.amounts import Exact, Meant, Part, judged, pieces, total, units_of
from kitlog.files.table.cells import Cell, Figure, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import CHOICES, Answers, Question
from kitlog.files.table.limits import most
from kitlog.files.table.marked import Plain, read_marked
from kitlog.files.table.numbers import MARK, PLAIN, Number, figure_value, may_part_thousands, written
from kitlog.files.table.phrases import Phrase, phrase
from kitlog.files.table.reading import NOTHING, UNREAD, Read
from kitlog.files.table.remark import Remark
from kitlog.files.table.targets import Target
from kitlog.files.table.units import canonical_unit, dimension_of

Key = tuple[Cell, str]
"""A cell, and the unit that its row gives it."""

_PLAIN = re.compile(PLAIN + r" ?(g|kg)?")
_WHOLE_G = {"g": 1, "kg": 1000}
_POWERS = (1, 10, 100, 1000)
_METRIC = ("g", "kg")


def read_masses(
    target: Target, unit: str, cells: Sequence[Cell], answers: Answers, *, own: bool, units: Sequence[str]
) -> ColumnReading:
    """Whole grams of each cell, halves rounded up from oz and lb; a text in g or kg finer than that is not read.

    `unit` is that of the heading; `units` has one for each cell from its row, or is empty.
    """
    answer = answers.to(Question.MASS_UNIT)
    bare = unit or (("kg" if target.name.endswith("_kg") else "g") if own else "")
    bare = bare or (answer if answer in CHOICES[Question.MASS_UNIT] else "")
    keys = [(cell, given or bare) for cell, given in zip(cells, units, strict=True)] if units else None
    limit = most(target)

    rounded: set[Cell] = set()

    def careful(cell: Cell, bare: str) -> Read:
        if isinstance(cell, str):
            return _read_text(phrase(cell), bare, target, limit, own=own)
        return _read_figure(cell, bare, limit, rounded) if isinstance(cell, Figure) else UNREAD

    if keys is None:
        reading = read_marked(cells, _quick(bare, limit, own=own), lambda cell: careful(cell, bare), text_of, answers)
    else:
        reading = read_marked(keys, lambda _: None, lambda key: careful(*key), lambda key: text_of(key[0]), answers)
    return _with_rounded(reading, [cell for cell in cells if cell in rounded]) if rounded else reading


def _with_rounded(reading: ColumnReading, rounded: Sequence[Cell]) -> ColumnReading:
    remark = Remark("table.rounded", {"cells": len(rounded), "example": text_of(rounded[0])})
    return replace(reading, remarks=(*reading.remarks, remark))


def _quick(bare: str, limit: float, *, own: bool) -> Callable[[Cell], Plain | None]:
    """Plain masses in g and kg: digits with at most three decimals, the unit right behind or in the heading."""
    per_bare = _WHOLE_G.get(bare)

    def read(cell: Cell) -> Plain | None:
        match = _PLAIN.fullmatch(cell) if isinstance(cell, str) else None
        if match is None:
            return None
        whole, mark, rest, unit = match.groups()
        factor = _WHOLE_G[unit] if unit else per_bare
        if factor is None:
            return None
        if rest is None:
            return int(whole) * factor, "", False
        digits = int(whole + rest)
        grams, left = divmod(digits * factor, _POWERS[len(rest)])
        impossible = may_part_thousands(whole, rest) and not (own and mark == ".")
        if left or (impossible and not grams <= limit < digits * factor):
            return None
        return grams, MARK[mark], impossible

    return read


def _read_figure(cell: Figure, bare: str, limit: float, rounded: set[Cell]) -> Read:
    """A figure of a workbook; one finer than a gram (a formula's) is noted among the rounded ones."""
    value = figure_value(cell.value)
    unit = canonical_unit(cell.unit) if cell.unit else bare
    if value is None or cell.percent or (cell.unit and not unit):
        return UNREAD
    read = _judge([Number(value, value)], [unit], limit, rough=False, shown=written(value))
    amount = total([Part(value, unit)], "g") if read.question is Question.UNREAD else None
    if amount is None:
        return read
    rounded.add(cell)
    return Read(half_up(amount))


def _read_text(said: Phrase | None, bare: str, target: Target, limit: float, *, own: bool) -> Read:
    if said is None:
        return UNREAD
    if said.nothing:
        return NOTHING
    found = pieces(said.core, own=own)
    if not found or (said.each and target.name == "mass_all"):
        return UNREAD
    units = units_of(found, bare)
    if units is None:
        return UNREAD
    return _judge([piece.number for piece in found], units, limit, rough=said.rough, shown=said.core)


def _judge(numbers: Sequence[Number], units: Sequence[str], limit: float, *, rough: bool, shown: str) -> Read:
    if units == [""] and numbers[0] != Number(Decimal(0), Decimal(0)):
        readings = {unit: f"{shown} {unit}" for unit in CHOICES[Question.MASS_UNIT]}
        mark = judged(numbers, ["g"], lambda parts: Meant(1, str(parts)), rough=False).mark
        return Read(rough=rough, question=Question.MASS_UNIT, readings=readings, mark=mark)
    return judged(numbers, [unit or "g" for unit in units], lambda parts: _meant(parts, limit), rough=rough)


def _meant(parts: Sequence[Part], limit: float) -> Meant | None:
    amount = total(parts, "g")
    if amount is None:
        return None
    shown = " ".join(f"{written(part.value)} {part.unit}" for part in parts)
    return Meant(whole_grams(amount, parts), shown, amount <= limit)


def whole_grams(amount: Exact, parts: Sequence[Part]) -> int | None:
    """Grams of a mass: halves rounded up; None for one in g or kg finer than a gram, which nobody may round unseen."""
    metric = all(part.unit in _METRIC for part in parts)
    return None if metric and amount % 1 else half_up(amount)


def half_up(amount: Exact) -> int:
    """The nearest whole number, halves up."""
    return int(Fraction(amount) + Fraction(1, 2)) if amount % 1 else int(amount)


def read_mass_unit(cell: Cell) -> Read:
    """The unit that a cell of a unit column names."""
    said = phrase(cell) if isinstance(cell, str) else None
    if said is None:
        return UNREAD
    if said.nothing:
        return NOTHING
    unit = canonical_unit(said.core)
    return Read(unit) if dimension_of(unit) == "mass" and not said.rough else UNREAD
