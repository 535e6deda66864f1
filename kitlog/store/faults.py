"""What SQLite and the system say, as faults of the world with a code; the sentences stand in wording.

Codes of the data file, each with ``path``: ``data_file.locked``, ``.read_only``, ``.full``, ``.io``, ``.damaged``,
``.foreign``, ``.cannot_open``, ``.refused_row``. An error that fits none of these is the program's own and stays.
"""

import errno
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy.exc import DBAPIError

from kitlog.fault import SystemFault

_BY_PRIMARY_CODE = {
    sqlite3.SQLITE_PERM: "data_file.read_only",
    sqlite3.SQLITE_BUSY: "data_file.locked",
    sqlite3.SQLITE_LOCKED: "data_file.locked",
    sqlite3.SQLITE_READONLY: "data_file.read_only",
    sqlite3.SQLITE_IOERR: "data_file.io",
    sqlite3.SQLITE_CORRUPT: "data_file.damaged",
    sqlite3.SQLITE_FULL: "data_file.full",
    sqlite3.SQLITE_CANTOPEN: "data_file.cannot_open",
    sqlite3.SQLITE_FORMAT: "data_file.damaged",
    sqlite3.SQLITE_NOTADB: "data_file.foreign",
    sqlite3.SQLITE_TOOBIG: "data_file.refused_row",
    sqlite3.SQLITE_CONSTRAINT: "data_file.refused_row",
}
_PRIMARY = 0xFF
_NOT_TEXT = "Could not decode to UTF-8"


def code_of(error: BaseException) -> str | None:
    """The fault's code for an error of SQLite, None where it is not the world's."""
    if isinstance(error, DBAPIError):
        return None if error.orig is None else code_of(error.orig)
    if isinstance(error, UnicodeDecodeError) or _NOT_TEXT in str(error):
        return "data_file.damaged"
    if not isinstance(error, sqlite3.Error):
        return None
    return _BY_PRIMARY_CODE.get(getattr(error, "sqlite_errorcode", 0) & _PRIMARY)


@contextmanager
def told(path: Path, otherwise: str | None = None) -> Iterator[None]:
    """Turn what SQLite says of the file at `path` into a fault.

    Args:
        path: the file.
        otherwise: the code for an error that is usually our own mistake (``unsupported file format`` has the same
            number as a misspelled statement); None = it is raised as it is.

    Raises:
        SystemFault: see the module's codes; ``reason`` is SQLite's own text.
    """
    try:
        yield
    except (DBAPIError, sqlite3.Error, UnicodeDecodeError) as error:
        code = code_of(error) or otherwise
        if code is None:
            raise
        raise SystemFault(code, path=str(path), reason=_reason(error)) from error


def _reason(error: BaseException) -> str:
    return str(getattr(error, "orig", None) or error)


_BY_ERRNO = {
    errno.ENOENT: "data_file.missing",
    errno.EACCES: "data_file.read_only",
    errno.EPERM: "data_file.read_only",
    errno.EROFS: "data_file.read_only",
    errno.EEXIST: "data_file.exists",
    errno.EISDIR: "data_file.folder",
    errno.ENOSPC: "data_file.full",
    errno.EDQUOT: "data_file.full",
    errno.EFBIG: "data_file.full",
}


@contextmanager
def told_by_system(path: Path) -> Iterator[None]:
    """Turn what the operating system says about the file at `path` into a fault.

    Raises:
        SystemFault: ``data_file.read_only``, ``.full``, ``.missing``, ``.exists``, ``.folder`` or ``.io``.
    """
    try:
        yield
    except OSError as error:
        code = _BY_ERRNO.get(error.errno or 0, "data_file.io")
        raise SystemFault(code, path=str(path), reason=error.strerror or str(error)) from error
