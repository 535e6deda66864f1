"""Bringing an older data file up to date: a copy first, then all steps in one transaction or none."""

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import datetime
from importlib import import_module
from pathlib import Path

from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy.engine import Connection

from kitlog.fault import SystemFault
from kitlog.store import copies, gate
from kitlog.store.connection import engine_on


def bring_up_to_date(raw: sqlite3.Connection, path: Path, now: datetime, steps: Sequence[str]) -> None:
    """Run the steps that the file lacks.

    Args:
        raw: a settled connection outside a transaction.
        path: the file, for the copy and for faults.
        now: an aware time, for the copy's name.
        steps: the modules of all steps.

    Raises:
        SystemFault: ``data_file.migration_failed`` with ``copy`` (the file as it was; the file itself is unchanged) and
            ``reason``; ``data_file.full`` and the like.
    """
    found = _version(raw)
    kept = copies.copy_beside(raw, path, f"schema-{found}", now)
    gate.refuse_bad_copy(kept)
    try:
        with without_foreign_keys(raw), _transaction(raw) as connection:
            run_steps(connection, _version(raw), steps)
            _refuse_dangling(raw)
    except SystemFault:
        raise
    except Exception as error:
        facts = {"path": str(path), "copy": str(kept), "schema": found, "reason": str(error)}
        raise SystemFault("data_file.migration_failed", **facts) from error


def run_steps(connection: Connection, version: int, steps: Sequence[str]) -> None:
    """The steps after `version`, each with its number, in the transaction of `connection`."""
    context = MigrationContext.configure(connection)
    for number, name in list(enumerate(steps, 1))[version:]:
        with Operations.context(context):
            import_module(name).upgrade()
        connection.exec_driver_sql(f"PRAGMA user_version={number}")


@contextmanager
def without_foreign_keys(raw: sqlite3.Connection) -> Iterator[None]:
    """Foreign keys off: a table made anew is dropped first, and what points to it must stay.

    The setting does nothing inside a transaction, so this goes around it.
    """
    raw.execute("PRAGMA foreign_keys=0")
    try:
        yield
    finally:
        raw.execute("PRAGMA foreign_keys=1")


@contextmanager
def _transaction(raw: sqlite3.Connection) -> Iterator[Connection]:
    plain = engine_on(raw).connect()
    with plain.execution_options(begin="BEGIN IMMEDIATE") as connection, connection.begin():
        yield connection


def _refuse_dangling(raw: sqlite3.Connection) -> None:
    loose = gate.dangling(raw)
    if loose is not None:
        raise RuntimeError(f"foreign_key_check {loose}")


def _version(raw: sqlite3.Connection) -> int:
    return int(raw.execute("PRAGMA user_version").fetchone()[0])
