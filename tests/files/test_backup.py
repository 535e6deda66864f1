"""Backups: what goes in comes out, and nothing else is believed."""

import io
import json
import os
import random
import sqlite3
import stat
import struct
import zipfile
from collections.abc import Callable
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path

import pytest

from kitlog import __version__
from kitlog.fault import SystemFault
from kitlog.files import atomic, backup, papers
from kitlog.kit.paper import Paper

NOW = datetime(2027, 5, 3, 19, 30, tzinfo=UTC)


@pytest.fixture
def database(tmp_path: Path) -> Path:
    """A small database with marks in its header; the rest is chance, so that it packs badly."""
    path = tmp_path / "copy.db"
    raw = sqlite3.connect(path)
    raw.execute("PRAGMA application_id=1802073196")
    raw.execute("PRAGMA user_version=3")
    raw.execute("CREATE TABLE t (x BLOB)")
    raw.execute("INSERT INTO t VALUES (?)", (random.Random(1).randbytes(9_000),))
    raw.commit()
    raw.close()
    return path


@pytest.fixture
def archive(database: Path, tmp_path: Path) -> Path:
    path = tmp_path / "backup.zip"
    backup.pack(database, path, NOW)
    return path


def code(call: Callable[[], object]) -> str:
    with pytest.raises(SystemFault) as caught:
        call()
    assert caught.value.facts["path"]
    return caught.value.code


def test_what_goes_in_comes_out(database: Path, archive: Path, tmp_path: Path) -> None:
    manifest = backup.unpack(archive, tmp_path / "out.db")
    content = (tmp_path / "out.db").read_bytes()
    assert content == database.read_bytes()
    assert manifest == backup.check(archive)
    assert (manifest.size, manifest.sha256) == (len(content), sha256(content).hexdigest())
    assert (manifest.application_id, manifest.data_schema) == (1802073196, 3)
    assert (manifest.program, manifest.made_at) == (__version__, NOW)


def test_any_zip_program_can_read_it(database: Path, archive: Path) -> None:
    with zipfile.ZipFile(archive) as found:
        assert found.testzip() is None
        assert found.namelist() == ["kitlog.db", "manifest.json"]
        assert found.read("kitlog.db") == database.read_bytes()
        assert json.loads(found.read("manifest.json"))["sha256"] == sha256(database.read_bytes()).hexdigest()
        assert found.getinfo("kitlog.db").date_time == (2027, 5, 3, 19, 30, 0)


@pytest.mark.skipif(os.name == "nt", reason="modes are POSIX")
def test_only_the_owner_may_read_it(database: Path, archive: Path, tmp_path: Path) -> None:
    backup.unpack(archive, tmp_path / "out.db")
    assert [stat.S_IMODE((tmp_path / name).stat().st_mode) for name in ("backup.zip", "out.db")] == [0o600] * 2


def test_an_older_backup_of_that_name_is_replaced(database: Path, archive: Path) -> None:
    database.write_bytes(database.read_bytes() + bytes(4096))
    backup.pack(database, archive, NOW)
    assert backup.check(archive).size == database.stat().st_size


def test_nothing_is_unpacked_over_another_file(archive: Path, tmp_path: Path) -> None:
    (tmp_path / "out.db").write_text("mine")
    assert code(lambda: backup.unpack(archive, tmp_path / "out.db")) == "file.exists"
    assert (tmp_path / "out.db").read_text() == "mine"


@pytest.mark.parametrize("content", [b"", b"1 wing\n" * 100, b"SQLite format 3\0"])
def test_only_a_database_is_packed(tmp_path: Path, content: bytes) -> None:
    source, target = tmp_path / "source", tmp_path / "target.zip"
    source.write_bytes(content)
    assert code(lambda: backup.pack(source, target, NOW)) == "backup.not_a_database"
    assert not target.exists()


def test_missing_files_and_folders(database: Path, archive: Path, tmp_path: Path) -> None:
    assert code(lambda: backup.pack(tmp_path / "no.db", tmp_path / "x.zip", NOW)) == "file.missing_folder"
    assert code(lambda: backup.pack(database, tmp_path / "no" / "x.zip", NOW)) == "file.missing_folder"
    assert code(lambda: backup.pack(database, tmp_path, NOW)) == "file.folder"
    assert code(lambda: backup.check(tmp_path / "no.zip")) == "file.missing_folder"
    assert code(lambda: backup.check(tmp_path)) == "file.folder"


def test_every_flipped_byte_is_found_or_harmless(database: Path, archive: Path, tmp_path: Path) -> None:
    """SQLite's own check misses more than a third of single flipped bytes; the hash finds all."""
    whole, wanted = archive.read_bytes(), database.read_bytes()
    chance = random.Random(2)
    places = [*range(60), *range(len(whole) - 200, len(whole)), *chance.sample(range(len(whole)), 200)]
    found = raised = 0
    for number, place in enumerate(places):
        damaged = bytearray(whole)
        damaged[place] ^= 1 << chance.randrange(8)
        archive.write_bytes(damaged)
        out = tmp_path / f"out{number}.db"
        try:
            backup.unpack(archive, out)
        except SystemFault as fault:
            raised += 1
            found += fault.code in {"backup.damaged", "backup.foreign", "backup.newer", "backup.too_large"}
            assert not out.exists()
        else:
            assert out.read_bytes() == wanted
    assert found == raised > 0.8 * len(places)


def test_every_cut_is_found(archive: Path, tmp_path: Path) -> None:
    whole = archive.read_bytes()
    for length in [*range(0, len(whole), 97), len(whole) - 1]:
        archive.write_bytes(whole[:length])
        assert code(lambda: backup.check(archive)) == "backup.foreign"
        assert code(lambda: backup.unpack(archive, tmp_path / "out.db")) == "backup.foreign"
    assert not (tmp_path / "out.db").exists()


def manifest_of(content: bytes, **changes: object) -> bytes:
    fields = {
        "format": "kitlog backup",
        "version": 1,
        "made_at": NOW.isoformat(),
        "program": "0",
        "application_id": 1,
        "data_schema": 1,
        "size": len(content),
        "sha256": sha256(content).hexdigest(),
    }
    return json.dumps(fields | changes).encode()


BODY = b"SQLite format 3\0" + bytes(range(256)) * 8


def zip_of(*members: tuple[str, bytes], method: int = zipfile.ZIP_DEFLATED, comment: bytes = b"") -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as archive:
        for name, content in members:
            archive.writestr(name, content)
        archive.comment = comment
    return out.getvalue()


GOOD = (("kitlog.db", BODY), ("manifest.json", manifest_of(BODY)))


def test_a_plain_zip_of_the_right_members_is_a_backup(tmp_path: Path) -> None:
    for method in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        (tmp_path / "b.zip").write_bytes(zip_of(*GOOD, method=method))
        assert backup.check(tmp_path / "b.zip").size == len(BODY)


ODD = {
    "a text": (b"a shopping list\n" * 40, "backup.foreign"),
    "empty": (b"", "backup.foreign"),
    "another zip": (zip_of(("letter.txt", b"x"), ("photo.jpg", b"y")), "backup.foreign"),
    "a member more": (zip_of(*GOOD, ("evil.sh", b"")), "backup.foreign"),
    "a member less": (zip_of(GOOD[0]), "backup.foreign"),
    "a way out": (zip_of(("../kitlog.db", BODY), GOOD[1]), "backup.foreign"),
    "an absolute way": (zip_of(("/kitlog.db", BODY), GOOD[1]), "backup.foreign"),
    "another method": (zip_of(*GOOD, method=zipfile.ZIP_BZIP2), "backup.foreign"),
    "a comment": (zip_of(*GOOD, comment=b"hello"), "backup.foreign"),
    "something before": (b"#!/bin/sh\n" + zip_of(*GOOD), "backup.foreign"),
    "something after": (zip_of(*GOOD) + b"x", "backup.foreign"),
    "another content": (zip_of(("kitlog.db", BODY[::-1]), GOOD[1]), "backup.damaged"),
    "a longer content": (zip_of(("kitlog.db", BODY + b"x"), GOOD[1]), "backup.damaged"),
    "newer": (zip_of(GOOD[0], ("manifest.json", manifest_of(BODY, version=3))), "backup.newer"),
    "not JSON": (zip_of(GOOD[0], ("manifest.json", b"wing")), "backup.foreign"),
    "deep JSON": (zip_of(GOOD[0], ("manifest.json", b"[" * 16_000)), "backup.foreign"),
    "an unknown key": (zip_of(GOOD[0], ("manifest.json", manifest_of(BODY, more=1))), "backup.foreign"),
    "a negative size": (zip_of(GOOD[0], ("manifest.json", manifest_of(BODY, size=-1))), "backup.foreign"),
    "a huge manifest": (zip_of(GOOD[0], ("manifest.json", b" " * 2_000_000)), "backup.too_large"),
    "a bomb": (zip_of(("kitlog.db", bytes(40 << 20)), GOOD[1]), "backup.too_large"),
}


@pytest.mark.parametrize("name", ODD)
def test_odd_archives(tmp_path: Path, name: str) -> None:
    content, wanted = ODD[name]
    (tmp_path / "b.zip").write_bytes(content)
    assert code(lambda: backup.check(tmp_path / "b.zip")) == wanted
    assert code(lambda: backup.unpack(tmp_path / "b.zip", tmp_path / "out.db")) == wanted
    assert [place.name for place in tmp_path.iterdir()] == ["b.zip"]


def test_two_members_of_one_name(tmp_path: Path) -> None:
    with pytest.warns(UserWarning, match="Duplicate name"):
        content = zip_of(GOOD[0], GOOD[0])
    (tmp_path / "b.zip").write_bytes(content)
    assert code(lambda: backup.check(tmp_path / "b.zip")) == "backup.foreign"


def test_a_locked_member(archive: Path) -> None:
    content = bytearray(archive.read_bytes())
    entry = content.rindex(b"PK\x01\x02")
    content[entry + 8] |= 1  # general purpose flags, bit 0: encrypted (PKWARE APPNOTE 4.4.4)
    archive.write_bytes(content)
    assert code(lambda: backup.check(archive)) == "backup.foreign"


def test_a_directory_that_lies_about_its_length(archive: Path) -> None:
    content = bytearray(archive.read_bytes())
    struct.pack_into("<HH", content, len(content) - 14, 60_000, 60_000)
    archive.write_bytes(content)
    assert code(lambda: backup.check(archive)) == "backup.foreign"


def test_a_full_database_that_is_too_large(database: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(backup, "MAX_DATABASE", 5_000)
    assert code(lambda: backup.pack(database, tmp_path / "b.zip", NOW)) == "backup.too_large"
    assert not (tmp_path / "b.zip").exists()


def test_write_replaces_the_file_behind_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").write_text("old")
    (tmp_path / "link").symlink_to("real")
    atomic.write(tmp_path / "link", b"new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_text() == "new"


def test_an_exception_leaves_what_was_there(tmp_path: Path) -> None:
    target = tmp_path / "file"
    target.write_text("old")

    def fail() -> None:
        with atomic.written(target) as handle:
            handle.write(b"half")
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        fail()
    assert [(place.name, place.read_text()) for place in tmp_path.iterdir()] == [("file", "old")]


PDF = b"%PDF-1.7\n" + bytes(random.Random(3).randbytes(5_000))
PNG = b"\x89PNG\r\n\x1a\n" + bytes(random.Random(4).randbytes(300))


@pytest.fixture
def two_papers(database: Path) -> tuple[Paper, Paper]:
    return papers.keep(database, PDF, "check.pdf"), papers.keep(database, PNG, "tag.png")


def test_papers_go_in_and_come_out(database: Path, tmp_path: Path, two_papers: tuple[Paper, Paper]) -> None:
    archive, new = tmp_path / "b.zip", tmp_path / "else" / "where.db"
    manifest = backup.pack(database, archive, NOW, two_papers)
    assert (manifest.version, {paper.sha256 for paper in manifest.papers}) == (2, {p.sha256 for p in two_papers})
    assert backup.check(archive) == manifest
    new.parent.mkdir()
    assert backup.put_papers_back(archive, new) == 2
    assert backup.unpack(archive, new) == manifest
    assert [papers.read(new, paper) for paper in two_papers] == [PDF, PNG]
    with zipfile.ZipFile(archive) as found:
        assert found.testzip() is None
        assert found.read(f"papers/{two_papers[0].sha256}") == PDF


def test_a_backup_of_version_1_is_still_read(tmp_path: Path) -> None:
    (tmp_path / "b.zip").write_bytes(zip_of(*GOOD))
    assert backup.check(tmp_path / "b.zip").papers == ()
    assert backup.put_papers_back(tmp_path / "b.zip", tmp_path / "kit.db") == 0


def test_each_flipped_byte_of_a_paper_is_found(database: Path, tmp_path: Path, two_papers: tuple[Paper, Paper]) -> None:
    archive = tmp_path / "b.zip"
    backup.pack(database, archive, NOW, two_papers)
    whole = archive.read_bytes()
    start = whole.index(PDF)
    for place in range(start, start + len(PDF), 499):
        damaged = bytearray(whole)
        damaged[place] ^= 1
        archive.write_bytes(damaged)
        assert code(lambda: backup.put_papers_back(archive, tmp_path / "new.db")) == "backup.damaged"
        assert not papers.folder_of(tmp_path / "new.db").exists()


def test_a_paper_that_is_gone_is_not_packed_as_if_it_were_there(
    database: Path, tmp_path: Path, two_papers: tuple[Paper, Paper]
) -> None:
    papers.place_of(database, two_papers[0].sha256).unlink()
    assert code(lambda: backup.pack(database, tmp_path / "b.zip", NOW, two_papers)) == "paper.missing"
    assert not (tmp_path / "b.zip").exists()


def of_papers(*contents: bytes, listed: int = 1, name: str = "") -> bytes:
    hashes = [sha256(content).hexdigest() for content in contents]
    said = [{"sha256": one, "size": len(content)} for one, content in zip(hashes, contents, strict=True)]
    members = [(name or f"papers/{one}", content) for one, content in zip(hashes, contents, strict=True)]
    return zip_of(GOOD[0], *members, ("manifest.json", manifest_of(BODY, version=2, papers=said * listed)))


ODD_PAPERS = {
    "one that is not listed": (of_papers(PDF, listed=0), "backup.foreign"),
    "one listed twice": (of_papers(PDF, listed=2), "backup.foreign"),
    "a way out": (of_papers(PDF, name="papers/../../evil"), "backup.foreign"),
    "another name": (of_papers(PDF, name="papers/" + "0" * 64), "backup.foreign"),
    "listed in version 1": (
        zip_of(GOOD[0], ("manifest.json", manifest_of(BODY, papers=[{"sha256": "0" * 64, "size": 5}]))),
        "backup.foreign",
    ),
}


@pytest.mark.parametrize("name", ODD_PAPERS)
def test_odd_papers(tmp_path: Path, name: str) -> None:
    content, wanted = ODD_PAPERS[name]
    (tmp_path / "b.zip").write_bytes(content)
    assert code(lambda: backup.check(tmp_path / "b.zip")) == wanted
    assert code(lambda: backup.put_papers_back(tmp_path / "b.zip", tmp_path / "kit.db")) == wanted
    assert [place.name for place in tmp_path.iterdir()] == ["b.zip"]
