"""Days in numbers: what they are under each order of day, month and year, months, and spreadsheets' counts of days."""

import re
from calendar import monthrange
from collections.abc import Mapping
from datetime import date, timedelta

from kitlog.files.table.doubt import Question
from kitlog.files.table.reading import UNREAD, Read
from kitlog.units.days import FIRST_DAY, LAST_DAY

_SPACED = re.compile(r" ?([/.-]) ?")
_YEAR_LAST = re.compile(r"([0-9]{1,2})([/. -])([0-9]{1,2})\2([0-9]{4}|[0-9]{2})")
_YEAR_FIRST = re.compile(r"([0-9]{4})([/. -])([0-9]{1,2})\2([0-9]{1,2})")
_MONTH_YEAR = re.compile(r"([0-9]{1,2})(?:[/. -]([0-9]{4})|/([0-9]{2}))")
_YEAR_MONTH = re.compile(r"([0-9]{4})[/. -]([0-9]{1,2})")
_IN_ONE = re.compile(r"([0-9]{4})([0-9]{2})([0-9]{2})")

DAY_NUMBERS = range(20_000, 60_001)
"""Bare numbers that are taken for a spreadsheet's count of days (1954 to 2064 by the usual system)."""

_ZERO = {"1900": date(1899, 12, 30), "1904": date(1904, 1, 1)}
"""Day 0 of the two systems, for days from March 1900 on. 1 January 1904 is day 0 of the one; 1 January 1900 is day 1 of
the other, which has a 29 February 1900 that never was, so its day 0 falls on 30 December (MS-XLS, record Date1904; the
extra day from memory)."""

YEARS = range(FIRST_DAY.year, LAST_DAY.year + 1)


def day_of(year: int, month: int, day: int) -> date | None:
    """A day that exists and that kitlog takes (1970 to 2100)."""
    if not (year in YEARS and 1 <= month <= 12 and 1 <= day <= 31):
        return None
    return date(year, month, day) if day <= 28 or day <= monthrange(year, month)[1] else None


def full_year(digits: str) -> int:
    """A year of two digits is one of 1970 to 2069 (POSIX has 1969 to 2068; here days begin in 1970)."""
    year = int(digits)
    return year if len(digits) > 2 else year + (1900 if year >= 70 else 2000)


def read_numbers(core: str) -> Read:
    """A day, a month or a year in numbers with marks or blanks between them."""
    core = _SPACED.sub(r"\1", core)
    if match := _YEAR_LAST.fullmatch(core):
        return ordered(*match.groups())
    if match := _YEAR_FIRST.fullmatch(core):
        return sure(day_of(int(match[1]), int(match[3]), int(match[4])))
    if match := _MONTH_YEAR.fullmatch(core):
        return month_without_day(full_year(match[2] or match[3]), int(match[1]))
    if match := _YEAR_MONTH.fullmatch(core):
        return month_without_day(int(match[1]), int(match[2]))
    return UNREAD


def ordered(first: str, mark: str, second: str, third: str) -> Read:
    """A day of three numbers whose year is not written first with four digits.

    With dots the day stands first: of the locales of the CLDR (version 47, as babel 2.18 has it) whose short dates have
    dots, none begins with the month. A year of two digits stands first with dashes alone.
    """
    one, two, year = int(first), int(second), full_year(third)
    days = {"dmy": day_of(year, two, one), "mdy": day_of(year, one, two) if mark != "." else None}
    if mark == "-" and len(third) == 2:
        days["ymd"] = day_of(full_year(first.zfill(2)), two, int(third))
    return by_order({order: day for order, day in days.items() if day})


def by_order(days: Mapping[str, date]) -> Read:
    """A day from what it is under each order that is left."""
    if len(set(days.values())) > 1:
        return _open(Question.DATES, days)
    return Read(next(iter(days.values())), choices=days) if days else UNREAD


def read_bare(number: int, digits: int) -> Read:
    """A bare number: a year, a spreadsheet's count of days, or YYYYMMDD."""
    if digits == 4 and number in YEARS:
        return _span(number, 1, 12)
    if number in DAY_NUMBERS and digits == 5:
        days = {system: zero + timedelta(number) for system, zero in _ZERO.items()}
        return _open(Question.DAY_NUMBERS, {key: day for key, day in days.items() if FIRST_DAY <= day <= LAST_DAY})
    match = _IN_ONE.fullmatch(str(number)) if digits == 8 else None
    return sure(day_of(*map(int, match.groups()))) if match else UNREAD


def sure(day: date | None) -> Read:
    """A day that nothing else could be meant by, or none that exists."""
    return Read(day) if day else UNREAD


def _open(question: Question, days: Mapping[str, date]) -> Read:
    return Read(question=question, choices=days) if days else UNREAD


def _span(year: int, first: int, last: int) -> Read:
    """A month or a year without a day: its first and its last day."""
    start = day_of(year, first, 1)
    end = day_of(year, last, monthrange(year, last)[1]) if start else None
    return _open(Question.MONTHS, {"first": start, "last": end}) if start and end else UNREAD


def month_without_day(year: int, month: int) -> Read:
    """A month without a day."""
    return _span(year, month, month) if 1 <= month <= 12 else UNREAD


def year_without_day(year: int) -> Read:
    """A year without a day."""
    return _span(year, 1, 12)
