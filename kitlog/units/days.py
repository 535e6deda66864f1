"""Days and months: the calendar arithmetic of service intervals."""

import calendar
import re
from datetime import date
from typing import Annotated

from pydantic import AfterValidator, BeforeValidator
from pydantic_core import PydanticCustomError

from kitlog.fault import InputFault

FIRST_DAY = date(1970, 1, 1)
LAST_DAY = date(2100, 12, 31)
_ISO = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")


def _within(day: date) -> date:
    if not FIRST_DAY <= day <= LAST_DAY:
        raise PydanticCustomError("day.out_of_range", "{day}", {"day": day.isoformat()})
    return day


def _no_number(raw: object) -> object:
    """A number is no date, though a library may take it for seconds since 1970."""
    if isinstance(raw, int | float):
        raise PydanticCustomError("day.not_a_day", "{value}", {"value": raw})
    return raw


Day = Annotated[date, AfterValidator(_within), BeforeValidator(_no_number)]
"""A calendar day from 1970 to 2100."""


def parse_day(text: str) -> date:
    """A day written ``YYYY-MM-DD``, from 1970 to 2100.

    Raises:
        InputFault: ``day.not_a_day`` or ``day.out_of_range`` with ``value``.
    """
    match = _ISO.fullmatch(text.strip(" \t"))
    try:
        day = date(*map(int, match.groups())) if match else None
    except ValueError:
        day = None
    if day is None:
        raise InputFault("day.not_a_day", value=text)
    if not FIRST_DAY <= day <= LAST_DAY:
        raise InputFault("day.out_of_range", value=text)
    return day


def add_months(day: date, months: int) -> date:
    """The same day `months` later, clipped to the month's end (31 August + 6 months = 28 or 29 February).

    Convention: common practice, no source. A result after the year 9999 stays at the last day that exists.
    """
    count = day.year * 12 + day.month - 1 + months
    year, month = divmod(count, 12)
    if year > date.max.year:
        return date.max
    last = calendar.monthrange(year, month + 1)[1]
    return date(year, month + 1, min(day.day, last))
