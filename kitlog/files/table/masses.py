"""Masses of one piece, from a column for one piece, one for all pieces of a row, and the total below."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from kitlog.files.table.doubt import Question
from kitlog.files.table.mass_second import join_second
from kitlog.files.table.printed import half_step_g
from kitlog.files.table.read_columns import Sheet, spots_of
from kitlog.files.table.remark import Remark
from kitlog.kit.kinds import MassSource

_PAIR = 2
_ROUNDING = 0.51
"""Grams by which a mass of all pieces may differ from pieces x mass for each piece, by rounding."""

_OFF_G = 1
_OFF_SHARE = 0.005
"""Grams by which a total may miss the sum of its rows, and the most of its share besides where units are turned."""

_CLAUSES = re.compile(r"\s*[,;.()/:\n]\s*")
_EACH_NOTE = re.compile(
    r"(?:mass|weight|gewicht|poids)?\s*(?:(?:je|pro|per|par|la|à la|a|for|pour) )?"
    r"(?:je|jeweils|each|each one|apiece|ea|ch|chacune?|pi[eè]ce|piece|pce|stück|stk|item|unité|one)"
)
_EACH_HEADING = re.compile(
    r"\b(?:each|apiece|single|per (?:item|piece)|einzel\w*"
    r"|stück\w*|je|pro (?:stück|stk)|unit(?:aire)?s?|pi[eè]ce|pce)\b"
)
"""What says that a mass is of one piece; common ways of writing, no source."""


def settle_masses(sheet: Sheet) -> None:
    """Leave in the sheet, under ``mass_g``, the mass of one piece of each row, and how it was taken where that is told.

    A column of plain masses is of one piece, unless the total below it shows that it is of all pieces of the row.
    """
    if "mass_more" in sheet.values:
        join_second(sheet)
    _halve_pairs(sheet)
    if "mass_g" in sheet.values and "mass_all" not in sheet.values:
        _by_total(sheet)
    if "mass_all" in sheet.values:
        _from_all(sheet)
    _sources(sheet)
    _rough_ones_are_guesses(sheet)


def _halve_pairs(sheet: Sheet) -> None:
    """Masses of a pair: halved where there are two pieces; of one they are as they stand; else nobody can tell."""
    pieces, masses, halved = _pieces(sheet), sheet.values.get("mass_g", []), []
    for at in sheet.pairs.get("mass_g", ()):
        mass = masses[at]
        if isinstance(mass, int) and pieces[at] == _PAIR:
            masses[at] = _share(mass, _PAIR)
            halved.append(at)
        elif mass is not None and pieces[at] > _PAIR:
            sheet.unread(at, "mass_g")
    if halved:
        facts = {"heading": sheet.columns["mass_g"].named, "rows": spots_of(sheet, sorted(halved))}
        sheet.remarks.append(Remark("table.mass_of_pair", facts))


def _sources(sheet: Sheet) -> None:
    """How masses were taken, where only their heading says so ("weight according to the maker")."""
    source = sheet.columns["mass_g"].source if "mass_g" in sheet.columns else None
    if source is not None and "mass_source" not in sheet.values:
        sheet.values["mass_source"] = [None if mass is None else source for mass in sheet.values["mass_g"]]


def _pieces(sheet: Sheet) -> list[int]:
    return [n if isinstance(n, int) else 1 for n in sheet.values.get("quantity", [None] * len(sheet.rows))]


def _by_total(sheet: Sheet) -> None:
    """What a total below says of rows of several pieces; without one that the masses were taken as of one piece.

    Only a total that fits one of the two sums, and not the other, tells which; and none does where it is written that
    a mass is of one piece.
    """
    pieces, masses = _pieces(sheet), sheet.values["mass_g"]
    several = [at for at, n in enumerate(pieces) if n > 1 and masses[at] is not None]
    totals = list(_totals(sheet))
    if not several and not totals:
        return
    plain = sum(mass for mass in masses if isinstance(mass, int))
    each = sum(mass * n for mass, n in zip(masses, pieces, strict=True) if isinstance(mass, int))
    column = sheet.columns["mass_g"]
    facts = {"heading": column.named, "rows": spots_of(sheet, several), "sum_g": plain, "sum_all_g": each}
    is_plain, is_each = (any(total.is_of(known) for total in totals) for known in (plain, each))
    said = bool(several) and _said_each(sheet, several)
    if several and is_plain and not is_each and not said:
        sheet.remarks.append(Remark("table.mass_of_all", facts))
        sheet.columns["mass_all"], sheet.values["mass_all"] = column, sheet.values.pop("mass_g")
        for marks in (sheet.guesses, sheet.pairs):
            marks["mass_all"] = marks.pop("mass_g", frozenset())
        return
    if several and not sheet.own and column.how != "chosen" and not is_each and not said:
        sheet.remarks.append(Remark("table.mass_taken_each", facts))
    differs = not is_each and (not is_plain or bool(several))
    if totals and differs and all(mass is not None for mass in masses):
        of = max(total.grams for total in totals)
        sheet.remarks.append(Remark("table.total_differs", {**facts, "sum_g": each, "total_g": of}))


@dataclass(frozen=True, slots=True)
class _Total:
    """A mass below the rows, and by how much the sum of the rows may miss it."""

    grams: int
    off_g: float

    def is_of(self, sum_g: int) -> bool:
        return abs(self.grams - sum_g) <= self.off_g


def _totals(sheet: Sheet) -> Iterator[_Total]:
    """The totals of the masses: each may be off by its last digit, and by what rows in other units were rounded."""
    column = sheet.columns["mass_g"]
    unit = column.meaning.unit if column.meaning else ""
    rounded = 0.0 if unit in ("g", "kg") else 0.5 * len(sheet.rows)
    cells = sheet.totals[column.index] if column.index < len(sheet.totals) else ()
    for cell, grams in zip(cells, sheet.values.get("total mass_g", []), strict=False):
        if isinstance(grams, int):
            off = half_step_g(cell, unit or sheet.settled.of(column.index).to(Question.MASS_UNIT), grams)
            yield _Total(grams, max(off, _OFF_G) + min(rounded, _OFF_SHARE * grams))


def _said_each(sheet: Sheet, several: Sequence[int]) -> bool:
    """Whether it is written that masses are of one piece: in the heading, beside a figure, or in the notes."""
    if _EACH_HEADING.search(sheet.columns["mass_g"].heading.casefold()) or sheet.each.get("mass_g"):
        return True
    notes = sheet.values.get("notes", [])
    texts = [notes[at] for at in several] if notes else []
    return any(_EACH_NOTE.fullmatch(part) for text in texts if text for part in _CLAUSES.split(str(text).casefold()))


def _from_all(sheet: Sheet) -> None:
    pieces, whole = _pieces(sheet), sheet.values.pop("mass_all")
    each = sheet.values.setdefault("mass_g", [None] * len(sheet.rows))
    sheet.columns.setdefault("mass_g", sheet.columns["mass_all"])
    rough = sheet.guesses.pop("mass_all", frozenset())
    divided = []
    for at, mass in enumerate(whole):
        if mass is None:
            continue
        if each[at] is None and pieces[at]:
            each[at] = _share(int(str(mass)), pieces[at])
            sheet.guesses["mass_g"] = sheet.guesses.get("mass_g", frozenset()) | (rough & {at})
            divided += [at] if pieces[at] > 1 else []
    if divided:
        facts = {"heading": sheet.columns["mass_all"].named, "rows": spots_of(sheet, divided)}
        sheet.remarks.append(Remark("table.mass_divided", facts))
    sheet.remarks.extend(_contradictions(sheet, whole, each, pieces))


def _share(all_g: int, pieces: int) -> int:
    return int((Decimal(all_g) / pieces).quantize(Decimal(1), rounding=ROUND_HALF_UP))


def _contradictions(
    sheet: Sheet, whole: Sequence[object], each: Sequence[object], pieces: Sequence[int]
) -> Iterator[Remark]:
    """Rows whose mass of all pieces is not pieces x mass of one; the mass of one is taken."""
    for at, mass in enumerate(whole):
        if mass is None or each[at] is None:
            continue
        one, all_g = int(str(each[at])), int(str(mass))
        if abs(one * pieces[at] - all_g) > _ROUNDING * pieces[at]:
            facts = {"row": sheet.row_number(at), "one_g": one, "pieces": pieces[at], "all_g": all_g}
            yield Remark("table.mass_differs", facts)


def _rough_ones_are_guesses(sheet: Sheet) -> None:
    rough = sheet.guesses.get("mass_g", frozenset())
    if rough:
        sources = sheet.values.setdefault("mass_source", [None] * len(sheet.rows))
        for at in rough:
            sources[at] = MassSource.GUESS
