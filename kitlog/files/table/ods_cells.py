"""A cell of an OpenDocument sheet: its value as the file gives it, and the text it shows (ODF 1.3 part 3, 19.385)."""

import datetime as dt
import re
from collections.abc import Mapping
from decimal import Decimal, InvalidOperation
from typing import Any

from kitlog.files.table.cells import Cell, Figure, Shows
from kitlog.files.table.shown_unit import unit_in
from kitlog.files.table.xlsx_cells import day_cell, exact, hours_cell

_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_P = f"{_TEXT}p"
_ANNOTATION = f"{_OFFICE}annotation"
_TYPE, _VALUE, _DATE = f"{_OFFICE}value-type", f"{_OFFICE}value", f"{_OFFICE}date-value"
_TIME, _BOOLEAN, _STRING = f"{_OFFICE}time-value", f"{_OFFICE}boolean-value", f"{_OFFICE}string-value"

_LEFT_OUT = frozenset((_ANNOTATION, f"{_OFFICE}annotation-end", f"{_TEXT}note", f"{_TEXT}ruby-text"))
_BLANKS = re.compile(r"[ \t\r\n]+")
_NUMBER = re.compile(r"[-+−]?\s*\d(?:[\d.,'’ \u00a0\u2009\u202f]*\d)?(?:[Ee][-+]?\d+)?")
_DURATION = re.compile(r"(-?)P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?)?")
_WORD = re.compile(r"[^\W\d_]{3,}")
_LONGEST_DURATION = 30
_SCALES = (1, 1_000, 1_000_000)
_LARGEST = 1e25
"""Beyond it a figure is none; it is left as text."""
_HALF = Decimal("0.51")


def ods_cell(element: Any) -> Cell:
    """The cell of a ``table:table-cell`` element; what it holds beside its text (comments, drawings) is left out."""
    given: Mapping[str, str] = element.attrib
    kind = given.get(_TYPE)
    shown = shown_text(element) if len(element) else ""
    if kind in (None, "string"):
        return shown or given.get(_STRING, "")
    return _valued(str(kind), given, shown)


def _valued(kind: str, given: Mapping[str, str], shown: str) -> Cell:
    if kind == "date":
        return _day(given.get(_DATE, ""), shown)
    if kind == "time":
        return _duration(given.get(_TIME, ""), shown)
    if kind == "boolean":
        return "TRUE" if given.get(_BOOLEAN) == "true" else "FALSE"
    value = _decimal(given.get(_VALUE, ""))
    return shown if value is None else _figure(value, kind, shown)


def shown_text(element: Any) -> str:
    """The paragraphs of a cell, one a line."""
    return "\n".join(_paragraph(child) for child in element if child.tag == _P)


def _paragraph(element: Any) -> str:
    if not len(element):
        text = element.text or ""
        return _BLANKS.sub(" ", text) if "  " in text or "\n" in text or "\t" in text else text
    return "".join(_pieces(element))


def _pieces(element: Any) -> list[str]:
    """Text in the order in which it is shown: blanks, tabs and line breaks are elements of their own."""
    found = [_BLANKS.sub(" ", element.text or "")]
    for child in element:
        if child.tag == f"{_TEXT}s":
            found.append(" " * _count(child.get(f"{_TEXT}c", "1")))
        elif child.tag == f"{_TEXT}tab":
            found.append("\t")
        elif child.tag == f"{_TEXT}line-break":
            found.append("\n")
        elif isinstance(child.tag, str) and child.tag not in _LEFT_OUT:
            found.extend(_pieces(child))
        found.append(_BLANKS.sub(" ", child.tail or ""))
    return found


def _count(text: str) -> int:
    return min(int(text), 1000) if text.isdecimal() else 1


def _decimal(text: str) -> Decimal | None:
    try:
        value = float(text)
    except (OverflowError, ValueError):
        return None
    return exact(value) if -_LARGEST < value < _LARGEST else None


def _figure(value: Decimal, kind: str, shown: str) -> Figure:
    """A number, with the unit that is shown beside it; one that is shown in thousands as it is shown."""
    text = shown or f"{value:f}"
    match = _NUMBER.search(shown)
    if kind == "percentage":
        return Figure(value, text, percent=True)
    if kind == "currency" or not match or match.end() - match.start() == len(shown):
        return Figure(_as_shown(value, shown), text)
    unit = unit_in(shown[match.end() :]) or unit_in(shown[: match.start()])
    if unit.startswith("%"):
        return Figure(value / 100, text, percent=True)
    return Figure(_as_shown(value, match.group()), text, unit)


def _as_shown(value: Decimal, shown: str) -> Decimal:
    """The value divided by the thousand or million by which it is shown, if it is: 4500 shown as 4.5."""
    if not value or not shown or f"{value:f}" == shown:
        return value
    return next(
        (value / scale for scale in _SCALES if any(_near(value / scale, one) for one in _readings(shown))), value
    )


def _readings(shown: str) -> list[Decimal]:
    """What digits can mean, whether a mark parts decimals or thousands."""
    plain = re.sub(r"[\s'’\u00a0\u2009\u202f]", "", shown).replace("−", "-")
    at = max(plain.rfind("."), plain.rfind(","))
    whole = plain.replace(".", "").replace(",", "")
    texts = [whole] if at < 0 else [f"{re.sub('[.,]', '', plain[:at])}.{plain[at + 1 :]}", whole]
    return [read for text in texts if (read := _plain_decimal(text)) is not None]


def _plain_decimal(text: str) -> Decimal | None:
    try:
        return Decimal(text)
    except InvalidOperation:
        return None


def _near(value: Decimal, shown: Decimal) -> bool:
    """Whether a value is shown as that number when it is rounded."""
    exponent = shown.as_tuple().exponent
    last = Decimal(1).scaleb(exponent if isinstance(exponent, int) else 0)
    return abs(abs(value) - abs(shown)) <= last * _HALF


def _day(stored: str, shown: str) -> Cell:
    try:
        day = dt.date.fromisoformat(stored[:10])
    except ValueError:
        return shown or stored
    return day_cell(day, _shows(day, shown))


def _shows(day: dt.date, shown: str) -> Shows:
    """How much of a day a text shows, by its numbers and words: 06.2018 and Juni 2018 name no day, 1. Juni does."""
    numbers = [int(text) for text in re.findall(r"\d+", shown)]
    year = {day.year, day.year % 100}
    dated = [number for number in numbers if number in year]
    if len(numbers) == 1 and dated:
        if _WORD.search(shown):
            return Shows.MONTH
        return Shows.YEAR if numbers[0] == day.year else Shows.DAY
    if len(numbers) == 2 and dated and not _WORD.search(shown) and sorted(numbers) != sorted((day.day, day.month)):
        return Shows.MONTH
    return Shows.DAY


def _duration(stored: str, shown: str) -> Cell:
    match = _DURATION.fullmatch(stored)
    if not match:
        return shown or stored
    sign, days, hours, minutes, seconds = match.groups()
    if len(stored) > _LONGEST_DURATION:
        return shown or stored
    total = int(days or 0) * 86_400 + int(hours or 0) * 3_600 + int(minutes or 0) * 60 + Decimal(seconds or 0)
    figure = hours_cell((-total if sign else total) / Decimal(86_400))
    return Figure(figure.value, shown or figure.text, figure.unit)
