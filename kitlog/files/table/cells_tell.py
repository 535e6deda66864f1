"""Columns whose heading is not understood but whose cells are plain: names, and words of a closed list."""

from collections.abc import Callable, Iterator, Sequence

from kitlog.files.table.choice_words import choice_of
from kitlog.files.table.headings import Found
from kitlog.files.table.kind_words import is_broad, kind_guessed, kind_of
from kitlog.files.table.targets import Meaning
from kitlog.files.table.vocabulary import Vocabulary

CELLS = "cells"
"""How such a column was found."""

_CLOSED = ("zone", "mass_source", "state", "garment_layer")
_LEAST_CELLS = 3
_MOST_MISSED = 0.2
"""Share of the different cells that need not be words of the list."""
_LEAST_FILLED = 0.9
_LEAST_DIFFERENT = 0.8

Column = Sequence[str]
"""The texts of a column, one a row."""


def told_by_cells(found: Sequence[Found], columns: Sequence[Column], words: Vocabulary) -> tuple[Found, ...]:
    """What headings stand for, with those that only the cells tell; what is read so is said in the report.

    A column of names is looked for only where no heading says which one it is; of several the first is taken.
    """
    told = list(found)
    taken = {one.meaning.target for one in found if one.meaning}
    for at, target in _tellings(found, columns, taken, words):
        told[at] = Found(Meaning(target), CELLS)
    return tuple(told)


def _tellings(
    found: Sequence[Found], columns: Sequence[Column], taken: set[str], words: Vocabulary
) -> Iterator[tuple[int, str]]:
    for at, one in enumerate(found):
        if one.meaning is not None or one.how:
            continue
        target = next((name for name in _CLOSED if name not in taken and _are_words(columns[at], name, words)), "")
        if not target and "name" not in taken and _are_names(columns[at]):
            target = "name"
        if not target and "kind" not in taken and (names := _names_of(found, columns)):
            target = "kind" if _are_kinds(columns[at], names, words) else ""
        if target:
            taken.add(target)
            yield at, target


def _are_words(cells: Column, target: str, words: Vocabulary) -> bool:
    return _mostly(cells, lambda text: choice_of(target, text, words) is not None)


def _names_of(found: Sequence[Found], columns: Sequence[Column]) -> Column:
    return next((columns[at] for at, one in enumerate(found) if one.meaning and one.meaning.target == "name"), ())


def _are_kinds(cells: Column, names: Column, words: Vocabulary) -> bool:
    """Words for kinds, which are those of the things in the same rows as far as their names tell any."""
    if not _mostly(cells, lambda text: kind_of(text, words) is not None or is_broad(text, words)):
        return False
    pairs = [(kind_of(cell, words), kind_guessed(name, words)) for cell, name in zip(cells, names, strict=True) if cell]
    told = [said is guessed for said, guessed in pairs if said and guessed]
    return sum(told) >= _LEAST_CELLS and sum(told) >= _LEAST_DIFFERENT * len(told)


def _mostly(cells: Column, holds: Callable[[str], bool]) -> bool:
    filled = [text for text in cells if text]
    different = set(filled)
    if len(filled) < _LEAST_CELLS:
        return False
    return sum(not holds(text) for text in different) <= _MOST_MISSED * len(different)


def _are_names(cells: Column) -> bool:
    """Texts in nearly each row, nearly all different, with letters."""
    filled = [text for text in cells if text]
    if not filled or len(filled) < _LEAST_FILLED * len(cells):
        return False
    different = len(set(filled)) >= _LEAST_DIFFERENT * len(filled)
    wordy = sum(any(map(str.isalpha, text)) and not text[0].isdigit() for text in filled) >= _LEAST_FILLED * len(filled)
    return different and wordy
