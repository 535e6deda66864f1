"""The rows of a table by its headings: unknown, doubled and missing headings, rows too long or too short."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from kitlog.files.csv_columns import Columns
from kitlog.files.csv_dialect import Record, records
from kitlog.files.csv_problems import Problems, Spot, shown
from kitlog.units.text import unfit_character

_SUSPECT = re.compile("[\0-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")
"""What `unfit_character` would look at more closely; one search a row instead of a loop over every character."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of data.

    Attributes:
        cells: those that are not empty, by heading.
        unfit: headings of cells with characters that may not be stored; already noted.
    """

    spot: Spot
    cells: Mapping[str, str]
    unfit: frozenset[str]


@dataclass(frozen=True, slots=True)
class Table:
    """The rows that could be read; `whole` is False where any was left out, so that a missing name may stand there."""

    rows: tuple[Row, ...] = ()
    whole: bool = False


def read_table(data: bytes, columns: Columns, problems: Problems) -> Table:
    """The rows of a file under the headings of `columns`; whatever is wrong is noted in `problems`.

    Codes, besides those of `csv_dialect.records`: ``csv.other_separator``, ``csv.empty_heading``,
    ``csv.unknown_heading``, ``csv.heading_twice``, ``csv.missing_heading``, ``csv.too_few_cells``,
    ``csv.too_many_cells``, ``text.unfit_character``.
    """
    found = records(data, problems)
    first = next(found, None)
    if first is None or not _headings_fit(first, columns, problems):
        return Table()
    before = problems.count
    rows = tuple(_rows(found, first.cells, columns, problems))
    return Table(rows, whole=problems.count == before)


def _headings_fit(first: Record, columns: Columns, problems: Problems) -> bool:
    """Whether the rows can be read under these headings; one unknown heading does not hide what else is wrong."""
    separator = _other_separator(first.cells)
    if separator:
        problems.add(first.spot, "", "csv.other_separator", separator=separator)
        return False
    for index in range(len(first.cells)):
        _check_heading(index, first, columns, problems)
    missing = [heading for heading in columns.required if heading not in first.cells]
    for heading in missing:
        problems.add(first.spot, heading, "csv.missing_heading", value=heading)
    return not missing


def _other_separator(cells: tuple[str, ...]) -> str:
    return next((mark for mark in (";", "\t", "|") if len(cells) == 1 and mark in cells[0]), "")


def _check_heading(index: int, first: Record, columns: Columns, problems: Problems) -> None:
    heading = first.cells[index]
    facts = {"value": shown(heading), "at": index + 1, "letters": column_letters(index + 1)}
    if not heading.strip():
        problems.add(first.spot, "", "csv.empty_heading", **facts)
    elif heading not in columns.by_heading:
        meant = next((known for known in columns.headings if known == heading.strip().casefold()), "")
        problems.add(first.spot, shown(heading), "csv.unknown_heading", meant=meant, known=columns.headings, **facts)
    elif heading in first.cells[:index]:
        problems.add(first.spot, heading, "csv.heading_twice", first_at=first.cells.index(heading) + 1, **facts)


def column_letters(number: int) -> str:
    """The name a spreadsheet gives a column: 1 is A, 27 is AA."""
    letters = ""
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def _rows(found: Iterator[Record], headings: tuple[str, ...], columns: Columns, problems: Problems) -> Iterator[Row]:
    for record in found:
        cells = len(record.cells)
        if cells != len(headings):
            code = "csv.too_few_cells" if cells < len(headings) else "csv.too_many_cells"
            problems.add(record.spot, "", code, cells=cells, headings=len(headings))
            continue
        pairs = zip(headings, record.cells, strict=True)
        named = {heading: cell for heading, cell in pairs if cell and heading in columns.by_heading}
        yield Row(record.spot, named, _unfit_cells(named, record.spot, columns, problems))


def _unfit_cells(cells: Mapping[str, str], spot: Spot, columns: Columns, problems: Problems) -> frozenset[str]:
    """Headings of cells with characters that nobody can see; line breaks and tabs belong in notes alone."""
    if not _SUSPECT.search("".join(cells.values())):
        return frozenset()
    unfit = set()
    for heading, cell in cells.items():
        breaks = columns.by_heading[heading].form.keeps_blanks
        character = unfit_character(cell.replace("\r\n", "\n"), breaks=breaks)
        if character is not None:
            unfit.add(heading)
            problems.add(spot, heading, "text.unfit_character", character=character, value=shown(cell))
    return frozenset(unfit)
