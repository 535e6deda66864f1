"""Which row of a grid holds the headings, which are items, and which are neither: titles, sums, sections, notes."""

from collections.abc import Sequence
from dataclasses import dataclass

from kitlog.fault import InputFault
from kitlog.files.csv_columns import KIT
from kitlog.files.table.body import Body
from kitlog.files.table.cells import Grid, GridRow, text_of
from kitlog.files.table.find_headings import (
    find_heading_row,
    grouped,
    headings_below,
    is_limits,
    is_units,
    with_limits,
    with_units,
)
from kitlog.files.table.title_unit import title_unit
from kitlog.files.table.vocabulary import Vocabulary

_SAYING = frozenset({"title", "note", "section", "heading of rows"})
"""Why rows are left out whose words may tell of the others."""


@dataclass(frozen=True, slots=True)
class Layout:
    """Where things stand in a grid; rows by their index in it.

    Attributes:
        heading_row: None = no row of headings was found.
        headings: their texts, with the units of a row of units below them, and with the words of a row of groups above
            them where they are understood only so.
        unit_row: the last row of units or of "min" and "max" below the headings, if there is one.
        data: the rows of items.
        left_out: rows that are none, with the reason: ``title``, ``units``, ``totals``, ``section``,
            ``heading of rows`` (nothing but a name right above fuller rows), ``heading again``, ``note``,
            ``other table`` (from a row of other headings on).
        title_unit: the unit that a title or note gives to all masses; empty if none does.
        totals: the rows of sums (among those left out), those of sections included.
    """

    heading_row: int | None
    headings: tuple[str, ...] = ()
    unit_row: int | None = None
    data: tuple[int, ...] = ()
    left_out: tuple[tuple[int, str], ...] = ()
    title_unit: str = ""
    totals: tuple[int, ...] = ()


def find_layout(grid: Grid, words: Vocabulary, heading_row: int | None = None) -> Layout:
    """The layout of a grid; `heading_row` where the pilot chose it.

    A row that may be an item is one: what looks like something else only by half is read, and shown.

    Raises:
        InputFault: ``table.on_its_side`` with ``headings``: they stand below each other, and the items in columns.
    """
    rows = grid.rows
    at = find_heading_row(rows, words) if heading_row is None else heading_row
    if at is None or not 0 <= at < len(rows):
        return Layout(None)
    if heading_row is None and (below := headings_below(rows, at, words)):
        raise InputFault("table.on_its_side", headings=below)
    headings = tuple(" ".join(text_of(cell).split()) for cell in rows[at].cells)
    if grid.own_form and at == 0 and all(heading in KIT.by_heading for heading in headings):
        return Layout(at, headings, data=tuple(range(1, len(rows))))
    if at:
        headings = grouped(headings, rows[at - 1], words)
    start = at + 1
    while start < len(rows):
        if is_units(rows[start], words):
            headings = with_units(headings, rows[start])
        elif is_limits(rows[start], words):
            headings = with_limits(headings, rows[start])
        else:
            break
        start += 1
    return _below(rows, words, at, headings, start)


def _below(rows: Sequence[GridRow], words: Vocabulary, at: int, headings: tuple[str, ...], start: int) -> Layout:
    """The rows below the headings, each as an item or with the reason why it is none."""
    reasons = Body(rows, text_row(rows[at]), headings, start, words).reasons()
    left_out = [(index, "title") for index in range(at)]
    left_out += [(index, "units") for index in range(at + 1, start)]
    left_out += reasons.items()
    said = [rows[index] for index, reason in left_out if reason in _SAYING]
    return Layout(
        at,
        headings,
        start - 1 if start > at + 1 else None,
        tuple(index for index in range(start, len(rows)) if index not in reasons),
        tuple(left_out),
        title_unit(said, words),
        tuple(index for index, reason in reasons.items() if reason == "totals"),
    )


def text_row(row: GridRow) -> tuple[str, ...]:
    """The texts of a row, blanks as one."""
    return tuple(" ".join(text_of(cell).split()) for cell in row.cells)
