"""Putting a copy in the place of the data file."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from kitlog.fault import SystemFault
from kitlog.store import connection, copies, creation, disk, gate
from kitlog.store.faults import told, told_by_system
from kitlog.store.marks import APPLICATION_ID

_UNREADABLE = frozenset({"data_file.damaged", "data_file.foreign", "data_file.io", "data_file.read_only"})
"""What SQLite says of damaged files that we may write: a flipped bit in the head can say that it is read-only."""


def restore(copy: Path, target: Path, now: datetime) -> Path | None:
    """Make `target` hold what `copy` holds; the file that lay there is kept as a dated copy in ``backups``.

    The copy is read, checked in full, and put in place whole or not at all. Whoever has the target open in another
    process is told at its next step that the file was replaced.

    Args:
        copy: a closed data file: of ``backups``, or out of an archive. It stays as it is.
        target: the data file, closed in this process. It may be missing, damaged or foreign.
        now: an aware time.

    Returns:
        where the file that lay at `target` is kept now, None if there was none.

    Raises:
        SystemFault: for the copy as at the gate, with the copy's path; ``data_file.locked`` while another process
            writes to the target, ``data_file.foreign`` where that is another program's database, ``data_file.full``
            and the like. The target is then as it was.
    """
    copy, place = creation.resolved(copy), creation.resolved(target)
    gate.refuse_bad_copy(copy)
    creation.have_folder(place)
    with told_by_system(place), disk.unfinished(place) as temporary:
        _copy_bytes(copy, temporary)
        gate.refuse_bad_copy(temporary)
        with _kept_out(place) as sound:
            kept = _keep(place, now, sound=sound) if place.exists() else None
            disk.remove_beside(place)
            disk.place_over(temporary, place)
    return kept


def _copy_bytes(source: Path, target: Path) -> None:
    disk.make_private(target)
    with source.open("rb") as taken, target.open("r+b") as given:
        shutil.copyfileobj(taken, given, 1 << 20)
    disk.sync_file(target)


@contextmanager
def _kept_out(path: Path) -> Iterator[bool]:
    """Keep other processes from writing meanwhile; False where there is no sound database to lock."""
    if path.exists() and not path.is_file():
        gate.refuse_place(path)
    raw = _locked(path) if path.exists() and path.stat().st_size else None
    try:
        yield raw is not None
    finally:
        if raw is not None:
            raw.close()


def _locked(path: Path) -> sqlite3.Connection | None:
    """A connection to a sound database, locked; None for a damaged one or what is no database.

    Raises:
        SystemFault: ``data_file.foreign`` for the database of another program, ``data_file.locked``, ``.read_only``.
    """
    gate.refuse_place(path)
    with told(path, "data_file.damaged"):
        raw = connection.connect(path)
    try:
        with told(path, "data_file.damaged"):
            raw.execute("BEGIN IMMEDIATE")
            ours = raw.execute("PRAGMA application_id").fetchone()[0] == APPLICATION_ID
            gate.refuse_damage(raw, path)
    except SystemFault as fault:
        raw.close()
        if fault.code in _UNREADABLE:
            return None
        raise
    if not ours:
        raw.close()
        raise SystemFault("data_file.foreign", path=str(path), reason="application_id")
    return raw


def _keep(path: Path, now: datetime, *, sound: bool) -> Path:
    """A copy of what lies at `path`: by SQLite where it can read it, else byte by byte."""
    if sound:
        # Another connection than the locking one: SQLite copies nothing out of a transaction that may write.
        raw = connection.connect(path)
        try:
            return copies.copy_beside(raw, path, "restore", now)
        finally:
            raw.close()
    kept = copies.free_name(path, "damaged", now)
    _copy_bytes(path, kept)
    disk.sync_folder(kept.parent)
    return kept
