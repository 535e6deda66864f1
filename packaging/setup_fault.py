"""What the two commands say while they set up, and the one exception that ends them with a sentence.

The scripts of this folder run before anything is installed: standard library only, and a syntax that Python 3.8
still reads, so that an old Python gets a sentence and not a traceback. Their words are therefore not translated.
"""

from __future__ import annotations

import errno
import sys

WORLD_AT_FAULT = 3  # the exit code kitlog itself uses when the system, not the input, is at fault


class SetupFault(Exception):  # noqa: N818  # a fault of the world, as in kitlog.fault
    """The set-up cannot go on; the message says what happened, why, and what to do."""


def say(text: str) -> None:
    """Print for the person at the terminal, on stderr: stdout belongs to the program that is started."""
    encoding = sys.stderr.encoding or "ascii"
    print(text.encode(encoding, "backslashreplace").decode(encoding), file=sys.stderr, flush=True)


def last_lines(text: str, count: int = 20) -> str:
    """The last `count` lines that are not empty: where pip and apt say what went wrong."""
    return "\n".join([line for line in text.splitlines() if line.strip()][-count:])


def disk_full_sentence(folder: str) -> str:
    """What to do when `folder` could not be filled."""
    return f"The disk is full: {folder} needs about 400 MB. Free some space, then start again."


def disk_sentence(error: OSError, folder: str) -> str:
    """Turn what the system said about writing into `folder` into a sentence with a remedy."""
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        return disk_full_sentence(folder)
    if error.errno in (errno.EACCES, errno.EPERM, errno.EROFS):
        return (
            f"{error.filename or folder} cannot be written: it belongs to someone else or is read-only. "
            f"Remove it or give yourself the right to write, then start again."
        )
    return f"{error.filename or folder}: {error.strerror or error}."
