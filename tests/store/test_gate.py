"""Files that are refused, each with its own code, and never changed."""

import os
import shutil
import sqlite3
import subprocess
import sys
import threading
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest

from kitlog.fault import SystemFault
from kitlog.kit.item import Item
from kitlog.store import connection, gate
from kitlog.store.data_file import DataFile
from kitlog.store.marks import APPLICATION_ID, SCHEMA


@pytest.fixture
def made(data: DataFile, path: Path) -> Path:
    """A closed data file with something in it."""
    with data.writing() as writer:
        for number in range(40):
            writer.put(Item(id=f"i{number}", name=f"Item {number}", serves=("map",)))
    data.close()
    return path


def refused(path: Path, now: datetime, *, create: bool = True) -> str:
    with pytest.raises(SystemFault) as caught:
        DataFile.open(path, now=now, create=create)
    assert caught.value.facts["path"] == str(path.resolve())
    return caught.value.code


def by_sqlite(*statements: str) -> Callable[[Path], None]:
    def write(path: Path) -> None:
        raw = sqlite3.connect(path)
        for statement in statements:
            raw.execute(statement)
        raw.commit()
        raw.close()

    return write


def by_bytes(change: Callable[[bytearray], None]) -> Callable[[Path], None]:
    def write(path: Path) -> None:
        content = bytearray(path.read_bytes())
        change(content)
        path.write_bytes(content)

    return write


def emptied(content: bytearray) -> None:
    content.clear()


def cut(content: bytearray) -> None:
    del content[len(content) // 2 :]


def zeroed(content: bytearray) -> None:
    content[4096 * 5 : 4096 * 6] = bytes(4096)


def headless(content: bytearray) -> None:
    content[:16] = b"a shopping list\n"


SPOILT = {
    "text": (lambda path: path.write_text("1 wing\n2 ropes\n" * 500), "data_file.foreign"),
    "short text": (lambda path: path.write_text("wing"), "data_file.foreign"),
    "another program's database": (by_sqlite("PRAGMA application_id=1196444487"), "data_file.foreign"),
    "unmarked database": (by_sqlite("PRAGMA application_id=0"), "data_file.foreign"),
    "head overwritten": (by_bytes(headless), "data_file.foreign"),
    "newer": (by_sqlite(f"PRAGMA user_version={SCHEMA + 1}"), "data_file.newer"),
    "schema 0": (by_sqlite("PRAGMA user_version=0"), "data_file.damaged"),
    "negative schema": (by_sqlite("PRAGMA user_version=-1"), "data_file.damaged"),
    "emptied": (by_bytes(emptied), "data_file.empty"),
    "cut off": (by_bytes(cut), "data_file.damaged"),
    "a page of zeros": (by_bytes(zeroed), "data_file.damaged"),
    "a table less": (by_sqlite("DROP TABLE vessel"), "data_file.damaged"),
    "a table more": (by_sqlite("CREATE TABLE more (x)"), "data_file.damaged"),
    "a column more": (by_sqlite("ALTER TABLE item ADD COLUMN price REAL"), "data_file.damaged"),
    "a trigger": (
        by_sqlite("CREATE TRIGGER t AFTER INSERT ON item BEGIN DELETE FROM event; END"),
        "data_file.damaged",
    ),
    "a view": (by_sqlite("CREATE VIEW v AS SELECT 1"), "data_file.damaged"),
    "a reference to nothing": (
        by_sqlite("UPDATE item SET fitted_to='gone' WHERE id='i3'"),
        "data_file.damaged",
    ),
    "a value out of range": (
        by_sqlite("PRAGMA ignore_check_constraints=1", "UPDATE item SET quantity=-5"),
        "data_file.damaged",
    ),
}


@pytest.mark.parametrize("name", SPOILT)
def test_a_file_that_is_not_a_sound_file_of_ours_is_refused_unchanged(made: Path, now: datetime, name: str) -> None:
    spoil, code = SPOILT[name]
    spoil(made)
    before = made.read_bytes()
    assert refused(made, now) == code
    assert made.read_bytes() == before
    assert [place.name for place in made.parent.iterdir()] == [made.name]


def test_a_newer_file_says_how_new(made: Path, now: datetime) -> None:
    by_sqlite(f"PRAGMA user_version={SCHEMA + 7}")(made)
    with pytest.raises(SystemFault) as caught:
        DataFile.open(made, now=now)
    assert (caught.value.facts["schema"], caught.value.facts["known"]) == (SCHEMA + 7, SCHEMA)


def test_a_newer_damaged_file_is_newer_first(made: Path, now: datetime) -> None:
    by_sqlite(f"PRAGMA user_version={SCHEMA + 1}")(made)
    by_bytes(zeroed)(made)
    assert refused(made, now) == "data_file.newer"


def test_a_new_file_is_marked_as_ours(made: Path) -> None:
    # The header's fields: sqlite.org/fileformat.html, section 1.3: user version at 60, application id at 68.
    header = made.read_bytes()[:100]
    assert header.startswith(b"SQLite format 3\0")
    assert int.from_bytes(header[60:64], "big") == SCHEMA
    assert header[68:72] == b"kitl" == APPLICATION_ID.to_bytes(4, "big")


def test_missing(path: Path, now: datetime) -> None:
    assert refused(path, now, create=False) == "data_file.missing"
    assert not path.exists()


def test_missing_folder(tmp_path: Path, now: datetime) -> None:
    assert refused(tmp_path / "no" / "kitlog.db", now) == "data_file.missing_folder"
    assert refused(tmp_path / "no" / "kitlog.db", now, create=False) == "data_file.missing_folder"
    assert not (tmp_path / "no").exists()


def test_a_folder(tmp_path: Path, now: datetime) -> None:
    assert refused(tmp_path, now) == "data_file.folder"


def test_a_file_as_a_folder(tmp_path: Path, now: datetime) -> None:
    (tmp_path / "file").touch()
    assert refused(tmp_path / "file" / "kitlog.db", now) == "data_file.missing_folder"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes with names here")
def test_a_pipe_does_not_hang(path: Path, now: datetime) -> None:
    os.mkfifo(path)
    assert refused(path, now) == "data_file.not_a_file"


def test_links_in_a_circle(path: Path, now: datetime) -> None:
    path.symlink_to(path.name)
    with pytest.raises(SystemFault) as caught:
        DataFile.open(path, now=now)
    assert caught.value.code in {"data_file.cannot_open", "data_file.io"}


def test_a_link_and_its_file_are_one(made: Path, tmp_path: Path, now: datetime) -> None:
    link = tmp_path / "link.db"
    link.symlink_to(made)
    with_link = DataFile.open(link, now=now)
    assert with_link.path == made
    with_link.close()


def test_another_process_that_made_it_first_is_not_overwritten(made: Path, now: datetime) -> None:
    from kitlog.store import creation

    before = made.read_bytes()
    creation.create(made)
    assert made.read_bytes() == before
    assert [place.name for place in made.parent.iterdir()] == [made.name]


READ_ONLY = """
import os, sys
from datetime import datetime, UTC
from pathlib import Path
from kitlog.fault import SystemFault
from kitlog.store.data_file import DataFile
if os.getuid() == 0:
    os.setuid(65534)
try:
    DataFile.open(Path(sys.argv[1]), now=datetime.now(UTC))
except SystemFault as fault:
    print(fault.code)
"""


@pytest.mark.skipif(os.name == "nt", reason="modes are POSIX")
@pytest.mark.parametrize(
    ("exists", "file_mode", "folder_mode"), [(True, 0o444, 0o777), (True, 0o666, 0o555), (False, 0, 0o555)]
)
def test_read_only(now: datetime, exists: bool, file_mode: int, folder_mode: int) -> None:
    folder = Path(os.path.realpath(os.environ.get("TMPDIR", "/tmp"))) / f"kitlog-read-only-{os.getpid()}"  # noqa: S108
    folder.mkdir()
    place = folder / "kitlog.db"
    try:
        if exists:
            DataFile.open(place, now=now).close()
            place.chmod(file_mode)
        folder.chmod(folder_mode)
        run = subprocess.run([sys.executable, "-c", READ_ONLY, place], capture_output=True, text=True, check=False)
        assert run.stdout.split() == ["data_file.read_only"], run.stderr
    finally:
        folder.chmod(0o700)
        shutil.rmtree(folder)


HOLD = """
import sqlite3, sys
raw = sqlite3.connect(sys.argv[1], isolation_level=None)
raw.execute(sys.argv[2])
print("held", flush=True)
sys.stdin.read()
"""


@pytest.fixture
def hold(request: pytest.FixtureRequest) -> Callable[[Path, str], subprocess.Popen[str]]:
    """Another process that holds a lock until its input ends."""

    def start(path: Path, statement: str) -> subprocess.Popen[str]:
        other = subprocess.Popen(
            [sys.executable, "-c", HOLD, path, statement],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )

        def stop() -> None:
            other.communicate()

        request.addfinalizer(stop)
        assert other.stdout is not None
        assert other.stdout.readline() == "held\n"
        return other

    return start


@pytest.fixture
def impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(connection, "BUSY_MS", 50)


def test_a_file_locked_by_another_process(
    made: Path, now: datetime, hold: Callable[..., object], impatient: None
) -> None:
    hold(made, "BEGIN EXCLUSIVE")
    assert refused(made, now) == "data_file.locked"


def test_readers_go_on_while_another_process_writes(
    made: Path, now: datetime, hold: Callable[..., object], impatient: None
) -> None:
    data = DataFile.open(made, now=now)
    hold(made, "BEGIN IMMEDIATE")
    with data.reading() as reader:
        assert len(reader.items()) == 40
    with pytest.raises(SystemFault) as caught, data.writing():
        pytest.fail("two writers at once")
    assert caught.value.code == "data_file.locked"
    data.close()


def test_a_short_lock_is_waited_for(made: Path, now: datetime, hold: Callable[..., subprocess.Popen[str]]) -> None:
    data = DataFile.open(made, now=now)
    other = hold(made, "BEGIN IMMEDIATE")
    assert other.stdin is not None
    threading.Timer(0.2, other.stdin.close).start()
    with data.writing() as writer:
        writer.put(Item(id="late", name="late"))
    data.close()
    other.stdin = None
    other.wait()


def test_a_good_file_passes_again_and_again(made: Path, now: datetime) -> None:
    before = made.read_bytes()
    for _ in range(3):
        DataFile.open(made, now=now).close()
    assert made.read_bytes() == before
    gate.refuse_bad_copy(made)
