"""Opening the window: application, theme, desk, first paint, faults at the door."""

import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QSettings
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication

from kitlog.desktop import look
from kitlog.desktop.application import prepared
from kitlog.desktop.desk import Desk
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.fault import Fault
from kitlog.paint.icons import IconSet
from kitlog.wording.faults import fault_text
from kitlog.wording.words import first_upper
from kitlog.workbench.workbench import Workbench

FIRST_PAINT = "KITLOG_FIRST_PAINT"
"""Set to 1, the window says on stdout that it has painted, and closes: for measuring."""

FAULT_CODE = 3


def run_window(
    bench: Workbench | Callable[[], Workbench],
    icons: Path,
    *,
    open_demo: Callable[[], Workbench] | None = None,
    settings: QSettings | None = None,
    arguments: Sequence[str] = ("kitlog",),
) -> int:
    """Show the window until it is closed.

    Args:
        bench: the workbench, or what opens it; its faults are then said in a dialog.
        icons: folder of the SVG icons.
        open_demo: opens the demo kit in a data file of its own; None = not offered.
        settings: where geometry and choices are kept; the platform's place if not given.
        arguments: the command line, program name first.

    Returns:
        The exit code: 0, or 3 if the data file could not be opened.
    """
    application = prepared(arguments)
    try:
        opened = bench() if callable(bench) else bench
    except Fault as fault:
        return say_at_the_door(fault)
    memory = WindowMemory(settings if settings is not None else QSettings("kitlog", "kitlog"))
    lay_over(memory.scheme(), application)
    windows = Windows(IconSet(icons), memory, open_demo)
    windows.open(opened)
    application.styleHints().colorSchemeChanged.connect(lambda _now: follow_system(memory, application))
    code = application.exec()
    windows.let_go()
    return code


class Windows:
    """The windows of one run, each on a data file of its own."""

    def __init__(self, icons: IconSet, memory: WindowMemory, open_demo: Callable[[], Workbench] | None) -> None:
        self._icons, self._memory, self._open_demo = icons, memory, open_demo
        self._open: list[Window] = []

    def open(self, bench: Workbench) -> Window:
        """Show a window on a workbench; one on an empty kit gives way to it."""
        made = Window(Desk(bench, self._icons, self._demo if self._open_demo else None), self._memory)
        for window in self._open:
            if not window.desk.bench.items():
                window.close()
        self._open.append(made)
        made.setWindowIcon(self._icon())
        if os.environ.get(FIRST_PAINT) == "1":
            made.painted.connect(_say_painted)
        made.show()
        return made

    def let_go(self) -> None:
        """Close every window and its data file."""
        for window in self._open:
            window.close()
            window.desk.bench.close()

    def _demo(self) -> None:
        if self._open_demo is not None:
            self.open(self._open_demo())

    def _icon(self) -> QIcon:
        return self._icons.icon("kitlog", 64, look.tokens().accent)


def _say_painted() -> None:
    sys.stdout.write("first paint\n")
    sys.stdout.flush()
    QApplication.quit()


def follow_system(memory: WindowMemory, application: QApplication) -> None:
    """Take the system's theme again where the pilot left it to the system."""
    if memory.scheme() is Scheme.SYSTEM:
        lay_over(Scheme.SYSTEM, application)


def say_at_the_door(fault: Fault) -> int:
    """Say in a dialog why the data file cannot be opened; the exit code."""
    from PySide6.QtWidgets import QMessageBox

    said = fault_text(fault)
    box = QMessageBox(QMessageBox.Icon.Warning, "kitlog", first_upper(said.what), QMessageBox.StandardButton.Close)
    box.setInformativeText("\n".join(part for part in (said.where, said.remedy) if part))
    box.exec()
    return FAULT_CODE
