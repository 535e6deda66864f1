"""Writing: whole things go in, only rows that differ are written, and every row is journalled."""

from collections.abc import Iterable, Iterator
from datetime import datetime
from itertools import groupby
from typing import Any

from sqlalchemy import Table

from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.outing.outing import Outing
from kitlog.store import undo
from kitlog.store.aggregates import OF_HISTORY, ROOTS, Removable, Stored, key_names
from kitlog.store.journal import Changes
from kitlog.store.journalled import JournalledRows
from kitlog.store.reader import Reader
from kitlog.store.shape import Key, Part, Root, Row, all_parts
from kitlog.store.tables.kit import ITEM, PREFERENCE
from kitlog.store.tables.outing import OVERRIDE, TICK
from kitlog.units.text import unfit_character

Lying = dict[Key, Row]
"""Rows by key."""

TOGETHER = 50
"""So many things of one kind go in together: one by one, 10 000 take seconds."""


class Writer(Reader):
    """One transaction that writes; what it reads is what it has written so far."""

    def __init__(self, rows: JournalledRows) -> None:
        super().__init__(rows)
        self._rows: JournalledRows = rows

    @property
    def changes(self) -> Changes:
        """The rows changed so far, in order; also after the transaction."""
        return self._rows.changes

    def put(self, model: Stored) -> None:
        """Insert or replace a thing with all its parts.

        Raises:
            InputFault: ``outing.override_dropped`` with ``outing``: an outing that lacks an override on record.
        """
        root = ROOTS[type(model)]
        row = root.row(model)
        key = root.key_of(row)
        old = self._rows.one(root.table, key)
        wanted = {part.table.name: lying for part, lying in _spread(root, model, key)}
        self._put_root(root.table, key, old, row)
        for part in all_parts(root.parts):
            self._put_part(part, key, wanted.get(part.table.name, {}), new=old is None)

    def put_all(self, models: Iterable[Stored]) -> None:
        """The same as `put` for each; many new things of one kind are written table by table, and before the others.

        Raises:
            InputFault: as `put`.
        """
        for kind, group in groupby(models, type):
            together = list(group)
            root = ROOTS[kind]
            fresh = self._fresh(root, together) if len(together) >= TOGETHER and kind is not Outing else {}
            self._add_together(root, fresh)
            added = {id(model) for model in fresh.values()}
            for model in together:
                if id(model) not in added:
                    self.put(model)

    def put_preference(self, name: str, value: str | None) -> None:
        """Set a preference; None = as it comes.

        Raises:
            InputFault: ``text.unfit_character`` with ``character``.
        """
        for text in (name, value or ""):
            bad = unfit_character(text, breaks=True)
            if bad is not None:
                raise InputFault("text.unfit_character", character=bad, field=name)
        old = self._rows.one(PREFERENCE, (name,))
        row = None if value is None else {"entry": old and old["entry"], "name": name, "value": value}
        self._rows.set(PREFERENCE, (name,), row)

    def remove(self, kind: type[Removable], *key: str, now: datetime) -> bool:
        """Take a thing out with all its parts; False if it was not there.

        With an item goes that other items are fitted to it; its service rules must have been removed in the same
        transaction. With an outing go its ticks; its overrides stay on record, struck at `now`.

        Args:
            kind: the model's class.
            key: its id; for a tick the outing's id, the step and the line.
            now: the time an override is struck at.
        """
        root = ROOTS[kind]
        old = self._rows.one(root.table, key)
        if old is None:
            return False
        self._loosen(kind, key[0])
        for part in all_parts(root.parts):
            self._remove_part(part.table, self._lying(part.table, key[0]), now)
        self._rows.take(root.table, key, old)
        return True

    def revert(self, changes: Changes, *, now: datetime) -> None:
        """Put the rows as they were before `changes`; entries in the history are struck at `now` instead.

        Raises:
            SystemFault: ``undo.moved_on``.
        """
        undo.revert(self._rows, changes, now)

    def replay(self, changes: Changes) -> None:
        """Put the rows as they were after `changes` again.

        Raises:
            SystemFault: ``undo.moved_on``.
        """
        undo.replay(self._rows, changes)

    def _fresh(self, root: Root[Any], models: Iterable[Stored]) -> dict[Key, Stored]:
        """Those that are not there yet, by their keys; of two with the same key the first."""
        lying, fresh = self._rows.keys(root.table), dict[Key, Stored]()
        for model in models:
            key = tuple(getattr(model, name) for name in root.key)
            if key not in lying:
                fresh.setdefault(key, model)
        return fresh

    def _add_together(self, root: Root[Any], models: dict[Key, Stored]) -> None:
        self._rows.add(root.table, {key: root.row(model) for key, model in models.items()})
        for part in root.parts:
            for inner, lying in _spread_part(part, list(models.items())):
                self._rows.add(inner.table, lying)

    def _put_root(self, table: Table, key: Key, old: Row | None, row: Row) -> None:
        if old is None:
            self._rows.add(table, {key: row})
        else:
            self._rows.replace(table, key, old, {"entry": old["entry"], **row})

    def _put_part(self, part: Part, key: Key, wanted: Lying, *, new: bool) -> None:
        table = part.table
        old = {} if new and table is not OVERRIDE else self._lying(table, key[0])
        dropped = {name: row for name, row in old.items() if name not in wanted}
        if dropped and table is OVERRIDE:
            raise InputFault("outing.override_dropped", outing=key[0])
        self._rows.add(table, {name: row for name, row in wanted.items() if name not in old})
        for name, row in old.items():
            if name in wanted:
                self._rows.replace(table, name, row, wanted[name])
        for name, row in dropped.items():
            self._rows.take(table, name, row)

    def _remove_part(self, table: Table, lying: Lying, now: datetime) -> None:
        for name, row in lying.items():
            if table.name not in OF_HISTORY:
                self._rows.take(table, name, row)
            elif row["struck_at"] is None:
                self._rows.replace(table, name, row, {**row, "struck_at": now})

    def _loosen(self, kind: type[Removable], name: str) -> None:
        if kind is Item:
            for row in self._rows.all(ITEM, ITEM.c.fitted_to == name, ITEM.c.id != name):
                self._rows.replace(ITEM, (row["id"],), row, {**row, "fitted_to": None})
        if kind is Outing:
            for row in self._rows.all(TICK, TICK.c.outing_id == name):
                self._rows.take(TICK, (row["outing_id"], row["step"], row["line"]), row)

    def _lying(self, table: Table, owner: str) -> Lying:
        names = key_names(table)
        rows = self._rows.all(table, table.c[names[0]] == owner)
        return {tuple(row[name] for name in names): row for row in rows}


def _spread(root: Root[Any], model: object, key: Key) -> Iterator[tuple[Part, Lying]]:
    """The rows of each part of a model."""
    for part in root.parts:
        yield from _spread_part(part, [(key, model)])


def _spread_part(part: Part, owners: list[tuple[Key, object]]) -> Iterator[tuple[Part, Lying]]:
    lying: Lying = {}
    pieces: list[tuple[Key, object]] = []
    names = key_names(part.table)
    for owner, model in owners:
        for end, row, piece in part.rows(getattr(model, part.field)):
            name = (*owner, *end)
            lying[name] = dict(zip(names, name, strict=True)) | row
            pieces.append((name, piece))
    yield part, lying
    for inner in part.parts:
        yield from _spread_part(inner, pieces)
