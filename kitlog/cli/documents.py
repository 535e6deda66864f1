"""Files named on the command line: read whole and not without end, written whole and over no data file."""

import contextlib
import json
import sys
from collections.abc import Iterator
from pathlib import Path

from kitlog.cli.streams import say
from kitlog.fault import InputFault
from kitlog.wording.translate import _

STDIN = "-"
MOST_BYTES = 20_000_001
"""More than any input may have; its reader then says that it is too large."""

_DATABASE = b"SQLite format 3\0"


def read(name: str) -> bytes:
    """The bytes of a file, or of standard input for ``-``.

    Raises:
        InputFault: ``file.cannot_read`` with ``file`` and ``reason``.
    """
    with _readable(name):
        if name == STDIN:
            return sys.stdin.buffer.read(MOST_BYTES)
        with Path(name).open("rb") as handle:
            return handle.read(MOST_BYTES)


@contextlib.contextmanager
def _readable(name: str) -> Iterator[None]:
    try:
        yield
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputFault("file.cannot_read", file=shown_name(name), reason=reason) from None


def shown_name(name: str) -> str:
    """A file's name for messages."""
    return _("standard input") if name == STDIN else name


def read_head(name: str) -> bytes:
    """The first bytes of a file.

    Raises:
        InputFault: ``file.cannot_read`` with ``file`` and ``reason``.
    """
    with _readable(name), Path(name).open("rb") as handle:
        return handle.read(len(_DATABASE))


def is_database(name: str) -> bool:
    """Whether a file is an SQLite database: a data file of ours or somebody else's."""
    return Path(name).is_file() and read_head(name) == _DATABASE


def write(name: str, content: bytes) -> None:
    """Write a file whole, mode 0600.

    Raises:
        InputFault: ``file.database`` with ``file``: what lies there is a data file, and no export takes its place.
        SystemFault: ``file.*`` with ``path`` and ``reason``.
    """
    from kitlog.files import atomic

    if is_database(name):
        raise InputFault("file.database", file=name)
    atomic.write(Path(name), content)


def is_same(one: str, other: str) -> bool:
    """Whether two names are of the same file, whether it is there already or not."""
    first, second = Path(one), Path(other)
    return first.samefile(second) if first.exists() and second.exists() else first.resolve() == second.resolve()


def as_json(content: object) -> str:
    """JSON as a person may read it too; no NaN, keys in their order."""
    return json.dumps(content, ensure_ascii=False, allow_nan=False, indent=2)


def say_json(content: object) -> int:
    """Print JSON; exit code 0."""
    say([as_json(content)])
    return 0


def text(name: str) -> str:
    """The text of a JSON file.

    Raises:
        InputFault: as `read`; ``json.not_utf8`` with ``file``.
    """
    from kitlog.units.strict_json import decoded

    with naming(name):
        return decoded(read(name))


@contextlib.contextmanager
def naming(name: str) -> Iterator[None]:
    """Name the file in faults that do not name one."""
    try:
        yield
    except InputFault as fault:
        if "file" in fault.facts:
            raise
        raise InputFault(fault.code, **{"file": shown_name(name), **fault.facts}) from None
