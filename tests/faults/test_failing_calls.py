"""The n-th call to the system fails once, n = 1, 2, 3 ... until a run passes: old or new, never between."""

import errno
import os
import shutil
import sys
import types
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from failing_system import NUMBERS, FailingSystem
from filled_files import NOW, fill, names_in

from kitlog.fault import SystemFault
from kitlog.files import backup
from kitlog.store import copies, gate, marks, migrations
from kitlog.store.data_file import DataFile
from kitlog.store.restore import restore

MOST = 200
IN_WORDS = {
    errno.ENOSPC: {"data_file.full", "file.full"},
    errno.EIO: {"data_file.io", "file.io"},
    errno.EACCES: {"data_file.read_only", "file.read_only"},
}

EXCUSED: dict[str, set[str | None]] = {
    "link": {None},  # renaming does where links fail
    "unlink": {None},  # of what lies there harmlessly
    "read": {"backup.damaged"},  # what the zip module makes of it
}

Work = Callable[[Path], None]
Look = Callable[[Path], str]


def until_a_run_passes(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, number: int, prepare: Work, work: Work, look: Look
) -> list[str]:
    """Run with each call failing; what lies there afterwards in each run, and the passing run's calls."""
    states: list[str] = []
    for n in range(1, MOST):
        folder = tmp_path / f"{number}-{n}"
        folder.mkdir()
        prepare(folder)
        with monkeypatch.context() as patch:
            system = FailingSystem(patch, folder, number)
            system.fails_at = n
            fault = outcome(work, folder)
            system.fails_at = -1
            failed = system.calls[n - 1 :]
        states.append(look(folder))
        if not failed:
            assert fault is None
            assert states.pop() == "new"
            assert len(system.calls) >= 5
            return states
        assert fault in IN_WORDS[number] | EXCUSED.get(failed[0], set()), failed[0]
        assert "unlink" in system.calls or not leftovers(folder)
    raise AssertionError("no run passed")


def outcome(work: Work, folder: Path) -> str | None:
    try:
        work(folder)
    except SystemFault as fault:
        return fault.code if fault.facts["path"] else "no path"
    return None


def leftovers(folder: Path) -> list[Path]:
    return list(folder.rglob("*.part*"))


def two_files(folder: Path) -> None:
    shutil.copy(folder.parent / "old.db", folder / "kitlog.db")
    shutil.copy(folder.parent / "new.db", folder / "copy.db")


@pytest.fixture
def root(tmp_path: Path) -> Path:
    for name in ("old", "new"):
        fill(tmp_path / f"{name}.db", name, 5)
    return tmp_path


def name_of(path: Path) -> str:
    (name,) = names_in(path)
    return name


each = pytest.mark.parametrize("number", NUMBERS, ids=lambda number: errno.errorcode[number])


@each
def test_restoring(monkeypatch: pytest.MonkeyPatch, root: Path, number: int, now: datetime) -> None:
    def work(folder: Path) -> None:
        restore(folder / "copy.db", folder / "kitlog.db", now)

    def look(folder: Path) -> str:
        found = name_of(folder / "kitlog.db")
        kept = [name_of(copy.path) for copy in copies.copies_of(folder / "kitlog.db")]
        assert found == "old" or kept == ["old"]
        return found

    states = until_a_run_passes(monkeypatch, root, number, two_files, work, look)
    assert states.count("old") >= 15


@each
def test_packing(monkeypatch: pytest.MonkeyPatch, root: Path, number: int, now: datetime) -> None:
    def prepare(folder: Path) -> None:
        two_files(folder)
        backup.pack(folder / "kitlog.db", folder / "backup.zip", now)

    def work(folder: Path) -> None:
        backup.pack(folder / "copy.db", folder / "backup.zip", now)

    def look(folder: Path) -> str:
        backup.unpack(folder / "backup.zip", folder / "out.db")
        return name_of(folder / "out.db")

    assert "old" in until_a_run_passes(monkeypatch, root, number, prepare, work, look)


@each
def test_unpacking(monkeypatch: pytest.MonkeyPatch, root: Path, number: int, now: datetime) -> None:
    def prepare(folder: Path) -> None:
        two_files(folder)
        backup.pack(folder / "copy.db", folder / "backup.zip", now)

    def work(folder: Path) -> None:
        backup.unpack(folder / "backup.zip", folder / "out.db")

    def look(folder: Path) -> str:
        assert backup.check(folder / "backup.zip").size
        return name_of(folder / "out.db") if (folder / "out.db").exists() else "nothing"

    assert "nothing" in until_a_run_passes(monkeypatch, root, number, prepare, work, look)


@each
def test_copying(monkeypatch: pytest.MonkeyPatch, root: Path, number: int, now: datetime) -> None:
    def work(folder: Path) -> None:
        data = DataFile.open(folder / "copy.db", now=now)
        try:
            data.copy_beside("import", now)
        finally:
            data.close()

    def look(folder: Path) -> str:
        assert name_of(folder / "copy.db") == "new"
        kept = [name_of(copy.path) for copy in copies.copies_of(folder / "copy.db")]
        return kept[0] if kept else "nothing"

    assert "nothing" in until_a_run_passes(monkeypatch, root, number, two_files, work, look)


@each
def test_creating(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, number: int, now: datetime) -> None:
    def work(folder: Path) -> None:
        DataFile.open(folder / "kitlog.db", now=now).close()

    def look(folder: Path) -> str:
        path = folder / "kitlog.db"
        if not path.exists():
            return "nothing"
        assert names_in(path) == set()
        return "new"

    assert "nothing" in until_a_run_passes(monkeypatch, tmp_path, number, lambda _: None, work, look)


@each
def test_migrating(monkeypatch: pytest.MonkeyPatch, root: Path, number: int, now: datetime) -> None:
    from alembic import op

    step = types.ModuleType("kitlog_step_renames")
    step.upgrade = lambda: op.execute("UPDATE item SET name = 'new'")
    monkeypatch.setitem(sys.modules, step.__name__, step)

    def work(folder: Path) -> None:
        with monkeypatch.context() as patch:
            patch.setattr(migrations, "STEPS", (*migrations.STEPS, step.__name__))
            patch.setattr(gate, "SCHEMA", marks.SCHEMA + 1)
            DataFile.open(folder / "kitlog.db", now=NOW).close()

    def look(folder: Path) -> str:
        with monkeypatch.context() as patch:
            patch.setattr(gate, "SCHEMA", marks.SCHEMA + 1)
            patch.setattr(migrations, "STEPS", ())
            return name_of(folder / "kitlog.db")

    assert until_a_run_passes(monkeypatch, root, number, two_files, work, look)[0] == "old"


def test_the_system_is_mended_again(tmp_path: Path) -> None:
    assert os.open.__module__ == "posix"
    (tmp_path / "x").touch()
