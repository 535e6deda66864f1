"""Damaged files: opened, verified and put back over, they give a fault or good models, never a traceback or a change."""

import random
import shutil
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from filled_files import fill

from kitlog.fault import SystemFault
from kitlog.store import copies
from kitlog.store.data_file import DataFile
from kitlog.store.restore import restore
from kitlog.store.verify import verify

Damage = Callable[[bytearray, random.Random], None]


def flip_a_bit(content: bytearray, chance: random.Random) -> None:
    content[chance.randrange(len(content))] ^= 1 << chance.randrange(8)


def flip_in_the_head(content: bytearray, chance: random.Random) -> None:
    content[chance.randrange(108)] ^= 1 << chance.randrange(8)


def flip_in_text(content: bytearray, chance: random.Random) -> None:
    """Where words lie: what SQLite's own check misses most."""
    places = [n for n, byte in enumerate(content) if 97 <= byte <= 122]
    for _ in range(5):
        content[chance.choice(places)] ^= 1 << chance.randrange(8)


def overwrite(content: bytearray, chance: random.Random) -> None:
    start = chance.randrange(len(content) - 16)
    content[start : start + 16] = chance.randbytes(16)


def zero_a_sector(content: bytearray, chance: random.Random) -> None:
    start = 512 * chance.randrange(len(content) // 512)
    content[start : start + 512] = bytes(512)


def zero_a_page(content: bytearray, chance: random.Random) -> None:
    start = 4096 * chance.randrange(len(content) // 4096)
    content[start : start + 4096] = bytes(4096)


def swap_pages(content: bytearray, chance: random.Random) -> None:
    a, b = (4096 * page for page in chance.sample(range(len(content) // 4096), 2))
    content[a : a + 4096], content[b : b + 4096] = content[b : b + 4096], content[a : a + 4096]


def cut(content: bytearray, chance: random.Random) -> None:
    del content[chance.randrange(1, len(content)) :]


def lengthen(content: bytearray, chance: random.Random) -> None:
    content += chance.randbytes(chance.randrange(1, 9_000))


def noise(content: bytearray, chance: random.Random) -> None:
    content[100:] = chance.randbytes(len(content) - 100)


DAMAGES: tuple[Damage, ...] = (
    flip_a_bit,
    flip_in_the_head,
    flip_in_text,
    overwrite,
    zero_a_sector,
    zero_a_page,
    swap_pages,
    cut,
    lengthen,
    noise,
)


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("whole") / "kitlog.db"
    fill(path, "old", 120)
    return path.read_bytes()


def opened_and_read(path: Path, now: datetime) -> str:
    """What opening and reading everything gives: a fault's code, or ``read``."""
    try:
        data = DataFile.open(path, now=now)
    except SystemFault as fault:
        return fault.code
    try:
        with data.reading() as reader:
            for read in (reader.items, reader.rules, reader.events, reader.preferences):
                read()
    except SystemFault as fault:
        return fault.code
    finally:
        data.close()
    return "read"


KNOWN = {
    "read",
    "data_file.damaged",
    "data_file.foreign",
    "data_file.newer",
    "data_file.empty",
    "data_file.io",
    "data_file.full",
    "data_file.setting_refused",
}


def restored(copy: Path, path: Path, now: datetime) -> str:
    """The fault's code, or nothing."""
    try:
        restore(copy, path, now)
    except SystemFault as fault:
        return fault.code
    return ""


def run_through(path: Path, content: bytes, good: bytes, now: datetime) -> str:
    path.write_bytes(content)
    outcome = opened_and_read(path, now)
    assert outcome in KNOWN
    assert path.read_bytes() == content
    assert bool(verify(path)) == (outcome != "read")
    assert path.read_bytes() == content
    assert [place.name for place in path.parent.iterdir()] == [path.name]
    copy = path.with_name("good.db")
    copy.write_bytes(good)
    refused = restored(copy, path, now)
    if refused:
        # A bit of the mark itself: it looks like another program's file, and those are left alone.
        assert refused == outcome == "data_file.foreign"
        assert path.read_bytes() == content
        return outcome
    assert path.read_bytes() == good
    (kept,) = copies.copies_of(path)
    assert kept.reason in {"restore", "damaged"}
    assert outcome == "read" or kept.reason == "restore" or kept.path.read_bytes() == content
    shutil.rmtree(path.parent / "backups")
    return outcome


@pytest.mark.parametrize(
    "rounds",
    [pytest.param(range(7), id="quick"), pytest.param(range(7, 41), id="more", marks=pytest.mark.slow)],
)
@pytest.mark.parametrize("damage", DAMAGES, ids=lambda damage: damage.__name__)
def test_no_damage_makes_a_traceback_or_is_written_over(
    tmp_path: Path, whole: bytes, now: datetime, damage: Damage, rounds: range
) -> None:
    outcomes = []
    for number in rounds:
        content = bytearray(whole)
        damage(content, random.Random(f"{damage.__name__} {number}"))
        folder = tmp_path / str(number)
        folder.mkdir()
        outcomes.append(run_through(folder / "kitlog.db", bytes(content), whole, now))
    if damage in {zero_a_page, cut, noise}:
        assert "read" not in outcomes
