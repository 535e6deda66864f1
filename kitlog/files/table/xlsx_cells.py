"""A cell of an .xlsx sheet: its stored value, shown through its number format."""

import datetime as dt
from decimal import Decimal

from kitlog.files.table.cells import CalendarDay, Cell, Figure, Shows
from kitlog.files.table.number_format import Section, section_for

_SHOWN_DIGITS = 15
"""Digits of a number that spreadsheets keep and show (IEEE 754 doubles hold 15 for certain)."""
_DAYS_OF_A_YEAR = 366
_LARGEST = 1e25
"""Beyond it a figure is none; it is left as text."""
_DAY_TEXTS = {Shows.DAY: "%Y-%m-%d", Shows.MONTH: "%Y-%m", Shows.YEAR: "%Y"}


def exact(value: float) -> Decimal:
    """A stored number without the noise of its binary form: 0.1 + 0.2 is 0.3."""
    return Decimal(value) if isinstance(value, int) else Decimal(f"{value:.{_SHOWN_DIGITS}g}")


def plain_text(value: Decimal) -> str:
    """A number in digits, never with an exponent, without idle zeros."""
    text = f"{value:f}"
    return (text.rstrip("0").rstrip(".") or "0") if "." in text else text


def number_cell(stored: float, code: str, epoch: dt.datetime) -> Cell:
    """A stored number in the form of its format code.

    A number that counts days becomes a `CalendarDay`, a time or a duration a `Figure` in hours; a day before the
    calendar of the workbook stays a number.
    """
    if not -_LARGEST < stored < _LARGEST:
        return str(stored)
    value = exact(stored)
    section = section_for(value, code)
    if section.time:
        return hours_cell(value if abs(value) < _DAYS_OF_A_YEAR else value % 1)
    day = _day(stored, epoch) if section.shows else None
    if day is not None and section.shows:
        return day_cell(day, section.shows)
    return _figure(value, section) if section.shows is None else Figure(value, plain_text(value))


def day_cell(day: dt.date, shows: Shows = Shows.DAY) -> CalendarDay:
    """A day, with as much text as it shows."""
    return CalendarDay(day, day.strftime(_DAY_TEXTS[shows]), shows)


def hours_cell(days: Decimal) -> Figure:
    """A duration, stored in days, as hours: to a thousandth of a second."""
    seconds = (days * 86_400).quantize(Decimal("0.001"))
    hours = (seconds / 3600).quantize(Decimal("0.000001"))
    minutes = int(abs(seconds) / 60 + Decimal("0.5"))
    sign = "-" if seconds < 0 else ""
    return Figure(Decimal(plain_text(hours)), f"{sign}{minutes // 60}:{minutes % 60:02}", "h")


def _day(stored: float, epoch: dt.datetime) -> dt.date | None:
    from openpyxl.utils.datetime import from_excel

    try:
        moment = from_excel(stored, epoch)
    except (OverflowError, ValueError):
        return None
    if isinstance(moment, dt.datetime) and stored >= 1:
        return moment.date()
    return None


def _figure(value: Decimal, section: Section) -> Figure:
    value = value.scaleb(-3 * section.thousands) if section.thousands else value
    if section.percent:
        return Figure(value, _text(value * 100, section), section.unit, percent=True)
    if section.quoted_percent:
        return Figure(value / 100, _text(value, section), percent=True)
    return Figure(value, _text(value, section), section.unit)


def _text(value: Decimal, section: Section) -> str:
    text = plain_text(abs(value))
    whole, _, decimals = text.partition(".")
    decimals = decimals.ljust(section.decimals, "0")
    sign = "-" if value < 0 and not set("-−(") & set(section.prefix) else ""
    number = f"{sign}{whole.zfill(section.whole)}.{decimals}" if decimals else f"{sign}{whole.zfill(section.whole)}"
    return f"{section.prefix}{number}{section.suffix}".strip()
