"""Option values: a day, a figure, a file to write, each refused by the name of its option."""

import os
import stat
from collections.abc import Callable
from datetime import date, time
from pathlib import Path
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


def target(option: str) -> Callable[[str], str]:
    """Reads the name of a file to write: what cannot be one is refused before anything else is done.

    Raises:
        InputFault: ``file.no_name`` with ``field``; ``file.is_folder`` or ``file.no_folder`` with ``file``.
    """

    def read(text: str) -> str:
        place = Path(written_name(option)(text))
        if os.path.isdir(place):  # noqa: PTH112  # the method raises where a folder above may not be read
            raise InputFault("file.is_folder", file=text)
        if _is_missing(place.parent):
            raise InputFault("file.no_folder", file=text)
        return text

    return read


def written_name(option: str) -> Callable[[str], str]:
    """Reads a name that is written to.

    Raises:
        InputFault: ``file.no_name`` with ``field``.
    """

    def read(text: str) -> str:
        if not text.strip():
            raise InputFault("file.no_name", field=option)
        return text

    return read


def _is_missing(folder: Path) -> bool:
    """Whether there is no such folder; what else is wrong with it is told when it is written to."""
    try:
        return not stat.S_ISDIR(folder.stat().st_mode)
    except (FileNotFoundError, NotADirectoryError):
        return True
    except (OSError, ValueError):
        return False


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
