"""Amounts: numbers with units behind them, taken apart, and put together under a decimal mark."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from kitlog.files.table.doubt import Question
from kitlog.files.table.numbers import COMMA, POINT, Number, read_number
from kitlog.files.table.reading import UNREAD, Read
from kitlog.files.table.units import DECIMAL_FACTOR, FACTOR, canonical_unit

_FRACTION = r"(?:(?<![0-9/])[0-9]{1,3} )?(?<![0-9/.,'])[1357]/[248](?![0-9/.,'])|[0-9]{0,3} ?[½¼¾]"
_NUMBER = re.compile(rf"{_FRACTION}|\+?[0-9]+(?:[.,'][0-9]+| [0-9]{{3}}(?![0-9]))*|\+?[.,][0-9]+")
_PARTED = re.compile(r"(?:([0-9]{1,3}) ?)??(?:([1357])/([248])|([½¼¾]))")
_QUARTERS = {"½": 2, "¼": 1, "¾": 3}
_SQUARE = re.compile(r"(?<![a-z])m\^?2(?![0-9])")

_PARTS_OF = {"kg": ("g", 3), "lb": ("oz", 0), "h": ("min", 2), "min": ("s", 2)}
"""Unit that may follow another within one figure, and with how many digits it may stand without its name (1kg250)."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A number as written, and what stands between it and the next one, or the end."""

    text: str
    number: Number
    behind: str


@dataclass(frozen=True, slots=True)
class Part:
    """A number under one decimal mark, with its unit; empty = none."""

    value: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class Meant:
    """What a text means under one decimal mark.

    Attributes:
        value: the value; None for a figure that is understood but cannot be held (finer than a gram).
        shown: the figure for a person.
        possible: whether the model could hold it.
        likely: whether other cells may decide for it; else only the pilot may.
    """

    value: object
    shown: str
    possible: bool = True
    likely: bool = True


def pieces(core: str, *, own: bool = False) -> list[Piece] | None:
    """The numbers of a text with what follows each; None if it does not begin with one, or one cannot be read."""
    core = _SQUARE.sub("m²", core)
    found: list[Piece] = []
    matches = list(_NUMBER.finditer(core))
    if not matches or matches[0].start() or len(matches) > 6:
        return None
    for match, following in zip(matches, [*matches[1:], None], strict=True):
        named = core[match.end() :].lstrip()[:1].isalpha()  # a bare 1/2 may be one of two
        number = (_fraction(match.group()) if named else None) or read_number(match.group(), own=own)
        if number is None:
            return None
        found.append(
            Piece(match.group(), number, core[match.end() : following.start() if following else len(core)].strip())
        )
    return found


def _fraction(text: str) -> Number | None:
    """A half, a quarter or an eighth, with a whole number before it or not (½, 1/2, 1 1/2); None for any other text."""
    parted = _PARTED.fullmatch(text) if "/" in text or text[-1] in _QUARTERS else None
    if parted is None:
        return None
    whole, upper, lower, sign = parted.groups()
    part = Decimal(_QUARTERS[sign]) / 4 if sign else Decimal(upper) / int(lower)
    return Number(value := int(whole or 0) + part, value)


def marks_of(numbers: Sequence[Number]) -> Iterator[str]:
    """The decimal marks under which all of them are numbers; none named where the mark does not matter."""
    if all(number.same for number in numbers):
        yield ""
        return
    for mark in (COMMA, POINT):
        if all(number.by(mark) is not None for number in numbers):
            yield mark


def united(numbers: Sequence[Number], units: Sequence[str], mark: str) -> list[Part]:
    """Numbers under one decimal mark with their units."""
    values = (number.by(mark or COMMA) for number in numbers)
    return [Part(value, unit) for value, unit in zip(values, units, strict=True) if value is not None]


def judged(
    numbers: Sequence[Number], units: Sequence[str], meant: Callable[[Sequence[Part]], Meant | None], *, rough: bool
) -> Read:
    """What a text says, from what its parts mean together under each decimal mark that it can be written with.

    `meant` gives None where the parts mean nothing together.
    """
    marks = list(marks_of(numbers))
    found = {mark: end for mark in marks if (end := meant(united(numbers, units, mark))) is not None}
    if not found:
        return UNREAD
    ends = list(found.values())
    if len(ends) == 2 and ends[0] == ends[1]:
        return _sure(ends[0], "", rough=rough)
    able = [mark for mark, end in found.items() if end.possible]
    if len(found) == 2 and len(able) != 1:
        choices = {mark: end.value for mark, end in found.items()}
        readings = {mark: end.shown for mark, end in found.items()}
        unlikely = frozenset(mark for mark, end in found.items() if not end.likely)
        return Read(rough=rough, question=Question.DECIMAL, choices=choices, readings=readings, unlikely=unlikely)
    mark = able[0] if len(found) == 2 else next(iter(found))
    readings = {mark: end.shown for mark, end in found.items()} if len(found) == 2 else {}
    return replace(_sure(found[mark], mark, rough=rough), impossible=len(marks) == 2, readings=readings)


def _sure(end: Meant, mark: str, *, rough: bool) -> Read:
    return Read(end.value, rough, Question.UNREAD if end.value is None else None, mark=mark)


def units_of(found: Sequence[Piece], bare: str) -> list[str] | None:
    """The unit of each number of one figure ("1 kg 250 g"); None if a word between them is no unit.

    `bare` is the unit of a figure that has none in its text.
    """
    if len(found) == 1 and not found[0].behind:
        return [bare]
    units = [canonical_unit(piece.behind.removesuffix(",")) for piece in found[:-1]]
    last = found[-1]
    if last.behind or not units:
        units.append(canonical_unit(last.behind))
    else:
        units.append(_unnamed(units[-1], last.text))
    return units if all(units) else None


def _unnamed(before: str, text: str) -> str:
    """The unit of a last number without one, from the unit before it: grams behind kg, minutes behind h."""
    unit, digits = _PARTS_OF.get(before, ("", 0))
    return unit if text.isdecimal() and len(text) == digits else ""


Exact = Decimal | Fraction


def total(parts: Sequence[Part], unit: str) -> Exact | None:
    """The sum of the parts of one figure in a unit; None if they are no figure of that dimension.

    Each part but the last is whole, and each is less than one of the unit before it.
    """
    if not all((part.unit, unit) in FACTOR for part in parts) or not all(map(_fits, parts, parts[1:])):
        return None
    if all((part.unit, unit) in DECIMAL_FACTOR for part in parts):
        return sum((part.value * DECIMAL_FACTOR[part.unit, unit] for part in parts), Decimal(0))
    return sum((Fraction(part.value) * FACTOR[part.unit, unit] for part in parts), Fraction(0))


def _fits(before: Part, part: Part) -> bool:
    if _PARTS_OF.get(before.unit, ("",))[0] != part.unit:
        return False
    return before.value % 1 == 0 and part.value < FACTOR[before.unit, part.unit].numerator
