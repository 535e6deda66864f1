"""Masses of one piece, from a column for one piece, one for all pieces of a row, and the total below."""

from collections.abc import Iterator, Sequence
from decimal import ROUND_HALF_UP, Decimal

from kitlog.files.table.mass_second import join_second
from kitlog.files.table.read_columns import Sheet, spots_of
from kitlog.files.table.remark import Remark
from kitlog.kit.kinds import MassSource

_ROUNDING = 0.51
"""Grams by which a mass of all pieces may differ from pieces x mass for each piece, by rounding."""

_OFF_G = 2
_OFF_SHARE = 0.005
"""Grams, and share of it, by which the total below a table may miss the sum of its rows, by rounding."""


def settle_masses(sheet: Sheet) -> None:
    """Leave in the sheet, under ``mass_g``, the mass of one piece of each row, and how it was taken where that is told.

    A column of plain masses is of one piece, unless the total below it shows that it is of all pieces of the row.
    """
    if "mass_more" in sheet.values:
        join_second(sheet)
    if "mass_g" in sheet.values and "mass_all" not in sheet.values:
        _by_total(sheet)
    if "mass_all" in sheet.values:
        _from_all(sheet)
    _sources(sheet)
    _rough_ones_are_guesses(sheet)


def _sources(sheet: Sheet) -> None:
    """How masses were taken, where only their heading says so ("weight according to the maker")."""
    source = sheet.columns["mass_g"].source if "mass_g" in sheet.columns else None
    if source is not None and "mass_source" not in sheet.values:
        sheet.values["mass_source"] = [None if mass is None else source for mass in sheet.values["mass_g"]]


def _pieces(sheet: Sheet) -> list[int]:
    return [n if isinstance(n, int) else 1 for n in sheet.values.get("quantity", [None] * len(sheet.rows))]


def _by_total(sheet: Sheet) -> None:
    """What a total below says of rows of several pieces; without one that the masses were taken as of one piece."""
    pieces, masses = _pieces(sheet), sheet.values["mass_g"]
    several = [at for at, n in enumerate(pieces) if n > 1 and masses[at] is not None]
    totals = [total for total in sheet.values.get("total mass_g", []) if isinstance(total, int)]
    if not several and not totals:
        return
    plain = sum(mass for mass in masses if isinstance(mass, int))
    each = sum(mass * n for mass, n in zip(masses, pieces, strict=True) if isinstance(mass, int))
    column = sheet.columns["mass_g"]
    facts = {"heading": column.heading, "rows": spots_of(sheet, several), "sum_g": plain, "sum_all_g": each}
    is_plain, is_each = (any(_agree(total, known) for total in totals) for known in (plain, each))
    if several and is_plain and not is_each:
        sheet.remarks.append(Remark("table.mass_of_all", facts))
        sheet.columns["mass_all"], sheet.values["mass_all"] = column, sheet.values.pop("mass_g")
        sheet.guesses["mass_all"] = sheet.guesses.pop("mass_g", frozenset())
        return
    if several and not sheet.own and column.how != "chosen" and not is_each:
        sheet.remarks.append(Remark("table.mass_taken_each", facts))
    if totals and not is_plain and not is_each and all(mass is not None for mass in masses):
        sheet.remarks.append(Remark("table.total_differs", {**facts, "total_g": max(totals)}))


def _agree(total_g: int, sum_g: int) -> bool:
    return abs(total_g - sum_g) <= max(_OFF_G, _OFF_SHARE * total_g)


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
        facts = {"heading": sheet.columns["mass_all"].heading, "rows": spots_of(sheet, divided)}
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
