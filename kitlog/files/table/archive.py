"""The parts of a packed workbook, held to what a table can be before and while they are unpacked."""

import io
import struct
import zipfile
import zlib
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from kitlog.fault import InputFault

MAX_UNPACKED = 100_000_000
"""Bytes of all parts together; a sheet of 20,000 rows and 40 columns has about 30 million."""
MAX_PARTS = 5_000
_LARGE_PART = 5_000_000
_MOST_RATIO = 120
"""Sheets shrink to a tenth when packed, very regular ones to a fiftieth; a part that shrinks further is none."""
_CHUNK = 1 << 18
_ENTRY = b"PK\x01\x02"
_ENCRYPTED = 0x1

_TROUBLE = (
    zipfile.BadZipFile, zlib.error, EOFError, OSError, ValueError, NotImplementedError, RuntimeError, OverflowError,
    KeyError, IndexError, struct.error,
)  # fmt: skip
"""What the standard library raises on damaged archives."""


class Parts:
    """The parts of an archive by their names.

    Raises:
        InputFault: ``table.broken_archive``, ``table.too_many_parts``, ``table.unpacked_too_large``,
            ``table.is_locked``; when it is opened and when a part is read.
    """

    def __init__(self, data: bytes, file: str) -> None:
        self._file = file
        if data.count(_ENTRY) > MAX_PARTS:
            raise InputFault("table.too_many_parts", file=file, limit=MAX_PARTS)
        with self._unpacking():
            self._zip = zipfile.ZipFile(io.BytesIO(data))
        self.names = frozenset(self._zip.namelist())
        self._check()

    def _check(self) -> None:
        infos = self._zip.infolist()
        if len(infos) > MAX_PARTS:
            raise InputFault("table.too_many_parts", file=self._file, limit=MAX_PARTS)
        if sum(info.file_size for info in infos) > MAX_UNPACKED or any(map(_is_bomb, infos)):
            raise InputFault("table.unpacked_too_large", file=self._file, limit=MAX_UNPACKED)
        if any(info.flag_bits & _ENCRYPTED for info in infos):
            raise InputFault("table.is_locked", file=self._file)
        if any(info.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED) for info in infos):
            raise InputFault("table.broken_archive", file=self._file)

    def read(self, name: str) -> bytes:
        """A part, unpacked piece by piece: what its entry says of its size is not trusted for memory."""
        pieces = []
        with self._unpacking(), self._zip.open(name) as part:
            while piece := part.read(_CHUNK):
                pieces.append(piece)
        return b"".join(pieces)

    def stored(self, wanted: Callable[[str], bool], mend: Callable[[bytes], bytes]) -> io.BytesIO:
        """A new archive of the wanted parts, mended and not packed, for a library that unpacks without looking."""
        target = io.BytesIO()
        with zipfile.ZipFile(target, "w") as packed:
            for name in sorted(self.names):
                if wanted(name):
                    packed.writestr(name, mend(self.read(name)))
        target.seek(0)
        return target

    @contextmanager
    def _unpacking(self) -> Iterator[None]:
        try:
            yield
        except _TROUBLE as error:
            raise InputFault("table.broken_archive", file=self._file) from error


def _is_bomb(info: zipfile.ZipInfo) -> bool:
    return info.file_size > _LARGE_PART and info.file_size > _MOST_RATIO * max(info.compress_size, 1)
