"""Saving the sheet of the outing that is being packed: as one web page, or as PDF to print."""

from pathlib import Path

from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QFileDialog, QWidget

from kitlog.desktop.apart import apart
from kitlog.desktop.desk import Desk
from kitlog.desktop.pdf_writing import Paper
from kitlog.desktop.sheet_pdf import drawn_days, sheet_pdf
from kitlog.files import atomic
from kitlog.files.sheet_html import sheet_html
from kitlog.packing.assessment import Assessment
from kitlog.wording.translate import _


def proposed(desk: Desk, assessment: Assessment, ending: str) -> str:
    """A name for the file, beside the data file."""
    return str(desk.path.with_name(f"{assessment.outing.first_day:%Y-%m-%d} {_('sheet')}{ending}"))


def ask_html(desk: Desk, assessment: Assessment, parent: QWidget) -> Path | None:
    """Where the web page is to lie; None if it is not to be saved."""
    name = proposed(desk, assessment, ".html")
    chosen, _kind = QFileDialog.getSaveFileName(parent, _("Save the sheet"), name, _("Web page (*.html)"))
    return Path(chosen) if chosen else None


def write_html(desk: Desk, assessment: Assessment, to: Path) -> bool:
    """Write the web page; whether it was written. A fault of the world is shown by the window."""
    page = sheet_html(assessment, desk.names(), desk.bench.library, desk.bench.now())
    return desk.perform(lambda: atomic.write(to, page.encode("utf-8")))


def ask_pdf(desk: Desk, assessment: Assessment, parent: QWidget) -> tuple[Path, Paper] | None:
    """Where the PDF is to lie and for which paper, that of the place first; None if it is not to be saved."""
    kinds = {_("PDF on A4 (*.pdf)"): Paper.A4, _("PDF on US letter (*.pdf)"): Paper.LETTER}
    if QLocale().measurementSystem() == QLocale.MeasurementSystem.ImperialUSSystem:
        kinds = dict(reversed(kinds.items()))
    name = proposed(desk, assessment, ".pdf")
    chosen, kind = QFileDialog.getSaveFileName(parent, _("Save the sheet as PDF"), name, ";;".join(kinds))
    return (Path(chosen), kinds.get(kind, next(iter(kinds.values())))) if chosen else None


def write_pdf(desk: Desk, assessment: Assessment, to: Path, paper: Paper) -> bool:
    """Write the PDF, with all days drawn; whether it was written. A fault of the world is shown by the window."""
    bench = desk.bench
    forecast = apart(lambda: drawn_days(assessment, bench.library))

    def write() -> None:
        names = desk.names()
        atomic.write(to, sheet_pdf(assessment, names, bench.library, bench.now(), paper=paper, forecast=forecast))

    return desk.perform(write)
