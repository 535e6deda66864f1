"""Data files that are refused: code 3, one line, and never changed, whatever the verb."""

import json
import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest
from calling import Kitlog, one_line

from kitlog.store import connection
from kitlog.store.marks import SCHEMA

PLAN = json.dumps({"name": "A day", "flight_types": ["ridge"], "first_day": "2026-05-09"}).encode()

READING = ("kit list", "due", "flights list", "pilot", "outing list", "pack -", "pack --outing X", "backup b.bak")
WRITING = ("kit import -", "flights add --on 2026-05-01 --airtime 5", "pilot --body-mass 74", "outing save -")


def pragma(statement: str) -> Callable[[Path], None]:
    def change(path: Path) -> None:
        raw = sqlite3.connect(path)
        raw.execute(statement)
        raw.commit()
        raw.close()

    return change


def cut(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:-5_000])


BAD: dict[str, tuple[Callable[[Path], object], str]] = {
    "newer": (pragma(f"PRAGMA user_version={SCHEMA + 1}"), "it was written by a newer kitlog"),
    "of another program": (pragma("PRAGMA application_id=1"), "it is not a data file of kitlog"),
    "no database": (lambda path: path.write_bytes(b"Dear diary,\n" * 400), "it is not a data file of kitlog"),
    "empty": (lambda path: path.write_bytes(b""), "the file is empty and was not made by kitlog"),
    "cut off": (cut, "the file is damaged"),
    "without a table": (pragma("DROP TABLE preference"), "the file is damaged"),
}


def stdin_of(verb: str) -> bytes:
    return b"name,kind\nRope,tool\n" if verb.startswith("kit") else PLAN


@pytest.mark.parametrize("verb", [*READING, *WRITING])
@pytest.mark.parametrize("bad", BAD)
def test_refused_and_left_as_it_is(
    kitlog: Kitlog, demo: Path, bad: str, verb: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    spoil, words = BAD[bad]
    monkeypatch.chdir(demo.parent)
    spoil(demo)
    before = demo.read_bytes()
    line = one_line(kitlog("--data", demo, *verb.split(), stdin=stdin_of(verb)), 3)
    assert line.startswith(f"kitlog: {demo}: ")
    assert words in line
    assert demo.read_bytes() == before
    assert list(demo.parent.iterdir()) == [demo]


@pytest.mark.parametrize("verb", [*READING, *WRITING])
def test_a_missing_folder(kitlog: Kitlog, tmp_path: Path, verb: str) -> None:
    path = tmp_path / "no" / "kit.kitlog"
    line = one_line(kitlog("--data", path, *verb.split(), stdin=stdin_of(verb)), 3)
    assert "its folder does not exist" in line
    assert not path.parent.exists()


@pytest.mark.parametrize("verb", READING)
def test_reading_never_makes_a_file(kitlog: Kitlog, nothing: Path, verb: str) -> None:
    line = one_line(kitlog("--data", nothing, *verb.split(), stdin=PLAN), 3)
    assert "there is no such file. Import a kit to make it, or see: kitlog demo." in line
    assert list(nothing.parent.iterdir()) == []


@pytest.mark.parametrize("verb", ["kit list", *WRITING])
def test_held_by_another_program(kitlog: Kitlog, demo: Path, verb: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(connection, "BUSY_MS", 20)
    holder = sqlite3.connect(demo, isolation_level=None)
    holder.execute("BEGIN EXCLUSIVE")
    try:
        line = one_line(
            kitlog("--data", demo, *verb.split(), "--flown", "")
            if "add" in verb
            else kitlog("--data", demo, *verb.split(), stdin=stdin_of(verb)),
            3,
        )
    finally:
        holder.close()
    assert "another program holds it" in line
