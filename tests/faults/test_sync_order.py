"""Before a file gets its name its bytes are on the disk; afterwards the folder is: in that order after a power loss."""

import os
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from filled_files import fill

from kitlog.files import backup
from kitlog.store.data_file import DataFile
from kitlog.store.restore import restore

pytestmark = pytest.mark.skipif(not Path("/proc/self/fd").exists(), reason="open files are found by /proc")


def creating(folder: Path, now: datetime) -> None:
    DataFile.open(folder / "fresh.db", now=now).close()


def copying(folder: Path, now: datetime) -> None:
    data = DataFile.open(folder / "kitlog.db", now=now)
    data.copy_beside("import", now)
    data.close()


def restoring(folder: Path, now: datetime) -> None:
    restore(folder / "copy.db", folder / "kitlog.db", now)


def packing(folder: Path, now: datetime) -> None:
    backup.pack(folder / "copy.db", folder / "backup.zip", now)


def unpacking(folder: Path, now: datetime) -> None:
    packing(folder, now)
    backup.unpack(folder / "backup.zip", folder / "out.db")


@pytest.mark.parametrize(("work", "named"), [(creating, 1), (copying, 1), (restoring, 2), (packing, 1), (unpacking, 2)])
def test_synced_named_synced(
    tmp_path: Path,
    now: datetime,
    monkeypatch: pytest.MonkeyPatch,
    work: Callable[[Path, datetime], None],
    named: int,
) -> None:
    for name in ("kitlog", "copy"):
        fill(tmp_path / f"{name}.db", name, 3)
    seen: list[tuple[str, str]] = []
    real_sync, real_replace, real_link = os.fsync, os.replace, os.link

    def sync(handle: int) -> None:
        seen.append(("sync", str(Path(f"/proc/self/fd/{handle}").readlink())))
        real_sync(handle)

    def naming(real: Callable[..., None]) -> Callable[..., None]:
        def call(source: Path, target: Path, **more: object) -> None:
            seen.append(("name", str(source)))
            seen.append(("as", str(target)))
            real(source, target, **more)

        return call

    monkeypatch.setattr(os, "fsync", sync)
    monkeypatch.setattr(os, "replace", naming(real_replace))
    monkeypatch.setattr(os, "link", naming(real_link))
    work(tmp_path, now)
    names = [place for place, (what, _) in enumerate(seen) if what == "name"]
    assert len(names) == named
    for place in names:
        assert ("sync", seen[place][1]) in seen[:place]
        assert seen[place + 2] == ("sync", str(Path(seen[place + 1][1]).parent))
