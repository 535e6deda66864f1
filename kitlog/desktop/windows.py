"""The windows of one run, and what is said at the door when a data file cannot be opened."""

from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication, QMessageBox

from kitlog.desktop import look
from kitlog.desktop.desk import Desk
from kitlog.desktop.scheme import Scheme, lay_over
from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.fault import Fault
from kitlog.paint.icons import IconSet
from kitlog.wording.faults import fault_text
from kitlog.wording.words import first_upper
from kitlog.workbench.workbench import Workbench

FAULT_CODE = 3

REMIND_AFTER_MS = 300
"""What falls due is said once, at the start of the first window, after all that the pilot came for is there."""


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
        if not self._open:
            made.painted.connect(lambda: QTimer.singleShot(REMIND_AFTER_MS, made, made.remind))
        made.painted.connect(lambda: QTimer.singleShot(REMIND_AFTER_MS, made, made.acts.tell_lost_papers))
        self._open.append(made)
        made.setWindowIcon(self._icon())
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


def follow_system(memory: WindowMemory, application: QApplication) -> None:
    """Take the system's theme again where the pilot left it to the system."""
    if memory.scheme() is Scheme.SYSTEM:
        lay_over(Scheme.SYSTEM, application)


def say_at_the_door(fault: Fault) -> int:
    """Say in a dialog why the data file cannot be opened; the exit code."""
    said = fault_text(fault)
    box = QMessageBox(QMessageBox.Icon.Warning, "kitlog", first_upper(said.what), QMessageBox.StandardButton.Close)
    box.setInformativeText("\n".join(part for part in (said.where, said.remedy) if part))
    box.exec()
    return FAULT_CODE
