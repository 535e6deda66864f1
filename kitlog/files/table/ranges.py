"""Ranges in one cell ("85-105 kg") into their two limits."""

from kitlog.files.table.read_columns import Sheet
from kitlog.kit.kinds import Kind

_LIMITS = {
    "wing_range": ("wing_min_kg", "wing_max_kg"),
    "reserve_range": ("reserve_min_kg", "reserve_max_kg"),
}
_WHOSE = {Kind.RESERVE: "reserve_range", Kind.WING: "wing_range"}
"""A plain "weight range" is of what the row is about."""


def settle_ranges(sheet: Sheet) -> None:
    """Leave both limits in the sheet, in g; columns of their own go first. The kinds must be settled before."""
    read = {target: sheet.values.pop(target) for target in _LIMITS if target in sheet.values}
    for target, ranges in read.items():
        for at, both in enumerate(ranges):
            if isinstance(both, tuple):
                _place(sheet, at, target, both)


def _place(sheet: Sheet, at: int, target: str, both: tuple[object, object]) -> None:
    whose = _WHOSE.get(Kind(str(sheet.values["kind"][at] or Kind.OTHER)), target)
    for limit, value in zip(_LIMITS[whose], both, strict=True):
        values = sheet.values.setdefault(limit, [None] * len(sheet.rows))
        sheet.columns.setdefault(limit, sheet.columns[target])
        if values[at] is None:
            values[at] = value
