"""Columns of figures with a unit of one dimension: Wh, mAh, V, W, ml, l, m2, km/h, m/s, %, h, s, clo."""

import re
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from kitlog.files.table.amounts import Meant, Part, judged, pieces, total, units_of
from kitlog.files.table.bare_unit import with_unit_told
from kitlog.files.table.cells import Cell, Figure, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers
from kitlog.files.table.electric import Milliamps
from kitlog.files.table.limits import is_likely, most
from kitlog.files.table.marked import Plain, read_marked
from kitlog.files.table.numbers import MARK, PLAIN, Number, figure_value, plain_value, written
from kitlog.files.table.phrases import phrase
from kitlog.files.table.reading import NOTHING, UNREAD, Read
from kitlog.files.table.targets import Target
from kitlog.files.table.units import FACTOR, canonical_unit

_PLAIN = re.compile(PLAIN)
_CLOCK = re.compile(r"([0-9]{1,6}):([0-5][0-9])(?::([0-5][0-9]))?(?: ?(?:h|std|stunden|hours|heures))?")

_USUAL = frozenset({"V", "%", "h", "m2", "clo", "km/h", "m/s"})
"""Units that go without saying: people write the others of the dimension beside the figure, or do not use them. Not so
Wh, W (against mA), ml and l, s and min. Common practice, no source."""

_IN_MA = frozenset({"draw_w", "charge_max_w"})
"""Powers that people give as a current."""


def read_figures(target: Target, unit: str, cells: Sequence[Cell], answers: Answers, *, own: bool) -> ColumnReading:
    """Figures in the target's unit; ml whole.

    A figure without unit anywhere is read where its unit goes without saying, and a remark says so. A power in mA or A
    becomes `Milliamps`; times are also read as h:min and "112 h 30".
    """
    usual = not unit and not own and target.unit in _USUAL
    column = _Figures(target, unit or (target.unit if own or usual else ""), own=own)
    reading = read_marked(cells, column.quick, column.careful, text_of, answers)
    return with_unit_told(reading, cells, target.unit) if usual else reading


class _Figures:
    """How the cells of one column are read.

    Args:
        bare: unit of a figure without one; empty = not known.
    """

    def __init__(self, target: Target, bare: str, *, own: bool) -> None:
        self.target = target
        self.bare = bare
        self.own = own
        self.whole = target.unit == "ml"
        self.limit = most(target)
        self.plain_as_is = bare == target.unit and not self.whole and target.unit != "%"

    def quick(self, cell: Cell) -> Plain | None:
        """Bare figures of at most two decimals, already in the target's unit."""
        match = _PLAIN.fullmatch(cell) if self.plain_as_is and isinstance(cell, str) else None
        if match is None:
            return None
        whole, mark, rest = match.groups()
        value = plain_value(whole, rest)
        return None if value is None else (value, MARK[mark], False)

    def careful(self, cell: Cell) -> Read:
        if isinstance(cell, Figure) and ":" not in cell.text:
            return self._figure(cell)
        return self._text(text_of(cell)) if isinstance(cell, str | Figure) else UNREAD

    def _figure(self, cell: Figure) -> Read:
        value = figure_value(cell.value)
        unit = "%" if cell.percent else canonical_unit(cell.unit) if cell.unit else self.bare
        if value is None or (cell.unit and not unit) or self._maybe_share(value, said=bool(cell.percent or cell.unit)):
            return UNREAD
        value = value * 100 if cell.percent else value
        return judged([Number(value, value)], [unit], self._meant, rough=False)

    def _text(self, text: str) -> Read:
        said = phrase(text)
        if said is None or said.nothing:
            return NOTHING if said else UNREAD
        if self.target.unit == "h" and (clock := _CLOCK.fullmatch(said.core)):
            return Read(_hours(*clock.groups()), said.rough)
        found = pieces(said.core, own=self.own)
        units = units_of(found, self.bare) if found and not said.each else None
        if not found or units is None:
            return UNREAD
        number = found[0].number
        if self._maybe_share(number.comma or number.point or Decimal(0), said=bool(found[0].behind)):
            return UNREAD
        return judged([piece.number for piece in found], units, self._meant, rough=said.rough)

    def _maybe_share(self, value: Decimal, *, said: bool) -> bool:
        """A bare 0.95 under % may be 95 % or less than one per cent: nobody can tell."""
        return self.target.unit == "%" and not said and not self.own and 0 < value <= 1

    def _meant(self, parts: Sequence[Part]) -> Meant | None:
        shown = " ".join(f"{written(part.value)} {part.unit}" for part in parts)
        if self.target.name in _IN_MA and len(parts) == 1 and (parts[0].unit, "mA") in FACTOR:
            return Meant(Milliamps(float(Fraction(parts[0].value) * FACTOR[parts[0].unit, "mA"])), shown)
        amount = total(parts, self.target.unit)
        if amount is None:
            return None
        value = float(amount) if not self.whole else None if amount % 1 else int(amount)
        return Meant(value, shown, amount <= self.limit and is_likely(amount, self.target.unit))


def _hours(hours: str, minutes: str, seconds: str | None) -> float:
    return float(Fraction(int(hours) * 3600 + int(minutes) * 60 + int(seconds or 0), 3600))
