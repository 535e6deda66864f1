"""A day as it is typed into a field: in numbers by the order of the locale, or with the month as a word."""

import re
from datetime import date

from PySide6.QtCore import QDate, QLocale

from kitlog.units.days import FIRST_DAY, LAST_DAY

SHOWN = "d MMM yyyy"
"""How a day stands in a field; a section is one word of it."""
_ONE_DIGIT_YEAR = re.compile(r"(?:^|\D)\d$")


def day_shown(day: date, locale: QLocale) -> str:
    """The day as a field shows it."""
    return locale.toString(QDate(day.year, day.month, day.day), SHOWN)


def day_typed(text: str, locale: QLocale) -> date | None:
    """The day that a text names for sure, None if it names none, or only a month or a year.

    ``20.06.2026``, ``2026-06-20``, ``20 Jun 2026``, ``14Jun2027``. Where numbers leave open whether day or month
    stands first, it is as in the short date of the locale. A last number of one digit is a year that is still typed.
    """
    bare = text.strip()
    if _ONE_DIGIT_YEAR.search(bare) and not bare[:4].isdecimal():
        return None
    return _by_locale(bare, locale) or _read(bare, locale)


def _by_locale(text: str, locale: QLocale) -> date | None:
    """A day as the field itself writes it, in any language of months."""
    found = locale.toDate(text, SHOWN)
    day = date(found.year(), found.month(), found.day()) if found.isValid() else None
    return day if day is not None and FIRST_DAY <= day <= LAST_DAY else None


def _read(text: str, locale: QLocale) -> date | None:
    from kitlog.files.table.day_text import read_day
    from kitlog.files.table.doubt import Question

    read = read_day(text)
    found = read.choices.get(_order(locale)) if read.question is Question.DATES else read.value
    return found if isinstance(found, date) and not read.rough else None


def _order(locale: QLocale) -> str:
    """Order of day, month and year in the short dates of a locale: "dmy", "mdy" or "ymd"."""
    letters = locale.dateFormat(QLocale.FormatType.ShortFormat).casefold()
    return "".join(dict.fromkeys(letter for letter in letters if letter in "dmy"))
