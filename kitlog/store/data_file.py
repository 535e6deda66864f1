"""The data file: opened once, read and written in transactions, copied by SQLite itself."""

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from sqlalchemy.engine import Connection, RootTransaction

from kitlog.fault import InputFault, SystemFault
from kitlog.store import copies, creation, gate
from kitlog.store.connection import engine_on
from kitlog.store.faults import told
from kitlog.store.journalled import JournalledRows
from kitlog.store.reader import Reader
from kitlog.store.rows import Rows
from kitlog.store.writer import Writer


class DataFile:
    """An open data file; usable from any thread, by one at a time.

    Attributes:
        path: where it really lies, links resolved.
    """

    def __init__(self, path: Path, raw: sqlite3.Connection) -> None:
        """Of a connection that the gate has let through; use `open`."""
        self.path = path
        self._raw = raw
        self._engine = engine_on(raw)
        self._lock = threading.RLock()
        self._busy = False
        self._identity = _identity(path)

    @classmethod
    def open(cls, path: Path, *, now: datetime, create: bool = True) -> "DataFile":
        """Open a data file, make it if there is none, and bring an older one up to date (after a copy).

        Args:
            path: the file; its folder must exist, unless it is the usual one.
            now: the time that a copy before a migration is named by.
            create: False = a missing file is a fault.

        Raises:
            SystemFault: ``data_file.missing``, ``.missing_folder``, ``.folder``, ``.not_a_file``, ``.empty``,
                ``.read_only``, ``.foreign``, ``.newer``, ``.damaged``, ``.locked``, ``.migration_failed`` and the like,
                with ``path``. A file that is refused is not changed.
        """
        place = creation.resolved(path)
        if not place.exists() and create:
            creation.create(place)
        return cls(place, gate.admit(place, now))

    def close(self) -> None:
        """Close it; again does nothing."""
        with self._lock:
            self._engine.dispose()
            self._raw.close()

    @contextmanager
    def reading(self) -> Iterator[Reader]:
        """Read in one transaction, so that what is read fits together."""
        with self._transaction("BEGIN") as connection:
            rows = Rows(connection, self.path)
            try:
                yield Reader(rows)
            finally:
                rows.end()

    @contextmanager
    def writing(self) -> Iterator[Writer]:
        """Write in one transaction, which keeps other writers out from its beginning; any exception takes it back.

        Raises:
            InputFault: ``data_file.dangling`` with ``table`` and ``refers_to``: something names what is not there.
            SystemFault: ``data_file.locked``, ``.full``, ``.io`` and the like.
        """
        with self._transaction("BEGIN IMMEDIATE") as connection:
            rows = JournalledRows(connection, self.path)
            try:
                yield Writer(rows)
            finally:
                rows.end()

    def data_version(self) -> int:
        """A number that moves when somebody else has written to the file.

        Raises:
            SystemFault: ``data_file.replaced`` if another file lies there now, ``data_file.missing`` if none does.
        """
        with self._lock, told(self.path):
            self._refuse_replaced()
            return int(self._raw.execute("PRAGMA data_version").fetchone()[0])

    def copy_to(self, target: Path) -> None:
        """Copy it by SQLite's online backup to a new file, mode 0600, synced.

        Raises:
            SystemFault: ``data_file.exists`` for a target that is there already, ``data_file.full`` and the like.
        """
        with self._alone():
            self._refuse_replaced()
            copies.copy(self._raw, self.path, target)

    def copy_beside(self, reason: str, now: datetime) -> Path:
        """A dated copy in the folder ``backups`` beside it; the last 10 for the same reason are kept.

        Args:
            reason: what is about to happen, a word of the copy's name: ``import``, ``daily``.
            now: an aware time.

        Returns:
            the copy's path.
        """
        with self._alone():
            self._refuse_replaced()
            return copies.copy_beside(self._raw, self.path, reason, now)

    @contextmanager
    def _transaction(self, begin: str) -> Iterator[Connection]:
        with self._alone(), self._engine.connect() as plain:
            connection = plain.execution_options(begin=begin)
            with told(self.path):
                transaction = connection.begin()
            try:
                # Only now: a restore by another process needs the lock that a writer has from here on.
                self._refuse_replaced()
                yield connection
            except BaseException:
                transaction.rollback()
                raise
            self._commit(transaction)

    def _commit(self, transaction: RootTransaction) -> None:
        try:
            with told(self.path):
                transaction.commit()
        except SystemFault as fault:
            dangling = None if fault.code != "data_file.refused_row" else gate.dangling(self._raw)
            self._raw.rollback()
            if dangling is None:
                raise
            raise InputFault("data_file.dangling", **dangling) from fault

    @contextmanager
    def _alone(self) -> Iterator[None]:
        with self._lock:
            if self._busy:
                raise RuntimeError("a transaction is already open")
            self._busy = True
            try:
                yield
            finally:
                self._busy = False

    def _refuse_replaced(self) -> None:
        """After a restore by another process this connection would write into a file without a name."""
        if _identity(self.path) != self._identity:
            raise SystemFault("data_file.replaced", path=str(self.path))


def _identity(path: Path) -> tuple[int, int]:
    try:
        status = path.stat()
    except OSError as error:
        raise SystemFault("data_file.missing", path=str(path)) from error
    return status.st_dev, status.st_ino
