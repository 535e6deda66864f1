"""Taking changes back and doing them again, row by row.

Nothing is put over what somebody else wrote: a row that is not as the journal left it stops the whole transaction.

History is never erased. Taking back that an event, a service record or an override was *entered* leaves it in place
with `struck_at` set (the rules that the record named stay with it); doing it again clears `struck_at`. Every other
change of history, a correction or a strike, is taken back exactly.
"""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from kitlog.fault import SystemFault
from kitlog.store.aggregates import OF_HISTORY
from kitlog.store.journal import Changes, RowChange
from kitlog.store.journalled import JournalledRows
from kitlog.store.tables.base import METADATA
from kitlog.store.tables.log import RECORD_RULE, SERVICE_RECORD


def revert(rows: JournalledRows, changes: Changes, now: datetime) -> None:
    """Put the rows as they were before `changes`, the last one first.

    Raises:
        SystemFault: ``undo.moved_on`` with ``table`` and ``key``.
    """
    entered = {(change.table, change.key) for change in changes.rows if change.before is None}
    for change in reversed(changes.rows):
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
    for change in changes.rows:
        present = _present(rows, change)
        if present != change.before and not _waits_struck(change, present):
            raise _moved_on(change)
        rows.set(METADATA.tables[change.table], change.key, change.after)


def _present(rows: JournalledRows, change: RowChange) -> Mapping[str, Any] | None:
    return rows.one(METADATA.tables[change.table], change.key)


def _stays(change: RowChange, entered: set[tuple[str, tuple[Any, ...]]]) -> bool:
    if change.before is not None or change.table not in OF_HISTORY:
        return False
    return change.table != RECORD_RULE.name or (SERVICE_RECORD.name, change.key[:1]) in entered


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
