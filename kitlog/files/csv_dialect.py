"""The bytes of a CSV file into rows of cells: UTF-8, commas, quotes as in RFC 4180, lines ending in CRLF or LF."""

import codecs
import csv
import re
from collections.abc import Iterator
from dataclasses import dataclass

from kitlog.files.csv_problems import Problems, Spot

MAX_BYTES = 20_000_000
MAX_ROWS = 20_000
"""Rows of one file besides the headings, empty ones included; twice the largest kit that kitlog is made for."""
MAX_LINE = 131_072
"""Characters in one line; a cell over several lines has the same limit in Python's csv module."""

_WIDE_MARKS = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)
_LINE = re.compile(r"[^\n]*\n|[^\n]+")
_BARE_CR = re.compile(r"\r(?!\n)")
_TOO_LONG_LINE = "line too long"
_REASONS = {
    _TOO_LONG_LINE: "csv.line_too_long",
    "field larger than field limit": "csv.cell_too_long",
    "unexpected end of data": "csv.quote_not_closed",
    "expected after": "csv.text_after_quote",
}


@dataclass(frozen=True, slots=True)
class Record:
    """One row with anything in it, and where it begins."""

    spot: Spot
    cells: tuple[str, ...]


def records(data: bytes, problems: Problems) -> Iterator[Record]:
    """The rows of a file that hold anything, the headings included.

    What makes the rest unreadable ends the rows and is noted in `problems`: ``csv.file_too_large``, ``csv.not_utf8``,
    ``csv.bare_carriage_return``, ``csv.empty``, ``csv.line_too_long``, ``csv.cell_too_long``, ``csv.quote_not_closed``,
    ``csv.text_after_quote``, ``csv.malformed``, ``csv.too_many_rows``.
    """
    text = _decoded(data, problems)
    if text is None:
        return
    reader = csv.reader(_lines(text), strict=True)
    spot = Spot()
    while True:
        spot = Spot(reader.line_num + 1, spot.record + 1)
        try:
            cells = next(reader, None)
        except csv.Error as error:
            _note_malformed(error, spot, reader.line_num, problems)
            return
        if cells is None:
            return
        if spot.record > MAX_ROWS + 1:
            problems.add(spot, "", "csv.too_many_rows", limit=MAX_ROWS)
            return
        if any(cell.strip(" ") for cell in cells):
            yield Record(spot, tuple(cells))


def _decoded(data: bytes, problems: Problems) -> str | None:
    """The text of the file, or None with the reason noted."""
    if len(data) > MAX_BYTES:
        problems.add(Spot(), "", "csv.file_too_large", bytes=len(data), limit=MAX_BYTES)
        return None
    if data.startswith(_WIDE_MARKS) or b"\0" in data[:4]:
        problems.add(Spot(1, 1), "", "csv.not_utf8", encoding="UTF-16")
        return None
    data = data.removeprefix(codecs.BOM_UTF8)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        _note_not_utf8(data, error.start, problems)
        return None
    return _with_known_line_ends(text, problems)


def _note_not_utf8(data: bytes, at: int, problems: Problems) -> None:
    row = data.count(b"\n", 0, at) + 1
    problems.add(Spot(row, row), "", "csv.not_utf8", encoding="", byte=f"0x{data[at]:02X}")


def _with_known_line_ends(text: str, problems: Problems) -> str | None:
    bare = _BARE_CR.search(text)
    if bare:
        row = text.count("\n", 0, bare.start()) + 1
        problems.add(Spot(row, row), "", "csv.bare_carriage_return")
        return None
    if not text.strip():
        problems.add(Spot(), "", "csv.empty")
        return None
    return text


def _lines(text: str) -> Iterator[str]:
    """Line by line, never all at once: a file of nothing but line ends must not fill the memory."""
    for match in _LINE.finditer(text):
        if match.end() - match.start() > MAX_LINE:
            raise csv.Error(_TOO_LONG_LINE)
        yield match.group()


def _note_malformed(error: csv.Error, spot: Spot, last: int, problems: Problems) -> None:
    reason = str(error)
    code = next((code for words, code in _REASONS.items() if words in reason), "csv.malformed")
    problems.add(spot, "", code, limit=MAX_LINE, last_row=last, reason=reason)
