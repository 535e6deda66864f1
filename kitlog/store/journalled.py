"""Rows whose every change is written down."""

from collections.abc import Mapping
from pathlib import Path

from sqlalchemy import Table
from sqlalchemy.engine import Connection

from kitlog.store.journal import Changes, RowChange
from kitlog.store.rows import Rows
from kitlog.store.shape import Key, Row


class JournalledRows(Rows):
    """Rows of tables that can be written, with a journal of the rows before and after."""

    def __init__(self, connection: Connection, path: Path) -> None:
        super().__init__(connection, path)
        self._journal: list[RowChange] = []

    @property
    def changes(self) -> Changes:
        """What was changed so far, in order."""
        return Changes(tuple(self._journal))

    def add(self, table: Table, rows: Mapping[Key, Row]) -> None:
        """New rows by their keys."""
        if rows:
            self.insert(table, list(rows.values()))
            self._journal += [RowChange(table.name, key, None, row) for key, row in rows.items()]

    def replace(self, table: Table, key: Key, before: Row, after: Row) -> None:
        """Another row of the same key; nothing is written where it is the same."""
        if before != after:
            self.update(table, key, {name: value for name, value in after.items() if value != before[name]})
            self._journal.append(RowChange(table.name, key, before, after))

    def take(self, table: Table, key: Key, before: Row) -> None:
        """A row less."""
        self.delete(table, key)
        self._journal.append(RowChange(table.name, key, before, None))

    def take_all(self, table: Table, rows: Mapping[Key, Row]) -> None:
        """Many rows less, by their keys."""
        if rows:
            self.delete_many(table, list(rows))
            self._journal += [RowChange(table.name, key, row, None) for key, row in rows.items()]

    def set(self, table: Table, key: Key, row: Mapping[str, object] | None) -> None:
        """Make the row of that key be `row`, or be gone."""
        before, after = self.one(table, key), None if row is None else dict(row)
        if before is None and after is not None:
            self.add(table, {key: after})
        elif before is not None and after is None:
            self.take(table, key, before)
        elif before is not None and after is not None:
            self.replace(table, key, before, after)
