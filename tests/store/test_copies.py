"""Copies beside the data file: whole, dated, private, thinned."""

import sqlite3
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from kitlog.fault import SystemFault
from kitlog.kit.item import Item
from kitlog.store import connection, copies
from kitlog.store.data_file import DataFile
from kitlog.store.verify import verify

ITEM = Item(id="i", name="Item")


def items_of(path: Path, now: datetime) -> tuple[Item, ...]:
    data = DataFile.open(path, now=now, create=False)
    try:
        with data.reading() as reader:
            return reader.items()
    finally:
        data.close()


def test_a_copy_holds_what_was_committed(data: DataFile, now: datetime) -> None:
    with data.writing() as writer:
        writer.put(ITEM)
    copy = data.copy_beside("import", now)
    with data.writing() as writer:
        writer.put(Item(id="later", name="x"))
    assert copy == data.path.parent / "backups" / "kitlog_20270503T193000Z_import.db"
    assert items_of(copy, now) == (ITEM,)


def test_a_copy_of_the_same_second_gets_its_own_name(data: DataFile, now: datetime) -> None:
    made = [data.copy_beside("import", now) for _ in range(3)]
    assert len(set(made)) == 3
    assert [copy.path for copy in copies.copies_of(data.path)] == made[::-1]


def test_the_last_ten_for_a_reason_are_kept(data: DataFile, now: datetime) -> None:
    first = data.copy_beside("schema 1", now - timedelta(days=400))
    made = [data.copy_beside("Import!", now + timedelta(minutes=n)) for n in range(13)]
    listed = copies.copies_of(data.path)
    assert [copy.path for copy in listed] == [*made[:2:-1], first]
    assert [copy.reason for copy in listed] == ["import"] * 10 + ["schema-1"]
    assert listed[0].made_at == now + timedelta(minutes=12)


@pytest.mark.parametrize("moved", [timedelta(), timedelta(days=-900)])
def test_the_newest_is_kept_whatever_the_clock_says(data: DataFile, now: datetime, moved: timedelta) -> None:
    for _ in range(12):
        data.copy_beside("import", now)
    made = [data.copy_beside("import", now + moved) for _ in range(3)]
    assert all(copy.exists() for copy in made[-1:])
    assert len(copies.copies_of(data.path)) == 10


def test_what_else_lies_there_is_left_alone(data: DataFile, now: datetime) -> None:
    folder = data.path.parent / "backups"
    folder.mkdir()
    others = [
        folder / name
        for name in (
            "kitlog_20270503T193000Z_import.db.txt",
            "kitlog_20279903T193000Z_import.db",
            "other_20270503T193000Z_import.db",
            "notes",
        )
    ]
    for other in others:
        other.touch()
    for _ in range(11):
        data.copy_beside("import", now)
    assert all(other.exists() for other in others)
    assert len(copies.copies_of(data.path)) == 10


def test_no_copies_without_a_folder(path: Path) -> None:
    assert copies.copies_of(path) == ()


def test_a_copy_never_lands_on_another_file(data: DataFile, tmp_path: Path) -> None:
    target = tmp_path / "there.db"
    target.write_text("mine")
    with pytest.raises(SystemFault, match=r"data_file\.exists"):
        data.copy_to(target)
    assert target.read_text() == "mine"
    assert sorted(place.name for place in tmp_path.iterdir()) == ["kitlog.db", "there.db"]


def test_a_copy_into_a_missing_folder(data: DataFile, tmp_path: Path) -> None:
    with pytest.raises(SystemFault) as caught:
        data.copy_to(tmp_path / "no" / "copy.db")
    assert caught.value.code == "data_file.missing"


def test_a_copy_of_a_locked_file_does_not_wait_for_ever(data: DataFile, now: datetime) -> None:
    data._raw.execute("PRAGMA busy_timeout=50")
    other = sqlite3.connect(data.path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    with pytest.raises(SystemFault, match=r"data_file\.locked"):
        data.copy_beside("import", now)
    other.close()
    assert list((data.path.parent / "backups").iterdir()) == []


def test_no_copy_out_of_the_middle_of_a_transaction(data: DataFile, now: datetime) -> None:
    with data.writing() as writer:
        writer.put(ITEM)
        with pytest.raises(RuntimeError):
            data.copy_beside("import", now)


def test_a_copy_is_sound_and_settled(data: DataFile, tmp_path: Path, now: datetime) -> None:
    target = tmp_path / "copy.db"
    data.copy_to(target)
    assert verify(target) == ()
    raw = connection.connect(target)
    assert raw.execute("PRAGMA journal_mode").fetchone()[0] == "delete"
    raw.close()
