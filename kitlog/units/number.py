"""Strict numbers: what a person typed, or nothing."""

import re

from kitlog.fault import InputFault

_DECIMAL = re.compile(r"[+-]?[0-9]{1,19}(\.[0-9]{1,19})?")
_WHOLE = re.compile(r"[+-]?[0-9]{1,19}")


def parse_number(text: str) -> float:
    """A finite decimal number with a point, in ASCII digits.

    Python's ``float`` also takes ``1_000``, ``nan``, ``inf`` and digits of other scripts; none of these is a figure.

    Raises:
        InputFault: ``number.not_a_number`` with ``value``.
    """
    match = _DECIMAL.fullmatch(text.strip(" \t"))
    if match is None:
        raise InputFault("number.not_a_number", value=text)
    return float(match.group())


def parse_whole(text: str) -> int:
    """A whole number in ASCII digits, within 64 bits.

    Raises:
        InputFault: ``number.not_whole`` or ``number.too_large`` with ``value``.
    """
    match = _WHOLE.fullmatch(text.strip(" \t"))
    if match is None:
        raise InputFault("number.not_whole", value=text)
    number = int(match.group())
    if not -(2**63) <= number < 2**63:
        raise InputFault("number.too_large", value=text)
    return number
