"""Units of measure: which unit a word or a sign means, and the exact factors between units.

Signs and spellings of the trade stand in a table here; the written-out words of English, German and French are those
of the Unicode CLDR, asked through babel only when a word occurs that the table does not have.
"""

from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from functools import cache, lru_cache
from types import MappingProxyType

_SIGNS: Mapping[str, str] = {
    "g": "g gr grs gm gms gramm",
    "kg": "kg kgs kilo kilos kilogramm",
    "oz": "oz ozs",
    "lb": "lb lbs",
    "Wh": "wh watthour watthours wattstunde wattstunden wattheure wattheures",
    "mWh": "mwh",
    "kWh": "kwh",
    "mAh": "mah milliamperestunden milliamperehours milliamphours milliampereheures",
    "Ah": "ah amperestunde amperestunden amphour amphours amperehour amperehours ampereheure ampereheures",
    "V": "v",
    "mV": "mv",
    "W": "w",
    "mW": "mw",
    "mA": "ma",
    "A": "a amp amps",
    "ml": "ml mls",
    "cl": "cl",
    "dl": "dl",
    "l": "l ltr ltrs",
    "m2": "m2 m^2 m² qm sqm sq.m",
    "km/h": "km/h kmh kph km/std km/hr",
    "m/s": "m/s m/sec m/sek",
    "h": "h hr hrs std stdn stunden",
    "min": "min mins minuten minutes",
    "s": "s sec secs sek",
    "%": "% pct prozent percent pourcent",
    "clo": "clo",
}
"""Signs and the spellings of the trade by unit, without blanks, small; common practice, no source."""

_QUICK = {word: unit for unit, words in _SIGNS.items() for word in words.split()}

_CLDR: Mapping[str, tuple[str, ...]] = {
    "g": ("mass-gram",),
    "kg": ("mass-kilogram",),
    "oz": ("mass-ounce",),
    "lb": ("mass-pound",),
    "kWh": ("energy-kilowatt-hour",),
    "V": ("electric-volt",),
    "W": ("power-watt",),
    "mW": ("power-milliwatt",),
    "mA": ("electric-milliampere",),
    "A": ("electric-ampere",),
    "ml": ("volume-milliliter",),
    "cl": ("volume-centiliter",),
    "dl": ("volume-deciliter",),
    "l": ("volume-liter",),
    "m2": ("area-square-meter",),
    "km/h": ("speed-kilometer-per-hour",),
    "m/s": ("speed-meter-per-second",),
    "h": ("duration-hour",),
    "min": ("duration-minute",),
    "s": ("duration-second",),
    "%": ("concentr-percent",),
}
"""The units of the CLDR by ours."""

_LONGEST = 40
"""Letters beyond which a text is no unit's word, so that no long text is kept or looked up."""

_LOCALES = ("en", "en_GB", "en_CA", "de", "de_AT", "de_CH", "fr", "fr_CA", "fr_CH")

_TWO_MEANINGS = frozenset({"pfund", "livre", "livres", "pfd"})
"""In trade half a kilogram, in the CLDR the pound of 453.59237 g: no unit, for nobody can say which is meant."""

_BASE: Mapping[str, tuple[str, Fraction]] = MappingProxyType(
    {
        "g": ("mass", Fraction(1)),
        "kg": ("mass", Fraction(1000)),
        "lb": ("mass", Fraction("453.59237")),
        "oz": ("mass", Fraction("28.349523125")),
        "Wh": ("energy", Fraction(1)),
        "mWh": ("energy", Fraction(1, 1000)),
        "kWh": ("energy", Fraction(1000)),
        "mAh": ("charge", Fraction(1)),
        "Ah": ("charge", Fraction(1000)),
        "V": ("voltage", Fraction(1)),
        "mV": ("voltage", Fraction(1, 1000)),
        "W": ("power", Fraction(1)),
        "mW": ("power", Fraction(1, 1000)),
        "mA": ("current", Fraction(1)),
        "A": ("current", Fraction(1000)),
        "ml": ("volume", Fraction(1)),
        "cl": ("volume", Fraction(10)),
        "dl": ("volume", Fraction(100)),
        "l": ("volume", Fraction(1000)),
        "m2": ("area", Fraction(1)),
        "km/h": ("speed", Fraction(5, 18)),
        "m/s": ("speed", Fraction(1)),
        "h": ("time", Fraction(3600)),
        "min": ("time", Fraction(60)),
        "s": ("time", Fraction(1)),
        "%": ("share", Fraction(1)),
        "clo": ("insulation", Fraction(1)),
    }
)
"""Dimension of each unit and its size in the first unit of that dimension.

The pound and the ounce are the international avoirdupois ones, exact by definition (1959 agreement; NIST Special
Publication 811, appendix B).
"""

UNITS = tuple(_BASE)
"""All units that are known."""


def _pairs() -> Iterator[tuple[tuple[str, str], Fraction]]:
    for unit, (dimension, size) in _BASE.items():
        for other, (its_dimension, its_size) in _BASE.items():
            if dimension == its_dimension:
                yield (unit, other), size / its_size


FACTOR: Mapping[tuple[str, str], Fraction] = MappingProxyType(dict(_pairs()))
"""Exact factor from one unit to another of the same dimension: ``FACTOR["lb", "g"]``; no entry = cannot be turned."""


DECIMAL_FACTOR: Mapping[tuple[str, str], Decimal] = MappingProxyType(
    {
        pair: Decimal(factor.numerator) / factor.denominator
        for pair, factor in FACTOR.items()
        if 10**12 % factor.denominator == 0
    }
)
"""Those of the factors that are exact decimals; times a number of 15 digits they stay exact within 28."""


def dimension_of(unit: str) -> str:
    """What a unit measures (mass, energy, ...); empty for no unit."""
    return _BASE[unit][0] if unit in _BASE else ""


@cache
def _cldr_words() -> Mapping[str, str]:
    """Unit by each word that the CLDR writes beside a 1 or a 2 in English, German and French."""
    from babel.units import format_unit  # takes a tenth of a second and more, and is rarely needed

    found: dict[str, str] = {}
    for unit, names in _CLDR.items():
        for name in names:
            for locale in _LOCALES:
                for shown in _shown(format_unit, name, locale):
                    found.setdefault(shown, unit)
    return {word: unit for word, unit in found.items() if word and word not in _TWO_MEANINGS}


def _shown(format_unit: Callable[..., str], name: str, locale: str) -> Iterator[str]:
    """What stands beside a 1 and a 2; not narrow forms ("m" for minute), nor its own name where a word is missing."""
    for length in ("long", "short"):
        for count in (1, 2):
            word = _plain(format_unit(count, name, length, locale=locale).replace(str(count), ""))
            if word != _plain(name):
                yield word


def _plain(word: str) -> str:
    """A unit's word as the tables have it: small, no blanks, no hyphens, no final dot, accents only where CLDR has."""
    small = "".join(word.replace("-", " ").split()).casefold().replace("ampère", "ampere")
    return small.rstrip(".") if len(small) > 1 else small


def unit_of_sign(word: str) -> str:
    """The unit of a sign or spelling of the trade; words written out are not asked for (see `canonical_unit`)."""
    return _QUICK.get(_plain(word), "")


@lru_cache(maxsize=4096)
def canonical_unit(word: str) -> str:
    """The unit that a word or sign means, as kitlog writes it (g, kg, Wh, mAh, m2 ...); empty if it is no unit.

    Case, blanks and a final dot are ignored. ``Pfund`` and ``livre`` are no unit: half a kilogram in trade, a pound in
    books.
    """
    plain = _plain(word)
    if plain in _QUICK or not plain or len(plain) > _LONGEST:
        return _QUICK.get(plain, "")
    if plain in _TWO_MEANINGS or any(letter.isdigit() for letter in plain):
        return ""
    return _cldr_words().get(plain, "")
