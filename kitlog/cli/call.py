"""One call of the command line: its options, and the data file they are about."""

import argparse
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from kitlog.cli.doors import Doors

if TYPE_CHECKING:
    from kitlog.workbench.workbench import Workbench

T = TypeVar("T")

DONE, STOPPED, WRONG_USE, AT_FAULT = 0, 1, 2, 3
"""Exit codes: done; done, and something is a stop (``--strict``); wrong use or bad input; data file or system."""


@dataclass(frozen=True, slots=True)
class Call:
    """The options as typed, and the doors to data file and window."""

    options: argparse.Namespace
    doors: Doors

    @property
    def data_file(self) -> Path:
        """The data file that was named, else the usual one."""
        return self.doors.data_file() if self.options.data is None else Path(self.options.data)

    @contextmanager
    def reading(self) -> "Iterator[Workbench]":
        """The workbench on the data file, which must be there: reading never makes one."""
        with _closing(self.doors.bench(self.data_file, create=False)) as bench:
            yield bench

    def write(self, act: "Callable[[Workbench], T]") -> T:
        """Do something to the data file, which is made if it is missing.

        Then the act is tried on an empty file elsewhere first, so that what is refused makes no file.
        """
        if not self.data_file.exists():
            self.rehearse(act)
        with _closing(self.doors.bench(self.data_file, create=True)) as bench:
            return act(bench)

    def rehearse(self, act: "Callable[[Workbench], T]") -> T:
        """Do something to an empty data file that is thrown away."""
        with (
            tempfile.TemporaryDirectory(prefix="kitlog-") as folder,
            _closing(self.doors.bench(Path(folder) / "empty.kitlog", create=True)) as bench,
        ):
            return act(bench)


@contextmanager
def _closing(bench: "Workbench") -> "Iterator[Workbench]":
    try:
        yield bench
    finally:
        bench.close()
