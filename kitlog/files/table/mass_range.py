"""Columns of mass ranges: "85-105 kg", "max 120 kg"."""

import re
from collections.abc import Sequence

from kitlog.files.table.amounts import Meant, Part, Piece, judged, pieces, total
from kitlog.files.table.bare_unit import answered_unit, asked_units, with_unit_told
from kitlog.files.table.cells import Cell, text_of
from kitlog.files.table.column_reading import ColumnReading
from kitlog.files.table.doubt import Answers, Question
from kitlog.files.table.limits import most
from kitlog.files.table.marked import read_marked
from kitlog.files.table.mass_column import half_up
from kitlog.files.table.numbers import written
from kitlog.files.table.phrases import phrase
from kitlog.files.table.reading import NOTHING, UNREAD, Read
from kitlog.files.table.targets import Target
from kitlog.files.table.units import canonical_unit

_FROM = re.compile(r"(?:von|from|de|between|entre) (?=[0-9])")
_MOST = re.compile(r"(?:(?:max|maxi|maximum|maximal|bis|up to|jusqu'à)\.? ?|≤ ?|<= ?)(?=[0-9])")
_LEAST = re.compile(r"(?:(?:min|mini|minimum|minimal|ab|dès)\.? ?|≥ ?|>= ?)(?=[0-9])")
_JOINED = re.compile(r"(.*?) ?(?:[-–—−/…]|\.{2,3}|bis|to|à|and|und|et)", re.DOTALL)

Limits = tuple[int | None, int | None]


def read_ranges(
    target: Target, unit: str, cells: Sequence[Cell], answers: Answers, *, own: bool, units: Sequence[str]
) -> ColumnReading:
    """Least and greatest mass in grams; None for the one that a text such as "max 120 kg" does not give.

    `unit` is that of the heading; `units` has one for each cell from its row, or is empty.
    """
    answer = "" if unit else answered_unit(target, answers)
    bare = unit or answer
    asked = asked_units(target)
    limit = most(target)
    keys = [(cell, given or bare) for cell, given in zip(cells, units or [""] * len(cells), strict=True)]

    def careful(key: tuple[Cell, str]) -> Read:
        cell, given = key
        return _text(cell, given, limit, asked, own=own) if isinstance(cell, str) else UNREAD

    reading = read_marked(keys, lambda _: None, careful, lambda key: text_of(key[0]), answers)
    follows = answer not in ("", answers.to(Question.MASS_UNIT)) and not units
    return with_unit_told(reading, cells, answer) if follows else reading


def _text(cell: str, bare: str, limit: float, asked: Sequence[str], *, own: bool) -> Read:
    said = phrase(cell)
    if said is None or said.nothing:
        return NOTHING if said else UNREAD
    core, side = _side(said.core)
    found = pieces(core, own=own)
    if not found or len(found) != (1 if side else 2):
        return UNREAD
    words = _words(found)
    if words is None:
        return UNREAD
    units = [canonical_unit(word) if word else bare for word in words]
    if not all(units) and not any(words):
        readings = {unit: f"{core} {unit}" for unit in asked}
        return Read(rough=said.rough, question=Question.MASS_UNIT, readings=readings)
    return judged([p.number for p in found], units, lambda parts: _meant(parts, side, limit), rough=said.rough)


def _side(core: str) -> tuple[str, str]:
    """The text without the word in front, and the one limit that this word says it gives."""
    for pattern, side in ((_MOST, "most"), (_LEAST, "least"), (_FROM, "")):
        if match := pattern.match(core):
            return core[match.end() :], side
    return core, ""


def _words(found: Sequence[Piece]) -> list[str] | None:
    """The words for the units, that of the last number holding for all; None if no dash or word joins two numbers."""
    last = found[-1].behind
    if len(found) == 1:
        return [last]
    joined = _JOINED.fullmatch(found[0].behind)
    return [joined.group(1) or last, last] if joined else None


def _meant(parts: Sequence[Part], side: str, limit: float) -> Meant | None:
    amounts = [total([part], "g") for part in parts]
    known = [amount for amount in amounts if amount is not None]
    if len(known) < len(amounts) or known != sorted(known):
        return None
    ends = [half_up(amount) for amount in known]
    shown = " - ".join(f"{written(part.value)} {part.unit}" for part in parts)
    limits: Limits = {"most": (None, ends[0]), "least": (ends[0], None)}.get(side, (ends[0], ends[-1]))
    return Meant(None if None in ends else limits, shown, max(known) <= limit)
