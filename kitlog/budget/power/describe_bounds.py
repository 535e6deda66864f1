"""Refuses what no device of a pilot has: a figure outside its bounds is a slip of the pen or of the unit."""

from math import inf, isfinite

from kitlog.fault import InputFault

MOST_WH = 10_000
MOST_MAH = 1_000_000
MOST_MA = 1_000_000
MOST_V = 100
MOST_H = 10_000


def above_zero(value: float, field: str, most: float) -> float:
    """The value, if it is over 0 and at most `most`.

    Raises:
        InputFault: number.not_finite, number.out_of_range.
    """
    return within(value, field, 0, most, open_low=True)


def within(value: float, field: str, low: float, high: float = inf, *, open_low: bool = False) -> float:
    """The value, if it is from `low` (or above, if open) to `high`.

    Raises:
        InputFault: number.not_finite, number.out_of_range.
    """
    if not isfinite(value):
        raise InputFault("number.not_finite", id=None, field=field, value=value)
    if value < low or (open_low and value == low):
        relation = "above" if open_low else "at_least"
        raise InputFault("number.out_of_range", id=None, field=field, value=value, relation=relation, limit=low)
    if value > high:
        raise InputFault("number.out_of_range", id=None, field=field, value=value, relation="at_most", limit=high)
    return value
