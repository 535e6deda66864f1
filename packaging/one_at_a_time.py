"""Two starts at once must not both change the same environment."""

from __future__ import annotations

import os
import sys
from contextlib import contextmanager
from typing import IO, Iterator

from setup_fault import say


def lock_file(file: IO[str], *, wait: bool) -> bool:
    """Take the file for this process; False when another one has it and `wait` is false.

    The system gives it back when the process ends, however it ends, so no stale lock can remain.
    """
    if sys.platform == "win32":  # not tried there
        import msvcrt

        try:
            file.seek(0)
            msvcrt.locking(file.fileno(), msvcrt.LK_LOCK if wait else msvcrt.LK_NBLCK, 1)
        except OSError:
            return lock_file(file, wait=wait) if wait else False
    else:
        import fcntl

        try:
            fcntl.flock(file, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))
        except BlockingIOError:
            return False
    return True


@contextmanager
def alone(venv: str) -> Iterator[None]:
    """Hold the environment's lock, so that two starts at once do not both change it.

    pip inherits the lock: if only this process is killed, pip goes on, and the next start must wait for it.
    """
    os.makedirs(os.path.dirname(venv), exist_ok=True)
    with open(venv + ".lock", "a", encoding="utf-8") as file:
        if not lock_file(file, wait=False):
            say("Another start is setting up the same packages; waiting for it to finish.")
            lock_file(file, wait=True)
        if sys.platform != "win32":
            os.set_inheritable(file.fileno(), True)  # noqa: FBT003  # the system's own signature
        yield
