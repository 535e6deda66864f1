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
    """A copy beside the data file: where, of when (UTC), the how manieth of that second, and why it was made."""

    path: Path
    made_at: datetime
    number: int
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
    thin(path, target, reason)
    return target


def free_name(path: Path, reason: str, now: datetime) -> Path:
    """A name for a copy that nothing has yet, in a folder that is there."""
    folder = path.parent / FOLDER
    with told_by_system(folder):
        disk.make_private_folder(folder)
    made_at = now.astimezone(UTC).replace(microsecond=0)
    number = max((copy.number + 1 for copy in copies_of(path) if copy.made_at == made_at), default=0)
    more = f".{number}" if number else ""
    return folder / f"{path.stem}_{made_at.strftime(_STAMP)}{more}_{_word(reason)}.db"


def _word(reason: str) -> str:
    return _NOT_IN_NAMES.sub("-", reason.lower()).strip("-")[:40] or "copy"


def copies_of(path: Path) -> tuple[Copy, ...]:
    """The copies beside a data file, the newest first."""
    folder = path.parent / FOLDER
    with told_by_system(folder):
        places = list(folder.iterdir()) if folder.is_dir() else []
    found = [copy for place in places if (copy := _copy_at(place, path.stem))]
    return tuple(sorted(found, key=lambda copy: (copy.made_at, copy.number), reverse=True))


def _copy_at(place: Path, stem: str) -> Copy | None:
    match = re.fullmatch(
        rf"{re.escape(stem)}_([0-9]{{8}}T[0-9]{{6}}Z)(?:\.([0-9]{{1,6}}))?_([a-z0-9-]+)\.db", place.name
    )
    try:
        made_at = datetime.strptime(match[1], _STAMP).replace(tzinfo=UTC) if match else None
    except ValueError:
        return None
    return Copy(place, made_at, int(match[2] or 0), match[3]) if match and made_at else None


def thin(path: Path, newest: Path, reason: str) -> None:
    """Remove all copies for a reason but ten: `newest`, just made whatever the clock says, and the last nine others."""
    others = [copy for copy in copies_of(path) if copy.reason == _word(reason) and copy.path != newest]
    with told_by_system(path):
        for old in others[KEPT - 1 :]:
            disk.remove(old.path)
