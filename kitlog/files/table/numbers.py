"""Numbers as people write them: which value a text has if the comma, or if the point, is the decimal mark."""

import re
from dataclasses import dataclass
from decimal import Context, Decimal

COMMA = "comma"
POINT = "point"

MAX_DIGITS = 15
"""Digits of a number in a workbook; what a spreadsheet keeps of one."""

MAX_WRITTEN = 38
"""Digits of a written number; as many as kitlog itself writes (19 on either side of the point)."""

PLAIN = r"([0-9]{1,9})(?:([.,])([0-9]{1,3}))?"
"""Pattern of the plainest numbers: whole digits, mark, decimals."""

MARK = {",": COMMA, ".": POINT, None: ""}
"""The decimal mark that a plain number proves."""

_ONE_MARK = re.compile(r"([0-9]*)([.,])([0-9]+)")
_GROUPED = re.compile(r"([1-9][0-9]{0,2})((?:,[0-9]{3})+|(?:\.[0-9]{3})+|(?:'[0-9]{3})+|(?: [0-9]{3})+)([.,][0-9]+)?")
_NOT_DIGITS = re.compile(r"[^0-9]")

_EXPONENTS = range(-1100, 31)
"""Exponents of a figure from a workbook that is reckoned with: beyond these even its digits would fill the memory."""


@dataclass(frozen=True, slots=True)
class Number:
    """The value of a text if the comma is the decimal mark, and if the point is; None = it cannot be written so."""

    comma: Decimal | None
    point: Decimal | None

    def by(self, mark: str) -> Decimal | None:
        """The value under a decimal mark."""
        return self.comma if mark == COMMA else self.point

    @property
    def same(self) -> bool:
        """Whether the decimal mark does not matter."""
        return self.comma == self.point


def read_number(text: str, *, own: bool = False) -> Number | None:
    """A number of ASCII digits, with a comma, a point, apostrophes or single blanks in it; None if it is none.

    Apostrophes and blanks part thousands and nothing else. One mark before exactly three digits, behind one to three
    digits that do not begin with 0, may be either.

    Args:
        text: without blanks around it; typographic apostrophes and blanks already plain.
        own: the point is the decimal mark (kitlog's own files); a comma stays what it is.
    """
    text = text.removeprefix("+")
    if len(text) > 2 * MAX_WRITTEN or not text.isascii():
        return None
    if text.isdecimal():
        value = Decimal(text)
        return Number(value, value) if len(text) <= MAX_WRITTEN else None
    if one := _ONE_MARK.fullmatch(text):
        return _one_mark(*one.groups(), own=own)
    if grouped := _GROUPED.fullmatch(text):
        return _grouped(*grouped.groups())
    return None


def may_part_thousands(whole: str, rest: str | None) -> bool:
    """Whether one mark between these digits may part thousands: three behind it, one to three before, no leading 0."""
    return rest is not None and len(rest) == 3 and 1 <= len(whole) <= 3 and whole[0] != "0"


def plain_value(whole: str, rest: str | None) -> float | None:
    """A plain number whose mark, if any, cannot part thousands."""
    return None if may_part_thousands(whole, rest) else float(f"{whole}.{rest}" if rest else whole)


def _one_mark(whole: str, mark: str, rest: str, *, own: bool) -> Number | None:
    if len(whole) + len(rest) > MAX_WRITTEN:
        return None
    decimal = Decimal(f"{whole}.{rest}")
    thousands = Decimal(whole + rest) if may_part_thousands(whole, rest) and not (own and mark == ".") else None
    return Number(decimal, thousands) if mark == "," else Number(thousands, decimal)


def _grouped(first: str, groups: str, rest: str | None) -> Number | None:
    mark = groups[0]
    if rest and rest[0] == mark:
        return None
    value = Decimal(_NOT_DIGITS.sub("", first + groups) + "." + (rest or "")[1:])
    if len(value.as_tuple().digits) > MAX_WRITTEN:
        return None
    decimal = {",": ".", ".": ","}.get(mark) or (rest[0] if rest else "")
    return Number(None if decimal == "." else value, None if decimal == "," else value)


def figure_value(value: Decimal) -> Decimal | None:
    """A workbook's number at the 15 digits it shows (0.30000000000000004 is 0.3); None if negative or beyond reason."""
    if not value.is_finite() or (value < 0) or value.as_tuple().exponent not in _EXPONENTS:
        return None
    return Context(prec=MAX_DIGITS).create_decimal(abs(value))


def written(value: Decimal) -> str:
    """A number for a person's eye, with a point and without needless zeros."""
    text = format(value, "f")
    return text.rstrip("0").rstrip(".") if "." in text else text
