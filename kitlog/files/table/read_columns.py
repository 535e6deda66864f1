"""All columns of a table read: values by target, the doubts with their place, what is to be said."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from kitlog.files.csv_problems import shown
from kitlog.files.table.cells import Cell, GridRow, text_of
from kitlog.files.table.column_reading import CellDoubt, ColumnReading
from kitlog.files.table.day_order import order_of
from kitlog.files.table.doubt import EMPTY, Answers, Doubt, Question, Settled
from kitlog.files.table.read_column import read_column
from kitlog.files.table.remark import Remark
from kitlog.files.table.table_column import TableColumn
from kitlog.files.table.targets import TARGETS, Way
from kitlog.files.table.text_column import read_texts
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.files.table.word_column import read_words

_TEXTS = frozenset({Way.TEXT, Way.NOTE, Way.SEVERAL})
_ROUGH = frozenset({Way.DAY, Way.COUNT, Way.FIGURE, Way.ELECTRIC, Way.MASS_RANGE})
"""Ways by which a rough figure is taken as it stands, and told: an item keeps of its mass alone that it is rough."""


@dataclass(slots=True)
class Sheet:
    """A table while it is read.

    Attributes:
        rows: the rows of data.
        columns: by target, the column that is read for it.
        values: by target, one value a row.
        guesses: by target, positions of rows whose figure is marked as rough.
        each, pairs: by target, positions of rows whose mass is said to be of one piece, or of a pair.
        totals: cells of the rows of sums, by index of the column.
    """

    rows: Sequence[GridRow]
    settled: Settled
    own: bool = False
    columns: dict[str, TableColumn] = field(default_factory=dict)
    values: dict[str, list[object]] = field(default_factory=dict)
    guesses: dict[str, frozenset[int]] = field(default_factory=dict)
    each: dict[str, frozenset[int]] = field(default_factory=dict)
    pairs: dict[str, frozenset[int]] = field(default_factory=dict)
    totals: Sequence[Sequence[Cell]] = ()
    doubts: list[Doubt] = field(default_factory=list)
    remarks: list[Remark] = field(default_factory=list)

    def cell(self, at: int, target: str) -> str:
        """The text of a row's cell in the column of a target."""
        column = self.columns.get(target)
        cells = self.rows[at].cells
        return text_of(cells[column.index]) if column and column.index < len(cells) else ""

    def doubt(self, at: int, target: str, cell: CellDoubt, together: Sequence[str] = ()) -> None:
        """Note a doubt about a row's cell; `together`: the targets whose cells are open with it, this one included."""
        named = {column.index: name for name in together or (target,) if (column := self.columns.get(name))}
        texts = {name: text for name in named.values() if (text := self.cell(at, name))} or {target: ""}
        heading = " | ".join(self.columns[name].named for name in texts)
        text = " | ".join(shown(text) for text in texts.values())
        spot, index = self.rows[at].spot, self.columns[target].index
        self.doubts.append(Doubt(cell.question, spot, index, heading, text, cell.readings, emptied=cell.emptied))

    def unread(self, at: int, target: str) -> None:
        """Note that a cell says nothing that could be taken, and take nothing."""
        emptied = self.settled.of(self.columns[target].index).to(Question.UNREAD) != ""
        self.values[target][at] = None
        self.doubt(at, target, CellDoubt(at, Question.UNREAD, emptied=emptied))

    def row_number(self, at: int) -> int:
        """The line of a row, as it is named to the pilot."""
        return self.rows[at].spot.row


def read_columns(
    sheet: Sheet,
    columns: Sequence[TableColumn],
    cells: Sequence[Sequence[Cell]],
    totals: Sequence[Sequence[Cell]],
    words: Vocabulary,
) -> None:
    """Read every column that stands for something into the sheet.

    `cells` are those of the rows by column; masses of `totals`, by column as well, are read along as evidence.
    """
    sheet.totals = totals
    read = [column for column in columns if column.target]
    sheet.columns |= {column.target: column for column in read}
    for column in sorted(read, key=lambda column: TARGETS[column.target].way is not Way.MASS_UNIT):
        reading = _reading(sheet, column, cells[column.index], totals[column.index], words)
        _take(sheet, column, reading)


def _reading(
    sheet: Sheet, column: TableColumn, cells: Sequence[Cell], totals: Sequence[Cell], words: Vocabulary
) -> ColumnReading:
    target = TARGETS[column.target]
    answers = sheet.settled.of(column.index)
    if target.way in _TEXTS:
        return read_texts(target, cells, answers, own=sheet.own)
    if target.way is Way.WORD:
        return read_words(target, cells, answers, words)
    unit = column.meaning.unit if column.meaning else ""
    if target.way is Way.DAY and answers.to(Question.DATES) in ("", EMPTY) and (order := order_of(column.heading)):
        answers = Answers({**answers.given, Question.DATES: order})
    if target.way is not Way.MASS:
        return read_column(target, unit, cells, answers, own=sheet.own)
    units = [str(unit or "") for unit in sheet.values.get("mass_unit", [])]
    units = [*units, *[""] * len(totals)] if units else []
    return read_column(target, unit, [*cells, *totals], answers, own=sheet.own, units=units, evidence=len(totals))


def _take(sheet: Sheet, column: TableColumn, reading: ColumnReading) -> None:
    """What was read of the rows; what was read beyond them (totals) is kept under ``total``."""
    n = len(sheet.rows)
    target = column.target
    sheet.values[target] = list(reading.values[:n])
    sheet.values[f"total {target}"] = list(reading.values[n:])
    sheet.each[target], sheet.pairs[target] = reading.each, reading.pairs
    guesses = frozenset(at for at in reading.guesses if at < n)  # a rough total is no row's figure
    if guesses:
        sheet.guesses[target] = guesses
        if TARGETS[target].way in _ROUGH:
            at = tuple(sorted(guesses))
            facts = {"heading": column.named, "text": shown(sheet.cell(at[0], target)), "at": at}
            sheet.remarks.append(Remark("table.rough_taken", facts))
    for doubt in reading.doubts:
        if doubt.at < n:
            sheet.doubt(doubt.at, target, doubt)
    place = {"heading": column.named}
    sheet.remarks.extend(Remark(remark.code, {**place, **remark.facts}) for remark in reading.remarks)


def spots_of(sheet: Sheet, positions: Sequence[int]) -> tuple[int, ...]:
    """Lines of some rows."""
    return tuple(sheet.row_number(at) for at in positions)
