"""An .xlsx workbook into a grid; openpyxl reads it, from parts that were held to what a table can be."""

import datetime as dt
import warnings
from collections.abc import Callable, Iterator
from decimal import Decimal
from typing import Any

from kitlog.fault import Fault, InputFault
from kitlog.files.table.archive import Parts
from kitlog.files.table.cells import Cell, Grid
from kitlog.files.table.extent import MAX_COLUMNS, column_letters
from kitlog.files.table.sheets import Sheet, book_remarks, is_empty, named_sheet, refuse_empty
from kitlog.files.table.xlsx_cells import day_cell, hours_cell, number_cell
from kitlog.files.table.xlsx_source import ToldSource, active_name, told_source

_LONGEST_EXACT = 10**15
_SECONDS_OF_A_DAY = 86_400


def xlsx_grid(parts: Parts, file: str, tell: Callable[[float], None], wanted: str = "") -> Grid:
    """The rows of the sheet of that name; without one, of the active sheet, or of the first with anything in it.

    Remarks: those of `book_remarks`.

    Raises:
        InputFault: ``table.broken_workbook`` (`reason`), ``table.empty``, ``table.too_many_rows``,
            ``table.too_many_columns``, and the codes of `Parts`, `named_sheet` and `refuse_empty`.
    """
    source = told_source(parts, tell)
    with warnings.catch_warnings():
        # What openpyxl warns of is what it would not write back: extensions, validations, print areas, styles.
        warnings.filterwarnings("ignore", category=UserWarning, module=r"openpyxl(\.|$)")
        book = _Book(source, file, active_name(parts), wanted)
        taken: Sheet | None = None
        others: list[Sheet] = []
        for worksheet in book.worksheets():
            sheet = book.read(worksheet, whole=taken is None)
            if wanted and taken is None:
                refuse_empty(sheet, file)
            if taken is None and sheet.rows:
                taken = sheet
            elif sheet.rows:
                others.append(sheet)
    if taken is None:
        raise InputFault("table.empty", file=file)
    tell(1.0)
    return Grid(taken.rows, book_remarks(taken, others))


class _Book:
    """A workbook open in openpyxl; whatever that trips over is the file's fault."""

    def __init__(self, source: ToldSource, file: str, active: str, wanted: str) -> None:
        from openpyxl import load_workbook

        self._active = active
        self._file = file
        self._source = source
        self._codes: dict[int, str] = {}
        (self._book,) = self._guarded(load_workbook(source, read_only=True, keep_links=False) for _ in range(1))
        names = [str(sheet.title) for sheet in self._sheets()]
        self._wanted = named_sheet(wanted, names, file) if wanted else None

    def _sheets(self) -> list[Any]:
        return [sheet for sheet in self._book.worksheets if hasattr(sheet, "_worksheet_path")]

    def worksheets(self) -> list[Any]:
        """The sheets as they are asked for content: the wanted one, the active one, the visible, the hidden."""

        def place(sheet: Any) -> tuple[bool, bool, bool]:
            return sheet.title != self._wanted, _is_hidden(sheet), sheet.title != self._active

        return sorted(self._sheets(), key=place)

    def read(self, worksheet: Any, *, whole: bool) -> Sheet:
        """A sheet; if not the whole, as far as its first row with anything in it."""
        sheet = Sheet(str(worksheet.title), hidden=_is_hidden(worksheet))
        with worksheet._get_source() as source:  # noqa: SLF001  # the only way to a sheet's own XML; held by tests
            parser = _parser(source, worksheet)
            for row, cells in self._guarded(parser.parse()):
                self._add(sheet, row, cells, parser)
                if sheet.rows and not whole:
                    return sheet
        _note_layout(sheet, parser)
        return sheet

    def _guarded(self, steps: Iterator[Any]) -> Iterator[Any]:
        """Steps of the library, with its errors turned into a fault."""
        while True:
            try:
                step = next(steps)
            except StopIteration:
                return
            except Fault:
                raise
            except Exception as error:
                if self._source.stopped:
                    raise self._source.stopped from None
                reason = f"{type(error).__name__}: {error}".splitlines()[0][:200]
                raise InputFault("table.broken_workbook", file=self._file, reason=reason) from error
            yield step

    def _add(self, sheet: Sheet, row: int, stored: list[dict[str, Any]], parser: Any) -> None:
        cells: list[Cell] = []
        for one in stored:
            value, column = one["value"], one["column"]
            if value is None:
                continue
            cell = self._cell(value, one, sheet)
            if is_empty(cell):
                continue
            if column > MAX_COLUMNS:
                raise InputFault("table.too_many_columns", file=self._file, limit=MAX_COLUMNS)
            cells.extend("" for _ in range(column - len(cells)))
            cells[column - 1] = cell
        sheet.no_value.extend(f"{column_letters(column)}{row}" for column in parser.taken_without_value())
        if cells:
            sheet.add(row, cells, self._file)

    def _cell(self, value: Any, one: dict[str, Any], sheet: Sheet) -> Cell:
        kind = one["data_type"]
        if kind == "n":
            if abs(value) >= _LONGEST_EXACT:
                sheet.digits_lost.append(_name(one))
            return number_cell(value, self._code(one["style_id"]), self._book.epoch)
        if kind == "b":
            return "TRUE" if value else "FALSE"
        if kind == "e":
            sheet.errors.append(_name(one))
        if kind == "d":
            return _iso_cell(value)
        return str(value).replace("_x000D_", "").replace("\r\n", "\n").replace("\r", "\n")

    def _code(self, style: int) -> str:
        """The number format of a style, by its index."""
        code = self._codes.get(style)
        if code is None:
            code = self._codes[style] = self._look_up(style)
        return code

    def _look_up(self, style: int) -> str:
        from openpyxl.styles.numbers import BUILTIN_FORMATS, BUILTIN_FORMATS_MAX_SIZE

        styles, formats = self._book._cell_styles, self._book._number_formats  # noqa: SLF001  # as its own cells do
        if not 0 <= style < len(styles):
            return "General"
        number = styles[style].numFmtId
        if number < BUILTIN_FORMATS_MAX_SIZE:
            return str(BUILTIN_FORMATS.get(number, "General"))
        place = number - BUILTIN_FORMATS_MAX_SIZE
        return str(formats[place]) if place < len(formats) else "General"


def _parser(source: Any, worksheet: Any) -> Any:
    """The library's own parser, that also notes formulas of which no result is stored."""
    from openpyxl.worksheet._reader import FORMULA_TAG, VALUE_TAG, WorkSheetParser

    class Parser(WorkSheetParser):  # type: ignore[misc]  # the library has no types
        """Reads values; dates are left as numbers, their formats are looked at later."""

        def __init__(self) -> None:
            super().__init__(source, worksheet._shared_strings, data_only=True)  # noqa: SLF001
            self._without_value: list[int] = []

        def parse_cell(self, element: Any) -> dict[str, Any]:
            cell: dict[str, Any] = super().parse_cell(element)
            if cell["value"] is None and element.find(FORMULA_TAG) is not None:
                stored = element.find(VALUE_TAG)
                if stored is None or cell["data_type"] != "str":
                    self._without_value.append(cell["column"])
            return cell

        def taken_without_value(self) -> list[int]:
            """Columns of such formulas in the row that was read last."""
            found, self._without_value = self._without_value, []
            return found

        def parse_extensions(self, element: Any) -> None:
            """Extensions hold no cells."""

        def parse_formatting(self, element: Any) -> None:
            """Conditional formats hold no cells."""

    return Parser()


def _name(cell: dict[str, Any]) -> str:
    return f"{column_letters(cell['column'])}{cell['row']}"


def _is_hidden(worksheet: Any) -> bool:
    return str(worksheet.sheet_state) != "visible"


def _iso_cell(value: Any) -> Cell:
    """A cell that holds a day or a time in words of ISO 8601."""
    if isinstance(value, dt.datetime):
        return day_cell(value.date())
    if isinstance(value, dt.date):
        return day_cell(value)
    if isinstance(value, dt.time):
        seconds = value.hour * 3600 + value.minute * 60 + value.second
        return hours_cell(Decimal(seconds) / _SECONDS_OF_A_DAY)
    if isinstance(value, dt.timedelta):
        return hours_cell(Decimal(str(value.total_seconds())) / _SECONDS_OF_A_DAY)
    return str(value)


def _note_layout(sheet: Sheet, parser: Any) -> None:
    """Hidden rows and columns, and cells that are merged."""
    hidden = {int(row) for row, seen in parser.row_dimensions.items() if seen.get("hidden") in ("1", "true")}
    sheet.hidden_rows.extend(row.spot.row for row in sheet.rows if row.spot.row in hidden)
    for seen in parser.column_dimensions.values():
        if seen.get("hidden") in ("1", "true"):
            first, last = int(seen["min"]), int(seen["max"])
            sheet.hidden_columns.update(range(first, min(last, MAX_COLUMNS) + 1))
    if parser.merged_cells:
        sheet.merged.extend(str(cell.ref) for cell in parser.merged_cells.mergeCell)
