"""A line on the terminal while something takes longer; nothing where nobody watches."""

import sys
import time
from types import TracebackType
from typing import Self

from kitlog.wording.translate import _

AFTER_S = 0.5
"""Seconds before anything is said: what is quicker needs no progress."""


class Working:
    """Tells how far a piece of work is, on stderr, if that is a terminal. Ctrl-C cancels, as everywhere.

    Args:
        what: what is being worked on.
    """

    def __init__(self, what: str) -> None:
        self._what = what
        self._began = time.monotonic()
        self._said = False

    def __enter__(self) -> Self:
        return self

    def __call__(self, share: float) -> None:
        """Tell the share (0..1) that is done."""
        if sys.stderr.isatty() and time.monotonic() - self._began > AFTER_S:
            self._said = True
            text = _("{what}: {percent} %").format(what=self._what, percent=round(share * 100))
            sys.stderr.write(f"\r{text}\x1b[K")
            sys.stderr.flush()

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._said:
            sys.stderr.write("\r\x1b[K")
            sys.stderr.flush()
