"""The composition root: finds the data file, builds the workbench, hands it to window or command line.

Heavy libraries are imported inside the functions: `kitlog --help` needs neither database nor window.
"""

import os
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from kitlog.fault import InputFault, SystemFault

if TYPE_CHECKING:
    from kitlog.kit.paper import Paper
    from kitlog.outing.library import Library
    from kitlog.packing.assessment import Assessment
    from kitlog.wording.book_parts import BookContent
    from kitlog.workbench.workbench import Workbench

FILE_NAME = "kit.kitlog"
DEMO_NAME = "demo.kitlog"


def local_now() -> datetime:
    """The present moment with the local offset."""
    return datetime.now().astimezone()


def new_id() -> str:
    """A fresh id: 16 random hexadecimal digits."""
    return os.urandom(8).hex()


def data_folder() -> Path:
    """Where the platform keeps a user's data."""
    from platformdirs import user_data_path

    return user_data_path("kitlog", appauthor=False)


def default_data_file() -> Path:
    """The data file where nothing else is said."""
    return data_folder() / FILE_NAME


def open_bench(path: Path, *, create: bool = True, clock: Callable[[], datetime] = local_now) -> "Workbench":
    """Open a data file and put the workbench on it.

    Raises:
        SystemFault: the data file cannot be opened.
    """
    from kitlog.files.resources import load_library, resources_folder
    from kitlog.store.data_file import DataFile
    from kitlog.workbench.workbench import Workbench

    library = load_library(resources_folder())
    return Workbench(DataFile.open(path, now=clock(), create=create), library, clock, new_id)


def has_screen(environment: Mapping[str, str], platform: str) -> bool:
    """Whether a window can be opened at all; Windows and macOS always have a screen."""
    if platform in {"win32", "darwin"}:
        return True
    return any(environment.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"))


@dataclass(frozen=True, slots=True)
class App:
    """The doors through which the command line goes; `clock` gives the present moment, aware."""

    clock: Callable[[], datetime] = local_now

    def data_file(self) -> Path:
        """The data file where nothing else is said."""
        return default_data_file()

    def demo_file(self) -> Path:
        """The data file of the demo where nothing else is said: never the pilot's own."""
        return data_folder() / DEMO_NAME

    def bench(self, path: Path, *, create: bool) -> "Workbench":
        """The workbench on a data file, which is made if it is missing and `create` says so."""
        return open_bench(path, create=create, clock=self.clock)

    def demo(self, path: Path) -> "Workbench":
        """A new data file filled with the demo scenario.

        Raises:
            InputFault: ``demo.exists`` with ``path``.
        """
        from kitlog.files.demo import load_demo
        from kitlog.files.resources import resources_folder

        if path.exists():
            raise InputFault("demo.exists", path=str(path))
        folder = resources_folder() / "demo"
        load_demo(folder, new_id)  # a damaged demo leaves no empty data file behind
        bench = self.bench(path, create=True)
        bench.fill_with_demo(folder)
        return bench

    def sheet_pdf(self, assessment: "Assessment", names: Mapping[str, str], library: "Library", paper: str) -> bytes:
        """The sheet of an outing as PDF, with the days drawn for it; no screen is needed.

        Args:
            assessment: of the outing.
            names: names of all items of the kit by id.
            library: for check lists and flight types.
            paper: ``A4`` or ``letter``.

        Raises:
            SystemFault: ``sheet.no_library`` with ``reason``; ``sheet.no_font``.
        """
        try:
            from kitlog.desktop.pdf_writing import Paper
            from kitlog.desktop.sheet_pdf import drawn_days, sheet_pdf
        except ImportError as error:
            raise SystemFault("sheet.no_library", reason=str(error)) from error
        forecast = drawn_days(assessment, library)
        return sheet_pdf(assessment, names, library, self.clock(), paper=Paper(paper), forecast=forecast)

    def book_pdf(self, content: "BookContent", load: "Callable[[Paper], bytes]", paper: str) -> bytes:
        """A service book or an inventory as PDF, with its photos; no screen is needed.

        Args:
            content: its words.
            load: gives the bytes of a photo.
            paper: ``A4`` or ``letter``.

        Raises:
            SystemFault: ``sheet.no_library`` with ``reason``; ``sheet.no_font``.
        """
        try:
            from kitlog.desktop import pdf_writing
            from kitlog.desktop.book_pdf import book_pdf
        except ImportError as error:
            raise SystemFault("sheet.no_library", reason=str(error)) from error
        return book_pdf(content, load, pdf_writing.Paper(paper))

    def refuse_no_screen(self) -> None:
        """Raise ``window.no_screen`` where no window can be opened."""
        if not has_screen(os.environ, sys.platform):
            raise SystemFault("window.no_screen")

    def window(self, path: Path) -> int:
        """Show the window on a data file until it is closed; the exit code.

        Raises:
            SystemFault: ``window.no_screen``; ``window.no_library`` with ``reason``.
        """
        self.refuse_no_screen()
        try:
            from kitlog.desktop.start import start
        except ImportError as error:
            raise SystemFault("window.no_library", reason=str(error)) from error
        from kitlog.files.places import resources_folder

        def bench() -> "Workbench":
            return self.bench(path, create=True)

        return start(bench, resources_folder() / "icons", path.name, open_demo=self._open_demo)

    def _open_demo(self) -> "Workbench":
        path = self.demo_file()
        return self.bench(path, create=False) if path.exists() else self.demo(path)
