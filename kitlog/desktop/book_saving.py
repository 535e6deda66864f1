"""Saving a service book or an inventory as PDF: asked where, made away from the window, written whole."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QFileDialog, QWidget

from kitlog.desktop.apart import apart
from kitlog.desktop.book_pdf import book_pdf
from kitlog.desktop.desk import Desk
from kitlog.desktop.pdf_writing import Paper
from kitlog.files import atomic
from kitlog.wording.book_parts import BookContent
from kitlog.wording.translate import _

CURRENCY = "currency"
"""The preference that names the pilot's currency: values of items have none of their own."""

_UNFIT = frozenset('<>:"/\\|?*')


def usual_paper() -> Paper:
    """The paper of the place."""
    us = QLocale().measurementSystem() == QLocale.MeasurementSystem.ImperialUSSystem
    return Paper.LETTER if us else Paper.A4


def ask_where(desk: Desk, name: str, parent: QWidget) -> Path | None:
    """Where the PDF is to lie, proposed beside the data file; None if it is not to be saved."""
    plain = "".join("_" if char in _UNFIT else char for char in name).strip(" .")
    proposed = str(desk.path.with_name(f"{desk.bench.now():%Y-%m-%d} {plain}.pdf"))
    chosen, _kind = QFileDialog.getSaveFileName(parent, _("Save as PDF"), proposed, _("PDF (*.pdf)"))
    if not chosen:
        return None
    to = Path(chosen)
    return to if to.suffix else to.with_suffix(".pdf")


def write_book(desk: Desk, content: Callable[[], BookContent], paper: Paper, to: Path) -> None:
    """Make the pages and write the file; the window is painted meanwhile.

    Args:
        desk: the workbench.
        content: makes the words; it looks through the papers, which may be large.
        paper: what it is for.
        to: the file.

    Raises:
        SystemFault: ``file.*``, ``sheet.no_font``.
    """
    load = desk.bench.paper_bytes
    atomic.write(to, apart(lambda: book_pdf(content(), load, paper)))
