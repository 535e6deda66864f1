"""A program killed at any moment: what it acknowledged is there, nothing is half there, the next start needs no help.

A kill loses no page that the system holds, so this proves the borders of transactions, not durability (reliability
notes, section 3); the settings that durability rests on are checked in tests/store/test_settings.py.
"""

import random
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest
from busy_program import MODES, write
from filled_files import NOW

from kitlog.files import backup
from kitlog.store import gate, marks, migrations
from kitlog.store.data_file import DataFile
from kitlog.store.verify import verify

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="SIGKILL is POSIX")

PROGRAM = Path(__file__).with_name("busy_program.py")


def killed(mode: str, path: Path, chance: random.Random) -> int:
    """Let the program work for a while, kill it, and say which step it had acknowledged."""
    program = subprocess.Popen([sys.executable, PROGRAM, mode, path], stdout=subprocess.PIPE, text=True)
    assert program.stdout is not None
    with program, program.stdout as output:
        seen = [output.readline() for _ in range(chance.randrange(1, 4))]
        with suppress(subprocess.TimeoutExpired):
            program.wait(timeout=chance.uniform(0, 0.12))
        program.send_signal(signal.SIGKILL)
        seen += output.readlines()
    assert program.returncode == -signal.SIGKILL
    return int([line for line in seen if line.endswith("\n")][-1])


def newest_in(path: Path) -> int:
    """The newest step in a file; every step in it is whole."""
    assert verify(path) == ()
    data = DataFile.open(path, now=NOW, create=False)
    with data.reading() as reader:
        items, rules, preferences = reader.items(), reader.rules(), reader.preferences()
    data.close()
    sizes: dict[str, list[int]] = {}
    for item in items:
        sizes.setdefault(item.name, []).append(item.quantity)
        assert len(item.serves) == 3
    assert all(len(found) == found[0] for found in sizes.values())
    assert [rule.item_id for rule in rules] == [item.id for item in items]
    newest = max(map(int, sizes), default=0)
    assert newest == int(preferences.get("newest", 0))
    assert sorted(map(int, sizes)) == list(range(1, newest + 1))
    return newest


def made(path: Path, *numbers: int) -> Path:
    data = DataFile.open(path, now=NOW)
    for number in numbers:
        write(data, number, 40)
    data.close()
    return path


def after_writing(path: Path, acknowledged: int) -> None:
    assert newest_in(path) >= acknowledged


def after_backup(path: Path, acknowledged: int) -> None:
    after_writing(path, acknowledged)
    backup.unpack(path.with_name("backup.zip"), path.with_name("out.db"))
    assert newest_in(path.with_name("out.db")) >= acknowledged


def after_restore(path: Path, acknowledged: int) -> None:
    # Even steps put the copy with two groups there, odd ones that with one; the next may have been under way.
    assert newest_in(path) in {2 - acknowledged % 2, 2 - (acknowledged + 1) % 2}


# Opening has looked at the columns too: none of the step's own is left.
def after_migration(path: Path, acknowledged: int) -> None:
    data = DataFile.open(path, now=NOW, create=False)
    version = data._raw.execute("PRAGMA user_version").fetchone()[0]
    with data.reading() as reader:
        items = reader.items()
    data.close()
    assert {item.name for item in items} == {"migrated" if version == marks.SCHEMA + 1 else "1"}
    assert len(items) == 40
    assert all(len(item.notes) == (80 if version == marks.SCHEMA + 1 else 40) * n for n, item in enumerate(items))


def after_creation(path: Path, acknowledged: int) -> None:
    there = sorted(path.parent.glob("new*.db"))
    assert len(there) >= acknowledged
    assert all(newest_in(place) == 0 for place in there)


AFTER: dict[str, Callable[[Path, int], None]] = {
    "edit": after_writing,
    "import": after_writing,
    "backup": after_backup,
    "restore": after_restore,
    "migrate": after_migration,
    "create": after_creation,
}


def prepare(mode: str, path: Path) -> None:
    if mode == "restore":
        made(path.with_name("odd.db"), 1)
        made(path.with_name("even.db"), 1, 2)
    if mode == "migrate":
        made(path.with_name("first.db"), 1)


@pytest.mark.parametrize(
    "kills",
    [pytest.param(range(2), id="quick"), pytest.param(range(2, 102), id="more", marks=pytest.mark.slow)],
)
@pytest.mark.parametrize("mode", MODES)
def test_killed_at_any_moment(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, mode: str, kills: range) -> None:
    if mode == "migrate":
        monkeypatch.setattr(gate, "SCHEMA", marks.SCHEMA + 1)
        monkeypatch.setattr(migrations, "STEPS", ())
    for number in kills:
        folder = tmp_path / str(number)
        folder.mkdir()
        path = folder / "kitlog.db"
        prepare(mode, path)
        AFTER[mode](path, killed(mode, path, random.Random(f"{mode} {number}")))
        shutil.rmtree(folder)
