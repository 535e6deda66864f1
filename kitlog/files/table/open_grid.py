"""Any file that could be a table into a grid, by its content, never by the ending of its name."""

from collections.abc import Callable
from dataclasses import replace

from kitlog.fault import InputFault
from kitlog.files.csv_dialect import MAX_BYTES
from kitlog.files.table.cells import Grid, GridRow
from kitlog.files.table.csv_grid import text_grid
from kitlog.files.table.decode import decoded
from kitlog.files.table.not_a_table import refuse_other_files, refuse_other_text
from kitlog.files.table.workbook_grid import workbook_grid
from kitlog.units.text import composed

_PACKED = (b"PK\x03\x04", b"PK\x05\x06")


def _nobody(_share: float) -> None:
    """Told of progress, and does nothing."""


def read_grid(data: bytes, file: str, tell: Callable[[float], None] = _nobody, sheet: str = "") -> Grid:
    """The rows of a file: CSV in any dialect, an .xlsx workbook or an OpenDocument spreadsheet.

    Args:
        data: the whole file.
        file: its name, for faults.
        tell: is told now and then the share (0 to 1) that is done; what it raises ends the reading.
        sheet: name of the sheet of a workbook to read, whatever its case; empty = the one in front.

    Remarks: those of `decoded`, `text_grid` and `book_remarks`; ``table.sheet_taken`` names the sheets with anything in
    them that were not read.

    Raises:
        InputFault: ``table.too_large``, ``table.empty``, ``table.no_sheets`` (one is asked for of a file that has none,
            with ``value``), and the codes of `refuse_other_files`, `decoded`, `text_grid`, `workbook_grid`: the file
            cannot be read as a whole.
    """
    if len(data) > MAX_BYTES:
        raise InputFault("table.too_large", file=file, bytes=len(data), limit=MAX_BYTES)
    if not data.strip():
        raise InputFault("table.empty", file=file)
    if data.startswith(_PACKED):
        return _composed(workbook_grid(data, file, tell, sheet))
    refuse_other_files(data, file)
    if sheet:
        raise InputFault("table.no_sheets", file=file, value=sheet)
    read = decoded(data, file)
    refuse_other_text(read.text, file)
    return text_grid(read.text, file, tell, read.remarks, utf8=read.utf8)


def read_pasted(text: str, tell: Callable[[float], None] = _nobody) -> Grid:
    """The rows of a block from the clipboard; its faults name no file. `tell` is that of `read_grid`.

    Raises:
        InputFault: ``table.too_large``, ``table.zero_bytes``, and the codes of `text_grid`.
    """
    if len(text) > MAX_BYTES:
        raise InputFault("table.too_large", bytes=len(text), limit=MAX_BYTES)
    if "\0" in text:
        raise InputFault("table.zero_bytes")
    return text_grid(text, "", tell)


def _composed(grid: Grid) -> Grid:
    """The grid with its texts in composed form, as `text_grid` has them."""
    rows = [
        GridRow(row.spot, [composed(cell) if isinstance(cell, str) else cell for cell in row.cells])
        for row in grid.rows
    ]
    return replace(grid, rows=rows)
