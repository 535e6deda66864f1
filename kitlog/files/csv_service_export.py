"""Service rules and the last record of each into service.csv."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from kitlog.files.csv_columns import SERVICE
from kitlog.files.csv_export import Export, Lost, blank, cells_of, unique_names, unwritten, written
from kitlog.files.csv_service import counts_ground_handling
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ModelRule, ServiceRecord, ServiceRule

_LAST = ("last",)
_TOLD = {"id", "item_id", "rules", "struck_at"} | {column.path[1] for column in SERVICE.all if column.path[0] == "last"}
"""Fields of a record that columns stand for, or that are told in another way."""
_NO_COLUMN = tuple(field for field in ServiceRecord.model_fields if field not in _TOLD)
"""Fields of a record that no column stands for, looked for in the model so that a new field cannot be forgotten."""


@dataclass(frozen=True, slots=True)
class _Line:
    """One row to be: a rule, its item, and when it was last done."""

    item: Item
    rule: ServiceRule
    last: ServiceRecord | None


def write_service(
    items: Sequence[Item],
    rules: Sequence[ServiceRule],
    records: Sequence[ServiceRecord],
    events: Sequence[Event] = (),
    models: Sequence[ModelRule] = (),
) -> Export:
    """The bytes of a service.csv that gives the same rules, and the newest record of each, when read.

    Lost are: rules of an item that is not there or shares its name, a second rule of the same name, rules marked as
    not applying, ground handling where it is not as read, older and struck-out records, measurements, papers and the
    events that a record answers, that one record served several rules, what happened to an item (`events`), the rules
    by model (`models`), and that a rule follows one of them.
    """
    lines = _lines(items, rules, records)
    rows = [_cells(line) for line in lines]
    lost = dict.fromkeys(
        [*_lost(lines, items, rules, records, events), *(Lost(one.model, "model_rules", one.rule) for one in models)]
    )
    return Export(written(SERVICE, rows), tuple(lost))


def _lines(items: Sequence[Item], rules: Sequence[ServiceRule], records: Sequence[ServiceRecord]) -> tuple[_Line, ...]:
    """The rules that can be written: one of each name for an item that a cell can name."""
    names = unique_names(items)
    by_id = {item.id: item for item in items if item.id in names}
    first = {(rule.item_id, rule.rule): rule for rule in reversed(rules)}
    newest = _newest(records)
    return tuple(
        _Line(by_id[rule.item_id], rule, newest.get(rule.id))
        for rule in rules
        if rule.item_id in by_id and first[rule.item_id, rule.rule] is rule
    )


def _newest(records: Iterable[ServiceRecord]) -> dict[str, ServiceRecord]:
    """The newest record that stands, by the id of the rule it satisfies."""
    newest: dict[str, ServiceRecord] = {}
    for record in records:
        for rule_id in record.rules if record.struck_at is None else ():
            if rule_id not in newest or record.done_on > newest[rule_id].done_on:
                newest[rule_id] = record
    return newest


def _cells(line: _Line) -> dict[str, str]:
    cells = cells_of(line.rule, SERVICE)
    cells["item"] = SERVICE.by_heading["item"].form.write(line.item.name)
    return cells | (cells_of(line.last, SERVICE, _LAST) if line.last else {})


def _lost(
    lines: Sequence[_Line],
    items: Sequence[Item],
    rules: Sequence[ServiceRule],
    records: Sequence[ServiceRecord],
    events: Sequence[Event],
) -> Iterator[Lost]:
    names = {item.id: item.name for item in items}
    yield from _lost_rules(lines, rules, names)
    for line in lines:
        yield from (Lost(line.item.name, field, line.rule.rule) for field in _lost_fields(line))
    kept = {line.last.id for line in lines if line.last}
    for record in records:
        if record.id not in kept:
            yield Lost(names.get(record.item_id, record.item_id), "records")
    for event in events:
        yield Lost(names.get(event.item_id, event.item_id), "events")


def _lost_rules(lines: Sequence[_Line], rules: Sequence[ServiceRule], names: Mapping[str, str]) -> Iterator[Lost]:
    kept = {line.rule.id for line in lines}
    for rule in rules:
        if rule.id not in kept:
            yield Lost(names.get(rule.item_id, rule.item_id), "rules", rule.rule)


def _lost_fields(line: _Line) -> Iterator[str]:
    rule, last = line.rule, line.last
    yield from unwritten(rule, SERVICE)
    if not rule.applies:
        yield "applies"
    if rule.of_model is not None:
        yield "of_model"
    if rule.ground_handling != counts_ground_handling(line.item.kind, rule.hours):
        yield "ground_handling"
    if last is None:
        return
    yield from unwritten(last, SERVICE, _LAST)
    yield from (f"records.{field}" for field in _NO_COLUMN if not blank(getattr(last, field)))
    if len(last.rules) > 1:
        yield "records.rules"
