"""The unit that a sentence above or below a table gives to all of its masses."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from kitlog.files.table.cells import GridRow, text_of
from kitlog.files.table.heading_units import unit_word
from kitlog.files.table.units import dimension_of
from kitlog.files.table.vocabulary import Vocabulary
from kitlog.files.table.word_forms import form

_BEFORE = frozenset({"in", "en"})
_AS_IN = str.maketrans(dict.fromkeys("([:=", " in ") | dict.fromkeys(")].,;", " "))


def title_unit(rows: Sequence[GridRow], words: Vocabulary) -> str:
    """The unit of mass that a sentence about weights names ("Alle Gewichte in Gramm"); empty if none, or if two do."""
    texts = (text_of(cell) for row in rows for cell in row.cells if cell != "")
    found = {unit for text in texts for unit in _units(text, words)}
    return found.pop() if len(found) == 1 else ""


def unit_in(text: str, words: Vocabulary) -> str:
    """The unit of mass that one sentence about weights names; empty if none."""
    return next(_units(text, words), "")


def _units(text: str, words: Vocabulary) -> Iterator[str]:
    if words.layout.mass_words.isdisjoint(form(text).split()):
        return
    for before, token in pairwise(text.translate(_AS_IN).split()):
        unit = unit_word(token) if before.casefold() in _BEFORE else ""
        if unit and dimension_of(unit) == "mass":
            yield unit
