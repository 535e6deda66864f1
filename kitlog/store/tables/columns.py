"""The columns that the tables are made of, each with its range as a CHECK."""

from datetime import date, datetime
from enum import StrEnum

from sqlalchemy import CheckConstraint, Column, ForeignKey, Integer, Text, text
from sqlalchemy.types import REAL

from kitlog.store.tables.coded import DayText, MomentText, WordText, YesNo
from kitlog.units.days import FIRST_DAY, LAST_DAY


def entry() -> Column[int]:
    """The order of entry; never given twice (AUTOINCREMENT), so that what undo puts back finds its own place free."""
    return Column("entry", Integer, primary_key=True)


def position() -> Column[int]:
    """The place among its siblings, from 0."""
    return Column("position", Integer, CheckConstraint("position >= 0", name="position"), primary_key=True)


def owner(name: str, parent: str) -> Column[str]:
    """The id of what the row is a part of; checked when the transaction ends."""
    link = ForeignKey(parent, deferrable=True, initially="DEFERRED")
    return Column(name, Text, link, primary_key=True, nullable=False)


def words(name: str) -> Column[str]:
    """A text that may be empty."""
    return Column(name, Text, nullable=False)


def later_words(name: str) -> Column[str]:
    """A text that may be empty, in a column that a later schema added: rows from before have it empty."""
    return Column(name, Text, nullable=False, server_default=text("''"))


def later_whole(name: str, low: int, high: int) -> Column[int]:
    """A whole number in a column that a later schema added: rows from before have 0."""
    check = CheckConstraint(f'"{name}" BETWEEN {low} AND {high}', name=name)
    return Column(name, Integer, check, nullable=False, server_default=text("0"))


def title(name: str, *, key: bool = False, unique: bool = False) -> Column[str]:
    """A text that is not empty."""
    check = CheckConstraint(f"\"{name}\" <> ''", name=name)
    return Column(name, Text, check, primary_key=key, unique=unique or None, nullable=False)


def name_or_none(name: str) -> Column[str]:
    """A text that is not empty, or nothing."""
    return Column(name, Text, CheckConstraint(f"\"{name}\" <> ''", name=name))


def whole(name: str, low: int, high: int, *, needed: bool = False) -> Column[int]:
    """A whole number from `low` to `high`, both included."""
    check = CheckConstraint(f'"{name}" BETWEEN {low} AND {high}', name=name)
    return Column(name, Integer, check, nullable=not needed)


def real(name: str, low: float, high: float, *, ends: str = "[]", needed: bool = False) -> Column[float]:
    """A number from `low` to `high`; `ends` says as in mathematics whether the limits belong to it."""
    above = ">=" if ends[0] == "[" else ">"
    below = "<=" if ends[1] == "]" else "<"
    check = CheckConstraint(f'"{name}" {above} {low!r} AND "{name}" {below} {high!r}', name=name)
    return Column(name, REAL, check, nullable=not needed)


def day(name: str, *, needed: bool = False) -> Column[date]:
    """A day from 1970 to 2100."""
    check = CheckConstraint(f"\"{name}\" BETWEEN '{FIRST_DAY}' AND '{LAST_DAY}'", name=name)
    return Column(name, DayText, check, nullable=not needed)


def moment(name: str, *, needed: bool = False) -> Column[datetime]:
    """An aware time."""
    return Column(name, MomentText, nullable=not needed)


def yes_no(name: str) -> Column[bool]:
    """A truth value."""
    return Column(name, YesNo, CheckConstraint(f'"{name}" IN (0, 1)', name=name), nullable=False)


def one_of(name: str, choices: type[StrEnum], *, needed: bool = False) -> Column[StrEnum]:
    """A word of a closed list; the list stands in the models alone, so that a longer one needs no new table."""
    return Column(name, WordText(choices), nullable=not needed)
