"""A second column of masses: ounces beside pounds, grams beside kilograms, or another weighing of the same."""

from kitlog.files.table.column_reading import CellDoubt
from kitlog.files.table.doubt import EMPTY, Question
from kitlog.files.table.printed import half_step_g
from kitlog.files.table.read_columns import Sheet, spots_of
from kitlog.files.table.remark import Remark
from kitlog.files.table.units import FACTOR

_BOTH = ("mass_g", "mass_more")
_PARTS = {("lb", "oz"), ("kg", "g")}
_SAME_SHARE = 0.01
"""Share by which two figures of the same mass may differ by rounding."""


def join_second(sheet: Sheet) -> None:
    """Leave one mass a row in the sheet: the sum of parts, or the first figure, the second where the first is missing.

    What is done is told. Rows whose two figures differ by more than they are rounded are asked about, unless a heading
    says how one of the two was taken: what was weighed then goes before what the maker says.
    """
    first, second = sheet.values["mass_g"], sheet.values.pop("mass_more")
    pairs = [(_grams(one), _grams(other)) for one, other in zip(first, second, strict=True)]
    parts = _are_parts(sheet, pairs)
    differing, taken = [], []
    for at, (one, other) in enumerate(pairs):
        if other is None:
            continue
        if one is None or parts:
            first[at] = other + (one or 0)
            taken += [at] if one is None and not parts else []
        else:
            halves = _halves_g(sheet, at, one, other)
            if abs(one - other) > max(1, _SAME_SHARE * one, *halves):
                differing.append(at)
            elif halves[1] < halves[0]:
                first[at] = other
    _take_sources(sheet, taken)
    if parts:
        _tell(sheet, "table.mass_parts", list(range(len(pairs))))
    columns = [sheet.columns[target] for target in _BOTH]
    if sheet.own or columns[0].source is not columns[1].source:
        _tell(sheet, "table.mass_two", differing)
    else:
        _ask(sheet, differing, second)
    _tell(sheet, "table.mass_from_second", taken)


def _halves_g(sheet: Sheet, at: int, one: int, other: int) -> list[float]:
    """Half of the last digit of each of two figures of the same mass: the finer one is taken."""
    pairs = zip(_BOTH, (one, other), strict=True)
    return [half_step_g(sheet.cell(at, target), _unit(sheet, target), grams) for target, grams in pairs]


def _ask(sheet: Sheet, positions: list[int], second: list[object]) -> None:
    """Rows whose two masses disagree: the answer for the first column settles them, else they are left not known."""
    first = sheet.values["mass_g"]
    left, right = sorted(_BOTH, key=lambda target: sheet.columns[target].index)
    sides = {"first": left, "second": right}
    answer = sheet.settled.of(sheet.columns["mass_g"].index).to(Question.TWO_MASSES)
    for at in positions:
        grams = {"mass_g": first[at], "mass_more": second[at]}
        if answer in ("", EMPTY):
            readings = {side: f"{sheet.columns[name].named}: {grams[name]} g" for side, name in sides.items()}
            doubt = CellDoubt(at, Question.TWO_MASSES, readings, emptied=answer == EMPTY)
            sheet.doubt(at, "mass_g", doubt, (left, right))
        first[at] = grams[sides[answer]] if answer in sides else None


def _grams(value: object) -> int | None:
    return value if isinstance(value, int) else None


def _are_parts(sheet: Sheet, pairs: list[tuple[int | None, int | None]]) -> bool:
    """Whether the two columns are whole pounds and the ounces besides (or kg and g), in every row."""
    units = tuple(_unit(sheet, target) for target in ("mass_g", "mass_more"))
    if units not in _PARTS and units[::-1] not in _PARTS:
        return False
    large = units[0] if units in _PARTS else units[1]
    in_order = pairs if units in _PARTS else [(other, one) for one, other in pairs]
    one_g = float(FACTOR[large, "g"])
    return all(_is_part(whole, rest, one_g) for whole, rest in in_order if whole is not None and rest is not None)


def _is_part(whole: int, rest: int, one_g: float) -> bool:
    return rest < one_g + 1 and abs(whole / one_g - round(whole / one_g)) * one_g <= 1


def _unit(sheet: Sheet, target: str) -> str:
    meaning = sheet.columns[target].meaning
    return meaning.unit if meaning else ""


def _take_sources(sheet: Sheet, taken: list[int]) -> None:
    """How the second figures were taken, where their heading says so."""
    source = sheet.columns["mass_more"].source
    if source is not None and taken:
        sources = sheet.values.setdefault("mass_source", [None] * len(sheet.rows))
        for at in taken:
            sources[at] = sources[at] or source


def _tell(sheet: Sheet, code: str, positions: list[int]) -> None:
    if positions:
        headings = {"heading": sheet.columns["mass_g"].named, "other": sheet.columns["mass_more"].named}
        sheet.remarks.append(Remark(code, {**headings, "rows": spots_of(sheet, positions)}))
