"""Papers and photos beside the data file, each under the hash of its bytes: ``kit.kitlog.papers/ab/abcd...``.

The bytes are written first, the row that names them second: a program that dies between the two leaves an orphan,
never a row without its paper. The name says what is inside, so nothing is ever written over and a change is noticed.
"""

import hashlib
import os
from collections.abc import Collection, Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import BinaryIO

from kitlog.fault import InputFault, SystemFault
from kitlog.files import atomic
from kitlog.kit.paper import MAX_BYTES, MediaType, Paper
from kitlog.units.text import unfit_character

ENDING = ".papers"
ORPHAN_AFTER_S = 86_400.0
"""What nothing names is swept when it is older: another window may be about to name a younger one."""

SUFFIXES = {MediaType.PDF: ".pdf", MediaType.JPEG: ".jpg", MediaType.PNG: ".png"}
"""The usual end of a file's name for each type."""

_JPEG, _PNG, _PDF = b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"%PDF-"
_PDF_WITHIN = 1_024
_LONGEST = 200
"""Bytes of a file's name; most systems allow 255."""
_PART = ".part"
_HEX = frozenset("0123456789abcdef")


def folder_of(data_file: Path) -> Path:
    """The folder of the papers of a data file; it moves with it."""
    return data_file.with_name(data_file.name + ENDING)


def place_of(data_file: Path, sha256: str) -> Path:
    """Where the bytes of that hash lie."""
    return folder_of(data_file) / sha256[:2] / sha256


def media_type_of(content: bytes) -> MediaType | None:
    """What a file is by its first bytes, whatever its name says; None for anything that is not attached.

    The marks are those of PNG (W3C, 5.2), JPEG (ITU T.81, SOI and the first marker) and PDF (ISO 32000-1, 7.5.2;
    readers look for the head within the first 1,024 bytes).
    """
    if content.startswith(_PNG):
        return MediaType.PNG
    if content.startswith(_JPEG):
        return MediaType.JPEG
    return MediaType.PDF if _PDF in content[: _PDF_WITHIN + len(_PDF)] else None


def take(source: Path) -> bytes:
    """The bytes of a file that is to be attached.

    Raises:
        InputFault: ``file.cannot_read`` with ``file`` and ``reason``; ``paper.too_large``, ``paper.empty``.
    """
    try:
        with source.open("rb") as handle:
            content = _at_most(handle)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputFault("file.cannot_read", file=str(source), reason=reason) from None
    if len(content) > MAX_BYTES:
        raise InputFault("paper.too_large", file=str(source), limit=MAX_BYTES >> 20)
    if not content:
        raise InputFault("paper.empty", file=str(source))
    return content


def keep(data_file: Path, content: bytes, name: str) -> Paper:
    """Lay the bytes of a paper beside the data file; the same bytes are kept once.

    Args:
        data_file: beside which it goes.
        content: its bytes.
        name: what it is called; only the last part counts, unfit characters are left out.

    Raises:
        InputFault: ``paper.not_a_paper`` with ``file``: neither PDF nor JPEG nor PNG.
        SystemFault: ``file.*``.
    """
    media_type = media_type_of(content)
    if media_type is None:
        raise InputFault("paper.not_a_paper", file=name)
    paper = Paper(
        sha256=hashlib.sha256(content).hexdigest(),
        name=_fit_name(name, media_type),
        media_type=media_type,
        size=len(content),
    )
    put_back(data_file, paper.sha256, content)
    return paper


def put_back(data_file: Path, sha256: str, content: bytes) -> None:
    """Lay bytes at the place of their hash; what lies there already and is right stays, but counts as new.

    Raises:
        SystemFault: ``file.*``.
    """
    place = place_of(data_file, sha256)
    if _is_whole(place, sha256):
        with atomic.told(place):
            os.utime(place)
        return
    with atomic.told(place):
        for folder in (place.parent.parent, place.parent):
            folder.mkdir(mode=0o700, exist_ok=True)
            atomic.sync_folder(folder.parent)
    atomic.write(place, content)


def read(data_file: Path, paper: Paper) -> bytes:
    """The bytes of a paper, compared with their hash.

    Raises:
        SystemFault: ``paper.folder_missing`` with ``folder``, ``paper.missing`` or ``paper.damaged`` with ``name``.
    """
    place = place_of(data_file, paper.sha256)
    code = _lacking(data_file, paper.sha256)
    if code is not None:
        raise SystemFault(code, path=str(place), name=paper.name, folder=str(folder_of(data_file)))
    with atomic.told(place), place.open("rb") as handle:
        content = _at_most(handle)
    if hashlib.sha256(content).hexdigest() != paper.sha256:
        raise SystemFault("paper.damaged", path=str(place), name=paper.name)
    return content


@dataclass(frozen=True, slots=True)
class Looked:
    """What lies beside a data file, compared with what it names.

    Attributes:
        faults: one for each paper that is missing or damaged; a single one where the whole folder is missing.
        whole: the papers whose bytes are right.
        swept: how many files that nothing names were removed.
    """

    faults: tuple[SystemFault, ...] = ()
    whole: tuple[Paper, ...] = ()
    swept: int = 0


def look(data_file: Path, papers: Iterable[Paper]) -> Looked:
    """Read every paper through; nothing is changed."""
    faults, whole = [], []
    papers = tuple(papers)
    if papers and not folder_of(data_file).is_dir():
        folder = str(folder_of(data_file))
        missing = SystemFault("paper.folder_missing", path=str(data_file), folder=folder, count=len(papers))
        return Looked(faults=(missing,))
    for paper in papers:
        try:
            read(data_file, paper)
        except SystemFault as fault:
            faults.append(fault)
        else:
            whole.append(paper)
    return Looked(tuple(faults), tuple(whole))


def absent(data_file: Path, papers: Iterable[Paper]) -> frozenset[str]:
    """The hashes of those papers that are not there or have another length; their bytes are not read."""
    return frozenset(paper.sha256 for paper in papers if not _is_there(place_of(data_file, paper.sha256), paper.size))


def sweep(data_file: Path, named: Collection[str], now: datetime) -> int:
    """Remove what lies in the folder under a hash that nothing names and is older than a day; how many.

    Other files in the folder are not ours and stay.

    Raises:
        SystemFault: ``file.*``.
    """
    swept = 0
    with atomic.told(folder_of(data_file)):
        for place in _ours(folder_of(data_file)):
            if place.name not in named and now.timestamp() - place.stat().st_mtime > ORPHAN_AFTER_S:
                place.unlink()
                swept += 1
                with suppress(OSError):
                    place.parent.rmdir()
    return swept


def _ours(folder: Path) -> Iterator[Path]:
    """Files under their hash, and what a program that died left half-written."""
    for drawer in sorted(folder.iterdir()) if folder.is_dir() else ():
        for place in sorted(drawer.iterdir()) if drawer.is_dir() and not drawer.is_symlink() else ():
            bare = place.name.removeprefix(".").partition(".")[0] if place.name.endswith(_PART) else place.name
            if len(bare) == 64 and _HEX.issuperset(bare) and bare[:2] == drawer.name and place.is_file():
                yield place


def _lacking(data_file: Path, sha256: str) -> str | None:
    if not folder_of(data_file).is_dir():
        return "paper.folder_missing"
    return None if place_of(data_file, sha256).is_file() else "paper.missing"


def _is_there(place: Path, size: int) -> bool:
    try:
        return place.is_file() and place.stat().st_size == size
    except OSError:
        return False


def _is_whole(place: Path, sha256: str) -> bool:
    try:
        with place.open("rb") as handle:
            return hashlib.file_digest(handle, "sha256").hexdigest() == sha256
    except OSError:
        return False


def _at_most(handle: BinaryIO) -> bytes:
    return handle.read(MAX_BYTES + 1)


def _fit_name(name: str, media_type: MediaType) -> str:
    last = name.replace("\\", "/").rsplit("/", 1)[-1]
    fit = "".join(char for char in last if unfit_character(char, breaks=False) is None).strip()
    return fit[-200:] or f"paper{SUFFIXES[media_type]}"


def file_name(paper: Paper) -> str:
    """A name for a copy of it on any system: its own, with the end that belongs to what is inside."""
    stem = "".join("_" if char in '<>:"/\\|?*' else char for char in paper.name).strip(" .")
    stem = stem.encode()[-_LONGEST:].decode(errors="ignore").strip() or "paper"
    end = SUFFIXES[paper.media_type]
    known = (end, ".jpeg") if paper.media_type is MediaType.JPEG else (end,)
    return stem if stem.casefold().endswith(known) else f"{stem}{end}"
