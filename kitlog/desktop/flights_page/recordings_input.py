"""Recordings that were handed in: chosen files, a chosen folder, what is dropped."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtWidgets import QFileDialog, QWidget

from kitlog.fault import InputFault
from kitlog.wording.translate import _, ngettext


def dropped(urls: Sequence[QUrl]) -> list[Path]:
    """The files and folders among what is dropped.

    Raises:
        InputFault: ``flight.no_files``: nothing of it is a file of this computer.
    """
    paths = [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
    if not paths:
        raise InputFault("flight.no_files")
    return paths


def said_of_drop(urls: Sequence[QUrl]) -> tuple[str, str]:
    """What letting go would do.

    Raises:
        InputFault: as `dropped`.
    """
    paths = dropped(urls)
    if len(paths) == 1:
        what = _("Let go to read {file}").format(file=paths[0].name)
    else:
        what = ngettext("Let go to read {n} file", "Let go to read {n} files", len(paths)).format(n=len(paths))
    return what, _("Nothing is entered before you confirm it.")


def chosen_files(parent: QWidget) -> list[Path]:
    """Ask for recordings; empty if the pilot thinks better of it."""
    kinds = ";;".join((_("Recordings (*.igc *.IGC)"), _("All files (*)")))
    names, _kind = QFileDialog.getOpenFileNames(parent, _("Read recordings"), "", kinds)
    return [Path(name) for name in names]


def chosen_folder(parent: QWidget) -> list[Path]:
    """Ask for a folder with recordings."""
    name = QFileDialog.getExistingDirectory(parent, _("Read a folder of recordings"))
    return [Path(name)] if name else []
