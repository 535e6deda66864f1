"""Statements on one connection: the place where SQL is sent and where its errors become faults."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Executable,
    Select,
    Table,
    and_,
    bindparam,
    column,
    delete,
    insert,
    select,
    update,
)
from sqlalchemy import (
    table as plain_table,
)
from sqlalchemy.engine import Connection, CursorResult

from kitlog.fault import SystemFault
from kitlog.store.aggregates import key_names
from kitlog.store.faults import told
from kitlog.store.shape import Key, Row

_ENTRIES = plain_table("sqlite_sequence", column("name"), column("seq"))
"""Where SQLite keeps the last order of entry that each table has given (documentation of AUTOINCREMENT)."""


class Rows:
    """Rows of tables, inside a transaction.

    After the transaction every call raises `RuntimeError`: it would begin another one that nobody ends.
    """

    def __init__(self, connection: Connection, path: Path) -> None:
        self._connection = connection
        self.path = path
        self._open = True

    def end(self) -> None:
        """Called when the transaction is over."""
        self._open = False

    def all(self, table: Table, *where: ColumnElement[bool]) -> list[Row]:
        """The rows of a table in order of entry, or by owner and place."""
        return self._rows(select(table).where(*where).order_by(*table.primary_key.columns), table)

    def columns(self, table: Table, names: Sequence[str]) -> list[tuple[Any, ...]]:
        """Some columns of a table's rows, in order of entry."""
        statement = select(*(table.c[name] for name in names)).order_by(*table.primary_key.columns)
        result = self._run(statement)
        with self._readable(table):
            return [tuple(row) for row in result.all()]

    def one(self, table: Table, key: Key) -> Row | None:
        """The row of that key, None if there is none."""
        rows = self._rows(select(table).where(_named(table, key)), table)
        return rows[0] if rows else None

    def by_key(self, table: Table) -> dict[Key, Row]:
        """All rows of a table by their keys."""
        names = key_names(table)
        return {tuple(row[name] for name in names): row for row in self.all(table)}

    def keys(self, table: Table) -> set[Key]:
        """The keys of all rows of a table."""
        statement = select(*(table.c[name] for name in key_names(table)))
        with told(self.path):
            return {tuple(row) for row in self._run(statement).all()}

    def grouped(self, table: Table, *where: ColumnElement[bool], by_place: bool) -> dict[Key, list[Row]]:
        """The rows of a part's table by the key of their owner (the last column of the key is the place)."""
        names = key_names(table)[: -1 if by_place else None]
        groups: defaultdict[Key, list[Row]] = defaultdict(list)
        for row in self.all(table, *where):
            groups[tuple(row[name] for name in names)].append(row)
        return groups

    def insert(self, table: Table, rows: Sequence[Row]) -> None:
        """New rows; each gets its order of entry, if its table has one and it has none yet."""
        if "entry" in table.c and len(rows) == 1:
            rows[0]["entry"] = self._run(insert(table), rows[0]).lastrowid
            return
        if "entry" in table.c:
            waiting = (row for row in rows if row.get("entry") is None)
            for row, entry in zip(waiting, count(self._last_entry(table) + 1), strict=False):
                row["entry"] = entry
        self._run(insert(table), list(rows))

    def update(self, table: Table, key: Key, row: Row) -> None:
        """A row as it is to be."""
        self._run(update(table).where(_named(table, key)).values(row))

    def delete(self, table: Table, key: Key) -> None:
        """A row less."""
        self._run(delete(table).where(_named(table, key)))

    def delete_many(self, table: Table, keys: Sequence[Key]) -> None:
        """Many rows less, by one statement."""
        names = key_names(table)
        named = and_(*(table.c[name] == bindparam(f"key_{name}") for name in names))
        keyed = [{f"key_{name}": value for name, value in zip(names, key, strict=True)} for key in keys]
        self._run(delete(table).where(named), keyed)

    def _last_entry(self, table: Table) -> int:
        found = self._run(select(_ENTRIES.c.seq).where(_ENTRIES.c.name == table.name)).scalar()
        return int(found or 0)

    def _rows(self, statement: Select[Any], table: Table) -> list[Row]:
        names = table.c.keys()
        result = self._run(statement)
        with self._readable(table):
            return [dict(zip(names, row, strict=True)) for row in result.all()]

    @contextmanager
    def _readable(self, table: Table) -> Iterator[None]:
        """Values that no writer of ours would have stored are a damage of the file."""
        with told(self.path):
            try:
                yield
            except (ValueError, TypeError) as error:
                facts = {"path": str(self.path), "table": table.name, "reason": str(error)}
                raise SystemFault("data_file.damaged", **facts) from error

    def _run(self, statement: Executable, values: Any = None) -> CursorResult[Any]:
        if not self._open:
            raise RuntimeError("the transaction is over")
        with told(self.path):
            return self._connection.execute(statement, values)


def _named(table: Table, key: Key) -> ColumnElement[bool]:
    return and_(*(table.c[name] == value for name, value in zip(key_names(table), key, strict=True)))
