"""Days of making, buying and first use that have not been yet: misread or mistyped, and told."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from kitlog.files.table.remark import Remark
from kitlog.kit.item import Item


def days_ahead(items: Sequence[Item], rows: Mapping[str, int], today: date | None) -> Iterator[Remark]:
    """One remark on all such days of items from a table, whose rows are given by id; nothing without a `today`."""
    found = [
        (day, rows.get(item.id, 0))
        for item in items
        for day in (item.made_on, item.bought_on, item.first_used_on)
        if today and day and day > today
    ]
    if found:
        days = tuple(dict.fromkeys(day.isoformat() for day, _row in found))
        yield Remark("table.days_ahead", {"days": days, "rows": tuple(dict.fromkeys(row for _day, row in found))})
