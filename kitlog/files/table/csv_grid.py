"""Text with separators into a grid: CSV in any dialect, a table from the clipboard, a list with one entry a line."""

import csv
import io
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from kitlog.fault import InputFault
from kitlog.files.csv_columns import KIT
from kitlog.files.csv_dialect import MAX_LINE, MAX_ROWS
from kitlog.files.csv_problems import Spot
from kitlog.files.table.cells import Grid, GridRow
from kitlog.files.table.collector import collector_paused
from kitlog.files.table.extent import within_columns
from kitlog.files.table.remark import Remark
from kitlog.files.table.separator import separator_of
from kitlog.units.text import composed

_NO_SEPARATOR = "\x1f"
"""Stands for a separator where there is none; a text that holds it is none that anybody typed."""
_SEP_LINE = re.compile(r'"?sep=([^\r\n])"?[ \t;,]*\n', re.IGNORECASE)
"""A first line that a spreadsheet obeys and does not show."""
_FORMULA_TEXT = re.compile(r'="((?:[^"]|"")*)"')
"""How a spreadsheet is told to leave a number as it is typed: ="0123"."""
_TELL_EVERY = 2000
_EXAMPLES = 10


@dataclass(slots=True)
class _Found:
    """What comes up while the rows are read; `strict`: as kitlog writes them, nothing is made of quotation marks."""

    strict: bool = False
    loose: list[int] = field(default_factory=list)


def text_grid(
    text: str, file: str, tell: Callable[[float], None], said: tuple[Remark, ...] = (), *, utf8: bool = False
) -> Grid:
    """The rows of a text.

    Args:
        text: the whole of it.
        file: its name, for faults.
        tell: is told the share that is done.
        said: remarks that come first.
        utf8: the text was UTF-8, as kitlog writes it.

    Remarks: ``table.separator`` (`separator`), ``table.one_column``, ``table.loose_quotes`` (`rows`, `count`).

    Raises:
        InputFault: ``table.empty``, ``table.line_too_long``, ``table.cell_too_long``, ``table.quote_not_closed``,
            ``table.malformed``, ``table.too_many_rows``, ``table.too_many_columns``; with `row` where there is one.
    """
    plain = _with_one_line_end(composed(text))
    sep_line = _SEP_LINE.match(plain)
    body = plain[sep_line.end() :] if sep_line else plain
    if not body.strip(" \t\n;,|\ufeff\u00a0"):
        raise InputFault("table.empty", file=file)
    own = utf8 and not said and _is_own(body)
    mark = "," if own else sep_line.group(1) if sep_line else separator_of(body)
    found = _Found(strict=own)
    with collector_paused():
        rows = list(_rows(body, mark, file, tell, found, 1 if sep_line else 0))
    if not rows:
        raise InputFault("table.empty", file=file)
    remarks = (*said, *_remarks(mark, found))
    return Grid(rows, remarks, own_form=own and not remarks)


def _is_own(text: str) -> bool:
    """Whether the first line is one of kitlog's own headings alone: then commas part the cells, whatever they hold."""
    headings = text[:MAX_LINE].partition("\n")[0].split(",")
    return "name" in headings and all(heading in KIT.by_heading for heading in headings)


def _with_one_line_end(text: str) -> str:
    if "\r" not in text:
        return text
    if "\r\r\n" in text:
        text = text.replace("\r\r\n", "\n")
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _remarks(mark: str, found: _Found) -> Iterator[Remark]:
    if not mark:
        yield Remark("table.one_column")
    elif mark != ",":
        yield Remark("table.separator", {"separator": mark})
    if found.loose:
        yield Remark("table.loose_quotes", {"rows": tuple(found.loose[:_EXAMPLES]), "count": len(found.loose)})


def _rows(
    text: str, mark: str, file: str, tell: Callable[[float], None], found: _Found, skipped: int
) -> Iterator[GridRow]:
    """The rows that hold anything; `skipped` lines stand above them."""
    filled = 0
    formulas = '="' in text
    lines = text.count("\n") + 1 + skipped
    for record, (line, cells) in enumerate(_records(text, mark, file, found, skipped), 1):
        if record % _TELL_EVERY == 0:
            tell(min(line / lines, 1.0))
        if not _says_anything(cells):
            continue
        filled += 1
        if filled > MAX_ROWS + 1:  # the headings besides
            raise InputFault("table.too_many_rows", file=file, limit=MAX_ROWS)
        typed = [_unquoted(cell) for cell in cells] if formulas else cells
        yield GridRow(Spot(line, record), within_columns(typed, file))


def _says_anything(cells: list[str]) -> bool:
    """Whether a row holds more than blanks; most do in the first cell."""
    return bool(cells) and (bool(cells[0].strip()) or bool("".join(cells).strip()))


def _unquoted(cell: str) -> str:
    match = _FORMULA_TEXT.fullmatch(cell)
    return match.group(1).replace('""', '"') if match else cell


def _records(text: str, mark: str, file: str, found: _Found, skipped: int) -> Iterator[tuple[int, list[str]]]:
    """Each row with the text line on which it begins."""
    lines = _lines(text, file, skipped)
    delimiter = mark or _NO_SEPARATOR
    blanks = bool(mark) and not found.strict and f'{mark} "' in text
    reader = csv.reader(lines, delimiter=delimiter, skipinitialspace=blanks, strict=True)
    if '"' not in text:  # then nothing can be wrong, and each line is a row
        yield from enumerate(reader, 1 + skipped)
        return
    while True:
        begin = reader.line_num + 1
        try:
            for cells in reader:
                yield begin + skipped, cells
                begin = reader.line_num + 1
        except csv.Error as error:
            if found.strict or reader.line_num != begin or "expected after" not in str(error):
                raise _fault(error, file, begin + skipped) from error
            found.loose.append(begin + skipped)
            yield begin + skipped, _loosely(lines[reader.line_num - 1], delimiter)
        else:
            return


def _loosely(line: str, delimiter: str) -> list[str]:
    """A row in which text follows a closing quotation mark: between tabs the marks are the text's own."""
    if delimiter in ("\t", _NO_SEPARATOR):
        return line.rstrip("\n").split(delimiter)
    return next(csv.reader([line], delimiter=delimiter))


def _fault(error: csv.Error, file: str, row: int) -> InputFault:
    reason = str(error)
    if "field larger" in reason:
        return InputFault("table.cell_too_long", file=file, row=row, limit=MAX_LINE)
    if "unexpected end" in reason or "expected after" in reason:
        return InputFault("table.quote_not_closed", file=file, row=row)
    return InputFault("table.malformed", file=file, row=row, reason=reason)


def _lines(text: str, file: str, skipped: int) -> list[str]:
    """The lines of a text, none longer than a table has them."""
    lines = list(io.StringIO(text, newline="\n"))
    lengths = list(map(len, lines))
    longest = max(lengths)
    if longest > MAX_LINE:
        row = lengths.index(longest) + 1 + skipped
        raise InputFault("table.line_too_long", file=file, row=row, limit=MAX_LINE)
    return lines
