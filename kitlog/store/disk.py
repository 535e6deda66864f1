"""Files as the system has them: private, synced, put in place whole.

The data file itself is never opened here: closing it would drop the locks of SQLite in this process.
"""

import contextlib
import os
import secrets
from collections.abc import Iterator
from pathlib import Path

BESIDE = ("-journal", "-wal", "-shm")
"""What SQLite may leave beside a file of its own."""


def make_private(path: Path) -> None:
    """A new empty file that only its owner may read; `FileExistsError` if there is one."""
    os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))


def make_private_folder(folder: Path) -> None:
    """A folder, and those above it, that only their owner may enter; existing ones stay as they are."""
    for place in reversed([folder, *folder.parents]):
        with contextlib.suppress(FileExistsError):
            if not place.exists():
                place.mkdir(mode=0o700)


def sync_file(path: Path) -> None:
    """Wait until a file's bytes are on the disk."""
    handle = os.open(path, os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def sync_folder(folder: Path) -> None:
    """Wait until the names in a folder are on the disk; systems that cannot open a folder do it by themselves."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def place_new(temporary: Path, target: Path) -> None:
    """Give a finished file its name; `FileExistsError` if something has that name already."""
    try:
        os.link(temporary, target)
    except FileExistsError:
        raise
    except OSError:
        # Disks without links (FAT, some network folders).
        if target.exists():
            raise FileExistsError(str(target)) from None
        temporary.rename(target)
    else:
        temporary.unlink()
    sync_folder(target.parent)


def place_over(temporary: Path, target: Path) -> None:
    """Put a finished file in the place of another."""
    temporary.replace(target)
    sync_folder(target.parent)


@contextlib.contextmanager
def unfinished(target: Path) -> Iterator[Path]:
    """A name beside `target` for a file in the making; whatever is left of it is removed at the end."""
    temporary = target.with_name(f".{target.name}.{secrets.token_hex(4)}.part")
    try:
        yield temporary
    finally:
        # What cannot be removed lies there harmlessly; the reason for that is told by what failed before.
        with contextlib.suppress(OSError):
            remove(temporary)
            remove_beside(temporary)


def remove(path: Path) -> None:
    """A file less, if it is there."""
    with contextlib.suppress(FileNotFoundError):
        path.unlink()


def remove_beside(path: Path) -> None:
    """Remove the journals of a file that is not open anywhere."""
    for ending in BESIDE:
        remove(path.with_name(path.name + ending))
