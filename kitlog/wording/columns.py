"""Columns of a terminal: text as wide as it is shown, wrapped and aligned."""

import textwrap
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

WIDTH = 80
"""Columns of the narrowest terminal that is written for."""

_WIDE = frozenset("WF")
_NO_WIDTH = frozenset({"Mn", "Me", "Cf"})


def shown_width(text: str) -> int:
    """Columns that a text takes: wide letters two, combining and invisible ones none."""
    return sum(_width(char) for char in text)


def _width(char: str) -> int:
    if unicodedata.category(char) in _NO_WIDTH:
        return 0
    return 2 if unicodedata.east_asian_width(char) in _WIDE else 1


def wrapped(text: str, width: int) -> list[str]:
    """A text in lines of at most `width` columns; at least one line."""
    lines: list[str] = []
    for line in textwrap.wrap(text, width, break_on_hyphens=False) or [""]:
        lines.extend(_cut(line, width))
    return lines


def _cut(line: str, width: int) -> Iterator[str]:
    """Lines of wide letters, which the wrapping by number of letters left too wide."""
    start, used = 0, 0
    for place, char in enumerate(line):
        if used + _width(char) > width and place > start:
            yield line[start:place]
            start, used = place, 0
        used += _width(char)
    yield line[start:]


def paragraph(text: str, indent: int = 0) -> Iterator[str]:
    """A sentence as wide as the terminal; from the second line on two blanks further in."""
    first, *rest = wrapped(text, WIDTH - indent - 2)
    yield (" " * indent + first).rstrip()
    for line in rest:
        yield " " * (indent + 2) + line


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its width, and whether it is set to the right."""

    width: int
    right: bool = False

    def cell(self, text: str) -> str:
        """One line of a cell, filled up to the width."""
        blanks = " " * max(0, self.width - shown_width(text))
        return blanks + text if self.right else text + blanks


def row(cells: Sequence[str], columns: Sequence[Column], indent: int = 0) -> Iterator[str]:
    """The lines of one row: each cell wrapped in its column, two blanks between columns."""
    parts = [wrapped(cell, column.width) for cell, column in zip(cells, columns, strict=True)]
    for number in range(max(len(part) for part in parts)):
        texts = [part[number] if number < len(part) else "" for part in parts]
        line = "  ".join(column.cell(text) for text, column in zip(texts, columns, strict=True))
        yield (" " * indent + line).rstrip()


def fitting(rows: Sequence[Sequence[str]], right: Sequence[bool], most: int) -> tuple[Column, ...]:
    """Columns as wide as their widest cell, the last ones narrowed where all together are wider than `most`."""
    widths = [max((1, *(shown_width(cells[place]) for cells in rows))) for place in range(len(right))]
    over = sum(widths) + 2 * (len(widths) - 1) - most
    while over > 0:
        widest = max(range(len(widths)), key=lambda place: widths[place])
        if widths[widest] <= _LEAST:
            break
        widths[widest] -= 1
        over -= 1
    return tuple(Column(width, to_right) for width, to_right in zip(widths, right, strict=True))


_LEAST = 8
"""No column is narrowed below this."""


def table(rows: Sequence[Sequence[str]], right: Sequence[bool], indent: int = 0) -> Iterator[str]:
    """Rows under each other in columns that fit them; the first row may be the headings."""
    columns = fitting(rows, right, WIDTH - indent)
    for cells in rows:
        yield from row(cells, columns, indent)
