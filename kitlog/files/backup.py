"""Backups: a zip of the data file, the papers beside it, and a manifest with their SHA-256.

SQLite has no checksums of its pages: of 300 single flipped bytes its own check missed more than a third. The hash finds
all. What is packed is a closed copy (SQLite's online backup), never the live file.
"""

import hashlib
import re
import zipfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import IO, BinaryIO

from pydantic import ValidationError

from kitlog import __version__
from kitlog.fault import SystemFault
from kitlog.files import atomic, papers
from kitlog.files.backup_manifest import (
    DATABASE,
    HEADER,
    MANIFEST,
    MAX_ALL_PAPERS,
    MAX_DATABASE,
    MAX_MANIFEST,
    MAX_PAPERS,
    Manifest,
    PackedPaper,
    paper_member,
)
from kitlog.files.zip_ending import is_plain_zip_of
from kitlog.kit.paper import Paper

MAX_RATIO = 200
"""Bytes out per byte in, above `FREE` bytes; a data file packs about 5:1, 200 MB of zeros 1,000:1."""
FREE = 16 << 20
_CHUNK = 1 << 18

_PAPER_MEMBER = re.compile(r"papers/[0-9a-f]{64}")

_MAGIC = b"SQLite format 3\0"
_USER_VERSION = slice(60, 64)
_APPLICATION_ID = slice(68, 72)

_ODD = (zipfile.BadZipFile, EOFError, NotImplementedError, RuntimeError, ValueError, OverflowError, KeyError)


def pack(
    database: Path, target: Path, now: datetime, kept: Iterable[Paper] = (), data_file: Path | None = None
) -> Manifest:
    """Pack a closed copy of the data file; the archive is read back before it takes the place of `target`.

    Args:
        database: the copy, not the live file.
        target: the archive; what lies there is replaced, mode 0600.
        now: an aware time, for the manifest.
        kept: the papers that go in, each content once; all of them are there and whole.
        data_file: the file beside which they lie; None = beside `database`.

    Raises:
        SystemFault: ``backup.not_a_database``, ``backup.too_large`` or those of `atomic.written`.
    """
    with atomic.written(target) as handle:
        with atomic.told(database), database.open("rb") as source:
            manifest = _pack(source, handle, database, now, _Papers(tuple(kept), data_file or database))
        _check(handle, target)
    return manifest


@dataclass(frozen=True, slots=True)
class _Papers:
    """Papers, and the data file beside which they lie."""

    papers: tuple[Paper, ...]
    data_file: Path


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


def put_papers_back(archive: Path, data_file: Path) -> int:
    """Lay the papers of a backup beside a data file, each under its hash; how many. Those that are there stay.

    Raises:
        SystemFault: as `check`; ``file.*``.
    """
    with atomic.told(archive), archive.open("rb") as handle:
        manifest = _check(handle, archive)
        with _understood(archive), zipfile.ZipFile(handle) as opened:
            for paper in manifest.papers:
                papers.put_back(data_file, paper.sha256, opened.read(paper_member(paper.sha256)))
    return len(manifest.papers)


def _pack(source: BinaryIO, handle: BinaryIO, database: Path, now: datetime, kept: _Papers) -> Manifest:
    header = source.read(HEADER)
    if len(header) < HEADER or not header.startswith(_MAGIC):
        raise SystemFault("backup.not_a_database", path=str(database))
    source.seek(0)
    if len(kept.papers) > MAX_PAPERS or sum(paper.size for paper in kept.papers) > MAX_ALL_PAPERS:
        raise SystemFault("backup.too_many_papers", path=str(kept.data_file), limit=MAX_ALL_PAPERS >> 30)
    with zipfile.ZipFile(handle, "w", zipfile.ZIP_DEFLATED) as archive:
        with archive.open(_member(DATABASE, now), "w") as member:
            size, digest = _copy(source, member, MAX_DATABASE, database)
        packed = tuple(_pack_paper(archive, kept.data_file, paper, now) for paper in kept.papers)
        manifest = Manifest(
            made_at=now,
            program=__version__,
            application_id=int.from_bytes(header[_APPLICATION_ID]),
            data_schema=int.from_bytes(header[_USER_VERSION]),
            size=size,
            sha256=digest,
            papers=packed,
        )
        archive.writestr(_member(MANIFEST, now), manifest.model_dump_json(indent=1))
    return manifest


def _pack_paper(archive: zipfile.ZipFile, data_file: Path, paper: Paper, now: datetime) -> PackedPaper:
    """Papers are packed as they are: scans and photos are packed already."""
    member = _member(paper_member(paper.sha256), now)
    member.compress_type = zipfile.ZIP_STORED
    archive.writestr(member, papers.read(data_file, paper))
    return PackedPaper(sha256=paper.sha256, size=paper.size)


def _member(name: str, now: datetime) -> zipfile.ZipInfo:
    moment = now.astimezone(UTC)
    member = zipfile.ZipInfo(name, (max(moment.year, 1980), *moment.timetuple()[1:6]))
    member.compress_type = zipfile.ZIP_DEFLATED
    member.external_attr = 0o600 << 16
    return member


def _check(handle: BinaryIO, path: Path, out: IO[bytes] | None = None) -> Manifest:
    with _understood(path):
        if not is_plain_zip_of(handle, (DATABASE, MANIFEST), _PAPER_MEMBER, MAX_PAPERS):
            raise SystemFault("backup.foreign", path=str(path))
        with zipfile.ZipFile(handle) as archive:
            manifest = _manifest(archive, path)
            if sorted(archive.namelist()) != manifest.members:
                raise SystemFault("backup.foreign", path=str(path))
            with archive.open(DATABASE) as member:
                limit = min(MAX_DATABASE, max(FREE, MAX_RATIO * archive.getinfo(DATABASE).compress_size))
                size, digest = _copy(member, out, limit, path)
            for paper in manifest.papers:
                _check_paper(archive, paper, path)
    if (size, digest) != (manifest.size, manifest.sha256):
        raise SystemFault("backup.damaged", path=str(path), reason="sha256")
    return manifest


def _check_paper(archive: zipfile.ZipFile, paper: PackedPaper, path: Path) -> None:
    with archive.open(paper_member(paper.sha256)) as member:
        if _copy(member, None, paper.size, path) != (paper.size, paper.sha256):
            raise SystemFault("backup.damaged", path=str(path), reason="sha256")


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
