"""Days as people write them: in numbers, with the month as a word, with weekday or time of day."""

import re
from dataclasses import replace

from kitlog.files.table.day_figures import day_of, full_year, month_without_day, read_bare, read_numbers, sure
from kitlog.files.table.day_words import is_weekday, month_of
from kitlog.files.table.phrases import phrase
from kitlog.files.table.reading import NOTHING, UNREAD, Read

_TIME = re.compile(
    r"(?:t| |, ?)((?:[01]?[0-9]|2[0-4]):[0-5][0-9](?::[0-5][0-9](?:[.,][0-9]+)?)?"
    r"(?: ?(?:uhr|h|am|pm|a\.m\.|p\.m\.))?(?:z|[+-][0-9]{2}:?[0-9]{2})?)$"
)
_OF_ANOTHER_DAY = re.compile(r"(?=.*[1-9]).*(?:z|[+-]00:?00)")
"""A time in UTC that is not midnight: in the zone of whoever wrote the list it may be of the next day or the last."""

_TOKEN = re.compile(r"[0-9]+|[^\W\d_]+|[^\w ]")
_JOINTS = frozenset(".,-/'")
_LITTLE_WORDS = frozenset({"de", "du", "d", "le", "of", "the", "am", "den"})
_ORDINALS = frozenset({"st", "nd", "rd", "th", "er", "e", "ème"})


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
        return read_numbers(core)
    return _words(core) if any(letter in "0123456789" for letter in core) else UNREAD


def _without_time(core: str) -> str:
    """The text without a time of day."""
    match = _TIME.search(core)
    return core if match is None or _OF_ANOTHER_DAY.fullmatch(match[1]) else core[: match.start()]


def _words(core: str) -> Read:
    """A day whose month is written out, or with a weekday in front."""
    tokens = _TOKEN.findall(core)
    if tokens[0].isalpha() and is_weekday(tokens[0]) and not _begins_with_month(tokens):
        rest = core[len(tokens[0]) :].lstrip("., ")
        return _words(rest) if any(letter.isalpha() for letter in rest) else read_numbers(rest)
    parts = _parts(tokens)
    return _written_out(parts, core) if parts else UNREAD


def _begins_with_month(tokens: list[str]) -> bool:
    """Whether the first word is a month: "mar" is March, but in French also Tuesday before a day that is whole."""
    months = sum(1 for token in tokens if token.isalpha() and month_of(token))
    return month_of(tokens[0]) > 0 and months == 1 and sum(map(str.isdecimal, tokens)) < 3


def _parts(tokens: list[str]) -> list[str] | None:
    """Numbers and the month, the latter as "m" and its number, in order; None if anything else is there."""
    if tokens[0] in _JOINTS or tokens[-1] in _JOINTS - {"."}:
        return None
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
        return sure(day_of(full_year(values[2]), int(values[1]), int(values[0])))
    if kinds in ("mnn", "mny"):
        return sure(day_of(full_year(values[2]), int(values[0]), int(values[1])))
    if kinds == "ymn":
        return sure(day_of(int(values[0]), int(values[1]), int(values[2])))
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
