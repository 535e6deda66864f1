"""Marks that repeat the cell above: a lone quotation mark, "dito", "idem"."""

from collections.abc import Sequence

from kitlog.files.table.cells import Cell, GridRow, text_of
from kitlog.files.table.remark import Remark
from kitlog.files.table.table_column import TableColumn
from kitlog.files.table.vocabulary import Vocabulary


def without_dittos(
    rows: Sequence[GridRow], cells: Sequence[Sequence[Cell]], columns: Sequence[TableColumn], words: Vocabulary
) -> tuple[list[GridRow], list[Sequence[Cell]], tuple[Remark, ...]]:
    """The rows, and the same by column, with the cells that such marks repeat; of the columns that are read alone.

    Remarks: ``table.ditto`` with `heading`, `text` (the first mark) and `at` (positions of rows).
    """
    changed = {
        column: positions
        for column in columns
        if column.target and (positions := _positions(cells[column.index], words.dittos))
    }
    by_column = list(cells)
    for column, positions in changed.items():
        by_column[column.index] = _repeated(cells[column.index], positions)
    new = list(rows)
    for at in {at for positions in changed.values() for at in positions}:
        width = len(rows[at].cells)
        new[at] = rows[at]._replace(cells=[by_column[index][at] for index in range(width)])
    return new, by_column, tuple(_remark(column, cells, positions) for column, positions in changed.items())


def _positions(cells: Sequence[Cell], dittos: frozenset[str]) -> tuple[int, ...]:
    if dittos.isdisjoint(cells):
        return ()
    return tuple(at for at, cell in enumerate(cells) if cell in dittos)


def _repeated(cells: Sequence[Cell], positions: Sequence[int]) -> list[Cell]:
    repeated = list(cells)
    for at in positions:
        repeated[at] = repeated[at - 1] if at else ""
    return repeated


def _remark(column: TableColumn, cells: Sequence[Sequence[Cell]], positions: tuple[int, ...]) -> Remark:
    text = text_of(cells[column.index][positions[0]])
    return Remark("table.ditto", {"heading": column.named, "text": text, "at": positions})
