"""The terminal: UTF-8 whatever the locale says, faults on stderr, quiet when the reader is gone."""

import contextlib
import io
import os
import sys
from collections.abc import Iterable, Iterator

from kitlog.fault import Fault, SystemFault
from kitlog.wording.faults import fault_text


def speak_utf8() -> None:
    """Write UTF-8 on both streams; what cannot be written is escaped, never an error."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")


@contextlib.contextmanager
def _handed_over() -> Iterator[None]:
    """Say it where the output cannot be written, unless its reader is simply gone."""
    try:
        yield
    except BrokenPipeError:
        raise
    except OSError as error:
        hush()
        raise SystemFault("output.failed", reason=error.strerror or str(error)) from error


def say(lines: Iterable[str]) -> None:
    """Lines for the reader.

    Raises:
        BrokenPipeError: the reader is gone.
        SystemFault: ``output.failed`` with ``reason``.
    """
    with _handed_over():
        sys.stdout.writelines(f"{line}\n" for line in lines)


def note(line: str) -> None:
    """A remark that is no part of the answer."""
    sys.stderr.write(f"kitlog: {line}\n")


def complain(fault: Fault) -> None:
    """A fault in words: where, what, what to do; one more line for each cell of a refused table."""
    said = fault_text(fault)
    note(said.line)
    sys.stderr.writelines(f"  {line}\n" for line in said.more)


def finish() -> None:
    """Hand over what is still waiting, while a failure can still be told.

    Raises:
        BrokenPipeError, SystemFault: as `say`.
    """
    with _handed_over():
        sys.stdout.flush()


def hush() -> None:
    """Let the rest of the output go nowhere, so that leaving does not complain a second time."""
    with contextlib.suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)
