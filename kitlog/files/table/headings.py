"""The headings of a table together: what one says of its neighbour, and which of two columns stands for a thing."""

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from kitlog.files.table.heading_units import unit_readings
from kitlog.files.table.kind_words import is_broad, kind_of
from kitlog.files.table.one_heading import NOT_UNDERSTOOD, find
from kitlog.files.table.one_heading import Found as Found  # noqa: PLC0414  # told on from here
from kitlog.files.table.targets import Meaning
from kitlog.files.table.units import dimension_of
from kitlog.files.table.vocabulary import Vocabulary

_LIMITED = ("wing", "reserve")
_PIECES = re.compile(r"[0-9]{1,2}\s*[x×]?|[x×]\s*[0-9]{1,2}")
_LEAST_CELLS = 3
_LONG = 9
"""Digits of a number that is none of a row."""


def meaning_of(heading: str, words: Vocabulary) -> Meaning | None:
    """What one heading stands for by itself; None = not understood, a meaning without target = of no use to kitlog."""
    return find(heading, words).meaning


def meanings(
    headings: Sequence[str], words: Vocabulary, cells: Sequence[Sequence[str]] | None = None
) -> tuple[Found, ...]:
    """What all headings of a table stand for, no two for the same.

    Args:
        headings: by column.
        words: the vocabulary.
        cells: some texts of each column, where they are known: they tell whether "Typ" is of kinds or of models.
    """
    found = [find(heading, words) for heading in headings]
    _beside(headings, found, words)
    _units_of_masses(found)
    _types(found, words, cells)
    _running(headings, found, cells)
    _doubles(found)
    return tuple(found)


def _beside(headings: Sequence[str], found: list[Found], words: Vocabulary) -> None:
    """A bare "min" or "max" belongs to the wing or reserve that the headings on its left are about."""
    about = ""
    for at, heading in enumerate(headings):
        limit = "" if found[at].meaning else _limit(heading, words)
        if limit and about:
            side, unit = limit.split(" ")
            found[at] = Found(Meaning(f"{about}_{side}_kg", unit), "part")
        elif heading.strip():
            about = _about(heading, found[at], words)


def _limit(heading: str, words: Vocabulary) -> str:
    """``min`` or ``max`` with the unit after a blank, of a heading that is nothing else."""
    for rest, unit in ((heading, ""), *unit_readings(heading)):
        if not unit or dimension_of(unit) == "mass":
            key = words.key(rest)
            side = "min" if key in words.lowest else "max" if key in words.highest else ""
            if side:
                return f"{side} {unit}"
    return ""


def _about(heading: str, found: Found, words: Vocabulary) -> str:
    """Whether a heading is of the limits of a wing or of a reserve."""
    target = found.meaning.target if found.meaning else ""
    for name in _LIMITED:
        if target in {f"{name}_min_kg", f"{name}_range"}:
            return name
    kind = kind_of(heading, words) if target in {"", "name"} else None
    return kind.value if kind and kind.value in _LIMITED else ""


def _units_of_masses(found: list[Found]) -> None:
    """A bare "unit" is of the masses only where a column of masses names none."""
    masses = [one.meaning for one in found if one.meaning and one.meaning.target in {"mass_g", "mass_all"}]
    open_ones = [meaning for meaning in masses if not meaning.unit]
    for at, one in enumerate(found):
        if one.meaning and one.meaning.target == "mass_unit" and one.weak and not open_ones:
            found[at] = NOT_UNDERSTOOD


def _types(found: list[Found], words: Vocabulary, cells: Sequence[Sequence[str]] | None) -> None:
    """A column "Typ" beside the maker, or with cells that are no kinds, is the model, where no other column is."""
    targets = [one.meaning.target if one.meaning else "" for one in found]
    for at, one in enumerate(found):
        if targets[at] != "kind" or one.otherwise != "model" or "model" in targets:
            continue
        texts = [text for text in (cells[at] if cells and at < len(cells) else ()) if text.strip()]
        kinds = [text for text in texts if _is_kind(text, words)]
        if (texts and not kinds) or (not texts and at and targets[at - 1] == "maker"):
            found[at] = _otherwise(one)
            targets[at] = "model"


def _is_kind(text: str, words: Vocabulary) -> bool:
    return kind_of(text, words) is not None or is_broad(text, words)


def _otherwise(found: Found) -> Found:
    return Found(Meaning(found.otherwise), "part")


def _running(headings: Sequence[str], found: list[Found], cells: Sequence[Sequence[str]] | None) -> None:
    """Numbers that come again are no running ones: "#" is then of pieces if they look it, any other not understood."""
    for at, one in enumerate(found):
        if one.meaning != Meaning("") or not cells or at >= len(cells):
            continue
        texts = [text for text in cells[at] if text.strip()]
        if not _come_again(texts):
            continue
        taken = any(other.meaning and other.meaning.target == "quantity" for other in found)
        pieces = not taken and headings[at].strip() == "#" and all(_PIECES.fullmatch(text) for text in texts)
        found[at] = Found(Meaning("quantity"), "cells") if pieces else NOT_UNDERSTOOD


def _come_again(texts: Sequence[str]) -> bool:
    """Whether numbers do not run on, nor begin anew at 1 for each section."""
    if len(set(texts)) == len(texts) or len(texts) < _LEAST_CELLS:
        return False
    numbers = [int(text) if text.isdecimal() and len(text) < _LONG else 0 for text in texts]
    runs = all(number in (before + 1, 1) for before, number in pairwise([0, *numbers]))
    return not runs or 2 * numbers.count(1) >= len(numbers)


def _doubles(found: list[Found]) -> None:
    """The best column for each target; others stand for what else they may, or for nothing."""
    for _ in range(2):  # what a column stands for otherwise may be a double itself
        for target in {one.meaning.target for one in found if one.meaning} - {""}:
            rivals = [at for at, one in enumerate(found) if one.meaning and one.meaning.target == target]
            for at in sorted(rivals, key=lambda at: _rank(found[at], at))[1:]:
                loser = found[at]
                found[at] = _otherwise(loser) if loser.otherwise else replace(loser, meaning=None, how="double")


def _rank(found: Found, at: int) -> tuple[int, bool, bool, bool, int]:
    """Ours first, then strong ones, those that are no guess, those with a unit, those on the left."""
    unit = found.meaning.unit if found.meaning else ""
    return found.how != "ours", found.weak, bool(found.source), not unit, at
