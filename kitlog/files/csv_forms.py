"""How cells are written and read back: text, whole numbers, decimals, kilograms, days, moments, words of a list."""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from decimal import Decimal
from enum import StrEnum
from typing import Any

from kitlog.fault import InputFault
from kitlog.files.csv_formula import defuse, undefuse
from kitlog.units.days import parse_day
from kitlog.units.number import parse_number, parse_whole

_DECIMAL_COMMA = re.compile(r"[+-]?[0-9]+(,[0-9]+)+")
_DIGITS = re.compile(r"[+-]?[0-9]+")
_PIECES = re.compile(r"\\[\\+]|\+|[^\\+]+|\\")


@dataclass(frozen=True, slots=True)
class Form:
    """How one column is read and written.

    Attributes:
        read: the value of a cell that is not blank; raises `InputFault` with code and facts.
        write: the cell of a value, empty where the value is none or cannot be written.
        in_unit: a limit of the model in the unit of the column.
        keeps_blanks: whether blanks around the text belong to it.
    """

    read: Callable[[str], object]
    write: Callable[[Any], str]
    in_unit: Callable[[float], float] = lambda limit: limit
    keeps_blanks: bool = False


def _refuse_comma(text: str, *, whole: bool) -> None:
    if _DECIMAL_COMMA.fullmatch(text):
        meant = "" if whole or text.count(",") > 1 else text.replace(",", ".")
        raise InputFault("csv.decimal_comma", meant=meant, whole=whole)


def _read_whole(text: str) -> int:
    _refuse_comma(text, whole=True)
    if _DIGITS.fullmatch(text) and abs(int(text[:25])) >= 2**63:
        raise InputFault("number.too_large")
    return parse_whole(text)


def _write_whole(number: int | None) -> str:
    return "" if number is None else str(number)


def _read_number(text: str) -> float:
    _refuse_comma(text, whole=False)
    return parse_number(text)


def _write_number(number: float | None) -> str:
    """The shortest decimal that reads back as the same number; empty where 19 decimals are too few for that."""
    if number is None:
        return ""
    text = _trimmed(format(Decimal(repr(abs(number))), "f"))
    try:
        parse_number(text)
    except InputFault:
        return ""
    return text


def _trimmed(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def _read_kilograms(text: str) -> int:
    """Whole grams of a cell in kilograms; a figure finer than a gram is refused rather than rounded unseen."""
    _read_number(text)
    grams = Decimal(text) * 1000
    if grams != int(grams):
        raise InputFault("csv.finer_than_a_gram")
    return int(grams)


def _write_kilograms(grams: int | None) -> str:
    return "" if grams is None else _trimmed(f"{grams // 1000}.{grams % 1000:03d}")


def _write_day(day: date | None) -> str:
    return "" if day is None else day.isoformat()


def _read_moment(text: str) -> datetime:
    """A moment with its offset, in UTC; within the years that days may have."""
    try:
        at = datetime.fromisoformat(text)
    except ValueError:
        raise InputFault("time.not_a_moment", value=text) from None
    if at.tzinfo is None:
        raise InputFault("time.no_zone", value=text)
    parse_day(at.date().isoformat())
    return at.astimezone(UTC)


def _write_moment(at: datetime | None) -> str:
    """UTC with a Z; empty where the year is none that can be read back."""
    if at is None:
        return ""
    text = at.astimezone(UTC).isoformat().replace("+00:00", "Z")
    try:
        return text if _read_moment(text) == at else ""
    except InputFault:
        return ""


def _read_several(text: str) -> tuple[str, ...]:
    parts = [""]
    for piece in _PIECES.findall(undefuse(text)):
        if piece == "+":
            parts.append("")
        else:
            parts[-1] += piece[1:] if len(piece) > 1 and piece[0] == "\\" else piece
    if not all(part.strip() for part in parts):
        raise InputFault("csv.empty_part")
    return tuple(part.strip() for part in parts)


def _write_several(parts: Iterable[str]) -> str:
    return defuse("+".join(part.replace("\\", r"\\").replace("+", r"\+") for part in parts))


def _write_choice(member: StrEnum | None) -> str:
    return "" if member is None else member.value


def choice(of: type[StrEnum], **also: StrEnum) -> Form:
    """A word of a closed list, in any case, with underscores or blanks; `also` are further words for its members."""
    members: dict[str, StrEnum] = {member.value: member for member in of}
    members |= {word.replace("_", " "): member for word, member in also.items()}

    def read(text: str) -> StrEnum:
        member = members.get(text.casefold().replace("_", " ").replace("’", "'"))
        if member is None:
            raise InputFault("csv.not_in_list", allowed=tuple(member.value for member in of))
        return member

    return Form(read, _write_choice)


TEXT = Form(undefuse, defuse)
"""One line of text."""

NOTE = Form(undefuse, defuse, keeps_blanks=True)
"""Text over several lines, as it is."""

WHOLE = Form(_read_whole, _write_whole)
"""A whole number within 64 bits."""

NUMBER = Form(_read_number, _write_number)
"""A decimal number with a point."""

KILOGRAMS = Form(_read_kilograms, _write_kilograms, in_unit=lambda limit: limit / 1000)
"""Kilograms in the file, whole grams in the model."""

DAY = Form(parse_day, _write_day)
"""A day as YYYY-MM-DD."""

MOMENT = Form(_read_moment, _write_moment)
"""A moment as YYYY-MM-DDTHH:MM:SSZ, or with another offset from UTC."""

SEVERAL = Form(_read_several, _write_several)
r"""Names joined by ``+``; a ``+`` inside a name is written ``\+``, a backslash ``\\``."""
