"""Whether a row holds the sums of others, by the figures alone."""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal

from kitlog.files.table.cells import Cell, Figure, GridRow, text_of

_WHOLE = re.compile(r"\s*(\d{1,9})(?:\s*[a-zA-Z]{1,3})?\s*")
_LEAST_ROWS = 2

Filled = Sequence[tuple[int, str]]


def _number(cell: Cell) -> Decimal | None:
    """A plain whole number or a figure of a workbook; of others nothing is said here."""
    if isinstance(cell, Figure):
        return cell.value
    match = _WHOLE.fullmatch(text_of(cell))
    return Decimal(match[1]) if match else None


def _numbers(rows: Sequence[GridRow], indices: range, at: int) -> Iterator[Decimal | None]:
    for index in indices:
        cells = rows[index].cells
        yield _number(cells[at]) if at < len(cells) else None


def is_sum_above(rows: Sequence[GridRow], index: int, start: int, filled: Filled) -> bool:
    """Whether a row's last figure is the sum of some rows right above it, two at least."""
    return _is_sum(rows, index, range(index - 1, start - 1, -1), filled)


def is_sum_below(rows: Sequence[GridRow], index: int, filled: Filled) -> bool:
    """Whether a row's last figure is the sum of some rows right below it, two at least."""
    return _is_sum(rows, index, range(index + 1, len(rows)), filled)


def _is_sum(rows: Sequence[GridRow], index: int, others: range, filled: Filled) -> bool:
    at = filled[-1][0] if filled else 0
    wanted = _number(rows[index].cells[at]) if filled else None
    if not wanted:
        return False
    total, added = Decimal(0), 0
    for number in _numbers(rows, others, at):
        total, added = total + (number or 0), added + (number is not None)
        if total >= wanted:
            return total == wanted and added >= _LEAST_ROWS
    return False
