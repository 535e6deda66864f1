"""Papers under the hash of their bytes: kept once, never written over, swept only when nothing names them."""

import os
import stat
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kitlog.fault import InputFault, SystemFault
from kitlog.files import papers
from kitlog.kit.paper import MAX_BYTES, MediaType, Paper

NOW = datetime(2027, 5, 3, 19, 30, tzinfo=UTC)
PDF, JPEG, PNG = b"%PDF-1.7\n...", b"\xff\xd8\xff\xe0\x00\x10JFIF\x00", b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR"


@pytest.fixture
def data_file(tmp_path: Path) -> Path:
    return tmp_path / "kit.kitlog"


def aged(data_file: Path, paper: Paper, hours: float) -> None:
    moment = (NOW - timedelta(hours=hours)).timestamp()
    os.utime(papers.place_of(data_file, paper.sha256), (moment, moment))


def code(call) -> str:
    with pytest.raises((InputFault, SystemFault)) as caught:
        call()
    return caught.value.code


@pytest.mark.parametrize(
    ("content", "known"),
    [
        (PDF, MediaType.PDF),
        (b"\r\n" * 20 + PDF, MediaType.PDF),
        (JPEG, MediaType.JPEG),
        (PNG, MediaType.PNG),
        (b"MZ\x90\x00", None),
        (b"#!/bin/sh\n", None),
        (b"<html>", None),
        (bytes(2_000) + PDF, None),
        (b"", None),
    ],
)
def test_the_type_is_told_by_what_is_inside(content: bytes, known: MediaType | None) -> None:
    assert papers.media_type_of(content) is known


def test_kept_under_its_hash_beside_the_data_file(data_file: Path) -> None:
    paper = papers.keep(data_file, PDF, "C:\\scans\\check 2027.txt")
    digest = sha256(PDF).hexdigest()
    assert (paper.sha256, paper.size, paper.name) == (digest, len(PDF), "check 2027.txt")
    assert (data_file.parent / "kit.kitlog.papers" / digest[:2] / digest).read_bytes() == PDF
    assert papers.read(data_file, paper) == PDF
    assert papers.file_name(paper) == "check 2027.txt.pdf"


@pytest.mark.skipif(os.name == "nt", reason="modes are POSIX")
def test_only_the_owner_may_read_them(data_file: Path) -> None:
    place = papers.place_of(data_file, papers.keep(data_file, PDF, "a.pdf").sha256)
    assert [stat.S_IMODE(one.stat().st_mode) for one in (place, place.parent, place.parent.parent)] == [
        0o600,
        0o700,
        0o700,
    ]


def test_the_same_bytes_are_kept_once_and_a_damaged_file_is_mended(data_file: Path) -> None:
    paper = papers.keep(data_file, PDF, "a.pdf")
    place = papers.place_of(data_file, paper.sha256)
    assert papers.keep(data_file, PDF, "b.pdf").sha256 == paper.sha256
    assert [one.name for one in place.parent.iterdir()] == [paper.sha256]
    place.write_bytes(b"%PDF-other")
    assert code(lambda: papers.read(data_file, paper)) == "paper.damaged"
    papers.keep(data_file, PDF, "a.pdf")
    assert papers.read(data_file, paper) == PDF


def test_what_is_refused(data_file: Path, tmp_path: Path) -> None:
    (tmp_path / "empty.pdf").write_bytes(b"")
    assert code(lambda: papers.take(tmp_path / "empty.pdf")) == "paper.empty"
    assert code(lambda: papers.take(tmp_path / "no.pdf")) == "file.cannot_read"
    assert code(lambda: papers.take(tmp_path)) == "file.cannot_read"
    assert code(lambda: papers.keep(data_file, b"#!/bin/sh\n", "check.pdf")) == "paper.not_a_paper"
    with (tmp_path / "long.pdf").open("wb") as handle:
        handle.truncate(MAX_BYTES + 1)
    assert code(lambda: papers.take(tmp_path / "long.pdf")) == "paper.too_large"
    assert not papers.folder_of(data_file).exists()


def test_missing_papers_are_named_and_a_missing_folder_is_said_once(data_file: Path) -> None:
    one, other = papers.keep(data_file, PDF, "a.pdf"), papers.keep(data_file, PNG, "b.png")
    papers.place_of(data_file, one.sha256).unlink()
    looked = papers.look(data_file, (one, other))
    assert [(fault.code, fault.facts["name"]) for fault in looked.faults] == [("paper.missing", "a.pdf")]
    assert looked.whole == (other,)
    moved = papers.look(data_file.with_name("moved.kitlog"), (one, other))
    assert [(fault.code, fault.facts["count"]) for fault in moved.faults] == [("paper.folder_missing", 2)]
    assert code(lambda: papers.read(data_file.with_name("moved.kitlog"), one)) == "paper.folder_missing"
    assert papers.look(data_file.with_name("moved.kitlog"), ()).faults == ()


def test_only_old_orphans_are_swept(data_file: Path) -> None:
    named, old, young = (papers.keep(data_file, PDF + end, "a.pdf") for end in (b"1", b"2", b"3"))
    for paper, hours in ((named, 100), (old, 25), (young, 23)):
        aged(data_file, paper, hours)
    note = papers.folder_of(data_file) / "my own note.txt"
    note.write_text("mine")
    assert papers.sweep(data_file, {named.sha256}, NOW) == 1
    assert papers.look(data_file, (named, old, young)).whole == (named, young)
    assert note.read_text() == "mine"


def test_what_is_attached_again_counts_as_new(data_file: Path) -> None:
    paper = papers.keep(data_file, PDF, "a.pdf")
    aged(data_file, paper, 100)
    papers.keep(data_file, PDF, "a.pdf")
    assert papers.sweep(data_file, set(), datetime.now(UTC)) == 0


def test_what_a_killed_program_left_half_written_is_swept(data_file: Path) -> None:
    paper = papers.keep(data_file, PDF, "a.pdf")
    half = papers.place_of(data_file, paper.sha256).with_name(f".{paper.sha256}.0011aabb.part")
    half.write_bytes(b"%PDF")
    os.utime(half, (0, 0))
    assert papers.sweep(data_file, {paper.sha256}, NOW) == 1
    assert not half.exists()


def test_nothing_to_sweep_where_there_is_no_folder(data_file: Path) -> None:
    assert papers.sweep(data_file, set(), NOW) == 0


@given(st.text(max_size=400))
def test_any_name_becomes_one_that_every_system_takes(name: str) -> None:
    fit = papers._fit_name(name, MediaType.PDF)
    paper = Paper(sha256="0" * 64, name=fit, media_type=MediaType.PDF, size=1)
    called = papers.file_name(paper)
    assert called.endswith((".pdf", ".PDF")) or called.casefold().endswith(".pdf")
    assert len(called.encode()) <= 210
    assert not set(called) & set('<>:"/\\|?*\0\n')
