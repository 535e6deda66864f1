"""Words for months and weekdays."""

import pytest
from babel.dates import get_day_names, get_month_names

from kitlog.files.table.day_words import is_weekday, month_of

_LOCALES = ["en", "en_GB", "de", "de_AT", "de_CH", "fr", "fr_CA"]


@pytest.mark.parametrize("locale", _LOCALES)
@pytest.mark.parametrize("width", ["wide", "abbreviated"])
@pytest.mark.parametrize("context", ["format", "stand-alone"])
def test_the_cldrs_own_names(locale, width, context):
    # Outside reference: Unicode CLDR, through babel.
    for month, name in get_month_names(width, context, locale).items():
        assert month_of(name) == month_of(name.upper()) == month
    for name in get_day_names(width, context, locale).values():
        assert is_weekday(name)


def test_no_word_names_two_months():
    named: dict[str, set[int]] = {}
    for locale in _LOCALES:
        for width in ("wide", "abbreviated"):
            for month, name in get_month_names(width, "format", locale).items():
                named.setdefault(name.casefold().strip("."), set()).add(month)
    assert not {name: months for name, months in named.items() if len(months) > 1}


@pytest.mark.parametrize("word", ["", "x", "mayo", "gestern", "m"])
def test_other_words(word):
    assert month_of(word) == 0
    assert not is_weekday(word)
