"""What a new record begins with."""

from datetime import UTC, date, datetime

from kitlog.kit.measured_text import parse_measurement
from kitlog.kit.record_proposal import RecordProposal, record_proposal
from kitlog.kit.service import ServiceRecord


def record(day: int, item: str = "w", rule: str = "full", struck: bool = False, **fields: object) -> ServiceRecord:
    raw = {"id": f"{item}{rule}{day}", "item_id": item, "rules": (rule,), "done_on": date(2026, 1, day), **fields}
    return ServiceRecord.model_validate({**raw, "struck_at": datetime(2026, 2, 1, tzinfo=UTC) if struck else None})


def test_nothing_is_proposed_where_nothing_is_on_record() -> None:
    assert record_proposal((), "w", ("full",)) == RecordProposal()


def test_who_is_that_of_the_rule_then_of_the_item_then_of_all() -> None:
    full, trim, other = (
        record(1, who="workshop"),
        record(5, rule="trim", who="Ana"),
        record(9, item="h", rule="check", who="Ben"),
    )
    assert record_proposal((full, trim, other), "w", ("full",)).who == "workshop"
    assert record_proposal((full, trim, other), "w", ("dry",)).who == "Ana"
    assert record_proposal((full, trim, other), "r", ("repack",)).who == "Ben"


def test_struck_records_and_empty_names_propose_nothing() -> None:
    assert record_proposal((record(1, who="workshop"), record(2, who="x", struck=True), record(3)), "w", ()).who == (
        "workshop"
    )


def test_currency_and_what_was_measured_come_from_the_last_that_has_them() -> None:
    porosity = parse_measurement("porosity 182 s, gauge A")
    old = record(1, measurements=(porosity,), cost=90, currency="EUR")
    found = record_proposal((old, record(7)), "w", ("full",))
    assert (found.currency, found.measured) == ("EUR", (porosity,))
