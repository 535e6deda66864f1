"""Rows of a service.csv about rules that an item has already: nothing new, left as they are, or changed."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from kitlog.files.csv_checks import Values, checked
from kitlog.files.csv_columns import SERVICE
from kitlog.files.csv_names import as_name
from kitlog.files.csv_problems import CellProblem, Problems, shown
from kitlog.files.table.kit_items import Existing
from kitlog.kit.event_words import EventWords
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.model_rules import FIGURES
from kitlog.kit.record_questions import record_questions
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook

FIELDS = tuple(name for name in ServiceRule.model_fields if name not in {"id", "item_id", "of_model", "applies"})
"""What a row may change of a rule."""

_OF_LOG = {"record.hours_below_log", "record.launches_below_log"}


@dataclass(frozen=True, slots=True)
class HeldService:
    """What is on record where a service.csv comes in, and what the pilot has decided.

    Attributes:
        book: rules, records, events, flights.
        now: the moment; a service of a later day is refused.
        words: what may be named as an event.
        existing: what becomes of rows about rules that are there; None = not decided.
        sure: the pilot has been asked about what is unlikely, and said that it is so.
    """

    book: ServiceBook
    now: datetime
    words: EventWords
    existing: Existing | None = None
    sure: bool = False

    def rule(self, item_id: str, name: str) -> ServiceRule | None:
        """The rule of that name that the item has."""
        wanted = as_name(name).casefold()
        return next((rule for rule in self.book.rules_of(item_id) if rule.rule.casefold() == wanted), None)

    def record(self, rule_id: str, day: object) -> ServiceRecord | None:
        """The record of that day that satisfies the rule."""
        of_rule = (record for record in self.book.records_of(rule_id) if record.struck_at is None)
        return next((record for record in of_rule if record.done_on == day), None)


def met_rule(before: ServiceRule, fields: Mapping[str, Any], values: Values, problems: Problems) -> ServiceRule | None:
    """The rule as the row makes it, None where that is the same; cells that are empty leave it as it is.

    Figures that change lose a source that the row does not give anew, and a rule that changes follows its model no
    longer.
    """
    merged = {**before.model_dump(), **fields, "rule": before.rule}
    after = checked(ServiceRule, merged, values, SERVICE, problems)
    if after is None or after == before:
        return None
    sourced = "source" in fields or all(getattr(after, name) == getattr(before, name) for name in FIGURES)
    return after.model_copy(update={"of_model": None, "source": after.source if sourced else ""})


def met_record(old: ServiceRecord, new: ServiceRecord, given: Mapping[str, Any]) -> ServiceRecord | None:
    """The record of that day as the row makes it, under the id of the new one; None where it says nothing else."""
    told = {name: getattr(new, name) for name in given if name not in {"item_id", "rules"}}
    after = old.model_copy(update=told)
    return None if after == old else after.model_copy(update={"id": new.id})


def asked_about(before: ServiceRule, after: ServiceRule | None, item: str, values: Values, file: str) -> CellProblem:
    """The question what becomes of a rule that is there, where the row would change it or its last record."""
    changed = [name for name in FIELDS if after is not None and getattr(after, name) != getattr(before, name)]
    facts = {"value": shown(before.rule), "name": shown(item), "fields": tuple(changed or ["last_on"])}
    spot = values.row.spot
    return CellProblem(file, spot.row, "rule", "csv.meets_rule", facts, spot.record)


def events_known(
    events: tuple[str, ...], kind: Kind, values: Values, held: HeldService, problems: Problems
) -> tuple[str, ...]:
    """The events that the words of a cell mean; a word that nobody would ever log is noted, unless it is so."""
    meant = []
    for word in events:
        event = held.words.event(word, kind)
        if not event and not held.sure:
            known = held.words.known(kind)
            problems.add(values.row.spot, "event", "rule.event_unknown", value=shown(word), known=known)
        meant.append(event or word)
    return tuple(dict.fromkeys(meant))


def question_records(
    records: Mapping[str, tuple[ServiceRecord, Values]],
    struck: frozenset[str],
    items: Mapping[str, Item],
    held: HeldService,
    problems: Problems,
) -> None:
    """Note days that have not been yet, and what is unlikely: hours that run backwards, or against the log.

    Args:
        records: those that come in, by id, each with its row.
        struck: ids of records on record that they take the place of.
        items: by id.
        held: what is on record.
        problems: takes what is found.
    """
    others = [record for record in held.book.records if record.id not in struck]
    others += [record for record, _values in records.values()]
    for record, values in records.values():
        if record.done_on > held.now.date():
            problems.add(values.row.spot, "last_on", "record.in_future", day=record.done_on)
            continue
        flown = held.book.flown_with(record.item_id)
        before_log = not any(flight.last_day < record.done_on for flight in flown)
        for asked in () if held.sure else record_questions(record, items[record.item_id], others, flown):
            if before_log and asked.code in _OF_LOG:
                continue  # the opening balance may hold hours of later days
            column = next((f"last_{what}" for what in ("hours", "launches") if what in asked.facts), "last_on")
            problems.add(values.row.spot, column, asked.code, **asked.facts)
