"""Files written whole or not at all: under another name first, synced, then put in place.

On any failure what lay there before is untouched and nothing is left beside it. Mode 0600: what kitlog writes names
people, places and serial numbers.
"""

import errno
import os
import secrets
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from kitlog.fault import SystemFault

_CODES = {
    errno.ENOENT: "file.missing_folder",
    errno.ENOTDIR: "file.missing_folder",
    errno.EACCES: "file.read_only",
    errno.EPERM: "file.read_only",
    errno.EROFS: "file.read_only",
    errno.EISDIR: "file.folder",
    errno.ENOSPC: "file.full",
    errno.EDQUOT: "file.full",
    errno.EFBIG: "file.full",
}


@contextmanager
def written(target: Path) -> Iterator[BinaryIO]:
    """A file to write to, readable and seekable, that takes the place of `target` when the block ends well.

    A link at `target` is followed: the file it points to is replaced, not the link.

    Raises:
        SystemFault: ``file.missing_folder``, ``file.read_only``, ``file.folder``, ``file.full`` or ``file.io``,
            with ``path`` and ``reason``.
    """
    with told(target):
        place = target.resolve()
        if place.is_dir():
            raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
        temporary = place.with_name(f".{place.name}.{secrets.token_hex(4)}.part")
        try:
            with os.fdopen(os.open(temporary, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600), "w+b") as handle:
                yield handle
                handle.flush()
                os.fsync(handle.fileno())
            temporary.replace(place)
        except BaseException:
            with suppress(OSError):
                temporary.unlink()
            raise
        sync_folder(place.parent)


def write(target: Path, content: bytes) -> None:
    """Write a whole file.

    Raises:
        SystemFault: as `written`.
    """
    with written(target) as handle:
        handle.write(content)


@contextmanager
def told(path: Path) -> Iterator[None]:
    """Turn what the operating system says about `path` into a fault.

    Raises:
        SystemFault: as `written`.
    """
    try:
        yield
    except OSError as error:
        code = _CODES.get(error.errno or 0, "file.io")
        raise SystemFault(code, path=str(path), reason=error.strerror or str(error)) from error


def sync_folder(folder: Path) -> None:
    """Wait until the names in a folder are on the disk; systems that cannot open a folder do it by themselves."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
