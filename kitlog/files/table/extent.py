"""How large a table may be, and what its columns are called."""

from collections.abc import Sequence
from typing import TypeVar

from kitlog.fault import InputFault

MAX_COLUMNS = 500
"""Columns with anything in them; ten times what the widest list of kit has."""

_Any = TypeVar("_Any")


def within_columns(cells: Sequence[_Any], file: str) -> Sequence[_Any]:
    """The cells of a row, without the empty ones beyond the greatest width.

    Raises:
        InputFault: ``table.too_many_columns``.
    """
    if len(cells) <= MAX_COLUMNS:
        return cells
    width = max((at for at, cell in enumerate(cells, 1) if cell != ""), default=0)
    if width > MAX_COLUMNS:
        raise InputFault("table.too_many_columns", file=file, limit=MAX_COLUMNS)
    return cells[:width]


def column_letters(column: int) -> str:
    """The name a spreadsheet gives a column; the first is 1, called A."""
    letters = ""
    while column > 0:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
