"""A printed book, of one item or of the whole kit: laid out for the paper of a device, and painted page by page."""

from collections.abc import Iterator

from PySide6.QtGui import QFont, QPagedPaintDevice, QPainter

from kitlog.paint import book_blocks
from kitlog.paint.book_blocks import Album
from kitlog.paint.measurement_picture import picture_of
from kitlog.paint.sheet_block import Block, Group, Part, Spot
from kitlog.paint.sheet_flow import laid
from kitlog.paint.sheet_lines import QUIET, Style, heading, lines
from kitlog.paint.sheet_margins import Margins
from kitlog.paint.sheet_setting import Setting
from kitlog.paint.type_scale import Role
from kitlog.wording.book_parts import BookContent, Chapter


def paint_book(device: QPagedPaintDevice, content: BookContent, album: Album, font: QFont) -> int:
    """Paint a book on the pages of a device whose paper and margins have been set; the number of pages.

    Args:
        device: nothing must have been painted on it yet.
        content: its words.
        album: its photos.
        font: of the body, `sheet_setting.paper_font`.
    """
    pages = BookPages(content, album, Setting(font, device))
    with QPainter(device) as painter:
        for number in range(pages.count):
            if number:
                device.newPage()
            pages.paint(painter, number)
    return pages.count


class BookPages:
    """A book laid out on pages.

    Args:
        content: its words.
        album: its photos.
        setting: letters, colours and measures of the device.

    Attributes:
        frame: the room on each page.
        pages: what stands where.
    """

    def __init__(self, content: BookContent, album: Album, setting: Setting) -> None:
        self._content, self._album, self._setting = content, album, setting
        self._margins = Margins(setting, f"{content.title} \u00b7 {content.name}", content.made)
        self.frame = self._margins.frame
        self.pages: tuple[tuple[Spot, ...], ...] = laid(tuple(self._parts()), self.frame)

    @property
    def count(self) -> int:
        """How many pages."""
        return len(self.pages)

    def paint(self, painter: QPainter, number: int) -> None:
        """Paint one page, counted from 0."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if number:
            self._margins.head(painter)
        for spot in self.pages[number]:
            spot.block.paint(painter, spot.x, spot.y)
        self._margins.foot(painter, number, self.count)

    def _parts(self) -> Iterator[Part]:
        yield Part((Group(tuple(self._title())),))
        for chapter in self._content.chapters:
            head: Group | None = self._head(chapter)
            for part in self._chapter(chapter):
                if part.groups:
                    yield Part(part.groups, head, part.columns)
                    head = None

    def _title(self) -> Iterator[Block]:
        content, setting, width = self._content, self._setting, self.frame.width
        yield from lines(setting, content.title, Style(Role.HEADING), width)
        yield from lines(setting, content.name, Style(Role.SECTION), width)
        yield from lines(setting, content.about, QUIET, width)

    def _head(self, chapter: Chapter) -> Group:
        words = chapter.title, chapter.remark
        return Group(heading(self._setting, words, self.frame.width), gap=self._setting.px(16))

    def _chapter(self, chapter: Chapter) -> Iterator[Part]:
        setting, frame, half = self._setting, self.frame, self.frame.column_width(2)
        yield Part(tuple(book_blocks.fact(setting, one, half) for one in chapter.facts), None, 2)
        yield Part(tuple(book_blocks.entry(setting, one, frame.width, self._album) for one in chapter.entries))
        drawn = picture_of(chapter.measured)
        if drawn is not None:
            yield Part(tuple(book_blocks.measured(setting, drawn, frame.width)))
        yield Part(tuple(book_blocks.photos(setting, chapter.photos, frame, self._album)), None, 2)
        yield Part(tuple(book_blocks.said(setting, text, frame.width) for text in chapter.said))
        yield Part(tuple(book_blocks.to_write(setting, label, frame.width) for label in chapter.to_write))
