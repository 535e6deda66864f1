"""Opening a paper with the system's own viewer, and saving it elsewhere."""

import tempfile
from functools import cache
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog, QWidget

from kitlog.desktop.apart import apart
from kitlog.desktop.desk import Desk
from kitlog.kit.paper import Paper
from kitlog.wording.translate import _


@cache
def _folder() -> "tempfile.TemporaryDirectory[str]":
    """Copies for viewers, gone when the program ends: a viewer might change what it is given."""
    return tempfile.TemporaryDirectory(prefix="kitlog-papers-", ignore_cleanup_errors=True)


def open_paper(desk: Desk, paper: Paper) -> Path:
    """Show a copy of a paper in the system's own viewer; where the copy lies.

    Raises:
        SystemFault: ``paper.*``, ``file.*``.
    """
    folder = Path(_folder().name)
    copy = apart(lambda: desk.bench.save_paper(paper, folder))
    QDesktopServices.openUrl(QUrl.fromLocalFile(str(copy)))
    return copy


def save_paper(desk: Desk, paper: Paper, parent: QWidget) -> Path | None:
    """Save a paper where the pilot says; None if they did not say.

    Raises:
        SystemFault: ``paper.*``, ``file.*``.
    """
    chosen, _kind = QFileDialog.getSaveFileName(parent, _("Save the paper"), desk.bench.paper_file_name(paper))
    return apart(lambda: desk.bench.save_paper(paper, Path(chosen))) if chosen else None
