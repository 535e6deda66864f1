import shutil
import sqlite3
from pathlib import Path

import pytest
from calling import Kitlog, one_line


@pytest.fixture
def backup(kitlog: Kitlog, demo: Path, tmp_path: Path) -> Path:
    file = tmp_path / "kit.kitlogbackup"
    assert kitlog("--data", demo, "backup", file).out == f"backup written: {file}\n"
    return file


def names(kitlog: Kitlog, data: Path) -> list[str]:
    return [item["name"] for item in kitlog("--data", data, "kit", "list", "--json").json]


def test_backup_and_restore_into_a_new_place(kitlog: Kitlog, demo: Path, backup: Path, nothing: Path) -> None:
    assert backup.stat().st_mode & 0o777 == 0o600
    assert kitlog("--data", nothing, "restore", backup).out == f"restored: {nothing}\n"
    assert names(kitlog, nothing) == names(kitlog, demo)
    assert kitlog("--data", nothing, "verify").out == f"sound: {nothing}\n"


def test_restore_keeps_what_lay_there(kitlog: Kitlog, demo: Path, backup: Path) -> None:
    kitlog("--data", demo, "kit", "import", "-", stdin=b"name,kind\nRope,tool\n")
    said = kitlog("--data", demo, "restore", backup)
    kept = Path(said.out.rsplit(": ", 1)[1].strip())
    assert "Rope" not in names(kitlog, demo)
    assert "Rope" in names(kitlog, kept)
    assert kitlog("--data", demo, "restore", kept).code == 0
    assert "Rope" in names(kitlog, demo)


def test_restore_over_a_damaged_file(kitlog: Kitlog, demo: Path, backup: Path) -> None:
    demo.write_bytes(b"SQLite format 3\0" + b"\xff" * 5_000)
    said = kitlog("--data", demo, "restore", backup)
    assert said.code == 0
    assert "what lay there is kept: " in said.out
    assert "Wing A" in names(kitlog, demo)


def test_a_backup_is_never_overwritten(kitlog: Kitlog, demo: Path, backup: Path) -> None:
    before = backup.read_bytes()
    assert "there is a file of that name already" in one_line(kitlog("--data", demo, "backup", backup))
    assert "there is a file of that name already" in one_line(kitlog("--data", demo, "backup", demo))
    assert backup.read_bytes() == before


@pytest.mark.parametrize(
    ("content", "code", "words"),
    [
        (b"PK\x03\x04 nothing", 3, "it is not a backup of kitlog"),
        (b"", 3, "it is not a backup of kitlog"),
        (b"SQLite format 3\0" + b"\0" * 9_000, 3, ""),
    ],
)
def test_what_is_no_backup_changes_nothing(
    kitlog: Kitlog, demo: Path, tmp_path: Path, content: bytes, code: int, words: str
) -> None:
    file, before = tmp_path / "other", demo.read_bytes()
    file.write_bytes(content)
    assert words in one_line(kitlog("--data", demo, "restore", file), code)
    assert demo.read_bytes() == before


def test_a_flipped_byte_in_a_backup_is_found(kitlog: Kitlog, demo: Path, backup: Path) -> None:
    content, before = bytearray(backup.read_bytes()), demo.read_bytes()
    content[len(content) // 2] ^= 1
    backup.write_bytes(content)
    assert "the backup is damaged" in one_line(kitlog("--data", demo, "restore", backup), 3)
    assert demo.read_bytes() == before


def test_a_backup_that_is_not_there(kitlog: Kitlog, demo: Path) -> None:
    assert "the file cannot be read" in one_line(kitlog("--data", demo, "restore", "no.kitlogbackup"))


def test_verify_finds_damage_and_changes_nothing(kitlog: Kitlog, demo: Path, nothing: Path) -> None:
    assert kitlog("--data", demo, "verify").code == 0
    assert "there is no such file" in one_line(kitlog("--data", nothing, "verify"), 3)
    bad = Path(shutil.copy(demo, demo.with_name("bad.kitlog")))
    raw = sqlite3.connect(bad)
    raw.execute("PRAGMA foreign_keys=0")
    raw.execute("UPDATE service_rule SET item_id = 'nobody' WHERE rowid IN (SELECT rowid FROM service_rule LIMIT 1)")
    raw.commit()
    raw.close()
    before = bad.read_bytes()
    assert "the file is damaged" in one_line(kitlog("--data", bad, "verify"), 3)
    assert bad.read_bytes() == before
