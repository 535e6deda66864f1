"""Ranges in one cell ("85-105 kg") into their two limits."""

from kitlog.files.table.read_columns import Sheet

_LIMITS = {
    "wing_range": ("wing_min_kg", "wing_max_kg"),
    "reserve_range": ("reserve_min_kg", "reserve_max_kg"),
}


def settle_ranges(sheet: Sheet) -> None:
    """Leave both limits in the sheet, in g; columns of their own go first."""
    for target, limits in _LIMITS.items():
        ranges = sheet.values.pop(target, None)
        for side, limit in enumerate(limits if ranges is not None else ()):
            values = sheet.values.setdefault(limit, [None] * len(sheet.rows))
            sheet.columns.setdefault(limit, sheet.columns[target])
            for at, both in enumerate(ranges or ()):
                if values[at] is None and isinstance(both, tuple):
                    values[at] = both[side]
