"""What a file must show before it is opened: that it is ours, not newer than we are, and whole.

In that order, and nothing is written before all is known: a refused file stays as it was.
"""

import os
import sqlite3
from datetime import datetime
from pathlib import Path

from kitlog.fault import SystemFault
from kitlog.store import connection, migrations
from kitlog.store.faults import told
from kitlog.store.marks import APPLICATION_ID, SCHEMA
from kitlog.store.tables.base import METADATA


def admit(path: Path, now: datetime) -> sqlite3.Connection:
    """A connection to a data file that is fit to be used, brought up to date if it was older.

    Raises:
        SystemFault: see `kitlog.store.data_file.DataFile.open`.
    """
    refuse_place(path)
    with told(path, "data_file.damaged"):
        raw = connection.connect(path)
        try:
            return _let_in(raw, path, now)
        except BaseException:
            raw.close()
            raise


def _let_in(raw: sqlite3.Connection, path: Path, now: datetime) -> sqlite3.Connection:
    version = refuse_unfit(raw, path)
    connection.settle(raw, path)
    if version < SCHEMA:
        # The only place that needs alembic, which takes longer to import than a file takes to open.
        from kitlog.store.migrations.run import bring_up_to_date

        bring_up_to_date(raw, path, now, migrations.STEPS)
        refuse_other_tables(raw, path)
    return raw


def refuse_place(path: Path, *, to_write: bool = True) -> None:
    """Whether a plain file lies there, and one that we may write.

    An empty file is refused: SQLite takes it for an empty database, but ours are never empty, so something emptied it.

    Raises:
        SystemFault: ``data_file.missing``, ``.missing_folder``, ``.folder``, ``.not_a_file``, ``.empty``,
            ``.read_only``.
    """
    code = _unfit_place(path)
    if code is None and to_write and not (os.access(path, os.W_OK) and os.access(path.parent, os.W_OK)):
        code = "data_file.read_only"
    if code is not None:
        raise SystemFault(code, path=str(path), folder=str(path.parent))


def _unfit_place(path: Path) -> str | None:
    if path.is_dir():
        return "data_file.folder"
    if not path.exists():
        return "data_file.missing" if path.parent.is_dir() else "data_file.missing_folder"
    if not path.is_file():
        return "data_file.not_a_file"
    return "data_file.empty" if path.stat().st_size == 0 else None


def read_marks(raw: sqlite3.Connection, path: Path) -> int:
    """The schema of a file of ours.

    Raises:
        SystemFault: ``data_file.foreign``; ``data_file.newer`` with ``schema`` and ``known``.
    """
    if raw.execute("PRAGMA application_id").fetchone()[0] != APPLICATION_ID:
        raise SystemFault("data_file.foreign", path=str(path), reason="application_id")
    version = int(raw.execute("PRAGMA user_version").fetchone()[0])
    if version > SCHEMA:
        raise SystemFault("data_file.newer", path=str(path), schema=version, known=SCHEMA)
    if version < 1:
        raise SystemFault("data_file.damaged", path=str(path), reason="user_version")
    return version


def refuse_damage(raw: sqlite3.Connection, path: Path) -> None:
    """SQLite's own check of pages, types, ranges and references.

    Raises:
        SystemFault: ``data_file.damaged`` with ``reason``.
    """
    found = raw.execute("PRAGMA integrity_check(1)").fetchone()[0]
    if found != "ok":
        raise SystemFault("data_file.damaged", path=str(path), reason=str(found))
    loose = dangling(raw)
    if loose is not None:
        raise SystemFault("data_file.damaged", path=str(path), reason="foreign_key_check", **loose)


def dangling(raw: sqlite3.Connection) -> dict[str, object] | None:
    """The first row that names what is not there, as ``table`` and ``refers_to``, or None."""
    row = raw.execute("PRAGMA foreign_key_check").fetchone()
    return None if row is None else {"table": row[0], "refers_to": row[2]}


def refuse_acting(raw: sqlite3.Connection, path: Path) -> None:
    """Whether the file brings triggers or views, which would act in our name; ours never do.

    Raises:
        SystemFault: ``data_file.damaged`` with ``table``.
    """
    acting = raw.execute("SELECT name FROM sqlite_schema WHERE type IN ('trigger', 'view')").fetchone()
    if acting is not None:
        raise SystemFault("data_file.damaged", path=str(path), reason="tables", table=acting[0])


def refuse_other_tables(raw: sqlite3.Connection, path: Path) -> None:
    """Whether exactly our tables and columns are there.

    Raises:
        SystemFault: ``data_file.damaged`` with ``table``.
    """
    lying = _columns(raw)
    known = {table.name: tuple(table.c.keys()) for table in METADATA.tables.values()}
    wrong = sorted(name for name in lying.keys() | known.keys() if lying.get(name) != known.get(name))
    if wrong:
        raise SystemFault("data_file.damaged", path=str(path), reason="tables", table=wrong[0])


def refuse_bad_copy(path: Path) -> None:
    """Whether a closed file of ours, of this schema or an older one, is whole; nothing is written.

    Raises:
        SystemFault: as at the gate.
    """
    refuse_place(path, to_write=False)
    with told(path, "data_file.damaged"):
        raw = connection.connect(path)
        try:
            refuse_unfit(raw, path)
        finally:
            raw.close()


def refuse_unfit(raw: sqlite3.Connection, path: Path) -> int:
    """Whether a file is ours, known and whole; its schema.

    Raises:
        SystemFault: as at the gate.
    """
    version = read_marks(raw, path)
    refuse_damage(raw, path)
    refuse_acting(raw, path)
    if version == SCHEMA:
        refuse_other_tables(raw, path)
    return version


def _columns(raw: sqlite3.Connection) -> dict[str, tuple[str, ...]]:
    """The columns of every table but SQLite's own."""
    rows = raw.execute(
        "SELECT m.name, c.name FROM sqlite_schema m JOIN pragma_table_xinfo(m.name) c "
        "WHERE m.type = 'table' AND m.name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY m.name, c.cid"
    )
    lying: dict[str, tuple[str, ...]] = {}
    for table, column in rows:
        lying[table] = (*lying.get(table, ()), column)
    return lying
