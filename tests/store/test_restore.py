"""A copy takes the place of the data file, and what lay there is kept."""

import shutil
import sqlite3
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest

from kitlog.fault import SystemFault
from kitlog.kit.item import Item
from kitlog.store import connection, copies
from kitlog.store.data_file import DataFile
from kitlog.store.restore import restore
from kitlog.store.verify import verify

OLD = Item(id="old", name="Old")
NEW = Item(id="new", name="New")


def items_of(path: Path, now: datetime) -> tuple[Item, ...]:
    data = DataFile.open(path, now=now, create=False)
    try:
        with data.reading() as reader:
            return reader.items()
    finally:
        data.close()


@pytest.fixture
def copy(data: DataFile, tmp_path: Path) -> Path:
    """A copy with OLD; the closed data file holds OLD and NEW."""
    with data.writing() as writer:
        writer.put(OLD)
    data.copy_to(tmp_path / "copy.db")
    with data.writing() as writer:
        writer.put(NEW)
    data.close()
    return tmp_path / "copy.db"


def test_the_copy_is_there_and_the_file_is_kept(copy: Path, path: Path, now: datetime) -> None:
    before = copy.read_bytes()
    kept = restore(copy, path, now)
    assert kept == path.parent / "backups" / "kitlog_20270503T193000Z_restore.db"
    assert items_of(path, now) == (OLD,)
    assert items_of(kept, now) == (OLD, NEW)
    assert copy.read_bytes() == before


def test_where_there_was_no_file(copy: Path, tmp_path: Path, now: datetime) -> None:
    target = tmp_path / "fresh.db"
    assert restore(copy, target, now) is None
    assert items_of(target, now) == (OLD,)


def test_a_stale_journal_does_not_undo_it(copy: Path, path: Path, now: datetime) -> None:
    """With an old -wal beside it, a file put back shows the newer data (measured: 50 of 50)."""
    raw = sqlite3.connect(path, isolation_level=None)
    raw.execute("PRAGMA journal_mode=wal")
    raw.execute("UPDATE item SET name = 'in the wal'")
    beside = {ending: path.with_name(path.name + ending).read_bytes() for ending in ("-wal", "-shm")}
    main = path.read_bytes()
    raw.close()
    path.write_bytes(main)
    for ending, content in beside.items():
        path.with_name(path.name + ending).write_bytes(content)
    path.with_name(path.name + "-journal").write_bytes(b"x" * 600)
    kept = restore(copy, path, now)
    assert items_of(path, now) == (OLD,)
    assert kept is not None
    assert {item.name for item in items_of(kept, now)} == {"in the wal"}
    assert sorted(place.name for place in path.parent.iterdir()) == ["backups", "copy.db", "kitlog.db"]


def spoil(change: Callable[[bytearray], None]) -> Callable[[Path], None]:
    def write(path: Path) -> None:
        content = bytearray(path.read_bytes())
        change(content)
        path.write_bytes(content)

    return write


def cut(content: bytearray) -> None:
    del content[len(content) // 3 :]


def no_head(content: bytearray) -> None:
    content[:4096] = bytes(4096)


def nothing(content: bytearray) -> None:
    content.clear()


@pytest.mark.parametrize("change", [cut, no_head, nothing])
def test_a_damaged_file_is_kept_byte_by_byte(
    copy: Path, path: Path, now: datetime, change: Callable[[bytearray], None]
) -> None:
    spoil(change)(path)
    damaged = path.read_bytes()
    kept = restore(copy, path, now)
    assert kept is not None
    assert (kept.name, kept.read_bytes()) == ("kitlog_20270503T193000Z_damaged.db", damaged)
    assert items_of(path, now) == (OLD,)


@pytest.mark.parametrize("change", [cut, no_head, nothing])
def test_a_damaged_copy_is_refused(copy: Path, path: Path, now: datetime, change: Callable[[bytearray], None]) -> None:
    spoil(change)(copy)
    before = path.read_bytes()
    with pytest.raises(SystemFault) as caught:
        restore(copy, path, now)
    assert caught.value.facts["path"] == str(copy)
    assert path.read_bytes() == before
    assert copies.copies_of(path) == ()


def test_a_newer_copy_is_refused(copy: Path, path: Path, now: datetime) -> None:
    raw = sqlite3.connect(copy)
    raw.execute("PRAGMA user_version=99")
    raw.close()
    with pytest.raises(SystemFault, match=r"data_file\.newer"):
        restore(copy, path, now)
    assert items_of(path, now) == (OLD, NEW)


def test_a_file_of_a_newer_program_may_be_replaced_and_is_kept(copy: Path, path: Path, now: datetime) -> None:
    raw = sqlite3.connect(path)
    raw.execute("PRAGMA user_version=99")
    raw.close()
    kept = restore(copy, path, now)
    assert items_of(path, now) == (OLD,)
    assert kept is not None
    assert [problem.code for problem in verify(kept)] == ["data_file.newer"]


def test_another_programs_database_is_not_replaced(copy: Path, tmp_path: Path, now: datetime) -> None:
    target = tmp_path / "other.db"
    raw = sqlite3.connect(target)
    raw.execute("CREATE TABLE letters (text)")
    raw.close()
    before = target.read_bytes()
    with pytest.raises(SystemFault, match=r"data_file\.foreign"):
        restore(copy, target, now)
    assert target.read_bytes() == before


def test_a_folder_is_not_replaced(copy: Path, tmp_path: Path, now: datetime) -> None:
    (tmp_path / "folder").mkdir()
    with pytest.raises(SystemFault, match=r"data_file\.folder"):
        restore(copy, tmp_path / "folder", now)


def test_while_another_process_writes(copy: Path, path: Path, now: datetime, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(connection, "BUSY_MS", 50)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(SystemFault, match=r"data_file\.locked"):
        restore(copy, path, now)
    other.close()
    assert items_of(path, now) == (OLD, NEW)


def test_another_window_is_told(copy: Path, path: Path, now: datetime) -> None:
    window = DataFile.open(path, now=now)
    restore(copy, path, now)
    with pytest.raises(SystemFault, match=r"data_file\.replaced"), window.writing() as writer:
        writer.put(NEW)
    with pytest.raises(SystemFault, match=r"data_file\.replaced"):
        window.copy_beside("import", now)
    window.close()
    assert items_of(path, now) == (OLD,)


def test_a_copy_put_over_itself(copy: Path, now: datetime) -> None:
    restore(copy, copy, now)
    assert items_of(copy, now) == (OLD,)


def test_verify_names_each_kind_of_thing_that_cannot_be_read(copy: Path, path: Path, tmp_path: Path) -> None:
    assert verify(path) == verify(copy) == ()
    raw = sqlite3.connect(path)
    raw.execute("UPDATE item SET kind = 'wink'")
    raw.execute("INSERT INTO event (id, item_id, 'on', kind, note) VALUES ('e', 'i', '2027-02-30', 'k', '')")
    raw.commit()
    raw.close()
    assert [(problem.code, problem.facts["table"]) for problem in verify(path)] == [
        ("data_file.damaged", "item"),
        ("data_file.damaged", "event"),
    ]
    shutil.copy(copy, path)
    spoil(no_head)(path)
    assert [problem.code for problem in verify(path)] == ["data_file.foreign"]
    assert [problem.code for problem in verify(tmp_path / "no.db")] == ["data_file.missing"]
    assert [problem.code for problem in verify(tmp_path)] == ["data_file.folder"]
