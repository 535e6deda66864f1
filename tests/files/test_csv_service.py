"""What service.csv means, and what is refused in it."""

import itertools
from datetime import date
from typing import Any

import pytest

from kitlog.files.csv_kit import read_kit
from kitlog.files.csv_problems import CellProblem, TableFault
from kitlog.files.csv_service import ServiceTable, read_service
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import CountsFrom, Grounds, ServiceRecord, ServiceRule

ITEMS = (
    Item(id="w", name="Wing", kind=Kind.WING),
    Item(id="r", name="Reserve", kind=Kind.RESERVE),
    Item(id="t1", name="Twin"),
    Item(id="t2", name="Twin"),
)


def read(text: str) -> ServiceTable:
    count = itertools.count(1)
    return read_service(text.encode(), "service.csv", ITEMS, lambda: f"new-{next(count)}")


def problems(text: str) -> list[CellProblem]:
    with pytest.raises(TableFault) as caught:
        read(text)
    return list(caught.value.problems)


def test_a_row_is_a_rule_with_all_its_limits() -> None:
    table = read(
        "item,rule,months,recommended_months,hours,launches,due_on,event,counts_from,lead_days,warn_days,grounds,source\n"
        "Reserve,reserve.repack,12,6,100.5,150,2027-03-31,water + blow,made,21,30,by law,label\n"
    )
    assert table.rules == (
        ServiceRule(
            id="new-1",
            item_id="r",
            rule="reserve.repack",
            months=12,
            recommended_months=6,
            hours=100.5,
            launches=150,
            due_on=date(2027, 3, 31),
            events=("water", "blow"),
            counts_from=CountsFrom.MADE,
            lead_days=21,
            warn_days=30,
            grounds=Grounds.BY_LAW,
            source="label",
        ),
    )
    assert table.records == ()
    assert table.rows == {"new-1": 2}


def test_what_is_left_empty_is_as_in_the_model() -> None:
    rule = read("item,rule,months,grounds,warn_days,counts_from\nReserve,repack,12,,,\n").rules[0]
    assert rule == ServiceRule(id="new-1", item_id="r", rule="repack", months=12)
    assert (rule.grounds, rule.warn_days, rule.counts_from) == (Grounds.NO, 45, CountsFrom.RECORD)


def test_each_row_with_a_last_day_gives_a_record() -> None:
    table = read(
        "item,rule,months,last_on,last_hours,last_launches\n"
        "Wing,full,24,2024-05-21,112.5,96\nReserve,repack,12,2025-11-02,,\nReserve,life,120,,,\n"
    )
    ids = [rule.id for rule in table.rules]
    first, second = table.records
    assert first == ServiceRecord(
        id=first.id, item_id="w", rules=(ids[0],), done_on=date(2024, 5, 21), hours=112.5, launches=96
    )
    assert (second.rules, second.done_on, second.hours, second.launches) == (
        (ids[1],),
        date(2025, 11, 2),
        None,
        None,
    )
    assert len({*ids, first.id, second.id}) == 5


@pytest.mark.parametrize(
    ("word", "meaning"),
    [
        ("", CountsFrom.RECORD),
        ("record", CountsFrom.RECORD),
        ("first use", CountsFrom.FIRST_USE),
        ("first_use", CountsFrom.FIRST_USE),
        ("first_used_on", CountsFrom.FIRST_USE),
        ("bought", CountsFrom.BOUGHT),
        ("bought_on", CountsFrom.BOUGHT),
        ("made", CountsFrom.MADE),
        ("made_on", CountsFrom.MADE),
    ],
)
def test_words_for_what_a_rule_counts_from(word: str, meaning: CountsFrom) -> None:
    assert read(f"item,rule,months,counts_from\nWing,full,24,{word}\n").rules[0].counts_from is meaning


@pytest.mark.parametrize("word", ["yes", "by law", "no"])
def test_words_for_grounds(word: str) -> None:
    assert read(f"item,rule,months,grounds\nWing,full,24,{word}\n").rules[0].grounds.value == word


@pytest.mark.parametrize(
    ("item", "hours", "counts"), [("Wing", "100", True), ("Wing", "", False), ("Reserve", "100", False)]
)
def test_ground_handling_counts_for_the_hours_of_a_wing(item: str, hours: str, counts: bool) -> None:
    assert read(f"item,rule,months,hours\n{item},full,24,{hours}\n").rules[0].ground_handling is counts


ROWS: list[tuple[str, str, str, str, dict[str, Any]]] = [
    # headings after item,rule; the whole row; column; code; facts
    ("months", "Nobody,x,12", "item", "csv.unknown_name", {"value": "Nobody"}),
    ("months", "Twin,x,12", "item", "csv.ambiguous_name", {"count": 2, "rows": ()}),
    ("months", ",x,12", "item", "csv.empty_cell", {}),
    ("months", "Wing,,12", "rule", "csv.empty_cell", {}),
    ("months", "Wing,x,", "rule", "rule.no_limit", {}),
    ("months", "Wing,x,0", "months", "csv.too_small", {"limit": 1}),
    ("months", "Wing,x,1201", "months", "csv.too_large", {"limit": 1200}),
    ("months", "Wing,x,1.5", "months", "number.not_whole", {}),
    ("hours", "Wing,x,0", "hours", "csv.too_small", {"limit": 0, "inclusive": False}),
    ("hours", 'Wing,x,"1,5"', "hours", "csv.decimal_comma", {"meant": "1.5"}),
    ("launches", "Wing,x,0", "launches", "csv.too_small", {}),
    ("due_on", "Wing,x,2027-13-01", "due_on", "day.not_a_day", {}),
    ("event", "Wing,x,water+", "event", "csv.empty_part", {}),
    ("months,recommended_months", "Wing,x,12,24", "recommended_months", "rule.recommended_after_due", {}),
    ("months,counts_from", "Wing,x,12,sold", "counts_from", "csv.not_in_list", {}),
    ("months,grounds", "Wing,x,12,maybe", "grounds", "csv.not_in_list", {"allowed": ("yes", "by law", "no")}),
    ("months,lead_days", "Wing,x,12,-1", "lead_days", "csv.too_small", {}),
    ("months,warn_days", "Wing,x,12,3651", "warn_days", "csv.too_large", {"limit": 3650}),
    ("months,source", f"Wing,x,12,{'s' * 201}", "source", "csv.too_long", {"limit": 200}),
    ("months,last_on", "Wing,x,12,2101-01-01", "last_on", "day.out_of_range", {}),
    ("months,last_on,last_hours", "Wing,x,12,2024-01-01,-1", "last_hours", "csv.too_small", {"limit": 0}),
    (
        "months,last_on,last_hours",
        "Wing,x,12,,100",
        "last_hours",
        "csv.needs_other_cell",
        {"needs": "last_on"},
    ),
    ("months,last_launches", "Wing,x,12,100", "last_launches", "csv.needs_other_cell", {"needs": "last_on"}),
    ("months,last_on,last_hours", "Wing,x,12,soon,100", "last_on", "day.not_a_day", {}),
    ("months,last_who", "Wing,x,12,workshop", "last_who", "csv.needs_other_cell", {"needs": "last_on"}),
    ("months,last_next_due_on", "Wing,x,12,2027-01-01", "last_next_due_on", "csv.needs_other_cell", {}),
    ("months,last_on,last_result", "Wing,x,12,2024-01-01,fine", "last_result", "csv.not_in_list", {}),
    (
        "months,last_on,last_next_due_on",
        "Wing,x,12,2024-01-02,2024-01-01",
        "last_next_due_on",
        "record.next_before_done",
        {"next": "2024-01-01"},
    ),
    ("months,event_days", "Wing,x,12,-1", "event_days", "csv.too_small", {"limit": 0}),
    ("months", "Wing,good,12", "rule", "csv.rule_twice", {"value": "good", "first_row": 2}),
]


@pytest.mark.parametrize(("headings", "row", "column", "code", "facts"), ROWS, ids=lambda value: ascii(value)[:30])
def test_a_bad_row_is_refused_with_row_and_column(
    headings: str, row: str, column: str, code: str, facts: dict[str, Any]
) -> None:
    good = "Wing,good" + ",12" if headings.startswith("months") else "Wing,good"
    filled = {"hours": ",5", "launches": ",5", "due_on": ",2027-01-01", "event": ",water"}.get(headings, "")
    padding = "," * headings.count(",")
    (found,) = problems(f"item,rule,{headings}\n{good}{filled}{padding}\n\n{row}\n")
    assert (found.row, found.column, found.code) == (4, column, code)
    assert {key: found.facts[key] for key in facts} == facts


@pytest.mark.parametrize("heading", ["item", "rule"])
def test_item_and_rule_must_have_headings(heading: str) -> None:
    other = {"item": "rule", "rule": "item"}[heading]
    (found,) = problems(f"{other},months\nx,12\n")
    assert (found.row, found.column, found.code) == (1, heading, "csv.missing_heading")


@pytest.mark.parametrize(("cell", "code"), [("often", "number.not_whole"), ("12\x00", "text.unfit_character")])
def test_a_limit_that_cannot_be_read_is_not_called_missing_as_well(cell: str, code: str) -> None:
    assert [found.code for found in problems(f"item,rule,months\nWing,x,{cell}\n")] == [code]


def test_the_same_rule_for_two_items_is_two_rules() -> None:
    assert len(read("item,rule,months\nWing,full,12\nReserve,full,12\n").rules) == 2


def test_rows_of_a_kit_file_that_share_the_name_are_named() -> None:
    count = itertools.count(1)
    kit = read_kit(b"name\nA\nTwin\n\nTwin\n", "kit.csv", (), lambda: str(next(count)))
    with pytest.raises(TableFault) as caught:
        read_service(b"item,rule,months\nTwin,x,12\n", "service.csv", kit.items, lambda: "new", kit.rows)
    assert caught.value.problems[0].facts["rows"] == (3, 5)
