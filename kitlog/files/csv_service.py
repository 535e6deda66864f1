"""service.csv into service rules and records."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from kitlog.fault import InputFault
from kitlog.files.csv_checks import Values, checked, read_cells
from kitlog.files.csv_columns import SERVICE
from kitlog.files.csv_names import Named, NameIndex, as_name
from kitlog.files.csv_problems import CellProblem, Problems, shown
from kitlog.files.csv_rows import read_table
from kitlog.files.csv_service_meeting import (
    HeldService,
    asked_about,
    events_known,
    met_record,
    met_rule,
    question_records,
)
from kitlog.files.table.kit_items import Existing
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import ServiceRecord, ServiceRule

_NOBODY = "?"
"""Stands in for an item or rule that is not known, so that the rest of the row is checked; such a file is refused."""
_NO_ROWS: Mapping[str, int] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class ServiceTable:
    """What a service.csv holds.

    Attributes:
        rules: in the order of the rows.
        records: one for each row that says when it was last done.
        rows: text line of each rule, by id.
        met: rows that would change a rule that is there, or its last record, whatever is decided.
        changed: how many rules that are there become others; unchanged, skipped: how many rows say nothing new of one,
            and how many are left out by choice.
    """

    rules: tuple[ServiceRule, ...]
    records: tuple[ServiceRecord, ...]
    rows: Mapping[str, int]
    met: tuple[CellProblem, ...] = ()
    changed: int = 0
    unchanged: int = 0
    skipped: int = 0


def counts_ground_handling(kind: Kind, hours: float | None) -> bool:
    """Whether ground handling counts for a rule that came without saying so: for a wing's hours, else not."""
    return kind is Kind.WING and hours is not None


def read_service(
    data: bytes,
    file: str,
    items: Sequence[Item],
    new_id: Callable[[], str],
    rows: Mapping[str, int] = _NO_ROWS,
    held: HeldService | None = None,
) -> ServiceTable:
    """The service rules and records of a service.csv; all of it or nothing.

    Args:
        data: the bytes of the file.
        file: its name, for the problems.
        items: items that the file may name: those of the kit, and those of a kit.csv read along with it.
        new_id: gives the ids of new rules and records.
        rows: lines of items in that kit.csv by id (`KitTable.rows`), to say which rows share a name.
        held: what is on record already, to be met; None = nothing, and nothing is asked about.

    Raises:
        TableFault: with every problem of the file.
    """
    problems = Problems(file)
    index = NameIndex(Named(item.name, item.id, rows.get(item.id)) for item in items)
    by_id = {item.id: item for item in items}
    drafts = []
    for row in read_table(data, SERVICE, problems).rows:
        values = read_cells(row, SERVICE, problems)
        item_id = _item_id(values, index, problems)
        kind = by_id[item_id].kind if item_id in by_id else Kind.OTHER
        drafts.append(_draft(values, item_id, kind, new_id, problems, held))
    _note_rules_twice(drafts, problems)
    table = _table(drafts) if held is None else _met(drafts, by_id, held, problems)
    problems.refuse_if_any()
    return table


def _table(drafts: Sequence["_Draft"]) -> ServiceTable:
    rules = tuple(draft.rule for draft in drafts if draft.rule)
    records = tuple(draft.record for draft in drafts if draft.record)
    return ServiceTable(rules, records, {draft.id: draft.values.row.spot.row for draft in drafts})


def _met(drafts: Sequence["_Draft"], items: Mapping[str, Item], held: HeldService, problems: Problems) -> ServiceTable:
    """The table as it meets what is on record: what is there already does not come in again."""
    fresh = [draft for draft in drafts if draft.before is None]
    there = [draft for draft in drafts if draft.before is not None]
    telling = [draft for draft in there if draft.rule or draft.record]
    taken = telling if held.existing is Existing.UPDATE else []
    base = _table([*fresh, *taken])
    replaced = {draft.old.id: draft.old for draft in taken if draft.record and draft.old}
    incoming = {draft.record.id: (draft.record, draft.values) for draft in [*fresh, *taken] if draft.record}
    question_records(incoming, frozenset(replaced), items, held, problems)
    struck = tuple(old.model_copy(update={"struck_at": held.now}) for old in replaced.values())
    return replace(
        base,
        records=(*struck, *base.records),
        met=tuple(
            asked_about(draft.before, draft.rule, items[draft.item_id].name, draft.values, problems.file)
            for draft in telling
            if draft.before
        ),
        changed=sum(draft.rule is not None for draft in taken),
        unchanged=len(there) - len(telling),
        skipped=len(telling) if held.existing is Existing.SKIP else 0,
    )


@dataclass(frozen=True, slots=True)
class _Draft:
    """A row with what it became: None where something in it was noted, or where it says nothing new.

    Attributes:
        before: the rule that is there already; old: the record that stands there of that day.
    """

    id: str
    item_id: str
    values: Values
    rule: ServiceRule | None
    record: ServiceRecord | None
    before: ServiceRule | None = None
    old: ServiceRecord | None = None


def _item_id(values: Values, index: NameIndex, problems: Problems) -> str:
    cell = values.of.get("item")
    if cell is None:
        return _NOBODY
    try:
        return index.find(str(cell)).id
    except InputFault as fault:
        problems.add(values.row.spot, "item", fault.code, **fault.facts, value=shown(str(cell)))
        return _NOBODY


def _draft(
    values: Values,
    item_id: str,
    kind: Kind,
    new_id: Callable[[], str],
    problems: Problems,
    held: HeldService | None,
) -> _Draft:
    fields = values.nested(SERVICE)
    last = fields.pop("last", {})
    fields |= {"item_id": item_id}
    if held is not None:
        if "events" in fields:
            fields["events"] = events_known(fields["events"], kind, values, held, problems)
        before = held.rule(item_id, str(fields.get("rule", "")))
        if before is not None:
            return _draft_of(before, fields, last, values, new_id, problems, held)
    rule_id = new_id()
    fields |= {"id": rule_id, "ground_handling": counts_ground_handling(kind, fields.get("hours"))}
    fields.setdefault("rule", _NOBODY)
    rule = checked(ServiceRule, fields, values, SERVICE, problems)
    last |= {"item_id": item_id, "rules": (rule_id,)}
    return _Draft(rule_id, item_id, values, rule, _record(last, values, new_id, problems))


def _draft_of(
    before: ServiceRule,
    fields: dict[str, object],
    last: dict[str, object],
    values: Values,
    new_id: Callable[[], str],
    problems: Problems,
    held: HeldService,
) -> _Draft:
    """A row about a rule that the item has already."""
    rule = met_rule(before, fields, values, problems)
    given = dict(last)
    record = _record({**last, "item_id": before.item_id, "rules": (before.id,)}, values, new_id, problems)
    old = None if record is None else held.record(before.id, record.done_on)
    if record is not None and old is not None:
        record = met_record(old, record, given)
    return _Draft(before.id, before.item_id, values, rule, record, before, old)


def _record(
    last: dict[str, object], values: Values, new_id: Callable[[], str], problems: Problems
) -> ServiceRecord | None:
    """The record of the last time; without its day nothing of it could be counted from."""
    if "done_on" in last:
        return checked(ServiceRecord, {**last, "id": new_id()}, values, SERVICE, problems, under=("last",))
    if "last_on" not in values.row.cells:
        for heading in values.of:
            if SERVICE.by_heading[heading].path[0] == "last":
                value = shown(values.row.cells[heading])
                problems.add(values.row.spot, heading, "csv.needs_other_cell", needs="last_on", value=value)
    return None


def _note_rules_twice(drafts: Iterable[_Draft], problems: Problems) -> None:
    first: dict[tuple[str, str], int] = {}
    for draft in drafts:
        name = as_name(str(draft.values.of.get("rule", "")))
        spot = draft.values.row.spot
        earlier = first.setdefault((draft.item_id, name), spot.row)
        if earlier != spot.row and name and draft.item_id != _NOBODY:
            problems.add(spot, "rule", "csv.rule_twice", value=shown(name), first_row=earlier)
