"""The printed sheet of an outing: laid out for the paper of a device, and painted on it page by page."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from PySide6.QtGui import QFont, QPagedPaintDevice, QPainter

from kitlog.paint import sheet_parts, sheet_pictures
from kitlog.paint.sheet_block import Block, Group, Part, Spot
from kitlog.paint.sheet_flow import laid
from kitlog.paint.sheet_lines import BODY, QUIET, STRONG, Style, heading, kept, lines, over, space, write_right
from kitlog.paint.sheet_margins import Margins
from kitlog.paint.sheet_pictures import SheetPictures
from kitlog.paint.sheet_setting import Setting
from kitlog.paint.type_scale import Role
from kitlog.wording.sheet_content import SheetContent
from kitlog.wording.sheet_words import head
from kitlog.wording.translate import _
from kitlog.wording.words import ALARMS_NOBODY, STANCE

Rows = Callable[[float], tuple[Group, ...]]


@dataclass(frozen=True)
class Sheet:
    """Words and pictures of a sheet."""

    content: SheetContent
    pictures: SheetPictures = field(default_factory=SheetPictures)


def paint_sheet(device: QPagedPaintDevice, sheet: Sheet, font: QFont) -> int:
    """Paint a sheet on the pages of a device whose paper and margins have been set; the number of pages.

    Args:
        device: nothing must have been painted on it yet.
        sheet: what.
        font: of the body, `sheet_setting.paper_font`.
    """
    pages = SheetPages(sheet, Setting(font, device))
    with QPainter(device) as painter:
        for number in range(pages.count):
            if number:
                device.newPage()
            pages.paint(painter, number)
    return pages.count


class SheetPages:
    """A sheet laid out on pages.

    Args:
        sheet: words and pictures.
        setting: letters, colours and measures of the device.

    Attributes:
        frame: the room on each page.
        pages: what stands where.
    """

    def __init__(self, sheet: Sheet, setting: Setting) -> None:
        self._sheet, self._setting = sheet, setting
        content = sheet.content
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
        content, setting = self._sheet.content, self._setting
        yield Part((Group(tuple(self._title())),))
        yield self._part("findings", lambda width: sheet_parts.findings(setting, content.findings, width), 2)
        yield self._part("power", lambda _width: sheet_pictures.power(setting, self._sheet.pictures, self.frame))
        mass = head("mass") if self._sheet.pictures.weight is None else (head("mass")[0], "")  # the ruler says the rest
        yield Part(self._mass(self.frame.width), self._head(mass))
        yield self._part("list", lambda width: tuple(sheet_parts.zone(setting, z, width) for z in content.zones), 2)
        yield Part(tuple(self._before_flying(self.frame.column_width(2))), None, 2)
        yield self._part("cautions", self._cautions)

    def _part(self, name: str, rows: Rows, columns: int = 1) -> Part:
        return Part(rows(self.frame.column_width(columns)), self._head(head(name)), columns)

    def _head(self, words: tuple[str, str]) -> Group:
        return Group(heading(self._setting, words, self.frame.width), gap=self._setting.px(16))

    def _title(self) -> Iterator[Block]:
        content, setting, width = self._sheet.content, self._setting, self.frame.width
        first, *others = lines(setting, content.title, Style(Role.HEADING), width)
        taken = setting.text.width(content.title, Role.HEADING) + setting.text.width(content.counts, STRONG.role)
        is_beside = not others and taken + setting.px(24) <= width
        counts = Block(first.height, write_right(setting, content.counts, STRONG, width, first.height))
        yield over(counts, first.paint) if is_beside else first
        yield from others
        yield from () if is_beside else lines(setting, content.counts, STRONG, width)
        yield from lines(setting, content.name, Style(Role.SECTION), width)
        yield from lines(setting, content.what, BODY, width)
        yield from lines(setting, content.valid, QUIET, width)

    def _mass(self, width: float) -> tuple[Group, ...]:
        """The ruler, if there is one, the figures, and the weighing that would narrow them most."""
        content, setting, shown = self._sheet.content, self._setting, self._sheet.pictures.weight
        ruler = () if shown is None else (sheet_pictures.weight(setting, shown, width), space(setting.px(10)))
        figures = sheet_parts.masses(setting, content.masses, self.frame)
        return (Group(kept([*ruler, *figures, *lines(setting, content.sharpen, QUIET, width)])),)

    def _before_flying(self, width: float) -> Iterator[Group]:
        content, setting = self._sheet.content, self._setting
        if content.charging:
            yield sheet_parts.charging(setting, content.charging, width)
        if content.launch:
            yield sheet_parts.launch(setting, content.launch, width)
        yield sheet_parts.people(setting, content.people, width)
        if content.questions:
            yield sheet_parts.questions(setting, content.questions, width)

    def _cautions(self, width: float) -> tuple[Group, ...]:
        said = [block for words in (STANCE, ALARMS_NOBODY) for block in lines(self._setting, _(words), BODY, width)]
        return (Group(kept(said)),)
