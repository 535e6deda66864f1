"""The papers that a data file or a copy of it names, read without the models: it may be of an older schema."""

import sqlite3
from pathlib import Path

from kitlog.fault import SystemFault
from kitlog.kit.paper import Paper
from kitlog.store import connection, creation
from kitlog.store.copies import copies_of
from kitlog.store.faults import told

_TABLES = ("item_paper", "record_paper")


def papers_named(path: Path) -> tuple[Paper, ...]:
    """Every paper that a closed data file names, each content once, in the order of their hashes.

    Raises:
        SystemFault: ``data_file.*``: the file cannot be read.
    """
    place = creation.resolved(path)
    with told(place, "data_file.damaged"):
        raw = connection.connect(place)
        try:
            rows = sorted(row for table in _lying(raw) for row in _rows(raw, table))
        finally:
            raw.close()
    try:
        found = {row[0]: Paper(sha256=row[0], name=row[1], media_type=row[2], size=row[3]) for row in rows}
    except ValueError as error:
        raise SystemFault("data_file.damaged", path=str(place), reason="papers") from error
    return tuple(found.values())


def hashes_in_copies(path: Path) -> frozenset[str] | None:
    """The papers that the dated copies beside a data file name; None where one of them cannot be read.

    What only an older copy names is needed again as soon as that copy is restored.
    """
    try:
        return frozenset(paper.sha256 for copy in copies_of(path) for paper in papers_named(copy.path))
    except SystemFault:
        return None


def _lying(raw: sqlite3.Connection) -> list[str]:
    names = {row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")}
    return [table for table in _TABLES if table in names]


def _rows(raw: sqlite3.Connection, table: str) -> list[tuple[str, str, str, int]]:
    return raw.execute(f"SELECT sha256, name, media_type, size FROM {table}").fetchall()  # noqa: S608  # our own names
