"""Units: words of three languages, and factors against an outside table."""

from fractions import Fraction

import pytest
from babel.units import format_unit
from scipy import constants

from kitlog.files.table.units import DECIMAL_FACTOR, FACTOR, UNITS, canonical_unit, dimension_of

_CLDR = {
    "mass-gram": "g",
    "mass-kilogram": "kg",
    "mass-ounce": "oz",
    "electric-volt": "V",
    "power-watt": "W",
    "volume-liter": "l",
    "volume-milliliter": "ml",
    "area-square-meter": "m2",
    "speed-kilometer-per-hour": "km/h",
    "speed-meter-per-second": "m/s",
    "duration-hour": "h",
    "energy-kilowatt-hour": "kWh",
    "concentr-percent": "%",
}


@pytest.mark.parametrize("locale", ["en_US", "en_GB", "de_DE", "de_CH", "fr_FR", "fr_CA"])
@pytest.mark.parametrize("name", _CLDR)
@pytest.mark.parametrize("length", ["long", "short"])
def test_the_cldrs_own_words_are_understood(locale, name, length):
    # Outside reference: Unicode CLDR, through babel.
    for count in (1, 2):
        shown = format_unit(count, name, length, locale=locale)
        assert canonical_unit(shown.replace(str(count), "")) == _CLDR[name], shown


@pytest.mark.parametrize(
    ("word", "unit"),
    [
        ("gr", "g"), ("Gr.", "g"), ("grs", "g"), ("GRAMM", "g"), ("Kilo", "kg"), ("kilos", "kg"), ("KG", "kg"),
        ("lbs", "lb"), ("lb.", "lb"), ("pounds", "lb"), ("Liter", "l"), ("Litre", "l"), ("qm", "m2"), ("m²", "m2"),
        ("m2", "m2"), ("mAh", "mAh"), ("MAH", "mAh"), ("Wattstunden", "Wh"), ("watt-hours", "Wh"), ("kmh", "km/h"),
        ("Std.", "h"), ("hrs", "h"), ("pour cent", "%"), ("Milliampèrestunden", "mAh"), (" k g ", "kg"),
    ],
)  # fmt: skip
def test_spellings_of_the_trade(word, unit):
    # Common practice, no source.
    assert canonical_unit(word) == unit


@pytest.mark.parametrize(
    "word", ["", " ", "m", "km", "mg", "t", "stone", "Pfund", "livre", "Livres", "x", "g g", "g2", "#", ".", "é" * 500]
)
def test_what_is_no_unit_or_could_be_two(word):
    # Pfund and livre: half a kilogram in trade, a pound in the CLDR.
    assert canonical_unit(word) == ""


def test_every_unit_is_its_own_word():
    assert [canonical_unit(unit) for unit in UNITS] == list(UNITS)


@pytest.mark.parametrize(
    ("pair", "factor"),
    [
        (("lb", "g"), constants.pound * 1000),
        (("oz", "g"), constants.oz * 1000),
        (("km/h", "m/s"), constants.kmh),
        (("min", "h"), constants.minute / constants.hour),
        (("h", "s"), constants.hour),
        (("l", "ml"), constants.liter / (constants.centi**3)),
        (("Wh", "mWh"), 1 / constants.milli),
        (("Ah", "mAh"), 1 / constants.milli),
    ],
)
def test_factors_are_those_of_the_handbook(pair, factor):
    # Outside reference: scipy.constants (CODATA and NIST SP 811).
    assert float(FACTOR[pair]) == pytest.approx(factor, rel=1e-14)


def test_the_pound_is_exact_and_has_sixteen_ounces():
    # International avoirdupois pound, exact by definition: 0.45359237 kg.
    assert FACTOR["lb", "g"] == Fraction(45359237, 100000)
    assert FACTOR["lb", "oz"] == 16


def test_no_factor_leads_out_of_a_dimension():
    assert all(dimension_of(unit) == dimension_of(other) for unit, other in FACTOR)
    assert ("mA", "W") not in FACTOR
    assert ("mAh", "Wh") not in FACTOR


def test_decimal_factors_are_the_exact_ones():
    assert all(Fraction(factor) == FACTOR[pair] for pair, factor in DECIMAL_FACTOR.items())
