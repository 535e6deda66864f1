"""Which row of a grid holds the headings, which are items, and which are neither: titles, sums, sections, notes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kitlog.files.csv_columns import KIT
from kitlog.files.table.body import Body
from kitlog.files.table.cells import Grid, GridRow, text_of
from kitlog.files.table.find_headings import find_heading_row, grouped, is_units, with_units
from kitlog.files.table.title_unit import title_unit
from kitlog.files.table.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True)
class Layout:
    """Where things stand in a grid; rows by their index in it.

    Attributes:
        heading_row: None = no row of headings was found.
        headings: their texts, with the units of a row of units below them, and with the words of a row of groups above
            them where they are understood only so.
        unit_row: the row of units, if there is one.
        data: the rows of items.
        left_out: rows that are none, with the reason: ``title``, ``units``, ``totals``, ``section``,
            ``heading again``, ``note``, ``other table`` (from a row of other headings on).
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
    """
    rows = grid.rows
    at = find_heading_row(rows, words) if heading_row is None else heading_row
    if at is None:
        return Layout(None)
    headings = tuple(" ".join(text_of(cell).split()) for cell in rows[at].cells)
    if grid.own_form and at == 0 and all(heading in KIT.by_heading for heading in headings):
        return Layout(at, headings, data=tuple(range(1, len(rows))))
    units = at + 1 if at + 1 < len(rows) and is_units(rows[at + 1], words) else None
    if units is not None:
        headings = with_units(headings, rows[units])
    if at:
        headings = grouped(headings, rows[at - 1], words)
    return _below(rows, words, at, headings, units)


def _below(rows: Sequence[GridRow], words: Vocabulary, at: int, headings: tuple[str, ...], units: int | None) -> Layout:
    """The rows below the headings, each as an item or with the reason why it is none."""
    start = at + 1 if units is None else units + 1
    reasons = Body(rows, text_row(rows[at]), headings, start, words).reasons()
    left_out = [(index, "title") for index in range(at)]
    left_out += [] if units is None else [(units, "units")]
    left_out += reasons.items()
    said = [rows[index] for index, reason in left_out if reason in {"title", "note", "section"}]
    return Layout(
        at,
        headings,
        units,
        tuple(index for index in range(start, len(rows)) if index not in reasons),
        tuple(left_out),
        title_unit(said, words),
        tuple(index for index, reason in reasons.items() if reason == "totals"),
    )


def text_row(row: GridRow) -> tuple[str, ...]:
    """The texts of a row, blanks as one."""
    return tuple(" ".join(text_of(cell).split()) for cell in row.cells)


def first_rows(grid: Grid, most: int) -> Iterator[tuple[int, str]]:
    """The first rows as a line of text each, to choose the row of headings from."""
    for index, row in enumerate(grid.rows[:most]):
        yield index, " | ".join(text for text in text_row(row) if text)
