"""Days as people write them: what one text can mean, under each order of day, month and year."""

import re
from calendar import monthrange
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from kitlog.files.table.day_words import is_weekday, month_of
from kitlog.files.table.doubt import Question
from kitlog.files.table.phrases import phrase
from kitlog.files.table.reading import NOTHING, UNREAD, Read
from kitlog.units.days import FIRST_DAY, LAST_DAY

_TIME = re.compile(
    r"(?:t| |, ?)((?:[01]?[0-9]|2[0-4]):[0-5][0-9](?::[0-5][0-9](?:[.,][0-9]+)?)?"
    r"(?: ?(?:uhr|h|am|pm|a\.m\.|p\.m\.))?(?:z|[+-][0-9]{2}:?[0-9]{2})?)$"
)
_OF_ANOTHER_DAY = re.compile(r"(?=.*[1-9]).*(?:z|[+-]00:?00)")
"""A time in UTC that is not midnight: in the zone of whoever wrote the list it may be of the next day or the last."""

_SPACED = re.compile(r" ?([/.-]) ?")
_YEAR_LAST = re.compile(r"([0-9]{1,2})([/. -])([0-9]{1,2})\2([0-9]{4}|[0-9]{2})")
_YEAR_FIRST = re.compile(r"([0-9]{4})([/. -])([0-9]{1,2})\2([0-9]{1,2})")
_MONTH_YEAR = re.compile(r"([0-9]{1,2})(?:[/. -]([0-9]{4})|/([0-9]{2}))")
_YEAR_MONTH = re.compile(r"([0-9]{4})[/. -]([0-9]{1,2})")
_IN_ONE = re.compile(r"([0-9]{4})([0-9]{2})([0-9]{2})")

_TOKEN = re.compile(r"[0-9]+|[^\W\d_]+|[^\w ]")
_JOINTS = frozenset(".,-/'")
_LITTLE_WORDS = frozenset({"de", "du", "d", "le", "of", "the", "am", "den"})
_ORDINALS = frozenset({"st", "nd", "rd", "th", "er", "e", "ème"})

_ORDERS = {"/": ("dmy", "mdy"), " ": ("dmy", "mdy"), "-": ("dmy", "mdy"), ".": ("dmy",)}
"""Orders in which days are written with each mark, where the year is not first. With dots the day stands first: of the
locales of the CLDR (version 47, as babel 2.18 has it) whose short dates have dots, none begins with the month."""

DAY_NUMBERS = range(20_000, 60_001)
"""Bare numbers that are taken for a spreadsheet's count of days (1954 to 2064 by the usual system)."""

_ZERO = {"1900": date(1899, 12, 30), "1904": date(1904, 1, 1)}
"""Day 0 of the two systems, for days from March 1900 on. 1 January 1904 is day 0 of the one; 1 January 1900 is day 1 of
the other, which has a 29 February 1900 that never was, so its day 0 falls on 30 December (Date1904 record of MS-XLS; the
extra day from memory)."""

YEARS = range(FIRST_DAY.year, LAST_DAY.year + 1)


def day_of(year: int, month: int, day: int) -> date | None:
    """A day that exists and that kitlog takes (1970 to 2100)."""
    if not (year in YEARS and 1 <= month <= 12 and 1 <= day <= 31):
        return None
    return date(year, month, day) if day <= 28 or day <= monthrange(year, month)[1] else None


def read_day(text: str) -> Read:
    """What a text says of a day.

    An order that is open makes a `Question.DATES` with a day by order, or, where one order alone is possible, a sure
    value with that order in ``choices``: it is evidence for the other days of its column.
    """
    said = phrase(text)
    if said is None or said.nothing:
        return NOTHING if said else UNREAD
    if said.each or said.measured:
        return UNREAD
    read = _read(said.core)
    return replace(read, rough=said.rough) if said.rough else read


def _read(core: str) -> Read:
    if core.isdecimal() and core.isascii():
        return read_bare(int(core), len(core))
    core = _without_time(core)
    if not any(letter.isalpha() for letter in core):
        return _figures(_SPACED.sub(r"\1", core))
    return _words(core) if any(letter in "0123456789" for letter in core) else UNREAD


def read_bare(number: int, digits: int) -> Read:
    """A bare number: a year, a spreadsheet's count of days, or YYYYMMDD."""
    if digits == 4 and number in YEARS:
        return _span(number, 1, 12)
    if number in DAY_NUMBERS and digits == 5:
        days = {system: zero + timedelta(number) for system, zero in _ZERO.items()}
        return _open(Question.DAY_NUMBERS, {key: day for key, day in days.items() if FIRST_DAY <= day <= LAST_DAY})
    match = _IN_ONE.fullmatch(str(number)) if digits == 8 else None
    return _sure(day_of(*map(int, match.groups()))) if match else UNREAD


def _sure(day: date | None) -> Read:
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


def _without_time(core: str) -> str:
    """The text without a time of day."""
    match = _TIME.search(core)
    return core if match is None or _OF_ANOTHER_DAY.fullmatch(match[1]) else core[: match.start()]


def full_year(digits: str) -> int:
    """A year of two digits is one of 1970 to 2069 (POSIX has 1969 to 2068; here days begin in 1970)."""
    year = int(digits)
    return year if len(digits) > 2 else year + (1900 if year >= 70 else 2000)


def _figures(core: str) -> Read:
    if match := _YEAR_LAST.fullmatch(core):
        return ordered(*match.groups())
    if match := _YEAR_FIRST.fullmatch(core):
        return _sure(day_of(int(match[1]), int(match[3]), int(match[4])))
    if match := _MONTH_YEAR.fullmatch(core):
        return month_without_day(full_year(match[2] or match[3]), int(match[1]))
    if match := _YEAR_MONTH.fullmatch(core):
        return month_without_day(int(match[1]), int(match[2]))
    return UNREAD


def ordered(first: str, mark: str, second: str, third: str) -> Read:
    """A day of three numbers whose year is not written first with four digits."""
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


def _words(core: str) -> Read:
    """A day whose month is written out, or with a weekday in front."""
    tokens = _TOKEN.findall(core)
    if tokens[0].isalpha() and is_weekday(tokens[0]) and not _begins_with_month(tokens):
        rest = core[len(tokens[0]) :].lstrip("., ")
        return _words(rest) if any(letter.isalpha() for letter in rest) else _figures(_SPACED.sub(r"\1", rest))
    parts = _parts(tokens)
    return _written_out(parts, core) if parts else UNREAD


def _begins_with_month(tokens: list[str]) -> bool:
    """Whether the first word is a month: "mar" is March, but in French also Tuesday before a day that is whole."""
    months = sum(1 for token in tokens if token.isalpha() and month_of(token))
    return month_of(tokens[0]) > 0 and months == 1 and sum(map(str.isdecimal, tokens)) < 3


def _parts(tokens: list[str]) -> list[str] | None:
    """Numbers and the month, the latter as "m" and its number, in order; None if anything else is there."""
    parts: list[str] = []
    previous = ""
    for token in tokens:
        if token.isdecimal() and token.isascii():
            parts.append(token)
        elif token.isalpha():
            if not (token in _LITTLE_WORDS or (token in _ORDINALS and previous.isdecimal())):
                parts.append(f"m{month_of(token)}")
        elif token not in _JOINTS:
            return None
        previous = token
    return None if "m0" in parts else parts


def _written_out(parts: list[str], core: str) -> Read:
    kinds = "".join(
        "m" if part[0] == "m" else "y" if len(part) == 4 else "n" if len(part) < 3 else "?" for part in parts
    )
    values = [part.removeprefix("m") for part in parts]
    if kinds in ("nmn", "nmy"):
        return _sure(day_of(full_year(values[2]), int(values[1]), int(values[0])))
    if kinds in ("mnn", "mny"):
        return _sure(day_of(full_year(values[2]), int(values[0]), int(values[1])))
    if kinds == "ymn":
        return _sure(day_of(int(values[0]), int(values[1]), int(values[2])))
    if kinds in ("my", "ym"):
        year, month = (int(value) for value in (values if kinds == "ym" else values[::-1]))
        return month_without_day(year, month)
    return _short_year(values, core) if kinds == "mn" else UNREAD


def _short_year(values: list[str], core: str) -> Read:
    """A month and two digits: a year if it could not be a day, or is joined as spreadsheets join month and year."""
    joined = re.search(r"[-/'] ?[0-9]{2}$", core) is not None
    if len(values[1]) != 2 or not (joined or int(values[1]) > 31):
        return UNREAD
    return month_without_day(full_year(values[1]), int(values[0]))
