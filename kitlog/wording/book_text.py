"""A book on a terminal."""

from collections.abc import Iterator

from kitlog.kit.measured_series import MeasuredSeries
from kitlog.wording.book_parts import BookContent, BookEntry, Chapter, Photo
from kitlog.wording.columns import WIDTH, paragraph, table, wrapped
from kitlog.wording.due_text import SHAPES
from kitlog.wording.figures import day_text
from kitlog.wording.measurement_text import series_text, value_text
from kitlog.wording.translate import _
from kitlog.wording.words import STANCE, first_upper


def book_lines(content: BookContent) -> Iterator[str]:
    """Title, chapters and the stance, as wide as a terminal."""
    yield from wrapped(f"{content.title}: {content.name}", WIDTH)
    yield from wrapped(f"{content.about}; {content.made}", WIDTH)
    for chapter in content.chapters:
        if not chapter.to_write:
            yield ""
            yield from _chapter(chapter)
    yield ""
    yield from wrapped(_(STANCE), WIDTH)


def _chapter(chapter: Chapter) -> Iterator[str]:
    head = f"{chapter.title} ({chapter.remark})" if chapter.remark else chapter.title
    yield from wrapped(head, WIDTH)
    if chapter.facts:
        yield from table([(f"{label}:", figure) for label, figure in chapter.facts], (False, False), 2)
    for entry in chapter.entries:
        yield from _entry(entry)
    for series in chapter.measured:
        yield from paragraph(_series(series), 2)
    for photo in chapter.photos:
        yield from paragraph(_photo(photo), 2)
    for text in chapter.said:
        for line in text.splitlines():
            yield from paragraph(line, 2)


def _entry(entry: BookEntry) -> Iterator[str]:
    shape = f"{SHAPES.get(entry.state, ' ')} " if entry.state else ""
    title = f"{entry.when}: {entry.title}" if entry.when else entry.title
    head = f"{shape}{title}, {entry.figure}" if entry.figure else f"{shape}{title}"
    yield from paragraph(_("[struck] {entry}").format(entry=head) if entry.struck else head, 2)
    for text in entry.said:
        for line in text.splitlines():
            yield from paragraph(line, 6)


def _series(series: MeasuredSeries) -> str:
    values = "; ".join(f"{day_text(day)} {value_text(value, series.first.unit)}" for day, value in series.points)
    return f"{first_upper(series_text(series.first))}: {values}"


def _photo(photo: Photo) -> str:
    return _("{photo} ({why})").format(photo=photo.caption, why=photo.lacking) if photo.lacking else photo.caption
