"""A disk that takes no more bytes from some point on (a limit on file sizes), tried at every page."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from filled_files import fill, names_in

pytestmark = pytest.mark.skipif(os.name == "nt", reason="limits are POSIX")

RENAME = """
import resource, signal, sys
from datetime import UTC, datetime
from pathlib import Path
from kitlog.fault import SystemFault
from kitlog.store.data_file import DataFile

signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
path, limits = Path(sys.argv[1]), map(int, sys.argv[2:])
for limit in limits:
    data = DataFile.open(path, now=datetime.now(UTC))
    resource.setrlimit(resource.RLIMIT_FSIZE, (limit, resource.RLIM_INFINITY))
    try:
        with data.writing() as writer:
            for item in writer.items():
                writer.put(item.model_copy(update={"name": "new", "notes": "y" * 3_000}))
        word = "new"
    except SystemFault as fault:
        word = fault.code
    resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    with data.reading() as reader:
        names = {item.name for item in reader.items()}
    data.close()
    print(limit, word, *names, flush=True)
    if word == "new":
        break
"""


def test_a_full_disk_takes_the_transaction_back(path: Path) -> None:
    fill(path, "old", 60)
    size = path.stat().st_size
    limits = [*range(0, 24_000, 1_500), *range(24_000, 4 * size, 16_384)]
    run = subprocess.run(
        [sys.executable, "-c", RENAME, path, *map(str, limits)], capture_output=True, text=True, check=True
    )
    *refused, passed = [line.split() for line in run.stdout.splitlines()]
    assert len(refused) > 15
    assert {tuple(words[1:]) for words in refused} <= {("data_file.full", "old"), ("data_file.io", "old")}
    assert passed[1:] == ["new", "new"]
    assert names_in(path) == {"new"}
    assert [place.name for place in path.parent.iterdir()] == [path.name]


def test_no_room_for_a_copy_or_a_backup(path: Path) -> None:
    fill(path, "old", 60)
    script = (
        RENAME.split("path, limits", maxsplit=1)[0]
        + """
from kitlog.files import backup
from kitlog.store.restore import restore
path, now = Path(sys.argv[1]), datetime.now(UTC)
copy = path.with_name("copy.db")
def copying():
    data = DataFile.open(path, now=now)
    try:
        data.copy_beside("import", now)
    finally:
        data.close()
for work in (copying, lambda: backup.pack(copy, path.with_name("b.zip"), now), lambda: restore(copy, path, now)):
    resource.setrlimit(resource.RLIMIT_FSIZE, (int(sys.argv[2]), resource.RLIM_INFINITY))
    try:
        work()
    except SystemFault as fault:
        print(fault.code)
    resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
"""
    )
    shutil.copy(path, path.with_name("copy.db"))
    run = subprocess.run([sys.executable, "-c", script, path, "2000"], capture_output=True, text=True, check=True)
    copying, packing, restoring = run.stdout.split()
    assert copying in {"data_file.full", "data_file.io"}
    assert (packing, restoring) == ("file.full", "data_file.full")
    assert names_in(path) == {"old"}
    assert sorted(place.name for place in path.parent.iterdir()) == ["backups", "copy.db", "kitlog.db"]
    assert list((path.parent / "backups").iterdir()) == []
