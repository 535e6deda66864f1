"""Starting: the frame of the window is there at once; then the data file is opened and the window filled.

Only what the frame needs is imported before its first paint.
"""

import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSettings, QTimer

from kitlog.desktop.application import prepared
from kitlog.desktop.opening import Opening
from kitlog.desktop.scheme import lay_over
from kitlog.desktop.window_memory import WindowMemory
from kitlog.fault import Fault
from kitlog.paint.icons import IconSet

if TYPE_CHECKING:
    from kitlog.workbench.workbench import Workbench

FIRST_PAINT = "KITLOG_FIRST_PAINT"
"""Set to 1, the program says on stdout that its window has painted, and ends: for measuring."""


def start(
    open_bench: Callable[[], "Workbench"],
    icons: Path,
    file_name: str,
    *,
    open_demo: Callable[[], "Workbench"] | None = None,
    settings: QSettings | None = None,
    arguments: Sequence[str] = ("kitlog",),
) -> int:
    """Show the window until it is closed.

    Args:
        open_bench: opens the data file; its faults are said in a dialog.
        icons: folder of the SVG icons.
        file_name: what the title says while the file is being opened.
        open_demo: opens the demo kit in a data file of its own; None = not offered.
        settings: where geometry and choices are kept; the platform's place if not given.
        arguments: the command line, program name first.

    Returns:
        The exit code: 0, or 3 if the data file could not be opened.
    """
    application = prepared(arguments)
    memory = WindowMemory(settings if settings is not None else QSettings("kitlog", "kitlog"))
    lay_over(memory.scheme(), application)
    starting = _Starting(open_bench, IconSet(icons), memory, open_demo, file_name)
    code = application.exec()
    starting.let_go()
    return code


class _Starting(QObject):
    """From the frame to the filled window."""

    def __init__(
        self,
        open_bench: Callable[[], "Workbench"],
        icons: IconSet,
        memory: WindowMemory,
        open_demo: Callable[[], "Workbench"] | None,
        file_name: str,
    ) -> None:
        super().__init__()
        self._open_bench, self._icons, self._memory, self._open_demo = open_bench, icons, memory, open_demo
        self._let_go: Callable[[], None] = lambda: None
        self._frame = Opening(icons, memory, file_name)
        self._frame.painted.connect(self._painted)
        self._frame.show()

    def let_go(self) -> None:
        """Close what is open."""
        self._let_go()

    def _painted(self) -> None:
        if os.environ.get(FIRST_PAINT) == "1":
            sys.stdout.write("first paint\n")
            sys.stdout.flush()
            QTimer.singleShot(0, self._end)
        else:
            QTimer.singleShot(0, self._fill)

    def _end(self) -> None:
        from PySide6.QtWidgets import QApplication

        self._frame.close()
        QApplication.exit(0)

    def _fill(self) -> None:
        from PySide6.QtWidgets import QApplication

        from kitlog.desktop.windows import Windows, follow_system, say_at_the_door

        try:
            bench = self._open_bench()
        except Fault as fault:
            QApplication.exit(say_at_the_door(fault))
            self._frame.close()
            return
        windows = Windows(self._icons, self._memory, self._open_demo)
        windows.open(bench)
        self._frame.close()
        self._let_go = windows.let_go
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.styleHints().colorSchemeChanged.connect(lambda _now: follow_system(self._memory, application))
