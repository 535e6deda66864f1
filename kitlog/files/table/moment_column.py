"""Columns of moments: a day with a time and its offset from UTC, as kitlog writes them; anything else is unread."""

from collections.abc import Sequence

from kitlog.fault import InputFault
from kitlog.files.csv_forms import MOMENT
from kitlog.files.table.cells import Cell, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers
from kitlog.files.table.reading import NOTHING, UNREAD, Read, gathered
from kitlog.files.table.word_column import NOTHING_SAID


def read_moments(cells: Sequence[Cell], answers: Answers) -> ColumnReading:
    """The moment of each cell, in UTC."""
    return gathered(cells, {}, {cell: _read(text_of(cell).strip()) for cell in dict.fromkeys(cells)}, answers)


def _read(text: str) -> Read:
    if text in NOTHING_SAID:
        return NOTHING
    try:
        return Read(MOMENT.read(text))
    except InputFault:
        return UNREAD
