"""Columns of masses: whole grams from g, kg, oz and lb."""

import re
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from kitlog.files.table.amounts import Exact, Meant, Part, judged, pieces, total, units_of
from kitlog.files.table.bare_unit import answered_unit, asked_units, with_unit_told
from kitlog.files.table.cells import Cell, Figure, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.limits import most as most_of
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
    target: Target,
    unit: str,
    cells: Sequence[Cell],
    answers: Answers,
    *,
    own: bool,
    units: Sequence[str],
    evidence: int = 0,
) -> ColumnReading:
    """Whole grams of each cell, halves rounded up; that is told of masses in g or kg finer than a gram.

    `unit` is that of the heading; `units` has one for each cell from its row, or is empty.
    """
    given = unit or (("kg" if target.name.endswith("_kg") else "g") if own else "")
    answer = "" if given else answered_unit(target, answers)
    bare = given or answer
    keys = [(cell, given or bare) for cell, given in zip(cells, units, strict=True)] if units else None
    limit, asked = most_of(target), asked_units(target)

    finer: dict[Cell, set[int]] = {}
    each: set[Cell] = set()
    pairs: set[Cell] = set()

    def careful(cell: Cell, bare: str) -> Read:
        grams = finer.setdefault(cell, set())
        if isinstance(cell, str):
            said = phrase(cell)
            if said and (said.each or said.pair):
                (each if said.each else pairs).add(cell)
            return _read_text(said, bare, target, _Most(limit, grams, asked), own=own)
        return _read_figure(cell, bare, _Most(limit, grams, asked)) if isinstance(cell, Figure) else UNREAD

    if keys is None:
        reading = read_marked(cells, _quick(bare, limit, own=own), lambda cell: careful(cell, bare), text_of, answers)
    else:
        reading = read_marked(keys, lambda _: None, lambda key: careful(*key), lambda key: text_of(key[0]), answers)
    items = zip(cells[: len(cells) - evidence], reading.values, strict=False) if finer else ()
    rounded = [cell for cell, grams in items if grams in finer.get(cell, ())]
    reading = _with_rounded(reading, rounded) if rounded else reading
    if each or pairs:
        reading = replace(reading, each=_positions(cells, each), pairs=_positions(cells, pairs))
    follows = answer not in ("", answers.to(Question.MASS_UNIT)) and not units
    return with_unit_told(reading, cells, answer) if follows else reading


def _positions(cells: Sequence[Cell], wanted: Collection[Cell]) -> frozenset[int]:
    return frozenset(at for at, cell in enumerate(cells) if cell in wanted)


@dataclass(frozen=True, slots=True)
class _Most:
    """The most that is possible, in g.

    `finer` collects the grams of readings that were finer than a gram; `asked` are the units of masses without one.
    """

    limit: float
    finer: set[int]
    asked: tuple[str, ...]


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


def _read_figure(cell: Figure, bare: str, most: _Most) -> Read:
    """A figure of a workbook."""
    value = figure_value(cell.value)
    unit = canonical_unit(cell.unit) if cell.unit else bare
    if value is None or cell.percent or (cell.unit and not unit):
        return UNREAD
    return _judge([Number(value, value)], [unit], most, rough=False, shown=written(value))


def _read_text(said: Phrase | None, bare: str, target: Target, most: _Most, *, own: bool) -> Read:
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
    return _judge([piece.number for piece in found], units, most, rough=said.rough, shown=said.core)


def _judge(numbers: Sequence[Number], units: Sequence[str], most: _Most, *, rough: bool, shown: str) -> Read:
    if units == [""] and numbers[0] != Number(Decimal(0), Decimal(0)):
        readings = {unit: f"{shown} {unit}" for unit in most.asked}
        mark = judged(numbers, ["g"], lambda parts: Meant(1, str(parts)), rough=False).mark
        return Read(rough=rough, question=Question.MASS_UNIT, readings=readings, mark=mark)
    return judged(numbers, [unit or "g" for unit in units], lambda parts: _meant(parts, most), rough=rough)


def _meant(parts: Sequence[Part], most: _Most) -> Meant | None:
    amount = total(parts, "g")
    if amount is None:
        return None
    grams = half_up(amount)
    finer = bool(amount % 1) and all(part.unit in _METRIC for part in parts)
    if finer:
        most.finer.add(grams)
    shown = " ".join(f"{written(part.value)} {part.unit}" for part in parts)
    return Meant(grams, shown, amount <= most.limit, likely=not finer)


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
