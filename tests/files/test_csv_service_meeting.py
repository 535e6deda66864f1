"""What becomes of rows of a service.csv about rules that are there, and what is asked about a last record."""

from datetime import UTC, date, datetime

import pytest

from kitlog.files.csv_problems import TableFault
from kitlog.files.csv_service import ServiceTable, read_service
from kitlog.files.csv_service_meeting import HeldService
from kitlog.files.table.kit_items import Existing
from kitlog.kit.event_words import EventWords
from kitlog.kit.flights import Flight
from kitlog.kit.incidents import Incident, Strike
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook

ITEMS = (Item(id="w", name="Wing", kind=Kind.WING), Item(id="h", name="Harness", kind=Kind.HARNESS))
RULE = ServiceRule(id="r1", item_id="w", rule="check", months=24, hours=100, source="manual", of_model="m1")
DONE = ServiceRecord(id="d1", item_id="w", rules=("r1",), done_on=date(2026, 3, 1), hours=20, who="Workshop")
FLOWN = Flight(id="f1", on=date(2026, 2, 1), airtime_min=1_200, flown=("w",))
NOW = datetime(2026, 5, 8, 20, tzinfo=UTC)
TREE = Incident(
    name="tree",
    label="tree landing",
    event="tree",
    source="test",
    strikes=(Strike(kinds=(Kind.WING,), event="tree"), Strike(kinds=(Kind.HARNESS,), event="impact")),
)
SAME = "Wing,check,24,100,2026-03-01,20"


def read(row: str, existing: Existing | None = None, *, sure: bool = False, headings: str = "") -> ServiceTable:
    book = ServiceBook((RULE,), (DONE,), (), (FLOWN,))
    held = HeldService(book, NOW, EventWords((TREE,), ("own word",)), existing, sure)
    text = f"{headings or 'item,rule,months,hours,last_on,last_hours'}\n{row}\n"
    numbers = iter(range(99))
    return read_service(text.encode(), "service.csv", ITEMS, lambda: f"new-{next(numbers)}", held=held)


def codes(row: str, headings: str = "") -> list[tuple[str, str]]:
    with pytest.raises(TableFault) as caught:
        read(row, Existing.UPDATE, headings=headings)
    return [(problem.column, problem.code) for problem in caught.value.problems]


@pytest.mark.parametrize("existing", [None, *Existing])
def test_the_same_again_brings_nothing(existing: Existing | None) -> None:
    table = read(SAME, existing)
    assert (table.rules, table.records, table.met, table.unchanged) == ((), (), (), 1)


def test_a_changed_row_is_asked_about() -> None:
    table = read("Wing,Check,12,100,2026-03-01,20")
    assert [(one.row, one.code, one.facts["fields"]) for one in table.met] == [
        (2, "csv.meets_rule", ("months", "source"))
    ]
    assert read("Wing,check,12,100,2026-03-01,20", Existing.ADD).met  # a second rule of one name is none


def test_it_is_left_out_or_changes_the_rule_as_chosen() -> None:
    row = "Wing,check,12,,2026-03-01,20"
    assert (read(row, Existing.SKIP).rules, read(row, Existing.SKIP).skipped) == ((), 1)
    table = read(row, Existing.UPDATE)
    assert table.rules == (RULE.model_copy(update={"months": 12, "source": "", "of_model": None}),)
    assert (table.records, table.changed) == ((), 1)


def test_a_newer_record_is_of_the_rule_that_is_there() -> None:
    (record,) = read("Wing,check,24,100,2026-04-01,25", Existing.UPDATE).records
    assert (record.rules, record.hours) == (("r1",), 25)
    assert read("Wing,check,24,100,2026-04-01,25").met


def test_a_corrected_record_strikes_the_old_one_and_keeps_the_rest() -> None:
    struck, record = read("Wing,check,24,100,2026-03-01,21", Existing.UPDATE).records
    assert (struck.id, struck.struck_at) == ("d1", NOW)
    assert (record.hours, record.who, record.struck_at) == (21, "Workshop", None)


def test_a_day_to_come_and_hours_that_run_backwards_are_refused() -> None:
    assert codes("Wing,check,24,100,2030-01-01,20") == [("last_on", "record.in_future")]
    assert codes("Wing,check,24,100,2026-04-01,10") == [
        ("last_hours", "record.hours_backwards"),
        ("last_hours", "record.hours_below_log"),
    ]
    assert codes("Harness,look,12,,2030-01-01,") == [("last_on", "record.in_future")]


def test_hours_may_be_so_if_the_pilot_says_so() -> None:
    assert len(read("Wing,check,24,100,2026-04-01,10", Existing.UPDATE, sure=True).records) == 1
    with pytest.raises(TableFault):
        read("Wing,check,24,100,2030-01-01,20", Existing.UPDATE, sure=True)


EVENTS = "item,rule,event"


@pytest.mark.parametrize(
    ("row", "events"),
    [
        ("Wing,x,Tree", ("tree",)),
        ("Wing,x,tree landing+own word", ("tree", "own word")),
        ("Harness,x,tree", ("impact",)),
    ],
)
def test_an_incident_stands_for_the_event_that_it_logs(row: str, events: tuple[str, ...]) -> None:
    assert read(row, headings=EVENTS).rules[0].events == events


def test_a_word_that_nobody_logs_is_asked_about() -> None:
    assert codes("Wing,x,fnord+tree", EVENTS) == [("event", "rule.event_unknown")]
    assert read("Wing,x,fnord", sure=True, headings=EVENTS).rules[0].events == ("fnord",)
