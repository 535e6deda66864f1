"""A service book or an inventory as a PDF file, with its photos."""

from collections.abc import Callable, Iterator

from PySide6.QtGui import QFont, QImage, QPdfWriter

from kitlog.desktop.pdf_writing import Paper, written
from kitlog.fault import SystemFault
from kitlog.kit.paper import Paper as Kept
from kitlog.paint.book_blocks import LARGE_MM, SMALL_MM, Album
from kitlog.paint.book_pages import paint_book
from kitlog.paint.book_photo import photo, pixels
from kitlog.wording.book_parts import BookContent

Load = Callable[[Kept], bytes]
"""Gives the bytes of a paper, or raises a `SystemFault`."""


def book_pdf(content: BookContent, load: Load, paper: Paper = Paper.A4) -> bytes:
    """The pages of a book; no window is needed, and no screen. May be done away from the window.

    Args:
        content: its words.
        load: gives the bytes of a photo.
        paper: what it is for.

    Raises:
        SystemFault: ``sheet.no_font``.
    """

    def paint(writer: QPdfWriter, font: QFont) -> None:
        paint_book(writer, content, Album(dict(_photos(content, load))), font)

    return written(f"{content.title} \u00b7 {content.name}", paper, paint)


def _photos(content: BookContent, load: Load) -> Iterator[tuple[str, QImage | None]]:
    """Every photo, as large as it is shown; one that cannot be loaded or read is said to be on the page."""
    large = {one.paper.sha256 for chapter in content.chapters for one in chapter.photos}
    for one in content.photos:
        longest = pixels(LARGE_MM if one.paper.sha256 in large else SMALL_MM)
        try:
            yield one.paper.sha256, photo(load(one.paper), longest)
        except SystemFault:
            yield one.paper.sha256, None
