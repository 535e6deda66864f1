"""Option values: a day, a figure, each refused by the name of its option."""

from collections.abc import Callable
from datetime import date, time
from typing import TypeVar

from kitlog.fault import InputFault

T = TypeVar("T")


def day(option: str) -> Callable[[str], date]:
    """Reads ``YYYY-MM-DD``.

    Raises:
        InputFault: ``day.not_a_day`` or ``day.out_of_range`` with ``field`` and ``value``.
    """

    def read(text: str) -> date:
        from kitlog.units.days import parse_day

        return _named(option, text, parse_day)

    return read


def clock(option: str) -> Callable[[str], time]:
    """Reads ``HH:MM``.

    Raises:
        InputFault: ``time.not_a_clock`` with ``field`` and ``value``.
    """

    def read(text: str) -> time:
        from kitlog.units.clock import parse_clock

        return _named(option, text, parse_clock)

    return read


def figure(option: str, low: float, high: float) -> Callable[[str], float]:
    """Reads a decimal number from `low` to `high`.

    Raises:
        InputFault: ``number.not_a_number`` or ``number.out_of_range`` with ``field`` and ``value``.
    """

    def read(text: str) -> float:
        from kitlog.units.number import parse_number

        return _within(option, _named(option, text, parse_number), low, high)

    return read


def whole(option: str, low: int, high: int) -> Callable[[str], int]:
    """Reads a whole number from `low` to `high`.

    Raises:
        InputFault: ``number.not_whole``, ``number.too_large`` or ``number.out_of_range``.
    """

    def read(text: str) -> int:
        from kitlog.units.number import parse_whole

        return int(_within(option, _named(option, text, parse_whole), low, high))

    return read


def _named(option: str, text: str, read: Callable[[str], T]) -> T:
    from kitlog.units.strict_json import shown

    try:
        return read(text)
    except InputFault as fault:
        raise InputFault(fault.code, field=option, value=shown(text)) from None


def _within(option: str, number: float, low: float, high: float) -> float:
    if not low <= number <= high:
        raise InputFault("number.out_of_range", field=option, value=f"{number:g}", at_least=low, at_most=high)
    return number
