"""Copies of the data file: made by SQLite's online backup, dated, kept in a folder beside it, thinned."""

import re
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from kitlog.store import disk
from kitlog.store.connection import connect, settle
from kitlog.store.faults import told, told_by_system

FOLDER = "backups"
KEPT = 10
"""Copies kept for each reason, the newest ones."""

_STAMP = "%Y%m%dT%H%M%SZ"
_NOT_IN_NAMES = re.compile(r"[^a-z0-9]+")


@dataclass(frozen=True, slots=True)
class Copy:
    """A copy beside the data file: where, of when (UTC), and why it was made."""

    path: Path
    made_at: datetime
    reason: str


def copy(raw: sqlite3.Connection, source: Path, target: Path) -> None:
    """Copy an open database to a new file, mode 0600, synced; nothing is left where it fails.

    Raises:
        SystemFault: ``data_file.exists``, ``.missing_folder``, ``.read_only``, ``.full``, ``.locked``, ``.io``.
    """
    with told_by_system(target), disk.unfinished(target) as temporary:
        disk.make_private(temporary)
        with told(source):
            _copy_pages(raw, temporary)
        disk.sync_file(temporary)
        disk.place_new(temporary, target)


def _copy_pages(raw: sqlite3.Connection, target: Path) -> None:
    copied = connect(target)
    try:
        settle(copied, target)
        with _reading(raw):
            raw.backup(copied)
    finally:
        copied.close()


@contextmanager
def _reading(raw: sqlite3.Connection) -> Iterator[None]:
    """Hold a reader's lock: the backup itself would wait for a locked file for ever.

    For the same reason `raw` must not be in a transaction already: SQLite copies nothing out of one that may write.
    """
    raw.execute("BEGIN")
    try:
        raw.execute("SELECT count(*) FROM sqlite_schema").fetchone()
        yield
    finally:
        raw.rollback()


def copy_beside(raw: sqlite3.Connection, path: Path, reason: str, now: datetime) -> Path:
    """A dated copy in the folder ``backups``; older ones for the same reason go, but the last 10.

    Raises:
        SystemFault: as `copy`.
    """
    target = free_name(path, reason, now)
    copy(raw, path, target)
    thin(path, reason)
    return target


def free_name(path: Path, reason: str, now: datetime) -> Path:
    """A name for a copy that nothing has yet, in a folder that is there."""
    folder = path.parent / FOLDER
    with told_by_system(folder):
        disk.make_private_folder(folder)
    stamp = now.astimezone(UTC).strftime(_STAMP)
    names = (
        folder / f"{path.stem}_{stamp}{more}_{_word(reason)}.db"
        for more in ("", *(f".{n}" for n in range(1, 1000)))
    )
    return next(name for name in names if not name.exists())


def _word(reason: str) -> str:
    return _NOT_IN_NAMES.sub("-", reason.lower()).strip("-")[:40] or "copy"


def copies_of(path: Path) -> tuple[Copy, ...]:
    """The copies beside a data file, the newest first."""
    pattern = re.compile(rf"{re.escape(path.stem)}_([0-9]{{8}}T[0-9]{{6}}Z)(?:\.([0-9]+))?_([a-z0-9-]+)\.db")
    folder = path.parent / FOLDER
    found = []
    for place in folder.iterdir() if folder.is_dir() else ():
        match = pattern.fullmatch(place.name)
        if match:
            made_at = datetime.strptime(match[1], _STAMP).replace(tzinfo=UTC)
            found.append((made_at, int(match[2] or 0), Copy(place, made_at, match[3])))
    return tuple(copy for _, _, copy in sorted(found, key=lambda entry: entry[:2], reverse=True))


def thin(path: Path, reason: str) -> None:
    """Remove all copies for a reason but the newest ten."""
    with told_by_system(path):
        for old in [copy for copy in copies_of(path) if copy.reason == _word(reason)][KEPT:]:
            disk.remove(old.path)
