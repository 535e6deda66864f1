"""Pages as a PDF file: A4 or US letter, vectors and letters; no window is needed, and no screen."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from enum import StrEnum

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF
from PySide6.QtGui import QFont, QFontDatabase, QGuiApplication, QPageLayout, QPageSize, QPdfWriter

from kitlog.fault import SystemFault
from kitlog.paint.sheet_setting import MARGIN_MM, paper_font

DOTS_PER_INCH = 1200
"""Units of the pages: fine enough that no line moves."""


class Paper(StrEnum):
    """The papers there are."""

    A4 = "A4"
    LETTER = "letter"


_SIZES = {Paper.A4: QPageSize.PageSizeId.A4, Paper.LETTER: QPageSize.PageSizeId.Letter}


def written(title: str, paper: Paper, paint: Callable[[QPdfWriter, QFont], object]) -> bytes:
    """What `paint` paints on the pages of a writer, with the font of the body.

    Raises:
        SystemFault: ``sheet.no_font``.
    """
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    with _letters():
        writer = QPdfWriter(buffer)
        writer.setResolution(DOTS_PER_INCH)
        writer.setPageLayout(_layout(paper))
        writer.setTitle(title)
        writer.setCreator("kitlog")
        paint(writer, paper_font(QGuiApplication.font()))
    return bytes(buffer.data().data())


def _layout(paper: Paper) -> QPageLayout:
    margins = QMarginsF(MARGIN_MM, MARGIN_MM, MARGIN_MM, MARGIN_MM)
    size = QPageSize(_SIZES[paper])
    return QPageLayout(size, QPageLayout.Orientation.Portrait, margins, QPageLayout.Unit.Millimeter)


@contextmanager
def _letters() -> Iterator[None]:
    """An application that knows the fonts: the running one, or one without a screen for as long as it takes."""
    application = QGuiApplication.instance() or QGuiApplication(["kitlog", "-platform", "offscreen"])
    if not QFontDatabase.families():
        raise SystemFault("sheet.no_font")
    yield
    del application
