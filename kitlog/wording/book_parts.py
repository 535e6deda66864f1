"""What a printed book is made of: chapters of facts, entries, photos and lines to write on.

Paper and terminal differ in looks alone.
"""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from kitlog.kit.due import DueState
from kitlog.kit.measured_series import MeasuredSeries
from kitlog.kit.paper import MediaType, Paper
from kitlog.wording.figures import clock_text, day_text, number_text
from kitlog.wording.paper_text import paper_text
from kitlog.wording.translate import _

Fact = tuple[str, str]
"""A label and what stands behind it."""


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo: what is known of it, what it shows, and why it cannot be shown (empty if it can)."""

    paper: Paper
    caption: str
    lacking: str = ""


@dataclass(frozen=True, slots=True)
class BookEntry:
    """One entry of a chapter.

    Attributes:
        when: its day, may be empty; title: what; figure: what stands at the right end, may be empty.
        said: what else there is to say, line by line.
        state: of a rule, shown as shape; struck: it was struck through later.
        photos: shown beside it.
    """

    title: str
    when: str = ""
    figure: str = ""
    said: tuple[str, ...] = ()
    state: DueState | None = None
    struck: bool = False
    photos: tuple[Photo, ...] = ()


@dataclass(frozen=True, slots=True)
class Chapter:
    """One chapter.

    Attributes:
        facts: label and figure, two columns; entries: one under the other; said: paragraphs after them.
        photos: large ones; measured: what is drawn over the years; to_write: what is written by hand.
    """

    title: str
    remark: str = ""
    facts: tuple[Fact, ...] = ()
    entries: tuple[BookEntry, ...] = ()
    said: tuple[str, ...] = ()
    photos: tuple[Photo, ...] = ()
    measured: tuple[MeasuredSeries, ...] = ()
    to_write: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BookContent:
    """All words of a book.

    Attributes:
        title: what it is; name: of what; about: who keeps it and for which day it holds.
        made: when it was made, for the foot of each page.
    """

    title: str
    name: str
    about: str
    made: str
    chapters: tuple[Chapter, ...]

    @property
    def photos(self) -> tuple[Photo, ...]:
        """Every photo that can be shown, each content once."""
        shown = (
            photo
            for chapter in self.chapters
            for photo in (*chapter.photos, *(photo for entry in chapter.entries for photo in entry.photos))
            if not photo.lacking
        )
        return tuple({photo.paper.sha256: photo for photo in shown}.values())


def made_text(at: datetime) -> str:
    """When it was made."""
    return _("made {day}, {clock}").format(day=day_text(at.date()), clock=clock_text(at))


def is_photo(paper: Paper) -> bool:
    """Whether it is a picture, not a document."""
    return paper.media_type is not MediaType.PDF


def photos_of(papers: Iterable[Paper], lacking: Collection[str], caption: str = "") -> tuple[Photo, ...]:
    """The photos among some papers; `lacking`: hashes of those whose bytes are missing or damaged."""
    return tuple(
        Photo(
            paper,
            f"{caption}: {paper.name}" if caption else paper.name,
            _("its file is missing or damaged") if paper.sha256 in lacking else "",
        )
        for paper in papers
        if is_photo(paper)
    )


def papers_line(papers: Sequence[Paper], lacking: Collection[str]) -> str:
    """The papers in one line, those that are missing named; empty for none."""
    if not papers:
        return ""
    return _("papers: {papers}").format(papers="; ".join(_paper(paper, lacking) for paper in papers))


def _paper(paper: Paper, lacking: Collection[str]) -> str:
    said = paper_text(paper)
    return _("{paper} (its file is missing or damaged)").format(paper=said) if paper.sha256 in lacking else said


def money_text(amount: float, currency: str) -> str:
    """An amount as it was entered, with the currency where one was named."""
    figure = number_text(amount, 0 if amount == int(amount) else 2)
    return f"{figure}\u00a0{currency}" if currency else figure


def given(*facts: tuple[str, str]) -> tuple[Fact, ...]:
    """The facts that have something to say."""
    return tuple(fact for fact in facts if fact[1])
