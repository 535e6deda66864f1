"""Numbers as people write them: what is sure, what may be two things, what is none."""

from decimal import Decimal

import pytest
from babel.numbers import format_decimal
from hypothesis import given
from hypothesis import strategies as st

from kitlog.files.table.numbers import Number, figure_value, read_number, written


def both(text):
    found = read_number(text)
    return None if found is None else (found.comma, found.point)


@pytest.mark.parametrize(
    ("text", "comma", "point"),
    [
        ("450", "450", "450"),
        ("+450", "450", "450"),
        ("0,250", "0.250", None),
        ("0.250", None, "0.250"),
        ("1234,567", "1234.567", None),
        ("85,5", "85.5", None),
        ("85.5", None, "85.5"),
        (".5", None, "0.5"),
        ("1.450,5", "1450.5", None),
        ("1,450.5", None, "1450.5"),
        ("1.450.000", "1450000", None),
        ("1,450,000", None, "1450000"),
        ("1'450", "1450", "1450"),
        ("1'450.5", None, "1450.5"),
        ("1 450,5", "1450.5", None),
        ("1.450", "1450", "1.450"),
        ("12,345", "12.345", "12345"),
    ],
)
def test_what_each_mark_makes_of_it(text, comma, point):
    assert both(text) == (comma and Decimal(comma), point and Decimal(point))


@pytest.mark.parametrize(
    "text",
    [
        "", "-5", "−5", "1e3", "0x10", "1/2", "½", "１２", "٣", "1.450'000", "1,45,000", "12.34.56", "1 45", "5,", "5.",
        "1..5", "1'45", "0 450", "1.450.5", "inf", "nan", "1_000", "9" * 39, "9" * 500,
    ],
)  # fmt: skip
def test_what_is_no_number(text):
    assert both(text) is None


def test_in_our_own_files_the_point_is_the_decimal_mark():
    assert read_number("1.250", own=True) == Number(None, Decimal("1.25"))
    assert read_number("1,250", own=True) == Number(Decimal("1.25"), Decimal(1250))


@given(st.decimals(0, 10**6, places=2), st.sampled_from(["de", "de_CH", "de_AT", "fr", "fr_CH", "en_US", "en_GB"]))
def test_the_cldrs_own_writing_reads_back(value, locale):
    # Outside reference: number patterns of the Unicode CLDR, through babel.
    text = format_decimal(value, format="#,##0.00", locale=locale)
    plain = text.translate({0xA0: " ", 0x202F: " ", 0x2019: "'"})
    found = read_number(plain)
    assert found is not None
    assert {found.comma, found.point} == {value, None}


@given(st.integers(0, 10**9), st.sampled_from(["de", "de_CH", "de_AT", "fr", "fr_CH", "en_US", "en_GB"]))
def test_grouped_whole_numbers_are_never_lost(value, locale):
    text = format_decimal(value, locale=locale).translate({0xA0: " ", 0x202F: " ", 0x2019: "'"})
    found = read_number(text)
    assert found is not None
    assert value in {found.comma, found.point}


@given(st.text(max_size=40))
def test_no_text_breaks_it(text):
    read_number(text)


def test_a_workbooks_noise_is_not_a_digit():
    assert figure_value(Decimal("0.30000000000000004")) == Decimal("0.3")
    assert figure_value(Decimal(-1)) is None
    assert figure_value(Decimal("1E+999999999")) is None
    assert figure_value(Decimal("sNaN")) is None


@given(st.decimals(0, 10**9, places=3))
def test_written_for_a_person_it_is_the_same_number(value):
    assert Decimal(written(value)) == value
