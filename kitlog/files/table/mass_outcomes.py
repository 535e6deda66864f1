"""What each unit would make of masses without one: grams, where the cell with the unit behind it says nothing new."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from kitlog.files.csv_problems import shown
from kitlog.files.table.cells import Cell, Grid, text_of
from kitlog.files.table.doubt import CHOICES, Answers, Doubt, Question
from kitlog.files.table.read_column import read_column
from kitlog.files.table.table_column import TableColumn
from kitlog.files.table.targets import TARGETS, Target
from kitlog.wording.figures import mass_text
from kitlog.wording.translate import _

Outcomes = Mapping[str, Mapping[str, str]]
"""By the text of a cell and the unit: what it would be."""


def told_in_grams(
    doubts: Sequence[Doubt], columns: Iterable[TableColumn], grid: Grid, lines: Collection[int]
) -> tuple[Doubt, ...]:
    """The doubts, those about masses without unit with grams as their readings; `lines` of the grid hold items."""
    asked = {doubt.column for doubt in doubts if doubt.question is Question.MASS_UNIT}
    if not asked:
        return tuple(doubts)
    targets = {column.index: TARGETS[column.target] for column in columns if column.target}
    wanted = {*lines, *(doubt.spot.row for doubt in doubts)}
    rows = [row.cells for row in grid.rows if row.spot.row in wanted]
    found = {
        index: _outcomes(targets[index], [cells[index] for cells in rows if index < len(cells)]) for index in asked
    }
    return _told(doubts, found)


def _told(doubts: Iterable[Doubt], found: Mapping[int, Outcomes]) -> tuple[Doubt, ...]:
    return tuple(
        replace(doubt, readings={unit: outcomes[unit] for unit in doubt.readings})
        if doubt.question is Question.MASS_UNIT and (outcomes := found[doubt.column].get(doubt.text))
        else doubt
        for doubt in doubts
    )


def _outcomes(target: Target, column: Sequence[Cell]) -> Outcomes:
    cells = list(dict.fromkeys(column))
    by_unit = {unit: list(_of_unit(target, cells, unit)) for unit in CHOICES[Question.MASS_UNIT]}
    return {shown(text_of(cell)): {unit: texts[at] for unit, texts in by_unit.items()} for at, cell in enumerate(cells)}


def _of_unit(target: Target, cells: Sequence[Cell], unit: str) -> Iterator[str]:
    """Each cell in grams; both masses where the decimal mark would be asked about next."""
    reading = read_column(target, unit, cells, Answers())
    doubtful = {doubt.at for doubt in reading.doubts if doubt.question is Question.DECIMAL}
    marks = CHOICES[Question.DECIMAL] if doubtful else ()
    either = [read_column(target, unit, cells, Answers({Question.DECIMAL: mark})).values for mark in marks]
    for at, value in enumerate(reading.values):
        values = [values[at] for values in either] if at in doubtful else [value]
        yield _(" or ").join(dict.fromkeys(map(_in_grams, values)))


def _in_grams(value: object) -> str:
    if isinstance(value, tuple):
        return _(" to ").join(_in_grams(end) for end in value if end is not None)
    return mass_text(value) if isinstance(value, int) else _("not possible")
