"""A grid into rows of an item's fields: what each column stands for, the values, the doubts, what is to be said."""

import hashlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import repeat
from typing import Any, NamedTuple

from kitlog.fault import InputFault
from kitlog.files.csv_columns import KIT
from kitlog.files.csv_on_way import ON
from kitlog.files.csv_problems import Spot
from kitlog.files.csv_rows import column_letters
from kitlog.files.table.beside import below_each_other
from kitlog.files.table.cells import Cell, Grid, GridRow, text_of
from kitlog.files.table.cells_tell import CELLS
from kitlog.files.table.ditto import without_dittos
from kitlog.files.table.doubt import Doubt, Settled
from kitlog.files.table.layout import Layout, find_layout
from kitlog.files.table.masses import settle_masses
from kitlog.files.table.names import settle_kinds, settle_names
from kitlog.files.table.powers import settle_ports, settle_powers
from kitlog.files.table.ranges import settle_ranges
from kitlog.files.table.read_columns import Sheet, read_columns
from kitlog.files.table.remark import Remark
from kitlog.files.table.service_words import is_of_service
from kitlog.files.table.table_column import TableColumn, columns_of, table_columns
from kitlog.files.table.targets import Meaning
from kitlog.files.table.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True)
class Choices:
    """What the pilot chose for a table, and what is remembered from one of the same headings.

    Attributes:
        settled: answers to doubts.
        meanings: what columns stand for, by index; by_heading: the same, by the text of the heading.
        heading_row: index of the row of headings among the rows of the grid; None = found.
        remembered: what is remembered of a table with these headings (`headings_key`), by index of the column.
    """

    settled: Settled = field(default_factory=Settled)
    meanings: Mapping[int, Meaning] = field(default_factory=dict)
    by_heading: Mapping[str, Meaning] = field(default_factory=dict)
    heading_row: int | None = None
    remembered: Callable[[str], Mapping[int, Meaning]] = field(default=lambda _key: {})


def headings_key(headings: Sequence[str]) -> str:
    """A short name for a row of headings, the same for the same headings whatever their case and blanks."""
    plain = "\n".join(" ".join(heading.casefold().split()) for heading in headings).rstrip("\n")
    return hashlib.sha256(plain.encode()).hexdigest()[:32]


class ReadRow(NamedTuple):
    """A row: where it stands, what it says by heading of kit.csv, and its cells.

    Attributes:
        values: without what is not known; kind_said: the kind is the row's own word, not a guess from the name;
            state_said: likewise, and not what a word that is not understood was taken for.
    """

    spot: Spot
    values: Mapping[str, object]
    cells: Sequence[Cell]
    kind_said: bool
    state_said: bool = True

    def text(self, index: int) -> str:
        """The text of a cell; empty beyond the last."""
        return text_of(self.cells[index]) if index < len(self.cells) else ""


@dataclass(frozen=True, slots=True)
class KitReading:
    """A table understood.

    Attributes:
        columns: every column with a heading or a cell.
        rows: the rows of data in their order.
        doubts: doubtful cells, those left open included.
        remarks: what is to be said of file, layout, columns and rows.
        places: by heading of kit.csv the column it was read from.
        key: `headings_key` of the table.
        said: the headings of kit.csv of which any row says something.
    """

    columns: tuple[TableColumn, ...]
    rows: tuple[ReadRow, ...]
    doubts: tuple[Doubt, ...]
    remarks: tuple[Remark, ...]
    places: Mapping[str, TableColumn]
    key: str
    said: Sequence[str]


def read_kit_grid(grid: Grid, words: Vocabulary, choices: Choices) -> KitReading:
    """Read a grid as a kit.

    Raises:
        InputFault: ``table.no_headings``: no row of headings was found, and none was chosen; ``table.no_such_heading``
            with ``heading``: a meaning was chosen for a heading that is not there; ``table.on_its_side``.
    """
    grid = below_each_other(grid, words, choices.heading_row)
    layout = find_layout(grid, words, choices.heading_row)
    if layout.heading_row is None:
        raise InputFault("table.no_headings", first=_first_cells(grid), others=_other_sheets(grid))
    rows = [grid.rows[index] for index in layout.data]
    cells = columns_of(rows, len(layout.headings))
    key = headings_key(layout.headings)
    chosen = {**_by_heading(layout.headings, choices.by_heading), **choices.meanings}
    columns = _with_title_unit(table_columns(layout.headings, cells, words, choices.remembered(key), chosen), layout)
    own = _is_own(grid, columns)
    rows, cells, repeated = (rows, cells, ()) if own else without_dittos(rows, cells, columns, words)
    sheet = Sheet(rows, choices.settled, own=own, remarks=[*repeated])
    totals = columns_of([grid.rows[index] for index in layout.totals], len(cells))
    read_columns(sheet, columns, cells, totals, words)
    _settle(sheet, words)
    remarks = (*grid.remarks, *_of_layout(grid, layout), *_of_columns(columns, words), *_placed(sheet))
    said = _said(sheet)
    doubts = tuple(sorted(sheet.doubts, key=_place))
    return KitReading(columns, _rows(sheet, said), doubts, remarks, sheet.columns, key, tuple(said))


def _other_sheets(grid: Grid) -> tuple[str, ...]:
    """The sheets of the workbook that were not read."""
    taken = (remark.facts for remark in grid.remarks if remark.code == "table.sheet_taken")
    return tuple(str(name) for facts in taken for name in (*_names(facts, "others"), *_names(facts, "hidden")))


def _names(facts: Mapping[str, object], which: str) -> tuple[object, ...]:
    names = facts.get(which)
    return names if isinstance(names, tuple) else ()


def _first_cells(grid: Grid) -> str:
    cells = [text_of(cell) for row in grid.rows[:1] for cell in row.cells]
    return ", ".join(cells)[:80]


def _by_heading(headings: Sequence[str], wanted: Mapping[str, Meaning]) -> dict[int, Meaning]:
    """Meanings by index, from meanings by heading."""
    found: dict[int, Meaning] = {}
    for heading, meaning in wanted.items():
        plain = heading.strip().casefold()
        at = [index for index, text in enumerate(headings) if plain in _names_of(index, text)]
        if not at:
            raise InputFault("table.no_such_heading", heading=heading, known=tuple(text for text in headings if text))
        found |= dict.fromkeys(at[:1], meaning)
    return found


def _names_of(index: int, heading: str) -> tuple[str, str]:
    """What a column is called by: its heading, and that with its letters, as columns of one heading are told."""
    plain = heading.strip().casefold()
    return plain, f"{plain} [{column_letters(index + 1).casefold()}]".lstrip()


def _is_own(grid: Grid, columns: Sequence[TableColumn]) -> bool:
    return grid.own_form and all(column.heading in KIT.by_heading for column in columns)


def _with_title_unit(columns: tuple[TableColumn, ...], layout: Layout) -> tuple[TableColumn, ...]:
    """A unit that a title gives to all masses, where the heading gives none."""
    if not layout.title_unit:
        return columns
    return tuple(
        replace(column, meaning=Meaning(column.target, layout.title_unit))
        if column.meaning and not column.meaning.unit and column.target in {"mass_g", "mass_all"}
        else column
        for column in columns
    )


def _settle(sheet: Sheet, words: Vocabulary) -> None:
    settle_masses(sheet)
    settle_powers(sheet)
    settle_names(sheet)
    settle_kinds(sheet, words)
    settle_ports(sheet)
    settle_ranges(sheet)


def _of_layout(grid: Grid, layout: Layout) -> tuple[Remark, ...]:
    """Rows that are no items, by reason."""
    by_reason: dict[str, list[int]] = {}
    heads = [grid.rows[index] for index, reason in layout.left_out if reason == "heading of rows"]
    for index, reason in layout.left_out:
        by_reason.setdefault(reason, []).append(index)
    by_reason.pop("heading of rows", None)
    left_out = tuple(
        Remark(
            "table.rows_left_out",
            {
                "reason": reason,
                "rows": tuple(grid.rows[index].spot.row for index in indices),
                "text": _first_text(grid.rows[indices[0]]),
            },
        )
        for reason, indices in by_reason.items()
    )
    named = {"rows": tuple(row.spot.row for row in heads), "names": tuple(map(_first_text, heads))}
    told = (Remark("table.rows_headed", named),) if heads else ()
    unit = (Remark("table.title_unit", {"unit": layout.title_unit}),) if layout.title_unit else ()
    return (*left_out, *told, *unit)


def _first_text(row: GridRow) -> str:
    return next((text_of(cell) for cell in row.cells if cell != ""), "")[:80]


def _of_columns(columns: Sequence[TableColumn], words: Vocabulary) -> tuple[Remark, ...]:
    lost = [column for column in columns if column.meaning is None and (column.filled or column.heading.strip())]
    remembered = [column for column in columns if column.how == "remembered"]
    remarks = [
        Remark(
            _lost(column, words),
            {"heading": column.heading, "letters": column.letters, "filled": column.filled},
        )
        for column in lost
    ]
    remarks += [
        Remark("table.of_no_use", {"heading": column.heading, "letters": column.letters})
        for column in columns
        if column.meaning is not None and not column.target and column.how == "word" and column.filled
    ]
    remarks += [
        Remark("table.told_by_cells", {"heading": column.heading, "letters": column.letters, "field": column.target})
        for column in columns
        if column.how == CELLS
    ]
    if remembered:
        remarks.append(Remark("table.remembered", {"headings": tuple(column.named for column in remembered)}))
    return tuple(remarks)


def _lost(column: TableColumn, words: Vocabulary) -> str:
    """Why a column was not read."""
    if column.how == "double":
        return "table.heading_double"
    return "table.heading_of_service" if is_of_service(column.heading, words) else "table.heading_unknown"


def _placed(sheet: Sheet) -> tuple[Remark, ...]:
    """Remarks with the rows they are about in place of positions."""
    return tuple(
        Remark(remark.code, {**_without_at(remark), "rows": tuple(sheet.row_number(at) for at in _at(remark))})
        if "at" in remark.facts
        else remark
        for remark in sheet.remarks
    )


def _at(remark: Remark) -> tuple[int, ...]:
    at = remark.facts["at"]
    return tuple(at) if isinstance(at, tuple) else ()


def _without_at(remark: Remark) -> dict[str, object]:
    return {name: fact for name, fact in remark.facts.items() if name != "at"}


def _place(doubt: Doubt) -> tuple[int, int]:
    return doubt.spot.row, doubt.column


def _said(sheet: Sheet) -> dict[str, list[object]]:
    """What the rows say, by headings of kit.csv alone; a draw becomes the one way of use."""
    kept = {
        name: values
        for name, values in sheet.values.items()
        if name in KIT.by_heading and (name == "name" or any(map(_is_known, values)))
    }
    if "draw_w" in kept:
        kept["draw_w"] = [None if watts is None else [_on(watts)] for watts in kept["draw_w"]]
    return kept


def _rows(sheet: Sheet, said: Mapping[str, Sequence[object]]) -> tuple[ReadRow, ...]:
    guessed, unsaid = sheet.guesses.get("kind", frozenset()), sheet.guesses.get("state", frozenset())
    return tuple(
        ReadRow(row.spot, values, row.cells, at not in guessed, at not in unsaid)
        for at, (row, values) in enumerate(zip(sheet.rows, _known(said), strict=True))
    )


def _is_known(value: object) -> bool:
    return value is not None


def _known(columns: Mapping[str, Sequence[object]]) -> list[dict[str, object]]:
    """What each row says, by heading, without what is not known; the full columns, which most are, all at once."""
    full = {name: values for name, values in columns.items() if None not in values}
    rows: list[dict[str, object]] = list(map(dict, map(zip, repeat(tuple(full)), zip(*full.values(), strict=True))))
    rows = rows or [{} for _ in columns["name"]]
    for name, values in columns.items():
        if name not in full:
            for row, value in zip(rows, values, strict=True):
                if value is not None:
                    row[name] = value
    return rows


def _on(watts: object) -> dict[str, Any]:
    return {"name": ON, "power_w": watts}
