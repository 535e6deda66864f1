"""The sheets of a workbook: which one is taken, and what is to be said of how it was read."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from kitlog.fault import InputFault
from kitlog.files.csv_dialect import MAX_ROWS
from kitlog.files.csv_problems import Spot
from kitlog.files.table.cells import Cell, GridRow
from kitlog.files.table.extent import column_letters, within_columns
from kitlog.files.table.remark import Remark

_EXAMPLES = 10


@dataclass(slots=True)
class Sheet:
    """One sheet as it is read: its rows, and the cells that something is to be said of, by their names (D7)."""

    name: str
    hidden: bool = False
    rows: list[GridRow] = field(default_factory=list)
    hidden_rows: list[int] = field(default_factory=list)
    hidden_columns: set[int] = field(default_factory=set)
    no_value: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)
    merged: list[str] = field(default_factory=list)
    digits_lost: list[str] = field(default_factory=list)

    def add(self, row: int, cells: list[Cell], file: str) -> None:
        """A row with anything in it.

        Raises:
            InputFault: ``table.too_many_rows``, ``table.too_many_columns``.
        """
        if len(self.rows) > MAX_ROWS:  # the headings besides
            raise InputFault("table.too_many_rows", file=file, limit=MAX_ROWS)
        self.rows.append(GridRow(Spot(row, row), within_columns(cells, file)))

    def remarks(self) -> Iterator[Remark]:
        """What is to be said of the cells."""
        if self.hidden:
            yield Remark("table.sheet_hidden", {"sheet": self.name})
        yield from _some("table.hidden_rows", "rows", self.hidden_rows)
        yield from _some("table.hidden_columns", "columns", self._columns_hidden())
        yield from _some("table.no_value", "cells", self.no_value)
        yield from _some("table.error_cells", "cells", self.errors)
        yield from _some("table.merged", "cells", self.merged)
        yield from _some("table.digits_lost", "cells", self.digits_lost)

    def _columns_hidden(self) -> list[str]:
        """Hidden columns that hold anything."""
        return [
            column_letters(column)
            for column in sorted(self.hidden_columns)
            if any(len(row.cells) >= column and row.cells[column - 1] != "" for row in self.rows)
        ]


def _some(code: str, fact: str, found: Sequence[object]) -> Iterator[Remark]:
    if found:
        yield Remark(code, {fact: tuple(found[:_EXAMPLES]), "count": len(found)})


def named_sheet(wanted: str, names: Sequence[str], file: str) -> str:
    """The name among those of a workbook's sheets that is meant: written the same, or but for case and blanks.

    Raises:
        InputFault: ``table.no_such_sheet`` with ``value`` and ``known``.
    """
    plain = wanted.strip().casefold()
    alike = [name for name in names if name == wanted] or [name for name in names if name.strip().casefold() == plain]
    if not alike:
        raise InputFault("table.no_such_sheet", file=file, value=wanted, known=tuple(names))
    return alike[0]


def refuse_empty(sheet: Sheet, file: str) -> None:
    """A sheet that was asked for by name, with nothing in it.

    Raises:
        InputFault: ``table.empty_sheet`` with ``value``.
    """
    if not sheet.rows:
        raise InputFault("table.empty_sheet", file=file, value=sheet.name)


def is_empty(cell: Cell) -> bool:
    """Whether a cell holds nothing, or nothing but blanks."""
    return isinstance(cell, str) and not cell.strip()


def book_remarks(taken: Sheet, others: Sequence[Sheet]) -> tuple[Remark, ...]:
    """What is to be said of a workbook; `others` are the sheets with content that were not taken.

    Remarks: ``table.sheet_taken`` (`sheet`, `others`, `hidden`: names); ``table.sheet_hidden`` (`sheet`: the one taken
    is hidden); ``table.hidden_rows`` (`rows`, `count`), ``table.hidden_columns`` (`columns`, `count`);
    ``table.no_value`` (formulas of which the file holds no result), ``table.error_cells``, ``table.merged`` (ranges),
    ``table.digits_lost`` (numbers of more than 15 digits), each with `cells`, `count`. Of each list the first ten.
    """
    seen = tuple(sheet.name for sheet in others if not sheet.hidden)
    hidden = tuple(sheet.name for sheet in others if sheet.hidden)
    which = (Remark("table.sheet_taken", {"sheet": taken.name, "others": seen, "hidden": hidden}),) if others else ()
    return (*which, *taken.remarks())
