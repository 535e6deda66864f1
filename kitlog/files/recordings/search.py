"""The recordings among what a person names: files as they are, folders searched for names that end in .igc."""

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from kitlog.fault import InputFault

ENDING = ".igc"


def label_of(path: Path) -> str:
    """How a file is called in what is said: its path; characters that cannot be shown are replaced."""
    text = os.fsencode(path).decode("utf-8", "replace")
    return "".join(letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in text)


def recordings_among(paths: Iterable[Path]) -> Iterator[Path | InputFault]:
    """The files to read, in the order given, those of a folder and below it sorted; each once.

    A file that is named is read whatever it is called. In a folder, what is hidden (its name, or that of a folder on
    the way, begins with a dot) is not read but told of. Links to folders are not followed.

    Yields:
        Path: a file to read.
        InputFault: ``recording.hidden``, ``recording.none_in_folder``, ``recording.cannot_read`` (a folder), with
            ``file``.
    """
    seen: set[str] = set()
    for path in paths:
        for found in _at(path):
            key = _key(found)
            if key not in seen:
                seen.add(key)
                yield found


def _at(path: Path) -> Iterable[Path | InputFault]:
    return _in_folder(path) if os.path.isdir(path) else [path]  # noqa: PTH112  # pathlib raises where one may not look


def _key(found: Path | InputFault) -> str:
    if isinstance(found, InputFault):
        return str(found.facts["file"])
    return os.path.abspath(found)  # noqa: PTH100  # a link is another file: its content tells what it is


def _in_folder(folder: Path) -> Iterator[Path | InputFault]:
    faults: list[OSError] = []
    is_empty = True
    for place, folders, files in os.walk(folder, onerror=faults.append):
        folders.sort()
        yield from _unread(faults, folder)
        for name in sorted(files):
            if name.lower().endswith(ENDING):
                is_empty = False
                yield _unless_hidden(folder, Path(place, name))
    is_empty = is_empty and not faults
    yield from _unread(faults, folder)
    if is_empty:
        yield InputFault("recording.none_in_folder", file=label_of(folder))


def _unless_hidden(folder: Path, path: Path) -> Path | InputFault:
    if any(part.startswith(".") for part in path.relative_to(folder).parts):
        return InputFault("recording.hidden", file=label_of(path))
    return path


def _unread(faults: list[OSError], folder: Path) -> Iterator[InputFault]:
    for fault in faults:
        file = label_of(Path(fault.filename or folder))
        yield InputFault("recording.cannot_read", file=file, reason=fault.strerror or str(fault))
    faults.clear()
