"""The column of what things cost."""

from decimal import Decimal

import pytest
from babel.numbers import format_currency
from column_reads import one, read, remarks
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.table.cells import Figure
from kitlog.files.table.doubt import Question


@pytest.mark.parametrize(
    ("cell", "value"),
    [
        ("120", 120.0), ("120,-", 120.0), ("120.-", 120.0), ("1'200.–", 1200.0), ("1.200,- €", 1200.0), ("€ 120", 120.0),
        ("120€", 120.0), ("120,50 EUR", 120.5), ("CHF 1'200.50", 1200.5), ("Fr. 120.-", 120.0), ("120 Fr.", 120.0),
        ("$5", 5.0), ("£1,200.00", 1200.0), ("1 200,00 €", 1200.0), ("0", 0.0), ("ca. 120 €", 120.0), ("-", None),
    ],
)  # fmt: skip
def test_money_as_it_is_written(cell, value):
    assert one("value", "", cell) == value


@pytest.mark.parametrize(
    "cell", ["gratis", "120 €/Stk", "120 - 150", "-5", "120 kg", "€", "12.50.-", "$ 5 €", "120 € gewogen"]
)
def test_what_is_no_sum(cell):
    assert one("value", "", cell) is Question.UNREAD


def test_several_currencies_are_said():
    assert remarks(read("value", "", ["120 €", "5 USD", Figure(Decimal(3), "3 CHF", "CHF")])) == [
        ("table.mixed_currencies", {"currencies": ("EUR", "USD", "CHF")})
    ]
    assert read("value", "", ["120 €", "5 EUR", "7"]).remarks == ()


@given(
    st.decimals(0, 10**6, places=2),
    st.sampled_from(["EUR", "CHF", "USD", "GBP"]),
    st.sampled_from(["de_DE", "de_CH", "fr_FR", "fr_CH", "en_US", "en_GB"]),
)
def test_the_cldrs_own_writing_reads_back(value, currency, locale):
    # Outside reference: currency patterns of the Unicode CLDR, through babel.
    assert one("value", "", format_currency(value, currency, locale=locale)) == float(value)
