"""What parts the cells of a text: a comma, a semicolon, a tab or a bar, by how evenly each would part the rows."""

import csv
import io
import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import islice

_CANDIDATES = ("\t", ";", "|", ",")
"""In the order in which they are preferred where two part the rows equally well: a comma is also a decimal mark."""
_ROWS = 200
"""Rows that are looked at; a list of kit is seldom longer, and none changes its separator."""
_LETTERS = 200_000
"""Letters in which decimal commas are looked for: those rows, even if they are long."""
_DECIMAL = re.compile(r"(?<=\d),(?=\d)")
_EVEN = 0.25
"""The least score of a separator: half of all rows have the same two cells."""
_RIVAL = 0.3
_CLOSE = 0.9


@dataclass(frozen=True, slots=True)
class Fit:
    """How a separator parts the rows: the score, and the share of rows that it parts at all."""

    mark: str
    score: float
    parted: float


def separator_of(text: str) -> str:
    """The separator of a text; empty where every line is one cell."""
    found = [mark for mark in _CANDIDATES if mark in text]
    if not found:
        return ""
    fits = _fits(text, found)
    best = max(fits, key=lambda fit: fit.score)
    if best.score >= _EVEN:
        return next(fit.mark for fit in fits if fit.score >= best.score * _CLOSE)
    most = max(fits, key=lambda fit: fit.parted)
    return most.mark if most.parted >= 0.5 else ""


def _fits(text: str, found: list[str]) -> list[Fit]:
    """How each of them parts the rows; the comma not as a decimal mark where another separator fits too."""
    fits = [_fit(_lines(text), mark) for mark in found if mark != ","]
    if "," not in found:
        return fits
    lines = _lines(text)
    if any(fit.score >= _RIVAL for fit in fits):
        lines = (_DECIMAL.sub(".", line) for line in _lines(text[:_LETTERS]))
    return [*fits, _fit(lines, ",")]


def _lines(text: str) -> Iterable[str]:
    return io.StringIO(text, newline="\n")


def _fit(lines: Iterable[str], mark: str) -> Fit:
    """A score that rises with the share of rows of one width, and with that width."""
    widths = _widths(lines, mark)
    wide = [width for width in widths if width > 1]
    if not wide:
        return Fit(mark, 0.0, 0.0)
    width, times = Counter(wide).most_common(1)[0]
    return Fit(mark, times / len(widths) * (1 - 1 / width), len(wide) / len(widths))


def _widths(lines: Iterable[str], mark: str) -> list[int]:
    """Cells by row, of rows with anything but separators in them."""
    reader = csv.reader(lines, delimiter=mark)
    try:
        return [len(cells) for cells in islice(reader, _ROWS) if any(cells)]
    except csv.Error:
        return []
