"""Which rows are shown: words, kind, zone, and what is looked for. Plain Python on rows, no proxy model."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from enum import Enum

from kitlog.kit.due import DueState
from kitlog.kit.kinds import ItemState, Kind, MassSource, Zone
from kitlog.outing.library import Library
from kitlog.wording.words import word
from kitlog.workbench.reads import KitRow

GONE = frozenset({ItemState.RETIRED, ItemState.LOST})
"""States that are shown only when asked for."""


class Show(Enum):
    """What can be looked for."""

    GUESSED = "guessed"
    DUE = "due"
    NO_RECORD = "no record"
    GONE = "gone"


SHOWS: dict[Show, Callable[[KitRow], bool]] = {
    Show.GUESSED: lambda row: row.item.mass_g is None or row.item.mass_source is MassSource.GUESS,
    Show.DUE: lambda row: row.due_state in {DueState.OVERDUE, DueState.DUE_SOON},
    Show.NO_RECORD: lambda row: row.due_state is DueState.NO_RECORD,
    Show.GONE: lambda row: row.item.state in GONE,
}


@dataclass(frozen=True, slots=True)
class KitFilter:
    """What the rows must be.

    Attributes:
        words: each must occur somewhere in the row.
        kind, zone: None = all.
        shows: each must hold.
    """

    words: str = ""
    kind: Kind | None = None
    zone: Zone | None = None
    shows: frozenset[Show] = frozenset()

    @property
    def hides(self) -> bool:
        """Whether it hides anything at all."""
        return bool(self.words.strip() or self.kind or self.zone or self.shows)


@dataclass(slots=True)
class Haystack:
    """The rows with the text each is searched in, made once and not at each key."""

    rows: Sequence[KitRow] = ()
    library: Library | None = None
    _texts: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._texts = [text_of(row, self.library) for row in self.rows]

    def sift(self, wanted: KitFilter) -> list[KitRow]:
        """The rows that a filter leaves, in their order."""
        words = wanted.words.casefold().split()
        tests = _tests(wanted)
        return [
            row
            for row, text in zip(self.rows, self._texts, strict=True)
            if all(w in text for w in words) and all(test(row) for test in tests)
        ]

    def count(self, show: Show) -> int:
        """How many rows are what a filter looks for."""
        return sum(SHOWS[show](row) and (show is Show.GONE or row.item.state not in GONE) for row in self.rows)


def _tests(wanted: KitFilter) -> list[Callable[[KitRow], bool]]:
    tests = [SHOWS[show] for show in wanted.shows]
    if Show.GONE not in wanted.shows:
        tests.append(lambda row: row.item.state not in GONE)
    if wanted.kind is not None:
        tests.append(lambda row: row.item.kind is wanted.kind)
    if wanted.zone is not None:
        tests.append(lambda row: wanted.zone in {row.zone, row.zone_on_foot})
    return tests


def text_of(row: KitRow, library: Library | None) -> str:
    """Everything of a row that a word may be looked for in."""
    item = row.item
    label = library.facts(item.kind).label if library else item.kind.value
    parts: Iterable[str] = (
        item.name,
        item.maker,
        item.model,
        item.serial,
        item.colour,
        label,
        word(row.zone.value),
        word(row.zone_on_foot.value),
        word(item.mass_source.value),
        word(item.state.value),
        word(row.due_state.value),
        item.notes,
        *row.serves,
    )
    return "\n".join(parts).casefold()
