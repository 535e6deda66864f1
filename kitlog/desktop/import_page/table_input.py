"""A table that was handed in: a file that was chosen or dropped, or what was pasted."""

import stat
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QMimeData, QUrl

from kitlog.fault import InputFault
from kitlog.wording.translate import _

if TYPE_CHECKING:
    from kitlog.files.table.cells import Grid

MOST_BYTES = 20_000_001
"""More than any table may have; its reader then says that it is too large."""

Tell = Callable[[float], None]
"""Is told the share (0..1) that is done."""


@dataclass(frozen=True, slots=True)
class TableInput:
    """What was handed in; it is read when `grid` is called.

    Attributes:
        name: how it is called in messages.
        path: the file, None for what was pasted; text: what was pasted.
        sheet: the sheet of a workbook that is wanted; empty = the one in front.
    """

    name: str
    path: Path | None = None
    text: str = ""
    sheet: str = ""

    def grid(self, tell: Tell) -> "Grid":
        """Read it; this may take long.

        Raises:
            InputFault: ``file.cannot_read``, ``table.*``, ``csv.*``.
        """
        from kitlog.files.table.open_grid import read_grid, read_pasted

        if self.path is None:
            return read_pasted(self.text, tell)
        data = bytes_of(self.path)
        try:
            return read_grid(data, self.name, tell, self.sheet)
        except InputFault as fault:
            if fault.code != "table.no_sheets":
                raise
            return read_grid(data, self.name, tell)  # no workbook lies there any more

    def service(self) -> Path | None:
        """A service file that lies beside a kit file under the usual names."""
        path = self.path
        if path is None:
            return None
        names = [f"{path.stem}-service.csv", *(["service.csv"] if path.suffix.lower() == ".csv" else [])]
        return next((one for name in names if (one := path.with_name(name)).is_file() and one != path), None)


def of_file(path: Path) -> TableInput:
    """A file that was chosen."""
    return TableInput(path.name, path)


def pasted(data: QMimeData | None) -> TableInput:
    """What the clipboard holds: a file that was copied in a file manager, else text.

    Raises:
        InputFault: ``paste.nothing``: there is no text in it; what `dropped` raises of files.
    """
    urls = data.urls() if data is not None else []
    if urls and all(url.isLocalFile() for url in urls):
        return dropped(urls)
    text = data.text() if data is not None and data.hasText() else ""
    if not text.strip():
        raise InputFault("paste.nothing")
    return TableInput(_("the clipboard"), text=text)


def dropped(urls: Sequence[QUrl]) -> TableInput:
    """What was dropped.

    Raises:
        InputFault: ``drop.several``, ``drop.elsewhere``, ``drop.folder``, ``file.cannot_read``.
    """
    if len(urls) != 1:
        raise InputFault("drop.several", count=len(urls))
    if not urls[0].isLocalFile():
        raise InputFault("drop.elsewhere", value=urls[0].toDisplayString()[:80])
    path = Path(urls[0].toLocalFile())
    if path.is_dir():
        raise InputFault("drop.folder", value=path.name)
    return of_file(path)


def bytes_of(path: Path) -> bytes:
    """The bytes of a file.

    Raises:
        InputFault: ``file.cannot_read`` with ``file`` and ``reason``.
    """
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            raise InputFault("file.cannot_read", file=path.name, reason=_("it is no plain file"))
        with path.open("rb") as handle:
            return handle.read(MOST_BYTES)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputFault("file.cannot_read", file=path.name, reason=reason) from error
