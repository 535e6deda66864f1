"""What the command line needs from the composition root, which stands above it."""

from collections.abc import Callable, Mapping
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from kitlog.kit.paper import Paper
    from kitlog.outing.library import Library
    from kitlog.packing.assessment import Assessment
    from kitlog.wording.book_parts import BookContent
    from kitlog.workbench.workbench import Workbench


class Doors(Protocol):
    """The ways to data file and window; `kitlog.app.App` is the real one."""

    @property
    def clock(self) -> Callable[[], datetime]:
        """The present moment, aware."""
        ...

    def data_file(self) -> Path:
        """The data file where nothing else is said."""
        ...

    def demo_file(self) -> Path:
        """The data file of the demo where nothing else is said."""
        ...

    def bench(self, path: Path, *, create: bool) -> "Workbench":
        """The workbench on a data file."""
        ...

    def demo(self, path: Path) -> "Workbench":
        """A new data file filled with the demo scenario."""
        ...

    def sheet_pdf(self, assessment: "Assessment", names: Mapping[str, str], library: "Library", paper: str) -> bytes:
        """The sheet of an outing as PDF, on A4 or letter; no screen is needed."""
        ...

    def book_pdf(self, content: "BookContent", load: "Callable[[Paper], bytes]", paper: str) -> bytes:
        """A service book or an inventory as PDF, on A4 or letter; no screen is needed."""
        ...

    def refuse_no_screen(self) -> None:
        """Raise a fault where no window can be opened."""
        ...

    def window(self, path: Path) -> int:
        """Show the window; the exit code."""
        ...
