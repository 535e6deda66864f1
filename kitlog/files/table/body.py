"""The rows below the headings: which are items, and why the others are none."""

from collections.abc import Iterable, Mapping, Sequence

from kitlog.files.table.cells import Cell, GridRow, text_of
from kitlog.files.table.headings import meanings
from kitlog.files.table.one_heading import find
from kitlog.files.table.row_words import RowWords, bare_title
from kitlog.files.table.sums import is_sum_above, is_sum_below
from kitlog.files.table.targets import TARGETS, Way
from kitlog.files.table.vocabulary import Vocabulary

_LOOKED_AT = 60
"""Rows by which the usual width is told."""
_WIDE = 5
"""Usual filled cells from which on a row of two is looked at closely too."""
_LEAST_TITLES = 2
_LEAST_WIDTH = 2
"""Usual filled cells of a row from which on one of a single cell stands out."""
_FIGURED = 0.9
"""Share of the rows with figures from which on nearly all have them."""
_MOST_NAMES_ALONE = 1
"""Rows of nothing but a name that may be things, beside those that head others."""
_OTHER_HEADINGS = 3
"""Understood headings, with no other cell, that begin another table."""

_NAMING = ("name", "model", "maker", "kind")
"""Columns by which a row is told, the first that is there."""

_OF_FIGURES = frozenset({Way.MASS, Way.FIGURE, Way.COUNT, Way.DAY, Way.ELECTRIC, Way.MASS_RANGE})
"""Ways of reading cells in which a word that is a heading is nothing else."""

Filled = list[tuple[int, str]]


class Body:
    """The rows below the headings; rows with a name and other cells are looked at only as far as needed.

    Args:
        rows: of the grid.
        texts: the row of headings as written, headings: as they are understood.
        start: the first row below.
        words: the vocabulary.
    """

    def __init__(
        self, rows: Sequence[GridRow], texts: Sequence[str], headings: Sequence[str], start: int, words: Vocabulary
    ) -> None:
        self._rows, self._start, self._vocabulary = rows, start, words
        self._headings = [text.casefold() for text in texts]
        found = meanings(headings, words)
        self._meanings = [one.meaning for one in found]
        self._targets = targets = [one.meaning.target if one.meaning else "" for one in found]
        self._name = targets.index("name") if "name" in targets else None
        self._told_by = next((targets.index(target) for target in _NAMING if target in targets), None)
        widths = sorted(sum(cell != "" for cell in row.cells) for row in rows[start : start + _LOOKED_AT])
        usual = widths[len(widths) // 2] if widths else 0
        self._usual = usual
        self._few = 2 if usual >= _WIDE else 1
        self._single = not widths or widths[-1] <= 1
        self._words = RowWords(words, capitals=self._capitals())
        self._tail = len(rows)

    def _capitals(self) -> bool:
        """Whether names are mostly in capitals, which then tell nothing."""
        at = self._told_by or 0
        rows = self._rows[self._start : self._start + _LOOKED_AT]
        names = [cell for row in rows if len(row.cells) > at and isinstance(cell := row.cells[at], str) and cell]
        return 2 * sum(name.isupper() for name in names) > len(names)

    def reasons(self) -> dict[int, str]:
        """The rows that are no items, with the reason."""
        self._tail = self._find_tail()
        reasons: dict[int, str] = {}
        doubtful = self._doubtful()
        for index in doubtful:
            reason = self._reason(index)
            if reason == "other table":
                reasons |= dict.fromkeys(range(index - self._is_title(index - 1), len(self._rows)), reason)
                break
            if reason:
                reasons[index] = reason
        return reasons | dict.fromkeys(self._headed(doubtful, reasons), "heading of rows")

    def _headed(self, doubtful: Sequence[int], reasons: Mapping[int, str]) -> list[int]:
        """Rows of nothing but a name right above fuller ones, in a table whose other rows nearly all have figures.

        None where more than one such row stands elsewhere (at the end, or next to another): things may have only a name
        then. One with a digit in its name is a thing.
        """
        alone = [index for index in doubtful if index not in reasons and self._is_name_alone(index)]
        heads = [index for index in alone if self._heads(index, reasons, alone)]
        if not heads or len(alone) - len(heads) > _MOST_NAMES_ALONE or self._usual < _LEAST_WIDTH:
            return []
        single = set(alone)
        others = [
            index for index in range(self._start, len(self._rows)) if index not in reasons and index not in single
        ]
        figured = sum(self._has_figure(index) for index in others)
        return heads if figured >= _FIGURED * len(others) and len(heads) <= len(others) else []

    def _is_name_alone(self, index: int) -> bool:
        filled = self._filled(index)
        return len(filled) == 1 and filled[0][0] == (self._name or 0)

    def _heads(self, index: int, reasons: Mapping[int, str], alone: Sequence[int]) -> bool:
        below = index + 1
        if below >= len(self._rows) or below in reasons or not {index - 1, below}.isdisjoint(alone):
            return False
        if self._rows[below].spot.row < self._rows[index].spot.row:  # the first row of a table that stood beside
            return False
        [(_at, text)] = self._filled(index)
        return self._has_figure(below) and not any(sign.isdigit() for sign in bare_title(text))

    def _has_figure(self, index: int) -> bool:
        texts = (text for at, text in self._filled(index) if at != self._name)
        return any(any(sign.isdigit() for sign in text) and self._words.is_figure(text) for text in texts)

    def _doubtful(self) -> list[int]:
        """Rows that are looked at closely: few cells, no name, one that begins as a sum or heading, a gap above."""
        if self._told_by is None:
            return list(range(self._start, len(self._rows)))
        name, few = self._told_by, self._few
        begins, ends = self._vocabulary.layout.beginnings, self._vocabulary.layout.last_totals
        openers = self._vocabulary.layout.openers | {self._headings[name]}
        found: list[int] = []
        rows = self._rows
        gaps = len(rows) > self._start and rows[-1].spot.record - rows[self._start - 1].spot.record > (
            len(rows) - self._start
        )
        for index in range(self._start, len(rows)):
            if gaps and (self._gap(index) or self._is_title(index - 1)):
                found.append(index)
                continue
            cells = rows[index].cells
            cell = cells[name] if name < len(cells) else ""
            cell = cell.strip() if isinstance(cell, str) else ""
            if cell and len(cells) - cells.count("") > few:
                small = cell.casefold()
                first = small.split(None, 1)[0].partition("(")[0]
                sums = first in begins or small.rpartition(" ")[2] in ends
                if not (sums or small in openers or small[-1] == ":" or cell.isupper()):
                    continue
            found.append(index)
        return found

    def _filled(self, index: int) -> Filled:
        return [(at, text) for at, cell in enumerate(self._rows[index].cells) if (text := _text(cell))]

    def _find_tail(self) -> int:
        """The first row of the end of the table: sums, notes and single cells, with no fuller row below."""
        for index in range(len(self._rows) - 1, self._start - 1, -1):
            filled = self._filled(index)
            if len(filled) > 1 and not self._ends(filled) and not self._only_figures(filled):
                return index + 1
        return self._start

    def _ends(self, filled: Filled) -> bool:
        """Whether a row is one of those that stand below a table."""
        words = self._words
        return words.is_sum(filled, self._told_by) or words.is_no_item(filled) or words.begins_note(filled[0][1])

    def _only_figures(self, filled: Filled) -> bool:
        return all(at != self._name and self._words.is_figure(text) for at, text in filled)

    def _reason(self, index: int) -> str:
        filled = self._filled(index)
        if not filled:
            return "note"
        if self._headings_again(index, filled):
            return "heading again"
        if self._words.is_sum(filled, self._told_by):
            return "totals"
        if self._begins_table(index, filled):
            return "other table"
        if self._name is not None and self._only_figures(filled):
            ends = index >= self._tail and index > self._start
            return "totals" if ends or is_sum_above(self._rows, index, self._start, filled) else ""
        if self._words.is_no_item(filled):
            return "note"
        if index >= self._tail and self._words.is_note(filled, gap=self._gap(index)):
            return "note"
        return self._section(index, filled)

    def _headings_again(self, index: int, filled: Filled) -> bool:
        """The headings as written; or, below a gap, of the same things in other words or beside another title."""
        same = [at < len(self._headings) and self._headings[at] == text.casefold() for at, text in filled]
        if all(same) and len(same) >= min(2, sum(map(bool, self._headings))):
            return True
        if (
            not self._gap(index)
            or len(filled) < _LEAST_TITLES
            or any(self._words.is_figure(text) for _at, text in filled)
        ):
            return False
        beside = [(at, find(text, self._vocabulary).meaning) for at, text in filled if at != self._told_by]
        return self._are_of_figures(at for at, _one in beside) and all(
            one is not None and at < len(self._meanings) and one == self._meanings[at] for at, one in beside
        )

    def _begins_table(self, index: int, filled: Filled) -> bool:
        """Other headings: all understood; or, below an empty row or a title, two of different things and no figure.

        Words that are headings in columns of figures are some below an empty row whatever the first cell says.
        """
        if self._name is None:
            return False
        apart = self._gap(index) or self._is_title(index - 1)
        beside = [(at, find(text, self._vocabulary).meaning) for at, text in filled[1:]]
        if apart and beside and all(one is not None and one.target for _at, one in beside):
            figures = any(self._words.is_figure(text) for _at, text in filled)
            if not figures and self._are_of_figures(at for at, _one in beside):
                return True
        if filled[0][1].casefold() not in self._vocabulary.layout.names:
            return False
        found = [meaning.target for _at, text in filled if (meaning := find(text, self._vocabulary).meaning)]
        if len(filled) >= _OTHER_HEADINGS and len(found) == len(filled):
            return True
        if len(set(found)) < _LEAST_TITLES or 3 * len(found) < 2 * len(filled):
            return False
        return apart and not any(self._words.is_figure(text) for _at, text in filled)

    def _are_of_figures(self, columns: Iterable[int]) -> bool:
        """Whether one of some columns is of figures, so that words in it are none of an item's."""
        return any(at >= len(self._targets) or _is_of_figures(self._targets[at]) for at in columns)

    def _is_title(self, index: int) -> bool:
        """Whether a row above other headings is their title: a single cell below an empty row."""
        return index >= self._start and self._gap(index) and len(self._filled(index)) == 1

    def _gap(self, index: int) -> bool:
        """Whether an empty row stands above."""
        return index > 0 and self._rows[index].spot.record - self._rows[index - 1].spot.record > 1

    def _section(self, index: int, filled: Filled) -> str:
        """A row with nothing but the name of a section, or with the sum of that section."""
        if self._single and not filled[0][1].endswith(":"):
            return ""
        nameless = self._name is not None and filled[0][0] != self._name
        above = self._gap(index) or index == self._start or nameless
        if not self._words.is_section(filled[0][1], above=above):
            return ""
        if len(filled) == 1:
            return "section"
        figures = [(at, text) for at, text in filled[1:] if self._words.is_figure(text)]
        sums = len(figures) == len(filled) - 1 and is_sum_below(self._rows, index, figures)
        return "totals" if sums else ""


def _is_of_figures(target: str) -> bool:
    return target != "" and TARGETS[target].way in _OF_FIGURES


def _text(cell: Cell) -> str:
    return "" if cell == "" else " ".join(text_of(cell).split())
