"""The cells of any table: text as typed, or a figure or a day whose value the file itself gives."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum
from typing import NamedTuple

from kitlog.files.csv_problems import Spot
from kitlog.files.table.remark import Remark


class Shows(StrEnum):
    """How much of a day a workbook's cell shows: one shown as "June 2018" was typed as a month."""

    DAY = "day"
    MONTH = "month"
    YEAR = "year"


@dataclass(frozen=True, slots=True)
class Figure:
    """A number from a workbook.

    Attributes:
        value: the number itself; 0.95 for a cell shown as 95 %, with `percent` True.
        unit: letters that the cell's format shows beside the number ("g"); empty if none.
        text: the cell as a person would read it, for messages.
    """

    value: Decimal
    text: str
    unit: str = ""
    percent: bool = False


@dataclass(frozen=True, slots=True)
class CalendarDay:
    """A day from a workbook, with how much of it is shown, and the text for messages."""

    day: date
    text: str
    shows: Shows = Shows.DAY


Cell = str | Figure | CalendarDay
"""One cell; an empty one is the empty text."""


def text_of(cell: Cell) -> str:
    """The cell as a person reads it."""
    return cell if isinstance(cell, str) else cell.text


class GridRow(NamedTuple):
    """One row with anything in it, and where it stands in the file."""

    spot: Spot
    cells: Sequence[Cell]


@dataclass(frozen=True, slots=True)
class Grid:
    """All rows that hold anything, as wide as they come, and what is to be said of how the file was read.

    Attributes:
        own_form: the file is in the exact form that kitlog writes (comma, quotes, UTF-8): set by the CSV reader alone,
            of the dialect; whether the headings are ours is seen later.
    """

    rows: Sequence[GridRow]
    remarks: tuple[Remark, ...] = ()
    own_form: bool = False
