"""The chapters of a printed book as groups of blocks: facts, entries, photos, pictures, lines to write on."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from PySide6.QtCore import QLineF
from PySide6.QtGui import QImage, QPainter

from kitlog.paint import measurement_lines
from kitlog.paint.book_photo import empty_block, photo_block
from kitlog.paint.due_mark import DUE_MARKS
from kitlog.paint.mark import Mark
from kitlog.paint.measurement_picture import MeasurementPicture
from kitlog.paint.sheet_block import Block, Frame, Group, Paint
from kitlog.paint.sheet_lines import (
    BODY,
    NAME,
    QUIET,
    SMALL,
    STRONG,
    WRITING,
    all_of,
    beside,
    kept,
    lines,
    lower,
    over,
    picture,
    shape,
    space,
    stack,
    write,
    write_right,
    writing,
)
from kitlog.paint.sheet_row import BLANK, PLAIN, closed
from kitlog.paint.sheet_setting import MM_PER_INCH, Setting
from kitlog.paint.strokes import pen
from kitlog.wording.book_parts import BookEntry, Fact, Photo
from kitlog.wording.translate import _

WHEN, LABEL, SHAPE, BETWEEN = 100.0, 128.0, 17.0, 12.0
"""Room of a day, of a label, of the shape of a state, between columns."""

SMALL_MM, LARGE_MM = 42.0, 88.0
"""Width of a photo beside its item, and of one in a chapter of photos."""

LANES = 6
"""So many lanes of measurements stay together."""


@dataclass(frozen=True, slots=True)
class Album:
    """The photos of a book by the hash of their bytes; None where the bytes are no picture that can be read."""

    photos: Mapping[str, QImage | None]

    def shown(self, photo: Photo) -> QImage | None:
        """The photo itself, None where it cannot be shown."""
        return None if photo.lacking else self.photos.get(photo.paper.sha256)


def fact(setting: Setting, words: Fact, width: float) -> Group:
    """A label, and what stands behind it."""
    label, figure = words
    left = setting.px(LABEL)
    high = setting.text.line(BODY.role)
    first, *others = lines(setting, figure or BLANK, BODY, width, left)
    names = lines(setting, label, QUIET, left - setting.px(BETWEEN / 2))
    blocks = (
        [beside(tuple(names), (first, *others), 0.0)]
        if len(names) > 1
        else [
            over(first, write(setting, label, QUIET, 0.0, high)),
            *others,
        ]
    )
    return Group(closed(setting, blocks, PLAIN, width))


def entry(setting: Setting, one: BookEntry, width: float, album: Album) -> Group:
    """Day, title and figure, what else there is to say, and photos under it."""
    left = _left(setting, one)
    right = setting.text.width(one.figure, STRONG.role) + setting.px(BETWEEN) if one.figure else 0.0
    titles = lines(setting, one.title or BLANK, NAME, width - right, left)
    title = stack(_struck(setting, line, width) for line in titles) if one.struck else stack(titles)
    painted = (*_before(setting, one, titles[0].height), title.paint, *_end(setting, one, width))
    blocks = [Block(title.height, all_of(painted))]  # read as one: day, all of the title, figure
    for text in one.said:
        blocks += lines(setting, text, SMALL, width, left)
    blocks += _photos(setting, one.photos, width, album)
    return Group(closed(setting, blocks, PLAIN, width))


def _left(setting: Setting, one: BookEntry) -> float:
    return setting.px(WHEN if one.when else SHAPE if one.state else 0.0)


def _before(setting: Setting, one: BookEntry, high: float) -> Iterator[Paint]:
    if one.when:
        yield write(setting, one.when, BODY, 0.0, high)
    elif one.state is not None and DUE_MARKS[one.state] is not Mark.NONE:
        yield shape(setting, DUE_MARKS[one.state], 0.0, high)


def _end(setting: Setting, one: BookEntry, width: float) -> Iterator[Paint]:
    if one.figure:
        yield write_right(setting, one.figure, STRONG, width, setting.text.line(NAME.role))


def _struck(setting: Setting, block: Block, width: float) -> Block:
    """A line through it; that it was struck is said as well."""

    def through(painter: QPainter, x: float, y: float) -> None:
        painter.setPen(pen(setting.tokens.ink, setting.px(1.0)))
        middle = y + block.height / 2
        painter.drawLine(QLineF(x, middle, x + width, middle))

    return over(block, through)


def _photos(setting: Setting, photos: Sequence[Photo], width: float, album: Album) -> list[Block]:
    if not photos:
        return []
    wide = _mm(setting, SMALL_MM)
    across = max(int((width + setting.px(BETWEEN)) // (wide + setting.px(BETWEEN))), 1)
    rows = [space(setting.px(6))]
    for batch in (photos[at : at + across] for at in range(0, len(photos), across)):
        columns = [stack(_one(setting, photo, (wide, wide * 3 / 4), album)) for photo in batch]
        rows += [_row(columns, wide + setting.px(BETWEEN)), space(setting.px(6))]
    return rows


def _row(columns: Sequence[Block], step: float) -> Block:
    row = columns[-1]
    for column in reversed(columns[:-1]):
        row = beside((column,), (row,), step)
    return row


def _one(setting: Setting, photo: Photo, box: tuple[float, float], album: Album) -> list[Block]:
    """A photo and its caption, or what stands in its place."""
    image = album.shown(photo)
    if image is None:
        why = photo.lacking or _("it cannot be read as a picture")
        text = _("Photo not shown: {photo}, {why}.").format(photo=photo.caption, why=why)
        return [empty_block(setting, text, box[0])]
    return [photo_block(setting, image, *box), *lines(setting, photo.caption, QUIET, box[0])]


def photos(setting: Setting, shown: Sequence[Photo], frame: Frame, album: Album) -> Iterator[Group]:
    """Large photos, each with its caption."""
    wide = min(_mm(setting, LARGE_MM), frame.column_width(2))
    for photo in shown:
        yield Group(kept(_one(setting, photo, (wide, wide * 3 / 4), album)), gap=setting.px(10), whole=True)


def measured(setting: Setting, drawn: MeasurementPicture, width: float) -> Iterator[Group]:
    """The lanes of what was measured, a few at a time."""
    for at in range(0, len(drawn.lines), LANES):
        some = replace(drawn, lines=drawn.lines[at : at + LANES])
        yield Group((_lanes(setting, some, width),), gap=setting.px(6))


def _lanes(setting: Setting, drawn: MeasurementPicture, width: float) -> Block:
    high = measurement_lines.measure(drawn, setting.base, setting.device)
    return picture(
        high, setting, width, lambda painter, rect: measurement_lines.paint(painter, rect, drawn, setting.tokens)
    )


def to_write(setting: Setting, label: str, width: float) -> Group:
    """A line to write on behind its label."""
    start = setting.text.width(label, BODY.role) + setting.px(8)
    high, line = setting.px(WRITING + 8), setting.text.line(BODY.role)
    words = lower(write(setting, label, BODY, 0.0, line), high - line)
    return Group((Block(high, all_of((words, writing(setting, start, width, high)))),))


def said(setting: Setting, text: str, width: float) -> Group:
    """A paragraph."""
    return Group(tuple(lines(setting, text, QUIET, width)), gap=setting.px(4))


def _mm(setting: Setting, mm: float) -> float:
    return mm / MM_PER_INCH * setting.device.logicalDpiX()
