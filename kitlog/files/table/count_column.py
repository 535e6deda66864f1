"""Columns of whole pieces, launches and ports: 2, 2x, 2 pcs."""

import re
from collections.abc import Sequence

from kitlog.files.table.amounts import Meant, Part, judged
from kitlog.files.table.cells import Cell, Figure, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers
from kitlog.files.table.limits import most
from kitlog.files.table.marked import Plain, read_marked
from kitlog.files.table.numbers import figure_value, read_number, written
from kitlog.files.table.phrases import phrase, tidy
from kitlog.files.table.reading import NOTHING, UNREAD, Read
from kitlog.files.table.targets import Target

_WORDS = (
    r"x|×|stk|stck|stück|st|pcs?|pces?|pieces?|pièces?|ea|off|paar|pairs?|paires?|"
    r"ports?|launch(?:es)?|starts?|flights?|flüge|flug|vols?|décollages?"
)
_COUNTED = re.compile(rf"(?:[x×] ?)?([0-9][0-9.,' ]*[0-9]|[0-9]) ?(?:(?:{_WORDS})\.?)?")
_WORD = re.compile(rf"(?:{_WORDS})\.?")
_MAX_DIGITS = 9


def read_counts(target: Target, cells: Sequence[Cell], answers: Answers, *, own: bool) -> ColumnReading:
    """Whole numbers; a reading that is not whole is none, so "1.250" is 1250 and "1.000" stays open."""
    limit = most(target)

    def careful(cell: Cell) -> Read:
        if isinstance(cell, Figure):
            return _figure(cell)
        return _text(cell, limit, own=own) if isinstance(cell, str) else UNREAD

    return read_marked(cells, _quick, careful, text_of, answers)


def _quick(cell: Cell) -> Plain | None:
    if isinstance(cell, str) and cell.isdecimal() and cell.isascii() and len(cell) <= _MAX_DIGITS:
        return int(cell), "", False
    return None


def _figure(cell: Figure) -> Read:
    value = figure_value(cell.value)
    unit = tidy(cell.unit)
    if value is None or cell.percent or value % 1 or (unit and not _WORD.fullmatch(unit)):
        return UNREAD
    return Read(int(value))


def _text(cell: str, limit: float, *, own: bool) -> Read:
    said = phrase(cell)
    if said is None or said.nothing:
        return NOTHING if said else UNREAD
    match = _COUNTED.fullmatch(said.core)
    number = read_number(match.group(1), own=own) if match and not said.each and not said.measured else None
    if number is None:
        return UNREAD
    return judged([number], [""], lambda parts: _meant(parts, limit), rough=said.rough)


def _meant(parts: Sequence[Part], limit: float) -> Meant | None:
    value = parts[0].value
    return Meant(int(value), written(value), value <= limit) if value % 1 == 0 else None
