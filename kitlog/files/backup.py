"""Backups: a zip of the data file and a manifest with its SHA-256.

SQLite has no checksums of its pages: of 300 single flipped bytes its own check missed more than a third. The hash finds
all. What is packed is a closed copy (SQLite's online backup), never the live file.
"""

import hashlib
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import IO, Annotated, BinaryIO, Literal

from pydantic import AwareDatetime, Field, ValidationError

from kitlog import __version__
from kitlog.fault import SystemFault
from kitlog.files import atomic
from kitlog.files.zip_ending import is_plain_zip_of
from kitlog.units.model import Frozen
from kitlog.units.text import Line

DATABASE = "kitlog.db"
MANIFEST = "manifest.json"

MAX_DATABASE = 512 << 20
"""Greatest data file in bytes; ten thousand items are about 5 MB."""
MAX_MANIFEST = 16 << 10
MAX_RATIO = 200
"""Bytes out per byte in, above `FREE` bytes; a data file packs about 5:1, 200 MB of zeros 1,000:1."""
FREE = 16 << 20
_CHUNK = 1 << 18

_HEADER = 100
_MAGIC = b"SQLite format 3\0"
_USER_VERSION = slice(60, 64)
_APPLICATION_ID = slice(68, 72)

_ODD = (zipfile.BadZipFile, EOFError, NotImplementedError, RuntimeError, ValueError, OverflowError, KeyError)


class Manifest(Frozen):
    """What a backup says of itself.

    Attributes:
        made_at: when it was packed; program: the version that did.
        application_id, data_schema: the marks in the data file's header.
        size: of the data file, in bytes; sha256: of its bytes, in hexadecimal.
    """

    format: Literal["kitlog backup"] = "kitlog backup"
    version: Literal[1] = 1
    made_at: AwareDatetime
    program: Line
    application_id: Annotated[int, Field(ge=0, le=0xFFFFFFFF)]
    data_schema: Annotated[int, Field(ge=0, le=0xFFFFFFFF)]
    size: Annotated[int, Field(ge=_HEADER, le=MAX_DATABASE)]
    sha256: Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]


def pack(database: Path, target: Path, now: datetime) -> Manifest:
    """Pack a closed copy of the data file; the archive is read back before it takes the place of `target`.

    Args:
        database: the copy, not the live file.
        target: the archive; what lies there is replaced, mode 0600.
        now: an aware time, for the manifest.

    Raises:
        SystemFault: ``backup.not_a_database``, ``backup.too_large`` or those of `atomic.written`.
    """
    with atomic.written(target) as handle:
        with atomic.told(database), database.open("rb") as source:
            manifest = _pack(source, handle, database, now)
        _check(handle, target)
    return manifest


def check(archive: Path) -> Manifest:
    """Read a backup through and compare its hash.

    Raises:
        SystemFault: ``backup.foreign`` (no backup of ours, or cut off), ``backup.damaged``, ``backup.too_large``,
            ``backup.newer``, ``file.*``; with ``path``.
    """
    with atomic.told(archive), archive.open("rb") as handle:
        return _check(handle, archive)


def unpack(archive: Path, to: Path) -> Manifest:
    """Take the data file out of a backup into the new file `to`, mode 0600, its hash verified.

    Raises:
        SystemFault: as `check`; ``file.exists`` where something lies at `to`, and those of `atomic.written`.
    """
    if to.exists():
        raise SystemFault("file.exists", path=str(to))
    with atomic.told(archive), archive.open("rb") as handle, atomic.written(to) as out:
        return _check(handle, archive, out)


def _pack(source: BinaryIO, handle: BinaryIO, database: Path, now: datetime) -> Manifest:
    header = source.read(_HEADER)
    if len(header) < _HEADER or not header.startswith(_MAGIC):
        raise SystemFault("backup.not_a_database", path=str(database))
    source.seek(0)
    with zipfile.ZipFile(handle, "w", zipfile.ZIP_DEFLATED) as archive:
        with archive.open(_member(DATABASE, now), "w") as member:
            size, digest = _copy(source, member, MAX_DATABASE, database)
        manifest = Manifest(
            made_at=now,
            program=__version__,
            application_id=int.from_bytes(header[_APPLICATION_ID]),
            data_schema=int.from_bytes(header[_USER_VERSION]),
            size=size,
            sha256=digest,
        )
        archive.writestr(_member(MANIFEST, now), manifest.model_dump_json(indent=1))
    return manifest


def _member(name: str, now: datetime) -> zipfile.ZipInfo:
    moment = now.astimezone(UTC)
    member = zipfile.ZipInfo(name, (max(moment.year, 1980), *moment.timetuple()[1:6]))
    member.compress_type = zipfile.ZIP_DEFLATED
    member.external_attr = 0o600 << 16
    return member


def _check(handle: BinaryIO, path: Path, out: IO[bytes] | None = None) -> Manifest:
    with _understood(path):
        if not is_plain_zip_of(handle, (DATABASE, MANIFEST)):
            raise SystemFault("backup.foreign", path=str(path))
        with zipfile.ZipFile(handle) as archive:
            manifest = _manifest(archive, path)
            with archive.open(DATABASE) as member:
                limit = min(MAX_DATABASE, max(FREE, MAX_RATIO * archive.getinfo(DATABASE).compress_size))
                size, digest = _copy(member, out, limit, path)
    if (size, digest) != (manifest.size, manifest.sha256):
        raise SystemFault("backup.damaged", path=str(path), reason="sha256")
    return manifest


def _manifest(archive: zipfile.ZipFile, path: Path) -> Manifest:
    with archive.open(MANIFEST) as member:
        raw = member.read(MAX_MANIFEST + 1)
    if len(raw) > MAX_MANIFEST:
        raise SystemFault("backup.too_large", path=str(path), limit=MAX_MANIFEST)
    try:
        return Manifest.model_validate_json(raw)
    except ValidationError as error:
        newer = any(problem["loc"] == ("version",) for problem in error.errors())
        raise SystemFault("backup.newer" if newer else "backup.foreign", path=str(path)) from error


@contextmanager
def _understood(path: Path) -> Iterator[None]:
    import zlib

    try:
        yield
    except (*_ODD, zlib.error) as error:
        raise SystemFault("backup.damaged", path=str(path), reason=str(error)) from error


def _copy(source: IO[bytes], target: IO[bytes] | None, limit: int, path: Path) -> tuple[int, str]:
    """Copy in pieces and count while reading, because a header can say anything; size and SHA-256."""
    size, digest = 0, hashlib.sha256()
    while piece := source.read(_CHUNK):
        size += len(piece)
        if size > limit:
            raise SystemFault("backup.too_large", path=str(path), limit=limit)
        digest.update(piece)
        if target is not None:
            target.write(piece)
    return size, digest.hexdigest()
