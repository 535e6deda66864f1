"""Columns of battery texts: "10000 mAh 3.7 V", "38.5 Wh"."""

import re
from collections.abc import Sequence
from functools import cache

from kitlog.files.table.amounts import Meant, Part, Piece, judged, pieces
from kitlog.files.table.cells import Cell, Figure, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers
from kitlog.files.table.limits import is_likely, most
from kitlog.files.table.marked import read_marked
from kitlog.files.table.numbers import Number, figure_value, written
from kitlog.files.table.phrases import phrase
from kitlog.files.table.reading import NOTHING, UNREAD, Read
from kitlog.files.table.targets import TARGETS
from kitlog.files.table.units import DECIMAL_FACTOR, canonical_unit

_JOINED = re.compile(r"(?:[ /,;@=()|+–—-]|(?<![a-zà-ÿ])(?:at|bei|à|with|mit|avec|and|und|et)(?![a-zà-ÿ]))+$")
_HELD = {"Wh": "battery_wh", "mAh": "battery_mah", "V": "battery_v"}


@cache
def _most(unit: str) -> float:
    return most(TARGETS[_HELD[unit]])


def read_electric(unit: str, cells: Sequence[Cell], answers: Answers, *, own: bool) -> ColumnReading:
    """Wh, mAh and V by the headings of kit.csv; a bare number takes the unit of the heading, else it is not read."""

    def careful(cell: Cell) -> Read:
        if isinstance(cell, Figure):
            return _figure(cell, unit)
        return _text(cell, unit, own=own) if isinstance(cell, str) else UNREAD

    return read_marked(cells, lambda _: None, careful, text_of, answers)


def _figure(cell: Figure, bare: str) -> Read:
    value = figure_value(cell.value)
    if value is None or cell.percent:
        return UNREAD
    unit = canonical_unit(cell.unit) if cell.unit else bare
    return judged([Number(value, value)], [unit], _meant, rough=False)


def _text(cell: str, bare: str, *, own: bool) -> Read:
    said = phrase(cell)
    if said is None or said.nothing:
        return NOTHING if said else UNREAD
    found = pieces(said.core, own=own)
    if not found or said.each:
        return UNREAD
    return judged([piece.number for piece in found], _units(found, bare), _meant, rough=said.rough)


def _units(found: Sequence[Piece], bare: str) -> list[str]:
    """The unit behind each number, without what joins it to the next one; a bracket may close the last one."""
    if len(found) == 1 and not found[0].behind:
        return [bare]
    units = [_JOINED.sub("", piece.behind) for piece in found[:-1]]
    last = found[-1].behind
    opened = any("(" in piece.behind for piece in found[:-1])
    return [canonical_unit(word) for word in (*units, last.removesuffix(")").strip() if opened else last)]


def _meant(parts: Sequence[Part]) -> Meant | None:
    """The figures by heading; None if one has no electric unit, or two are of the same dimension."""
    held: dict[str, float] = {}
    possible = True
    for part in parts:
        unit = next((unit for unit in _HELD if (part.unit, unit) in DECIMAL_FACTOR), "")
        if not unit or _HELD[unit] in held:
            return None
        amount = part.value * DECIMAL_FACTOR[part.unit, unit]
        held[_HELD[unit]] = float(amount)
        possible = possible and amount <= _most(unit) and is_likely(amount, unit)
    return Meant(held, ", ".join(f"{written(part.value)} {part.unit}" for part in parts), possible)
