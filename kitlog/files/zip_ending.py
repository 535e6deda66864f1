"""The last record of a zip, looked at before the whole directory is read: a hostile one lists millions of members."""

import io
import re
import struct
import zipfile
from collections.abc import Collection
from typing import BinaryIO

_RECORD = struct.Struct("<4s4H2LH")
_SIGNATURE = b"PK\x05\x06"
_PLAIN = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
_ENCRYPTED = 1
_MAX_DIRECTORY, _PER_MEMBER = 1_024, 160


def is_plain_zip_of(
    handle: BinaryIO, names: Collection[str], more: "re.Pattern[str] | None" = None, most: int = 0
) -> bool:
    """Whether the file is a zip of exactly those members, plain or deflated, without anything before or after.

    Args:
        handle: a readable, seekable file; its place is moved.
        names: the members' names.
        more: what further members may be called, each once.
        most: how many of these there may be.

    Raises:
        zipfile.BadZipFile: for a directory that cannot be read.
    """
    if not _has_short_directory(handle, len(names), most):
        return False
    with zipfile.ZipFile(handle) as archive:
        members = archive.infolist()
    plain = all(m.compress_type in _PLAIN and not m.flag_bits & _ENCRYPTED for m in members)
    called = [m.filename for m in members]
    further = [name for name in called if name not in names]
    fit = all(more is not None and more.fullmatch(name) for name in further) and len(further) == len(set(further))
    return plain and fit and sorted(name for name in called if name in names) == sorted(names)


def _has_short_directory(handle: BinaryIO, least: int, more: int) -> bool:
    end = handle.seek(0, io.SEEK_END)
    if end < _RECORD.size:
        return False
    start = handle.seek(end - _RECORD.size)
    signature, disk, first, here, listed, size, offset, comment = _RECORD.unpack(handle.read(_RECORD.size))
    one_disk = (disk, first, comment) == (0, 0, 0)
    whole = here == listed and size <= _MAX_DIRECTORY + _PER_MEMBER * more and offset + size == start
    return bool(signature == _SIGNATURE and one_disk and whole and least <= listed <= least + more)
