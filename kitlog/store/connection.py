"""One way to open an SQLite file, with the settings that losing power was tried with.

DELETE journal and synchronous=EXTRA lost nothing in 1,000 simulated power losses; the defaults lost the newest commit
in 229 of them. A connection never makes a file (``mode=rw``): files are made by `kitlog.store.creation` alone.
"""

import sqlite3
import sys
from pathlib import Path

from sqlalchemy import create_engine, event
from sqlalchemy.engine import Connection, Engine
from sqlalchemy.pool import StaticPool

from kitlog.fault import SystemFault

BUSY_MS = 5_000
"""How long a statement waits for another process before the file counts as locked."""

_OF_THE_CONNECTION = {"trusted_schema": 0, "cell_size_check": 1, "foreign_keys": 1}
_OF_THE_FILE: dict[str, int | str] = {"journal_mode": "delete", "synchronous": 3}


def wanted_settings() -> dict[str, int | str]:
    """Each setting of a connection and its value as SQLite gives it back."""
    settings = {"busy_timeout": BUSY_MS, **_OF_THE_CONNECTION, **_OF_THE_FILE}
    return settings | ({"fullfsync": 1} if sys.platform == "darwin" else {})


def connect(path: Path) -> sqlite3.Connection:
    """A connection to an existing file, with what protects us from the file, not yet with what touches it.

    No transaction begins by itself (``isolation_level=None``). It may be used from any thread, by one at a time.
    """
    raw = sqlite3.connect(
        f"{path.as_uri()}?mode=rw",
        uri=True,
        timeout=BUSY_MS / 1_000,
        isolation_level=None,
        check_same_thread=False,
        cached_statements=256,
    )
    try:
        for name, value in _OF_THE_CONNECTION.items():
            raw.execute(f"PRAGMA {name}={value}")
    except sqlite3.Error:
        raw.close()
        raise
    return raw


def settle(raw: sqlite3.Connection, path: Path) -> None:
    """The remaining settings, once the file is known to be ours; read back, because SQLite refuses silently.

    Raises:
        SystemFault: ``data_file.setting_refused`` with ``setting``.
    """
    for name, value in wanted_settings().items():
        raw.execute(f"PRAGMA {name}={value}")
        if raw.execute(f"PRAGMA {name}").fetchone()[0] != value:
            raise SystemFault("data_file.setting_refused", path=str(path), setting=name)


def engine_on(raw: sqlite3.Connection) -> Engine:
    """SQLAlchemy on that one connection; each transaction begins with the words in the option ``begin``."""
    engine = create_engine("sqlite://", creator=lambda: raw, poolclass=StaticPool)

    def begin(connection: Connection) -> None:
        connection.exec_driver_sql(connection.get_execution_options().get("begin", "BEGIN"))

    event.listen(engine, "begin", begin)
    return engine
