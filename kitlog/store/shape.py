"""How a model lies in tables: a row for the thing itself, rows with a place for its parts.

A column has the name of the field. The key of a part is its owner's key and its own place; both directions are worked
out from that, so that a model is described once, in `kitlog.store.aggregates`.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from functools import cache
from typing import Any, Generic, Protocol, TypeVar

from sqlalchemy import Table

from kitlog.fault import InputFault
from kitlog.units.model import Frozen

M = TypeVar("M", bound=Frozen)
Row = dict[str, Any]
Key = tuple[Any, ...]
Grouped = Mapping[str, Mapping[Key, Sequence[Row]]]
"""Rows of each part's table by their owner's key, in order."""


class Part(Protocol):
    """A field of a model that lies in a table of its own."""

    @property
    def field(self) -> str:
        """The field's name."""

    @property
    def table(self) -> Table:
        """Where it lies."""

    @property
    def parts(self) -> tuple["Part", ...]:
        """Its own parts."""

    def rows(self, value: Any) -> Iterator[tuple[Key, Row, Any]]:
        """Of a field's value: the end of each row's key, the row without its key, and the model in it."""

    def value(self, owner: Key, grouped: Grouped) -> Any:
        """The field's value of an owner, as pydantic takes it."""


@dataclass(frozen=True, slots=True)
class Many:
    """A tuple of models; a row each."""

    field: str
    table: Table
    model: type[Frozen]
    parts: tuple[Part, ...] = ()

    def rows(self, value: Sequence[Frozen] | None) -> Iterator[tuple[Key, Row, Any]]:
        """A row for each, at its place."""
        for place, piece in enumerate(value or ()):
            yield (place,), columns(piece, self.table), piece

    def value(self, owner: Key, grouped: Grouped) -> list[Row]:
        """What the rows of an owner say, in order."""
        rows = grouped[self.table.name].get(owner, ())
        return [fields(self, row, (*owner, row["position"]), grouped) for row in rows]


@dataclass(frozen=True, slots=True)
class One:
    """A model or nothing: a row or none."""

    field: str
    table: Table
    model: type[Frozen]
    parts: tuple[Part, ...] = ()

    def rows(self, value: Frozen | None) -> Iterator[tuple[Key, Row, Any]]:
        """The row, if there is something."""
        if value is not None:
            yield (), columns(value, self.table), value

    def value(self, owner: Key, grouped: Grouped) -> Row | None:
        """What the row says, None without one."""
        rows = grouped[self.table.name].get(owner, ())
        return fields(self, rows[0], owner, grouped) if rows else None


@dataclass(frozen=True, slots=True)
class Values:
    """A tuple of plain values, in one column."""

    field: str
    table: Table
    column: str
    parts: tuple[Part, ...] = ()

    def rows(self, value: Sequence[object]) -> Iterator[tuple[Key, Row, Any]]:
        """A row for each, at its place."""
        for place, piece in enumerate(value):
            yield (place,), {self.column: piece}, None

    def value(self, owner: Key, grouped: Grouped) -> list[object]:
        """The values of an owner, in order."""
        return [row[self.column] for row in grouped[self.table.name].get(owner, ())]


@dataclass(frozen=True, slots=True)
class Pairs:
    """A dictionary of plain values, in two columns."""

    field: str
    table: Table
    key_column: str
    column: str
    parts: tuple[Part, ...] = ()

    def rows(self, value: Mapping[Any, Any]) -> Iterator[tuple[Key, Row, Any]]:
        """A row for each pair, in the order of the dictionary."""
        for place, (name, piece) in enumerate(value.items()):
            yield (place,), {self.key_column: name, self.column: piece}, None

    def value(self, owner: Key, grouped: Grouped) -> Row:
        """The dictionary of an owner."""
        return {row[self.key_column]: row[self.column] for row in grouped[self.table.name].get(owner, ())}


@dataclass(frozen=True, slots=True)
class Root(Generic[M]):
    """A thing that stands for itself.

    Attributes:
        key: the columns that name it.
        inside: models kept in its own row, as field -> (model, prefix of the columns).
        planned: fields that may be None as well as empty -> the column that says which.
    """

    model: type[M]
    table: Table
    key: tuple[str, ...] = ("id",)
    parts: tuple[Part, ...] = ()
    inside: Mapping[str, tuple[type[Frozen], str]] = field(default_factory=dict)
    planned: Mapping[str, str] = field(default_factory=dict)

    def row(self, model: Frozen) -> Row:
        """Its own row, without the order of entry."""
        row = columns(model, self.table)
        for name, (_, prefix) in self.inside.items():
            row |= columns(getattr(model, name), self.table, prefix)
        return row | {column: getattr(model, name) is not None for name, column in self.planned.items()}

    def read(self, row: Row, grouped: Grouped) -> M:
        """The model of a row and the rows of its parts; pydantic's `ValidationError` where they make none."""
        raw = fields(self, row, self.key_of(row), grouped)
        for name, (model, prefix) in self.inside.items():
            raw[name] = {inner: row[prefix + inner] for inner in _plain(model, self.table, prefix)}
        raw |= {name: None for name, column in self.planned.items() if not row[column]}
        return self.model.model_validate(raw)

    def key_of(self, row: Row) -> Key:
        """The key in a row."""
        return tuple(row[name] for name in self.key)


def stored(value: Any) -> Any:
    """A value as it comes back: times in UTC, because two zones' times in the repeated hour never compare equal.

    Raises:
        InputFault: ``time.out_of_range`` for a time that has no UTC within the years 1 to 9999.
    """
    if not isinstance(value, datetime):
        return value
    try:
        return value.astimezone(UTC)
    except OverflowError as error:
        raise InputFault("time.out_of_range", value=value.isoformat()) from error


def columns(model: Frozen, table: Table, prefix: str = "") -> Row:
    """The fields of a model that are columns of a table."""
    return {prefix + name: stored(getattr(model, name)) for name in _plain(type(model), table, prefix)}


def fields(shape: "Many | One | Root[Any]", row: Row, key: Key, grouped: Grouped) -> Row:
    """The fields of a model out of its row and the rows of its parts."""
    model: type[Frozen] = shape.model
    found = {name: row[name] for name in _plain(model, shape.table, "")}
    for part in shape.parts:
        found[part.field] = part.value(key, grouped)
    return found


@cache
def _plain(model: type[Frozen], table: Table, prefix: str) -> tuple[str, ...]:
    """The fields that are columns; kept, because pydantic works its fields out anew each time."""
    return tuple(name for name in model.model_fields if prefix + name in table.c)


def all_parts(parts: tuple[Part, ...]) -> Iterator[Part]:
    """Every part and every part of a part, owners first."""
    for part in parts:
        yield part
        yield from all_parts(part.parts)
