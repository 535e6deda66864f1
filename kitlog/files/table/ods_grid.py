"""An OpenDocument spreadsheet into a grid: its XML is read row by row, so that a sheet may be as long as it likes.

lxml alone, because what is wanted of a cell (the text it shows without comments, how often it is repeated) is its XML,
and because a million repeated empty rows must cost nothing.
"""

import io
import re
from collections.abc import Callable, Iterator
from typing import Any

from kitlog.fault import InputFault
from kitlog.files.csv_dialect import MAX_ROWS
from kitlog.files.table.archive import Parts
from kitlog.files.table.cells import Cell, Figure, Grid
from kitlog.files.table.extent import MAX_COLUMNS, column_letters
from kitlog.files.table.ods_cells import ods_cell
from kitlog.files.table.sheets import Sheet, book_remarks, is_empty, named_sheet, refuse_empty

_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_STYLE = "{urn:oasis:names:tc:opendocument:xmlns:style:1.0}"
_CONFIG = "{urn:oasis:names:tc:opendocument:xmlns:config:1.0}"
_SPREADSHEET, _SHEET, _ROW = f"{_OFFICE}spreadsheet", f"{_TABLE}table", f"{_TABLE}table-row"
_COLUMN, _CELL, _COVERED = f"{_TABLE}table-column", f"{_TABLE}table-cell", f"{_TABLE}covered-table-cell"
_CELLS = frozenset((_CELL, _COVERED))
_LOOKS = f"{_STYLE}style"
_COLUMNS, _ROWS = f"{_TABLE}number-columns-repeated", f"{_TABLE}number-rows-repeated"
_WIDE, _HIGH = f"{_TABLE}number-columns-spanned", f"{_TABLE}number-rows-spanned"
_VALUE_TYPE, _FORMULA = f"{_OFFICE}value-type", f"{_TABLE}formula"
_ERROR = re.compile(r"#[A-ZÄÖÜÉ0-9/]+[!?]?|Err:\d+")
_HEAD = 10_000
"""Bytes in which a document type would be declared; no spreadsheet has one, and its entities would be lost."""
_TELL_EVERY = 250
_LONGEST_EXACT = 10**15


def ods_grid(parts: Parts, file: str, tell: Callable[[float], None], wanted: str = "") -> Grid:
    """The rows of the sheet of that name; without one, of the active sheet, or of the first with anything in it.

    Remarks: those of `book_remarks`.

    Raises:
        InputFault: ``table.broken_workbook`` (`reason`), ``table.is_document``, ``table.is_slides``, ``table.empty``,
            ``table.too_many_rows``, ``table.too_many_columns``, and the codes of `Parts`, `named_sheet` and
            `refuse_empty`.
    """
    content = parts.read("content.xml")
    if b"<!DOCTYPE" in content[:_HEAD]:
        raise InputFault("table.broken_workbook", file=file, reason="DOCTYPE")
    active = _active_sheet(parts.read("settings.xml"), file) if "settings.xml" in parts.names else ""
    tell(0.1)
    first = named_sheet(wanted, _names(content, file), file) if wanted else active
    sheets = sorted(
        _Reading(content, file, first, tell).sheets(),
        key=lambda sheet: (bool(wanted) and sheet.name != first, sheet.hidden, sheet.name != first),
    )
    if wanted:
        refuse_empty(sheets[0], file)
    filled = [sheet for sheet in sheets if sheet.rows]
    if not filled:
        raise InputFault("table.empty", file=file)
    tell(1.0)
    return Grid(filled[0].rows, book_remarks(filled[0], filled[1:]))


def _names(content: bytes, file: str) -> list[str]:
    """The names of the sheets."""
    found = []
    for kind, element in _events(content, file, ("start", "end"), (_SPREADSHEET, _SHEET, _ROW)):
        if kind == "start" and element.tag == _SHEET and _is_own(element):
            found.append(str(element.get(f"{_TABLE}name", "")))
        elif kind == "end" and element.tag == _ROW:
            _forget(element)
    return found


def _active_sheet(settings: bytes, file: str) -> str:
    """The name of the sheet that was in front when the file was saved."""
    for _, element in _events(settings, file, ("end",), (f"{_CONFIG}config-item",)):
        if element.get(f"{_CONFIG}name") == "ActiveTable":
            return str(element.text or "")
    return ""


def _events(xml: bytes, file: str, kinds: tuple[str, ...], tags: tuple[str, ...]) -> Iterator[tuple[str, Any]]:
    """Elements as they are read; nothing is fetched, no entity is opened."""
    from lxml import etree

    found = etree.iterparse(
        io.BytesIO(xml), events=kinds, tag=tags, resolve_entities=False, no_network=True, load_dtd=False,
        huge_tree=False, remove_comments=True, remove_pis=True,
    )  # fmt: skip
    while True:
        try:
            event = next(found)
        except StopIteration:
            return
        except (etree.LxmlError, SyntaxError, ValueError) as error:
            raise InputFault("table.broken_workbook", file=file, reason=str(error)[:200]) from error
        yield event


class _Reading:
    """One pass through the content of a document."""

    def __init__(self, content: bytes, file: str, active: str, tell: Callable[[float], None]) -> None:
        self._content = content
        self._file = file
        self._active = active
        self._tell = tell
        self._hidden_looks: set[str] = set()
        self._taken = False
        self._row = 0
        self._column = 0

    def sheets(self) -> Iterator[Sheet]:
        """The sheets; those that cannot be the one that is taken only as far as their first row with anything in it."""
        sheet: Sheet | None = None
        spreadsheet = False
        for kind, element in _events(self._content, self._file, ("start", "end"), self._tags()):
            if kind == "start":
                spreadsheet = spreadsheet or element.tag == _SPREADSHEET
                if element.tag == _SHEET and _is_own(element):
                    sheet = self._begin(element)
            elif element.tag == _LOOKS:
                self._note_look(element)
            elif element.tag == _SHEET and _is_own(element) and sheet is not None:
                yield self._end(sheet, element)
                sheet = None
            elif sheet is not None:
                self._inside(sheet, element)
        if not spreadsheet:
            raise InputFault("table.is_document", file=self._file)

    @staticmethod
    def _tags() -> tuple[str, ...]:
        return (_SPREADSHEET, _SHEET, _ROW, _COLUMN, _LOOKS)

    def _note_look(self, element: Any) -> None:
        """Styles of sheets that are not displayed."""
        shown = element.find(f"{_STYLE}table-properties")
        if shown is not None and shown.get(f"{_TABLE}display") == "false":
            self._hidden_looks.add(str(element.get(f"{_STYLE}name")))

    def _begin(self, element: Any) -> Sheet:
        self._row = self._column = 0
        name = str(element.get(f"{_TABLE}name", ""))
        return Sheet(name, hidden=element.get(f"{_TABLE}style-name") in self._hidden_looks)

    def _end(self, sheet: Sheet, element: Any) -> Sheet:
        self._taken = self._taken or (bool(sheet.rows) and not sheet.hidden)
        element.clear()
        return sheet

    def _inside(self, sheet: Sheet, element: Any) -> None:
        owner = next(element.iterancestors(_SHEET), None)
        if owner is None or not _is_own(owner):
            return
        if element.tag == _COLUMN:
            self._pass_columns(sheet, element)
        elif element.tag == _ROW:
            self._pass_rows(sheet, element)
            _forget(element)

    def _pass_columns(self, sheet: Sheet, element: Any) -> None:
        times = _times(element, _COLUMNS)
        if element.get(f"{_TABLE}visibility", "visible") != "visible":
            last = min(self._column + times, MAX_COLUMNS)
            sheet.hidden_columns.update(range(self._column + 1, last + 1))
        self._column += times

    def _pass_rows(self, sheet: Sheet, element: Any) -> None:
        times = _times(element, _ROWS)
        first = self._row + 1
        self._row += times
        if first // _TELL_EVERY != self._row // _TELL_EVERY:
            self._tell(0.1 + 0.9 * min(first / MAX_ROWS, 1.0))
        if sheet.rows and self._taken and sheet.name != self._active:
            return
        cells = self._cells(sheet, element, first)
        if not cells:
            return
        hidden = element.get(f"{_TABLE}visibility", "visible") != "visible"
        for row in range(first, first + times):
            sheet.add(row, cells, self._file)
            if hidden:
                sheet.hidden_rows.append(row)

    def _cells(self, sheet: Sheet, row: Any, number: int) -> list[Cell]:
        """The cells of a row up to the last with anything in it."""
        cells: list[Cell] = []
        column = 0
        for element in row:
            if element.tag not in _CELLS:
                continue
            times = _times(element, _COLUMNS)
            cell = self._cell(sheet, element, number, column + 1)
            if not is_empty(cell):
                if column + times > MAX_COLUMNS:
                    raise InputFault("table.too_many_columns", file=self._file, limit=MAX_COLUMNS)
                cells.extend("" for _ in range(column - len(cells)))
                cells.extend(cell for _ in range(times))
            column += times
        return cells

    def _cell(self, sheet: Sheet, element: Any, row: int, column: int) -> Cell:
        if element.tag == _COVERED:
            return ""
        given = element.attrib
        if not len(element) and _VALUE_TYPE not in given and _FORMULA not in given:
            return ""
        cell = ods_cell(element)
        if _FORMULA in given:
            self._note_formula(sheet, cell, given, f"{column_letters(column)}{row}")
        if isinstance(cell, Figure) and abs(cell.value) >= _LONGEST_EXACT:
            sheet.digits_lost.append(f"{column_letters(column)}{row}")
        self._note_merged(sheet, given, row, column)
        return cell

    @staticmethod
    def _note_formula(sheet: Sheet, cell: Cell, given: Any, name: str) -> None:
        if cell == "" and given.get(_VALUE_TYPE) != "string":
            sheet.no_value.append(name)
        elif isinstance(cell, str) and _ERROR.fullmatch(cell):
            sheet.errors.append(name)

    @staticmethod
    def _note_merged(sheet: Sheet, given: Any, row: int, column: int) -> None:
        wide, high = _times(given, _WIDE), _times(given, _HIGH)
        if wide > 1 or high > 1:
            last = f"{column_letters(column + wide - 1)}{row + high - 1}"
            sheet.merged.append(f"{column_letters(column)}{row}:{last}")


def _is_own(sheet: Any) -> bool:
    """Whether a table is a sheet of the document: not one inside a drawing, not the copy of a table elsewhere."""
    parent = sheet.getparent()
    name = str(sheet.get(f"{_TABLE}name", ""))
    return parent is not None and parent.tag == _SPREADSHEET and not name.startswith("'file:")


def _times(element: Any, name: str) -> int:
    """How often a row, a column or a cell stands there, or how many it covers."""
    text = element.get(name)
    return max(int(text), 1) if text and text.isdecimal() and len(text) < 9 else 1


def _forget(row: Any) -> None:
    """Let go of a row that was read, and of those before it."""
    row.clear()
    parent = row.getparent()
    while parent is not None and row.getprevious() is not None:
        del parent[0]
