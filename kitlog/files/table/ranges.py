"""Ranges in one cell ("85-105 kg") into their two limits, and limits to what their row is about."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from kitlog.files.table.read_columns import Sheet
from kitlog.files.table.remark import Remark
from kitlog.kit.kinds import Kind

_LIMITS = {
    "wing_range": ("wing_min_kg", "wing_max_kg"),
    "reserve_range": ("reserve_min_kg", "reserve_max_kg"),
}
_OF_WINGS = _LIMITS["wing_range"]
_HOMES: Mapping[Kind, tuple[str, str]] = MappingProxyType(
    {Kind.RESERVE: _LIMITS["reserve_range"], Kind.WING: _OF_WINGS, Kind.HARNESS: ("", "harness_max_kg")}
)
"""A plain "weight range" is of what the row is about; of a harness only the greatest load is kept."""


def settle_ranges(sheet: Sheet) -> None:
    """Leave both limits in the sheet, in g; columns of their own go first. The kinds must be settled before."""
    read = {target: sheet.values.pop(target) for target in _LIMITS if target in sheet.values}
    for target, ranges in read.items():
        for at, both in enumerate(ranges):
            if isinstance(both, tuple):
                _place(sheet, at, target, _HOMES.get(_kind(sheet, at), _LIMITS[target]), both)
    if not sheet.own:
        _move_plain_limits(sheet)


def _kind(sheet: Sheet, at: int) -> Kind:
    return Kind(str(sheet.values["kind"][at] or Kind.OTHER))


def _move_plain_limits(sheet: Sheet) -> None:
    """Limits in columns for wings, in rows that are about a reserve or a harness."""
    columns = [limit for limit in _OF_WINGS if limit in sheet.values and sheet.columns[limit].how != "ours"]
    for side, limit in enumerate(_OF_WINGS):
        for at, value in enumerate(sheet.values[limit]) if limit in columns else ():
            home = _HOMES.get(_kind(sheet, at), _OF_WINGS)
            if value is not None and home != _OF_WINGS:
                sheet.values[limit][at] = None
                _place(sheet, at, limit, (home[side],), (value,))


def _place(sheet: Sheet, at: int, target: str, home: Sequence[str], limits: Sequence[object]) -> None:
    for limit, value in zip(home, limits, strict=True):
        if value is None:
            continue
        if not limit:
            column = sheet.columns[target]
            sheet.remarks.append(Remark("table.no_least_load", {"heading": column.named, "at": (at,)}))
            continue
        values = sheet.values.setdefault(limit, [None] * len(sheet.rows))
        sheet.columns.setdefault(limit, sheet.columns[target])
        if values[at] is None:
            values[at] = value
