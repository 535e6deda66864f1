"""Which rows are shown: words, kind, zone, and what is looked for. Plain Python on rows, no proxy model."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Any

from kitlog.kit.due import DueState
from kitlog.kit.kinds import ItemState, Kind, MassSource, Zone
from kitlog.outing.library import Library
from kitlog.wording.words import word
from kitlog.workbench.reads import KitRow

GONE = frozenset({ItemState.RETIRED, ItemState.LOST})
"""States that are shown only when asked for."""


Order = tuple[int, bool]
"""Number of a column, and whether it falls."""


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


class Haystack:
    """The rows with the text each is searched in, made once and not at each key; a thread may make it.

    Attributes:
        rows: as they were given; kinds: of their items.
    """

    def __init__(self, rows: Sequence[KitRow] = (), library: Library | None = None) -> None:
        self.rows = rows
        self.kinds = frozenset(row.item.kind for row in rows)
        self._given = self._pairs = [(row, text_of(row, library)) for row in rows]
        self._counts = {show: _count(show, rows) for show in Show}
        self._order: Order | None = None
        self._last: tuple[KitFilter, list[KitRow]] | None = None

    def put_in_order(self, order: Order, key: Callable[[KitRow], Any]) -> None:
        """Give the rows in this order from now on; nothing is done where they are given so already.

        Args:
            order: column and whether it falls.
            key: of a row in that column.
        """
        if order != self._order:
            self._pairs = sorted(self._given, key=lambda pair: key(pair[0]), reverse=order[1])
            self._order, self._last = order, None

    def sift(self, wanted: KitFilter) -> list[KitRow]:
        """The rows that a filter leaves, in their order; the very same as before for the same filter."""
        if self._last is None or self._last[0] != wanted:
            self._last = wanted, self._sifted(wanted)
        return self._last[1]

    def count(self, show: Show) -> int:
        """How many rows are what a filter looks for."""
        return self._counts[show]

    def _sifted(self, wanted: KitFilter) -> list[KitRow]:
        words = wanted.words.casefold().split()
        tests = _tests(wanted)
        if not words and len(tests) == 1:
            return [row for row, _text in self._pairs if tests[0](row)]
        return [row for row, text in self._pairs if all(w in text for w in words) and all(test(row) for test in tests)]


def _count(show: Show, rows: Sequence[KitRow]) -> int:
    return sum(SHOWS[show](row) and (show is Show.GONE or row.item.state not in GONE) for row in rows)


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
