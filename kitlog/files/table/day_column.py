"""Columns of days: what the cells prove about the order of day, month and year, and what it decides."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from kitlog.files.table.cells import CalendarDay, Cell, Figure, Shows, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.day_figures import (
    by_order,
    day_of,
    full_year,
    month_without_day,
    ordered,
    read_bare,
    year_without_day,
)
from kitlog.files.table.day_text import read_day
from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.numbers import figure_value
from kitlog.files.table.reading import UNREAD, Read, gathered
from kitlog.files.table.remark import Remark
from kitlog.units.days import FIRST_DAY, LAST_DAY

_PLAIN = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})|([0-9]{1,2})\.([0-9]{1,2})\.([0-9]{4})")
_QUICK = re.compile(r"([0-9]{1,2})([/.-])([0-9]{1,2})\2([0-9]{4})")
_DOTTED = re.compile(r"([0-9]{1,2})\.([0-9]{1,2})\.([0-9]{4}|[0-9]{2})")
_MARK = re.compile(r"(?<=[0-9]) ?[/.-]")
_SHORT = re.compile(r"([0-9]{2})([/.])([0-9]{1,2})\2([0-9]{2})")


def read_days(cells: Sequence[Cell], answers: Answers) -> ColumnReading:
    """The day of each cell.

    The orders under which every day of the column with the same mark between its figures exists are those in which it
    can be written (dots say nothing of slashes); where one of them is left, or where all that are left give the same
    day, the day is sure. Where none is left each cell stands alone.
    """
    plain: dict[Cell, object] = {}
    reads: dict[Cell, Read] = {}
    for cell in dict.fromkeys(cells):
        match = _PLAIN.fullmatch(cell) if isinstance(cell, str) else None
        if match is None:
            reads[cell] = _careful(cell)
            continue
        year, month, day, day_first, its_month, its_year = match.groups()
        found = day_of(int(year or its_year), int(month or its_month), int(day or day_first))
        if found is None:
            reads[cell] = _careful(cell)
        else:
            plain[cell] = found
    _dots_month_first(plain, reads)
    if answers.to(Question.DATES) == "ymd":
        _years_first(reads)
    remarks = _decide(cells, reads)
    return gathered(cells, plain, reads, answers, remarks)


def _dots_month_first(plain: dict[Cell, object], reads: dict[Cell, Read]) -> None:
    """Where one day with dots can only have the month first, the others with dots may have it first as well."""
    strange = (cell for cell, read in reads.items() if read is UNREAD and isinstance(cell, str))
    if not any(_with_dots(cell).value for cell in strange if _DOTTED.fullmatch(cell)):
        return
    for cell in [cell for cell in (*plain, *reads) if isinstance(cell, str) and _DOTTED.fullmatch(cell)]:
        reads[cell] = _with_dots(cell)
        plain.pop(cell, None)


def _with_dots(cell: str) -> Read:
    """A day with dots as if nothing were known of what dots mean."""
    first, second, third = cell.split(".")
    return ordered(first, "/", second, third)


def _years_first(reads: dict[Cell, Read]) -> None:
    """Years of two digits stand first, as the pilot says; only so, since everybody else means the day by 21/05/13."""
    for cell in reads:
        match = _SHORT.fullmatch(cell) if isinstance(cell, str) else None
        day = day_of(full_year(match[1]), int(match[3]), int(match[4])) if match else None
        if day:
            reads[cell] = Read(day)


def _careful(cell: Cell) -> Read:
    if isinstance(cell, str):
        match = _QUICK.fullmatch(cell)
        return ordered(*match.groups()) if match else read_day(cell)
    return _figure(cell) if isinstance(cell, Figure) else _calendar_day(cell)


def _figure(cell: Figure) -> Read:
    value = figure_value(cell.value)
    if value is None or value % 1 or cell.unit or cell.percent:
        return UNREAD
    return read_bare(int(value), len(str(int(value))))


def _calendar_day(cell: CalendarDay) -> Read:
    """A day of a workbook; one that shows no day, and is the first, was typed as a month or a year."""
    day = cell.day
    if cell.shows is Shows.MONTH and day.day == 1:
        return month_without_day(day.year, day.month)
    if cell.shows is Shows.YEAR and (day.month, day.day) == (1, 1):
        return year_without_day(day.year)
    return Read(date(day.year, day.month, day.day)) if FIRST_DAY <= day <= LAST_DAY else UNREAD


def _decide(cells: Sequence[Cell], reads: dict[Cell, Read]) -> list[Remark]:
    """Leave to each cell, in place, the orders that all cells of its mark can have; say so where that decided anything.

    The example is the first cell with the fewest orders to it.
    """
    by_mark: dict[str, dict[Cell, Read]] = {}
    for cell, read in reads.items():
        if _has_orders(read):
            by_mark.setdefault(_mark(cell), {})[cell] = read
    return [remark for same in by_mark.values() for remark in _decide_alike(cells, reads, same)]


def _mark(cell: Cell) -> str:
    """What stands between the figures of a day."""
    match = _MARK.search(text_of(cell))
    return match.group() if match else ""


def _decide_alike(cells: Sequence[Cell], reads: dict[Cell, Read], same: Mapping[Cell, Read]) -> list[Remark]:
    """The same for the cells of one mark."""
    orders = _common(same)
    if not orders:
        return []
    example = min(same, key=lambda cell: len(same[cell].choices))
    decided = set()
    for cell, read in same.items():
        if read.question is Question.DATES and len(read.choices) > 1:
            left = by_order({order: day for order, day in _days(read).items() if order in orders})
            reads[cell] = replace(left, rough=read.rough)
            if left.question is None:
                decided.add(cell)
    if not decided:
        return []
    count = sum(1 for cell in cells if cell in decided)
    facts = {"order": orders[0], "example": text_of(example), "cells": count}
    return [Remark("table.decided_dates", facts)]


def _common(reads: Mapping[Cell, Read]) -> tuple[str, ...]:
    """Orders under which every day whose order is not plain exists."""
    found = [read.choices for read in reads.values()]
    return tuple(order for order in ("dmy", "mdy", "ymd") if found and all(order in choices for choices in found))


def _days(read: Read) -> Mapping[str, date]:
    return {order: day for order, day in read.choices.items() if isinstance(day, date)}


def _has_orders(read: Read) -> bool:
    return bool(read.choices) and read.question in (None, Question.DATES)
