"""The columns of a table: heading, what it stands for and how that was found, with a few cells to show."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import islice, zip_longest

from kitlog.files.csv_problems import shown
from kitlog.files.csv_rows import column_letters
from kitlog.files.table.cells import Cell, GridRow, text_of
from kitlog.files.table.cells_tell import told_by_cells
from kitlog.files.table.headings import Found, meaning_of, meanings
from kitlog.files.table.targets import Meaning
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.kit.kinds import MassSource

EXAMPLES = 3
_TOLD_BY = 200
"""Cells of a column that are looked at to tell what it is of."""
LEFT_OUT = Meaning("")
_DECIDED = {"chosen": 0, "remembered": 1}


@dataclass(frozen=True, slots=True)
class TableColumn:
    """One column.

    Attributes:
        index: from 0; letters: as a spreadsheet names it.
        heading: its text, empty where there is none.
        meaning: what it stands for; None = not understood; a meaning without target = left out on purpose.
        how: ``ours``, ``word``, ``part`` (a word within), ``cells`` (only the cells tell), ``double`` (another column
            fits better), ``remembered``, ``chosen``, or empty where it is not understood.
        source: how its masses were taken, where the heading says so.
        shared: another column has the same heading.
        examples: its first cells that hold anything; filled: how many do.
    """

    index: int
    letters: str
    heading: str
    meaning: Meaning | None
    how: str
    examples: tuple[str, ...]
    filled: int
    source: MassSource | None = None
    shared: bool = False

    @property
    def named(self) -> str:
        """The heading as the pilot is told it: with its letters where another column has the same, or these alone."""
        return f"{self.heading} [{self.letters}]".lstrip() if self.shared else self.heading or self.letters

    @property
    def target(self) -> str:
        """Name of the target, empty where the column is not read."""
        return self.meaning.target if self.meaning else ""


def columns_of(rows: Sequence[GridRow], least: int) -> list[Sequence[Cell]]:
    """The cells of rows by column, at least so many columns; short rows are filled with empty cells."""
    columns: list[Sequence[Cell]] = list(zip_longest(*(row.cells for row in rows), fillvalue=""))
    return columns + [("",) * len(rows)] * (least - len(columns))


def table_columns(
    headings: Sequence[str],
    cells: Sequence[Sequence[Cell]],
    words: Vocabulary,
    remembered: Mapping[int, Meaning],
    chosen: Mapping[int, Meaning],
) -> tuple[TableColumn, ...]:
    """Every column that holds a heading or a cell; what the pilot chose goes before what is remembered or found."""
    headings = (*headings, *[""] * (len(cells) - len(headings)))
    some = [[text_of(cell).strip() for cell in column[:_TOLD_BY]] for column in cells]
    found = told_by_cells(meanings(headings, words, some), some, words)
    columns = [
        _column(index, heading, found[index], cells[index], remembered, chosen)
        for index, heading in enumerate(headings)
    ]
    columns = _with_second_mass(_in_stead(_one_each(columns), words), words)
    known = Counter(_plain(column.heading) for column in columns)
    return tuple(
        replace(column, shared=True) if plain and known[plain] > 1 else column
        for column in columns
        if (plain := _plain(column.heading)) or column.filled
    )


def _plain(heading: str) -> str:
    return " ".join(heading.casefold().split())


def _in_stead(columns: Sequence[TableColumn], words: Vocabulary) -> list[TableColumn]:
    """Columns that gave way to another one which the pilot has put to some other use take its place."""
    taken = {column.target for column in columns}
    found = []
    for column in columns:
        meaning = meaning_of(column.heading, words) if column.how == "double" else None
        if meaning is not None and meaning.target not in taken:
            taken.add(meaning.target)
            column = replace(column, meaning=meaning, how="word")  # noqa: PLW2901  # the same column, read
        found.append(column)
    return found


def _with_second_mass(columns: Sequence[TableColumn], words: Vocabulary) -> list[TableColumn]:
    """The first further column of masses as a second figure: ounces beside pounds, or another weighing."""
    done = not any(column.target == "mass_g" for column in columns) or any(c.target == "mass_more" for c in columns)
    second = []
    for column in columns:
        meaning = meaning_of(column.heading, words) if column.how == "double" and not done else None
        if meaning is not None and meaning.target == "mass_g":
            done = True
            second.append(replace(column, meaning=Meaning("mass_more", meaning.unit), how="word"))
        else:
            second.append(column)
    return second


def _one_each(columns: Sequence[TableColumn]) -> list[TableColumn]:
    """The columns, of those for the same target only the one that was decided on, or the first, standing for it."""
    best: dict[str, int] = {}
    for column in sorted(columns, key=lambda column: (_DECIDED.get(column.how, len(_DECIDED)), column.index)):
        best.setdefault(column.target, column.index)
    return [
        replace(column, meaning=None, how="double") if column.target and best[column.target] != column.index else column
        for column in columns
    ]


def _column(
    index: int,
    heading: str,
    found: Found,
    cells: Sequence[Cell],
    remembered: Mapping[int, Meaning],
    chosen: Mapping[int, Meaning],
) -> TableColumn:
    meaning, how = found.meaning, found.how
    for source, name in ((remembered, "remembered"), (chosen, "chosen")):
        if index in source:
            meaning, how = source[index], name
    first = islice((cell for cell in cells if cell != ""), EXAMPLES)
    examples = tuple(shown(text_of(cell)) for cell in first)
    filled = len(cells) - cells.count("")
    return TableColumn(index, column_letters(index + 1), shown(heading), meaning, how, examples, filled, found.source)
