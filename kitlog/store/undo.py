"""Taking changes back and doing them again, row by row.

Nothing is put over what somebody else wrote: a row that is not as the journal left it stops the whole transaction.

History is never erased. Taking back that an event, a service record or an override was *entered* leaves it in place
with `struck_at` set (the rules that the record named stay with it); doing it again clears `struck_at`. Every other
change of history, a correction or a strike, is taken back exactly.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from itertools import groupby
from typing import Any

from kitlog.fault import SystemFault
from kitlog.store.aggregates import OF_HISTORY
from kitlog.store.journal import Changes, RowChange
from kitlog.store.journalled import JournalledRows
from kitlog.store.tables.base import METADATA
from kitlog.store.tables.log import (
    RECORD_ANSWER,
    RECORD_MEASUREMENT,
    RECORD_PAPER,
    RECORD_RULE,
    SERVICE_RECORD,
)

_OF_RECORD = frozenset(table.name for table in (RECORD_RULE, RECORD_MEASUREMENT, RECORD_PAPER, RECORD_ANSWER))
"""What belongs to a record goes the way of its record."""

TOGETHER = 50
"""So many changes of one table in a row are made together: one by one, 10 000 take seconds."""


def revert(rows: JournalledRows, changes: Changes, now: datetime) -> None:
    """Put the rows as they were before `changes`, the last one first.

    Raises:
        SystemFault: ``undo.moved_on`` with ``table`` and ``key``.
    """
    entered = {(change.table, change.key) for change in changes.rows if change.before is None}
    for run in _runs(reversed(changes.rows)):
        if _go_together(run):
            _move(rows, [RowChange(change.table, change.key, change.after, change.before) for change in run])
        else:
            _revert_each(rows, run, entered, now)


def _revert_each(
    rows: JournalledRows, run: Iterable[RowChange], entered: set[tuple[str, tuple[Any, ...]]], now: datetime
) -> None:
    for change in run:
        present = _present(rows, change)
        if present != change.after:
            raise _moved_on(change)
        if _stays(change, entered):
            _strike(rows, change, now)
        else:
            rows.set(METADATA.tables[change.table], change.key, change.before)


def replay(rows: JournalledRows, changes: Changes) -> None:
    """Put the rows as they were after `changes` again, the first one first.

    Raises:
        SystemFault: ``undo.moved_on`` with ``table`` and ``key``.
    """
    for run in _runs(changes.rows):
        if _go_together(run):
            _move(rows, run)
        else:
            _replay_each(rows, run)


def _replay_each(rows: JournalledRows, run: Iterable[RowChange]) -> None:
    for change in run:
        present = _present(rows, change)
        if present != change.before and not _waits_struck(change, present):
            raise _moved_on(change)
        rows.set(METADATA.tables[change.table], change.key, change.after)


def _runs(changes: Iterable[RowChange]) -> Iterator[list[RowChange]]:
    """Changes of one table and one sort (rows that come, go, or become others) that follow each other."""
    for _sort, run in groupby(changes, lambda change: (change.table, change.before is None, change.after is None)):
        yield list(run)


def _go_together(run: Sequence[RowChange]) -> bool:
    """Whether there are enough of them, each of another row, and none of history, which is struck one by one."""
    return len(run) >= TOGETHER and run[0].table not in OF_HISTORY and len({change.key for change in run}) == len(run)


def _move(rows: JournalledRows, run: Sequence[RowChange]) -> None:
    """Make many rows of a table from what they were before into what they are after."""
    table = METADATA.tables[run[0].table]
    lying = rows.by_key(table)
    for change in run:
        if lying.get(change.key) != change.before:
            raise _moved_on(change)
    if run[0].before is None:
        rows.add(table, {change.key: dict(change.after) for change in run if change.after is not None})
    elif run[0].after is None:
        rows.take_all(table, {change.key: lying[change.key] for change in run})
    else:
        for change in run:
            rows.replace(table, change.key, lying[change.key], dict(change.after or {}))


def _present(rows: JournalledRows, change: RowChange) -> Mapping[str, Any] | None:
    return rows.one(METADATA.tables[change.table], change.key)


def _stays(change: RowChange, entered: set[tuple[str, tuple[Any, ...]]]) -> bool:
    if change.before is not None or change.table not in OF_HISTORY:
        return False
    return change.table not in _OF_RECORD or (SERVICE_RECORD.name, change.key[:1]) in entered


def _strike(rows: JournalledRows, change: RowChange, now: datetime) -> None:
    table = METADATA.tables[change.table]
    if "struck_at" in table.c and change.after is not None and change.after["struck_at"] is None:
        rows.set(table, change.key, {**change.after, "struck_at": now})


def _waits_struck(change: RowChange, present: Mapping[str, Any] | None) -> bool:
    """Whether the row is what `revert` left of an entry in the history."""
    if change.before is not None or change.after is None or present is None or change.table not in OF_HISTORY:
        return False
    return {**present, "struck_at": None} == {**change.after, "struck_at": None}


def _moved_on(change: RowChange) -> SystemFault:
    return SystemFault("undo.moved_on", table=change.table, key=change.key)
