"""Every connection has the settings that simulated power losses were survived with (reliability notes, measured)."""

import os
import sqlite3
import stat
import sys
from contextlib import suppress
from pathlib import Path

import pytest
from sqlalchemy import event
from sqlalchemy.engine import Engine

from kitlog.fault import SystemFault
from kitlog.kit.item import Item
from kitlog.store import connection, creation, restore, verify
from kitlog.store.data_file import DataFile

# SQLite's documentation of each pragma says how the value reads back (sqlite.org/pragma.html).
WANTED = {
    "journal_mode": "delete",
    "synchronous": 3,
    "foreign_keys": 1,
    "trusted_schema": 0,
    "cell_size_check": 1,
    "busy_timeout": 5000,
}
PROTECTING = ("foreign_keys", "trusted_schema", "cell_size_check", "busy_timeout")


def settings_of(raw: sqlite3.Connection, names: object = WANTED) -> dict[str, object]:
    return {name: raw.execute(f"PRAGMA {name}").fetchone()[0] for name in names}


def test_the_open_file_has_them(data: DataFile) -> None:
    assert settings_of(data._raw) == WANTED


def test_the_connection_that_transactions_use_has_them(data: DataFile) -> None:
    with data.writing() as writer:
        found = {name: writer._rows._connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in WANTED}
    assert found == WANTED


def test_every_connection_of_a_busy_day_has_them(path: Path, now: object, monkeypatch: pytest.MonkeyPatch) -> None:
    """Making, opening, copying, restoring, verifying: no connection is made but by `connect`, and all are protected."""
    made: list[dict[str, object]] = []
    real = sqlite3.connect

    class Watched(sqlite3.Connection):
        def close(self) -> None:
            with suppress(sqlite3.ProgrammingError):  # closed already
                made.append(settings_of(self, PROTECTING))
            super().close()

    monkeypatch.setattr(sqlite3, "connect", lambda *args, **kwargs: real(*args, **kwargs, factory=Watched))
    data = DataFile.open(path, now=now)
    copy = data.copy_beside("import", now)
    data.close()
    restore.restore(copy, path, now)
    assert verify.verify(path) == ()
    assert len(made) >= 7
    assert all(found == {name: WANTED[name] for name in PROTECTING} for found in made)


def test_a_setting_that_does_not_hold_stops_the_opening(path: Path, now: object) -> None:
    # In memory there is no journal on disk: SQLite answers "memory" and says no more.
    raw = sqlite3.connect(":memory:", isolation_level=None)
    with pytest.raises(SystemFault) as caught:
        connection.settle(raw, path)
    assert (caught.value.code, caught.value.facts["setting"]) == ("data_file.setting_refused", "journal_mode")
    raw.close()


def test_on_macos_the_drive_is_told_to_flush(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "darwin")
    assert connection.wanted_settings()["fullfsync"] == 1


def statements_of(engine: Engine) -> list[str]:
    sent: list[str] = []
    event.listen(engine, "before_cursor_execute", lambda *args: sent.append(args[2]))
    return sent


def test_a_writer_keeps_others_out_from_its_beginning(data: DataFile) -> None:
    sent = statements_of(data._engine)
    with data.writing() as writer:
        writer.put(Item(id="i", name="n"))
    with data.reading() as reader:
        reader.items()
    assert sent[0] == "BEGIN IMMEDIATE"
    assert [words for words in sent if words.startswith("BEGIN")] == ["BEGIN IMMEDIATE", "BEGIN"]


@pytest.mark.skipif(os.name == "nt", reason="modes are POSIX")
def test_only_the_owner_may_read_it(path: Path, now: object) -> None:
    old = os.umask(0)
    try:
        data = DataFile.open(path, now=now)
        copy = data.copy_beside("import", now)
        with data.writing() as writer:
            writer.put(Item(id="i", name="n"))
            journal = path.with_name(path.name + "-journal")
            modes = [stat.S_IMODE(place.stat().st_mode) for place in (path, copy, journal)]
        data.close()
    finally:
        os.umask(old)
    assert modes == [0o600] * 3
    assert stat.S_IMODE(copy.parent.stat().st_mode) == 0o700


def test_the_usual_folder_is_made_private(tmp_path: Path, now: object, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "link").symlink_to("elsewhere")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "link" / "data"))
    usual = creation.usual_path()
    DataFile.open(usual, now=now).close()
    assert usual.is_file()
    assert tmp_path in usual.parents
    assert stat.S_IMODE(usual.parent.stat().st_mode) == 0o700
