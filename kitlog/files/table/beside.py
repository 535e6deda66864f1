"""Tables beside each other on one sheet: those of the same headings are read one below the other."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kitlog.files.table.cells import Cell, Grid, GridRow, text_of
from kitlog.files.table.extent import column_letters
from kitlog.files.table.find_headings import find_heading_row, is_units
from kitlog.files.table.one_heading import find
from kitlog.files.table.remark import Remark
from kitlog.files.table.vocabulary import Vocabulary

_LOOKED_AT = 60
_LEAST = 2
"""Tables there are at least, and headings that each of them has at least."""


def below_each_other(grid: Grid, words: Vocabulary, heading_row: int | None = None) -> Grid:
    """The grid with the tables beside the first one below it, or without them where their headings are others.

    Rows keep their place in the file. Remarks: ``table.beside_read``, ``table.beside_not_read``, each with `letters`,
    the column in which the further tables begin.
    """
    if grid.own_form or not any(map(_repeats, grid.rows[:_LOOKED_AT])):
        return grid
    at = find_heading_row(grid.rows, words) if heading_row is None else heading_row
    if at is None or not 0 <= at < len(grid.rows):
        return grid
    headings = [_plain(cell) for cell in grid.rows[at].cells]
    starts = _starts(headings, words)
    if not starts:
        return grid
    places = _places(headings, starts)
    rows = list(_cut(grid.rows, starts[1]))
    if places and (further := _further(grid.rows, at, places, words)) is not None:
        return _tell(replace(grid, rows=[*rows, *further]), "table.beside_read", starts)
    return _tell(replace(grid, rows=rows), "table.beside_not_read", starts)


def _tell(grid: Grid, code: str, starts: Sequence[int]) -> Grid:
    return replace(grid, remarks=(*grid.remarks, Remark(code, {"letters": column_letters(starts[1] + 1)})))


def _plain(cell: Cell) -> str:
    return " ".join(text_of(cell).split()).casefold()


def _repeats(row: GridRow) -> bool:
    texts = [_plain(cell) for cell in row.cells if cell != ""]
    return len(texts) >= 2 * _LEAST and len(set(texts)) < len(texts)


def _starts(headings: Sequence[str], words: Vocabulary) -> list[int]:
    """Where tables begin: at each heading of names that is the same as the first; none for one table."""
    names = [
        at
        for at, text in enumerate(headings)
        if text and (found := find(text, words).meaning) and found.target == "name"
    ]
    starts = [at for at in names if headings[at] == headings[names[0]]]
    if len(starts) < _LEAST:
        return []
    ends = [*starts[1:], len(headings)]
    full = all(sum(map(bool, headings[at:end])) >= _LEAST for at, end in zip(starts, ends, strict=True))
    return starts if full else []


def _places(headings: Sequence[str], starts: Sequence[int]) -> list[list[tuple[int, int]]]:
    """For each further table, the column of the first table for each of its own; empty where one has no such column."""
    first = {text: at for at, text in reversed(list(enumerate(headings[: starts[1]]))) if text}
    found = []
    for start, end in zip(starts[1:], [*starts[2:], len(headings)], strict=True):
        own = {at: text for at, text in enumerate(headings[start:end], start) if text}
        if not set(own.values()) <= set(first) or len(set(own.values())) < len(own):
            return []
        found.append([(at, first[text]) for at, text in own.items()])
    return found


def _cut(rows: Sequence[GridRow], width: int) -> Iterator[GridRow]:
    for row in rows:
        cells = row.cells[:width]
        if any(cell != "" for cell in cells):
            yield GridRow(row.spot, cells)


def _further(
    rows: Sequence[GridRow], at: int, places: Sequence[Sequence[tuple[int, int]]], words: Vocabulary
) -> list[GridRow] | None:
    """The rows of the further tables under the columns of the first; None where their units are others."""
    below = at + 1
    if below < len(rows) and is_units(rows[below], words):
        cells = [*rows[below].cells, *[""] * max(here for table in places for here, _there in table)]
        if any(_plain(cells[here]) != _plain(cells[there]) for table in places for here, there in table):
            return None
        below += 1
    return [moved for table in places for row in rows[below:] if (moved := _moved(row, table))]


def _moved(row: GridRow, table: Sequence[tuple[int, int]]) -> GridRow | None:
    cells: list[Cell] = [""] * (max(there for _here, there in table) + 1)
    for here, there in table:
        cells[there] = row.cells[here] if here < len(row.cells) else ""
    return GridRow(row.spot, cells) if any(cell != "" for cell in cells) else None
