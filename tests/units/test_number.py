"""Numbers that a person typed, or nothing."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.fault import InputFault
from kitlog.units.number import parse_number, parse_whole

NOT_NUMBERS = ["", " ", "1,5", "1_000", "nan", "inf", "-Infinity", "0x10", "1e3", "1.", ".5", "--1", "+ 1", "1 000", "١٢",
               "½", "²", "1.5.2", "1" * 20, "0." + "1" * 20, "12 kg", "−3"]  # fmt: skip


@pytest.mark.parametrize("text", NOT_NUMBERS)
def test_what_is_no_number_is_refused_and_named(text: str) -> None:
    with pytest.raises(InputFault) as caught:
        parse_number(text)
    assert caught.value.code == "number.not_a_number"
    assert caught.value.facts["value"] == text


@pytest.mark.parametrize(
    ("text", "number"), [("0", 0.0), ("-2.5", -2.5), ("+3", 3.0), (" 5240 ", 5240.0), ("007", 7.0)]
)
def test_plain_decimals_are_read(text: str, number: float) -> None:
    assert parse_number(text) == number


@given(st.decimals(min_value=-(10**12), max_value=10**12, places=6))
def test_every_written_decimal_is_read_as_written(number: object) -> None:
    assert parse_number(f"{number:f}") == float(f"{number:f}")


@given(st.text(max_size=12))
def test_a_number_is_read_or_refused_never_anything_else(text: str) -> None:
    try:
        number = parse_number(text)
    except InputFault:
        return
    assert number == float(text)
    assert text.strip().strip("+-").replace(".", "", 1).isascii()


@pytest.mark.parametrize("text", ["1.0", "1.5", "", "1e3", "٣", "1_0"])
def test_what_is_not_whole_is_refused(text: str) -> None:
    with pytest.raises(InputFault) as caught:
        parse_whole(text)
    assert caught.value.code == "number.not_whole"


@given(st.integers(-(2**63), 2**63 - 1))
def test_whole_numbers_within_64_bits_are_read(number: int) -> None:
    assert parse_whole(str(number)) == number


@pytest.mark.parametrize("number", [2**63, -(2**63) - 1, 10**19 - 1])
def test_whole_numbers_beyond_64_bits_are_refused(number: int) -> None:
    with pytest.raises(InputFault) as caught:
        parse_whole(str(number))
    assert caught.value.code == "number.too_large"
