"""A heading taken apart: its words, and the unit that stands beside them in any form."""

import re
from collections.abc import Iterator

from kitlog.files.table.units import canonical_unit

_PIECES = re.compile(r"[\s_\[\](){}<>,;:|.]+")
_WORD_STEMS = (
    "gram kilo ounce once unze pound watt volt milli centi deci lit heure stund hour minut sekund second prozent"
    " percent pourcent amp quadrat square meter metre"
)
_UNIT_WORD = re.compile(rf"(?:{'|'.join(_WORD_STEMS.split())})[\w ]*", re.IGNORECASE)
_SHORT = 5
"""Letters up to which any piece may be a unit; longer ones only if they begin as the word of a unit does."""
_LINKS = frozenset({"in", "en"})
_BRACKETS = re.compile(r"[(\[{]([^()\[\]{}]*)[)\]}]")
_PARTED = re.compile(r"([/\-])")


def unit_word(text: str) -> str:
    """The unit that a piece of a heading is, in our spelling; empty if none.

    Asks only for what may be a unit, so that the tables of words are not read for each heading.
    """
    text = text.strip(" .")
    if not text or not (len(text) <= _SHORT or _UNIT_WORD.fullmatch(text)):
        return ""
    return canonical_unit(text)


def unit_readings(heading: str) -> Iterator[tuple[str, str]]:
    """Each way to take a heading apart: (the words without the unit, the unit), brackets first, then from the end."""
    for found in _BRACKETS.finditer(heading):
        unit = unit_word(found[1])
        if unit:
            yield heading[: found.start()] + " " + heading[found.end() :], unit
    pieces = _pieces(heading)
    for at in range(len(pieces) - 1, -1, -1):
        unit = unit_word(pieces[at])
        if unit:
            before = pieces[:at]
            if before and before[-1].casefold() in _LINKS:
                before = before[:-1]
            yield " ".join([*before, *pieces[at + 1 :]]), unit


def _pieces(heading: str) -> list[str]:
    """The words; "Gewicht/g" and "Akku-mAh" are two, "km/h" is one."""
    pieces: list[str] = []
    for piece in _PIECES.split(heading):
        parted = [part for part in _PARTED.split(piece) if part not in {"", "/", "-"}]
        pieces.extend([piece] if len(parted) < 2 or unit_word(piece) else parted)
    return [piece for piece in pieces if piece]
