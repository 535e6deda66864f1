"""How values lie in SQLite: STRICT tables know only INTEGER, REAL and TEXT, so all else is text behind a decorator.

A decorator refuses with `ValueError` what it would not have written itself: a bit flipped in a text is caught here.
"""

from datetime import UTC, date, datetime, time
from enum import StrEnum
from typing import Any

from sqlalchemy import Integer, Text
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator


class Coded(TypeDecorator[Any]):
    """A value that SQLite keeps as text (or as a whole number); nothing stays nothing."""

    impl: type[Text | Integer] = Text
    cache_ok = True

    def write(self, value: Any) -> str | int:
        """What is stored of a value."""
        raise NotImplementedError

    def read(self, stored: Any) -> object:
        """The value of what is stored; `ValueError` for what `write` would not have written."""
        raise NotImplementedError

    def process_bind_param(self, value: Any, _dialect: Dialect) -> str | int | None:
        """Called for each value on its way in."""
        return None if value is None else self.write(value)

    def process_result_value(self, value: Any, _dialect: Dialect) -> object:
        """Called for each value on its way out."""
        return None if value is None else self.read(value)


class DayText(Coded):
    """A calendar day as ``YYYY-MM-DD``."""

    cache_ok = True

    def write(self, value: date) -> str:
        """The text of a day."""
        return value.isoformat()

    def read(self, stored: str) -> date:
        """The day of a text."""
        return date.fromisoformat(stored)


class MomentText(Coded):
    """An aware time as ISO text in UTC, so that the order of the texts is the order of the times."""

    cache_ok = True

    def write(self, value: datetime) -> str:
        """The text of a time, in UTC."""
        return value.astimezone(UTC).isoformat(timespec="microseconds")

    def read(self, stored: str) -> datetime:
        """The time of a text; a text without an offset is refused."""
        moment = datetime.fromisoformat(stored)
        if moment.tzinfo is None:
            raise ValueError(stored)
        return moment


class ClockText(Coded):
    """A time of day as ISO text."""

    cache_ok = True

    def write(self, value: time) -> str:
        """The text of a time of day."""
        return value.isoformat()

    def read(self, stored: str) -> time:
        """The time of day of a text."""
        return time.fromisoformat(stored)


class YesNo(Coded):
    """A truth value as 0 or 1."""

    impl = Integer
    cache_ok = True

    def write(self, value: object) -> int:
        """0 or 1."""
        return int(value is True)

    def read(self, stored: int) -> bool:
        """The truth value of 0 or 1."""
        return stored == 1


class WordText(Coded):
    """A word of a closed list, by its value; the lenient spellings of a typed word do not count here."""

    cache_ok = True

    def __init__(self, words: type[StrEnum]) -> None:
        super().__init__()
        self.words = words
        self._by_value = {word.value: word for word in words}

    def write(self, value: StrEnum | str) -> str:
        """The word's value; a plain text of that value will do."""
        return str(value)

    def read(self, stored: str) -> StrEnum:
        """The word of a value."""
        if stored not in self._by_value:
            raise ValueError(stored)
        return self._by_value[stored]
