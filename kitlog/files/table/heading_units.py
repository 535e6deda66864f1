"""A heading taken apart: its words, and the unit that stands beside them in any form."""

import re
from collections.abc import Iterator

from kitlog.files.table.units import canonical_unit, unit_of_sign

_PIECES = re.compile(r"[\s_\[\](){}<>,;:|.]+")
_WORD_STEMS = (
    "gram kilo ounce once unze pound watt volt milli centi deci lit heure stund hour minut sekund second prozent"
    " percent pourcent amp quadrat square meter metre"
)
_UNIT_WORD = re.compile(rf"(?:{'|'.join(_WORD_STEMS.split())})[\w ]*", re.IGNORECASE)
_LONGEST = 40
"""Letters beyond which a text is no unit."""
_LINKS = frozenset({"in", "en"})
_BRACKETS = re.compile(r"[(\[{]([^()\[\]{}]*)[)\]}]")
_PARTED = re.compile(r"([/\-])")


def unit_word(text: str) -> str:
    """The unit that a piece of a heading is, in our spelling; empty if none.

    The words that units have in a language are looked up only for what begins as one: most pieces do not.
    """
    text = text.strip(" .")
    if not text or len(text) > _LONGEST:
        return ""
    return unit_of_sign(text) or (canonical_unit(text) if _UNIT_WORD.fullmatch(text) else "")


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
