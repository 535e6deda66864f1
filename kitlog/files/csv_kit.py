"""kit.csv into items."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from kitlog.fault import InputFault
from kitlog.files.csv_checks import Values, checked, read_cells
from kitlog.files.csv_columns import KIT
from kitlog.files.csv_names import MOST_NAMED, Named, NameIndex, as_name, circles
from kitlog.files.csv_problems import Problems, shown
from kitlog.files.csv_rows import Table, read_table
from kitlog.kit.item import Item
from kitlog.packing.capacity import refuse_more_out_than_in

_NAMELESS = "?"
"""Stands in for a name that is missing, so that the rest of the row is checked; such a file is refused."""


@dataclass(frozen=True, slots=True)
class KitTable:
    """What a kit.csv holds.

    Attributes:
        items: in the order of the rows.
        rows: text line of each item, by id.
        twins: lines of rows with the same cells throughout; each row is an item all the same.
    """

    items: tuple[Item, ...]
    rows: Mapping[str, int]
    twins: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class _Draft:
    """A row on its way to an item."""

    id: str
    name: str
    values: Values


def read_kit(data: bytes, file: str, known: Sequence[Item], new_id: Callable[[], str]) -> KitTable:
    """The items of a kit.csv; all of it or nothing.

    Args:
        data: the bytes of the file.
        file: its name, for the problems.
        known: items already in the kit, which `fitted_to` may name.
        new_id: gives the id of a new item.

    Raises:
        TableFault: with every problem of the file.
    """
    problems = Problems(file)
    table = read_table(data, KIT, problems)
    drafts = [_draft(new_id(), read_cells(row, KIT, problems)) for row in table.rows]
    fitted = _fitted(drafts, known, table, problems)
    items = [_item(draft, fitted, problems) for draft in drafts]
    problems.refuse_if_any()
    rows = {draft.id: draft.values.row.spot.row for draft in drafts}
    return KitTable(tuple(item for item in items if item), rows, _twins(table))


def _draft(item_id: str, values: Values) -> _Draft:
    return _Draft(item_id, as_name(str(values.of.get("name", ""))), values)


def _fitted(drafts: Sequence[_Draft], known: Sequence[Item], table: Table, problems: Problems) -> Mapping[str, str]:
    """Ids by the ids of what is fitted to them; a circle or a name that is not one item's is noted."""
    index = NameIndex(_entries(drafts, known))
    fitted = {}
    for draft in drafts:
        target = _target(draft, index, table, problems)
        if target:
            fitted[draft.id] = target
    _note_circles(fitted, drafts, problems)
    return fitted


def _entries(drafts: Sequence[_Draft], known: Sequence[Item]) -> Iterator[Named]:
    yield from (Named(draft.name, draft.id, draft.values.row.spot.row) for draft in drafts if draft.name)
    yield from (Named(item.name, item.id) for item in known)


def _target(draft: _Draft, index: NameIndex, table: Table, problems: Problems) -> str | None:
    cell = draft.values.of.get("fitted_to")
    if cell is None:
        return None
    try:
        found = index.find(str(cell))
    except InputFault as fault:
        may_stand_unread = fault.code == "csv.unknown_name" and not table.whole
        if not may_stand_unread:
            _note_target(draft, fault.code, problems, **fault.facts)
        return None
    if found.id == draft.id:
        _note_target(draft, "csv.fitted_to_itself", problems)
        return None
    return found.id


def _note_target(draft: _Draft, code: str, problems: Problems, **facts: object) -> None:
    value = shown(str(draft.values.of["fitted_to"]))
    problems.add(draft.values.row.spot, "fitted_to", code, value=value, **facts)


def _note_circles(fitted: Mapping[str, str], drafts: Sequence[_Draft], problems: Problems) -> None:
    by_id = {draft.id: draft for draft in drafts}
    for circle in circles(fitted):
        members = [by_id[item_id] for item_id in circle]
        spots = [member.values.row.spot for member in members]
        rows = tuple(spot.row for spot in spots)
        first = min(spots, key=lambda spot: spot.row)
        names = tuple(shown(member.name) for member in members[:MOST_NAMED])
        problems.add(first, "fitted_to", "csv.fitted_in_circle", rows=rows[:MOST_NAMED], names=names)


def _item(draft: _Draft, fitted: Mapping[str, str], problems: Problems) -> Item | None:
    fields = draft.values.nested(KIT)
    fields |= {"id": draft.id, "fitted_to": fitted.get(draft.id)}
    fields.setdefault("name", _NAMELESS)
    item = checked(Item, fields, draft.values, KIT, problems)
    if item is not None:
        _note_more_out_than_in(item, draft, problems)
    return item


def _note_more_out_than_in(item: Item, draft: _Draft, problems: Problems) -> None:
    """A bank whose ports are said to give more than its cell holds cannot be reckoned with."""
    try:
        refuse_more_out_than_in(item)
    except InputFault as fault:
        value = shown(draft.values.row.cells.get("bank_rated_mah", ""))
        problems.add(draft.values.row.spot, "bank_rated_mah", fault.code, **{**fault.facts, "value": value})


def _twins(table: Table) -> tuple[tuple[int, ...], ...]:
    alike: dict[tuple[tuple[str, str], ...], list[int]] = {}
    for row in table.rows:
        alike.setdefault(tuple(row.cells.items()), []).append(row.spot.row)
    return tuple(tuple(rows) for rows in alike.values() if len(rows) > 1)
