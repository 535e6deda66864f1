"""The window's frame while the data file is being opened: there at once, filled a moment later."""

from PySide6.QtCore import QRect, Qt, Signal
from PySide6.QtGui import QPaintEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QGridLayout, QMainWindow, QStackedWidget

from kitlog.desktop import look
from kitlog.desktop.ground import Ground
from kitlog.desktop.parts.text import Text
from kitlog.desktop.rail import Rail
from kitlog.desktop.status_line import StatusLine
from kitlog.desktop.window_memory import WindowMemory
from kitlog.paint.icons import IconSet
from kitlog.wording.translate import _


class Opening(QMainWindow):
    """Paper, sheet, rail and the stance; it gives way to the window on the workbench.

    Attributes:
        painted: it has been painted for the first time.
    """

    painted = Signal()

    def __init__(self, icons: IconSet, memory: WindowMemory, file_name: str) -> None:
        super().__init__()
        self._painted_once = False
        self.setWindowTitle(f"kitlog, {file_name}")
        self.setWindowIcon(icons.icon("kitlog", 64, look.tokens().accent))
        self._ground, self._rail, self._sheet = Ground(), Rail(icons), QStackedWidget()
        self._assemble(_("Opening {file}").format(file=file_name))
        self._rail.open(memory.page())
        self._rail.setEnabled(False)
        memory.give_back(self)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Say once that it is there."""
        super().paintEvent(event)
        if not self._painted_once:
            self._painted_once = True
            self.painted.emit()

    def showEvent(self, event: QShowEvent) -> None:
        """Place sheet and tab."""
        super().showEvent(event)
        self._place()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place sheet and tab anew."""
        super().resizeEvent(event)
        self._place()

    def _assemble(self, says: str) -> None:
        px = look.px
        self.setCentralWidget(self._ground)
        grid = self._grid = QGridLayout(self._ground)
        grid.setContentsMargins(0, px(40), px(16), 0)
        grid.setSpacing(0)
        grid.setRowMinimumHeight(0, px(48))
        grid.addWidget(self._rail, 1, 0)
        grid.addWidget(self._sheet, 1, 1)
        grid.addWidget(StatusLine(), 2, 1)
        grid.setRowStretch(1, 1)
        grid.setColumnStretch(1, 1)
        text = Text(says)
        text.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._sheet.addWidget(text)

    def _place(self) -> None:
        self._grid.activate()
        tab = self._rail.open_tab()
        origin = tab.mapTo(self._ground, tab.rect().topLeft())
        self._ground.lay(self._sheet.geometry(), QRect(origin, tab.size()))
