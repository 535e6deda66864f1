"""Names to ids: a cell that names another item must name exactly one."""

import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from kitlog.fault import InputFault

MOST_NAMED = 20
"""Rows that are named for one problem; a file of nothing but namesakes must not fill the memory."""


@dataclass(frozen=True, slots=True)
class Named:
    """A name that a cell may refer to: whose it is, and its row where it stands in a file, else None."""

    name: str
    id: str
    row: int | None = None


def as_name(text: str) -> str:
    """A cell as the models keep a name: without blanks around it, composed (NFC)."""
    return unicodedata.normalize("NFC", text.strip())


class NameIndex:
    """Looks items up by name."""

    def __init__(self, entries: Iterable[Named]) -> None:
        self._by_name: dict[str, list[Named]] = {}
        for entry in entries:
            self._by_name.setdefault(entry.name, []).append(entry)

    def find(self, text: str) -> Named:
        """The one item of that name.

        Raises:
            InputFault: ``csv.unknown_name``; ``csv.ambiguous_name`` with ``count``, and ``rows``: where the first of
                them stand in the kit's file (the others are in the kit already).
        """
        found = self._by_name.get(as_name(text), [])
        if not found:
            raise InputFault("csv.unknown_name")
        if len(found) > 1:
            rows = tuple(entry.row for entry in found[:MOST_NAMED] if entry.row is not None)
            raise InputFault("csv.ambiguous_name", rows=rows, count=len(found))
        return found[0]


def circles(fitted: Mapping[str, str]) -> Iterator[tuple[str, ...]]:
    """Ids that are fitted to each other in a circle, each circle once, from ``id: id it is fitted to``."""
    done: set[str] = set()
    for start in fitted:
        path: dict[str, None] = {}
        at = start
        while at in fitted and at not in done and at not in path:
            path[at] = None
            at = fitted[at]
        if at in path:
            steps = list(path)
            yield tuple(steps[steps.index(at) :])
        done.update(path)
