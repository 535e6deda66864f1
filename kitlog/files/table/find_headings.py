"""The row of headings: the one that is best understood; a row of units below it, a row of groups above it."""

from collections.abc import Iterable, Sequence

from kitlog.files.table.cells import GridRow, text_of
from kitlog.files.table.heading_units import unit_word
from kitlog.files.table.headings import meanings
from kitlog.files.table.kind_words import kind_guessed
from kitlog.files.table.one_heading import find
from kitlog.files.table.targets import TARGETS
from kitlog.files.table.vocabulary import Vocabulary

_LOOKED_AT = 60
"""Rows among which the headings are looked for."""
_SURE = 3
"""Understood headings, with no more that are not, that make a row of headings without looking further."""
_STRANGE = 0.25
"""What a cell that is not understood takes from a row's worth as a row of headings; one with figures twice that."""
_FEW = 3
"""One in so many names of other kinds makes a heading that is the word for a kind one of the things."""
_FILLING = frozenset({"", "-", "–", "—"})


def find_heading_row(rows: Sequence[GridRow], words: Vocabulary) -> int | None:
    """The index of the row of headings; of equals the first; None if no row is one."""
    best, most = None, 0.0
    for index, row in enumerate(rows[:_LOOKED_AT]):
        texts = [text_of(cell).strip() for cell in row.cells if cell != ""]
        targets = _targets(texts, words)
        if not _may_be_headings(texts, targets, rows) or (targets == ["name"] and _is_item(row, rows, words)):
            continue
        if len(targets) >= _SURE and 2 * len(targets) >= len(texts):
            return index
        strange = len(texts) - len(targets) + sum(any(sign.isdigit() for sign in text) for text in texts)
        worth = len(targets) - _STRANGE * strange
        if best is None or worth > most:
            best, most = index, worth
    return best


def _targets(texts: Iterable[str], words: Vocabulary) -> list[str]:
    """What the cells of a row would stand for as headings, each target once."""
    found = (find(text, words).meaning for text in texts if text and not text[0].isdigit())
    return list(dict.fromkeys(meaning.target for meaning in found if meaning and meaning.target))


def _may_be_headings(texts: Sequence[str], targets: Sequence[str], rows: Sequence[GridRow]) -> bool:
    """Two that are understood; or one of names, with another cell beside it or in a list of names alone."""
    if len(targets) > 1:
        return True
    if "name" not in targets:
        return False
    return len(texts) > 1 or all(sum(cell != "" for cell in row.cells) <= 1 for row in rows[:_LOOKED_AT])


def _is_item(row: GridRow, rows: Sequence[GridRow], words: Vocabulary) -> bool:
    """Whether the one cell that is understood is a thing among others: a "Wing" above "Harness" and "Helmet"."""
    at = next(at for at, cell in enumerate(row.cells) if _targets([text_of(cell).strip()], words) == ["name"])
    kind = kind_guessed(text_of(row.cells[at]), words)
    texts = [
        text_of(other.cells[at]).strip() for other in rows[:_LOOKED_AT] if other is not row and at < len(other.cells)
    ]
    others = [found for text in texts if text and (found := kind_guessed(text, words)) not in (None, kind)]
    return kind is not None and len(others) * _FEW >= len(texts) > 0


def headings_below(rows: Sequence[GridRow], at: int, words: Vocabulary) -> tuple[str, ...]:
    """The headings of a table that lies on its side, with an item in each column; empty for one that does not.

    Everything below the first heading is a heading then, and no other cell beside the first.
    """
    first = next((column for column, cell in enumerate(rows[at].cells) if cell != ""), 0)
    if len(_targets((text_of(cell).strip() for cell in rows[at].cells), words)) > 1:
        return ()
    cells = [text_of(row.cells[first]).strip() for row in rows[at + 1 :] if first < len(row.cells)]
    texts = tuple(text for text in cells if text)
    if not 1 < len(texts) <= len(TARGETS):
        return ()
    targets = [_targets([text], words) for text in texts]
    told = {target for found in targets for target in found} - {"name"}
    return texts if len(told) > 1 and all(targets) and ["name"] not in targets else ()


def is_units(row: GridRow, words: Vocabulary) -> bool:
    """Whether a row holds nothing but units, and words that stand where a unit would ("Stk", "dd.mm.yyyy")."""
    texts = [_bare(text_of(cell)) for cell in row.cells]
    texts = [text for text in texts if text not in _FILLING]
    units = [bool(unit_word(text)) for text in texts]
    others = (text for text, unit in zip(texts, units, strict=True) if not unit)
    return any(units) and all(text.casefold() in words.layout.unit_cells for text in others)


def _bare(text: str) -> str:
    return text.strip().strip("()[]").removeprefix("in ").strip()


def with_units(headings: Sequence[str], units: GridRow) -> tuple[str, ...]:
    """The headings with the units that stand below them."""
    below = [_bare(text_of(cell)) for cell in units.cells]
    below += [""] * (len(headings) - len(below))
    pairs = zip(headings, below, strict=False)
    return tuple(f"{heading} ({unit})".strip() if unit_word(unit) else heading for heading, unit in pairs)


def is_limits(row: GridRow, words: Vocabulary) -> bool:
    """Whether a row holds nothing but "min" and "max", for a range in the row above."""
    texts = [words.key(text) for text in map(text_of, row.cells) if text not in _FILLING]
    return len(texts) > 1 and all(text in words.lowest | words.highest for text in texts)


def with_limits(headings: Sequence[str], limits: GridRow) -> tuple[str, ...]:
    """The headings with "min" and "max" from below; an empty one takes the words on its left."""
    below = [" ".join(text_of(cell).split()) for cell in limits.cells]
    below += [""] * (len(headings) - len(below))
    left, found = "", []
    for heading, limit in zip(headings, below, strict=False):
        left = heading or left
        found.append(f"{left} {limit}" if limit not in _FILLING else heading)
    return tuple(found)


def grouped(headings: Sequence[str], above: GridRow, words: Vocabulary) -> tuple[str, ...]:
    """The headings with the group above them, where they are understood with it and not without ("min" of "PTV")."""
    groups = [" ".join(text_of(cell).split()) for cell in above.cells]
    alone = meanings(headings, words)
    group, found = "", []
    for at, heading in enumerate(headings):
        group = groups[at] if at < len(groups) and groups[at] else group
        both = f"{group} {heading}" if group and at else heading
        better = heading and alone[at].how == "" and find(both, words).meaning is not None
        found.append(both if better else heading)
    return tuple(found)
