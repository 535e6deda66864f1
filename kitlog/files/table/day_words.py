"""Words for months and weekdays in English, German and French, from the Unicode CLDR through babel."""

import unicodedata
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Literal

_LOCALES = ("en", "en_GB", "en_CA", "de", "de_AT", "de_CH", "fr", "fr_CA", "fr_CH")
_CONTEXTS: tuple[Literal["format", "stand-alone"], ...] = ("format", "stand-alone")
_WIDTHS: tuple[Literal["wide", "abbreviated"], ...] = ("wide", "abbreviated")

_ALSO = {"mrz": 3, "maerz": 3, "sept": 9, "juill": 7}
"""Abbreviations of the trade that the CLDR does not have; common practice, no source."""

_TWO_LETTERS = frozenset({"mo", "di", "mi", "do", "fr", "sa", "so"})
"""German weekdays at their shortest, which the CLDR has as "Mo." and so on in one of its widths only."""


def _plain(word: str) -> str:
    """A word small, without accents and dots."""
    parts = unicodedata.normalize("NFD", word.casefold().replace("’", "'"))
    return "".join(letter for letter in parts if not unicodedata.combining(letter)).strip(". ")


@cache
def _months() -> Mapping[str, int]:
    from babel.dates import get_month_names  # slow to import, and needed only where a month is written out

    def names() -> Iterator[tuple[str, int]]:
        for locale in _LOCALES:
            for context in _CONTEXTS:
                for width in _WIDTHS:
                    for month, name in get_month_names(width, context, locale).items():
                        yield _plain(name), month

    return dict(names()) | _ALSO


@cache
def _weekdays() -> frozenset[str]:
    from babel.dates import get_day_names

    names = (
        _plain(name)
        for locale in _LOCALES
        for context in _CONTEXTS
        for width in _WIDTHS
        for name in get_day_names(width, context, locale).values()
    )
    return _TWO_LETTERS.union(names)


def month_of(word: str) -> int:
    """The month that a word names (1 to 12), whole or abbreviated, with or without dot and accents; 0 if none."""
    return _months().get(_plain(word), 0)


def is_weekday(word: str) -> bool:
    """Whether a word names a day of the week."""
    return _plain(word) in _weekdays()
