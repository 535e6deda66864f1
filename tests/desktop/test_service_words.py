"""The words of band, list and detail: both limits, which comes first, what is foreseen, what was set by whom."""

from datetime import date
from typing import Any

import pytest
from small_kit import item

from kitlog.desktop.service_page.band_lanes import lanes_of, state_word
from kitlog.desktop.service_page.list_words import book_text, due_text, first_limit_text, told
from kitlog.kit.due import due_states
from kitlog.kit.flights import Flight
from kitlog.kit.service import Event, Result, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.paint.mark import Mark
from kitlog.workbench.reads import DueLine

TODAY = date(2026, 5, 8)
WING = item("wing", "wing", opening_h=0.0, opening_launches=0)
DONE = ServiceRecord(id="s", item_id="wing", rules=("r",), done_on=date(2025, 6, 1), who="Ansgar Prow, loft")


def flown(on: date, hours: float, launches: int = 1) -> Flight:
    return Flight(id=f"f{on}", on=on, until=on, airtime_min=60 * hours, flown=("wing",), launches=launches)


HALVES = (flown(date(2025, 6, 2), 20), flown(date(2026, 4, 30), 40))
"""Quieter half 20 h in 183 days, busier half 40 h in 182."""


def line(*flights: Flight, record: ServiceRecord | None = DONE, event: Event | None = None, **limits: Any) -> DueLine:
    rule = ServiceRule.model_validate({"id": "r", "item_id": "wing", "rule": "check"} | limits)
    records = (record,) if record else ()
    book = ServiceBook((rule,), records, (event,) if event else (), flights)
    (due,) = due_states(WING, book, TODAY)
    return DueLine(WING, rule, due)


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_a_lane_for_each_limit_and_book_by_on_the_one_that_comes_first() -> None:
    dated, hours = lanes_of(line(*HALVES, months=24, hours=100, lead_days=21))
    assert (dated.due is not None, dated.book_by) == (True, None)
    assert hours.hours is not None
    assert (hours.hours.early, hours.hours.likely, hours.hours.late) == (
        date(2026, 11, 6),  # 40 h left at 40 h in 182 days: 182.0 days
        date(2027, 1, 6),  # 40 h left at 60 h in 365 days: 243.3 days
        date(2027, 5, 9),  # 40 h left at 20 h in 183 days: 366.0 days
    )
    assert hours.book_by == date(2026, 12, 16)
    assert plain(hours.hours.text) == "40.0 h left, about 6 Jan 2027; 6 Nov to 9 May 2027"
    dated, hours = lanes_of(line(*HALVES, months=12, hours=100, lead_days=21))
    assert (dated.book_by, hours.book_by) == (date(2026, 5, 11), None)


def test_what_is_not_flown_is_said_to_be() -> None:
    (lane,) = lanes_of(line(hours=100))
    assert lane.hours is not None
    assert plain(lane.hours.text) == "100.0 h left, none flown in 12 months"


def test_hours_over_stand_as_overdue_beside_a_date_to_come() -> None:
    over = line(flown(date(2026, 4, 30), 102.5), months=24, hours=100)
    dated, hours = lanes_of(over)
    assert (dated.mark, hours.mark) == (Mark.FINE, Mark.STOP)
    assert (due_text(over), book_text(over.due)) == ("now", "now")
    assert plain(first_limit_text(over)) == "100 h (2.5 h over the limit), before 24 months"


def test_launches_have_a_lane_though_no_day_can_be_said() -> None:
    (lane,) = lanes_of(line(flown(date(2026, 4, 30), 1, launches=96), launches=100))
    assert (lane.mark, lane.note, lane.rule) == (Mark.LOOK, "4 launches left", "check, 100 launches")


def test_hours_that_an_inspector_set_stand_over_those_of_the_rule() -> None:
    record = DONE.model_copy(update={"next_within_h": 30.0})
    (lane,) = lanes_of(line(flown(date(2026, 4, 30), 10), record=record, hours=100))
    assert lane.rule == "check, 30\u00a0h"
    assert lane.hours is not None
    assert lane.hours.text.startswith("20.0\u00a0h left")


def test_a_failed_check_is_one_lane_of_its_day() -> None:
    failed = line(months=24, record=DONE.model_copy(update={"result": Result.FAILED}))
    (lane,) = lanes_of(failed)
    assert lane.mark is Mark.STOP
    assert lane.due is not None
    assert (lane.due.day, plain(lane.due.text)) == (date(2025, 6, 1), "failed on 1 Jun 2025")
    assert first_limit_text(failed).startswith("failed on")


@pytest.mark.parametrize(
    ("limits", "flights", "text"),
    [
        ({"months": 12, "hours": 100}, HALVES, "12 months, before 100 h (40.0 h left)"),
        ({"months": 36, "hours": 100}, HALVES, "100 h (40.0 h left), before 36 months"),
        ({"hours": 100}, HALVES, "100 h (40.0 h left)"),
        ({"months": 24, "recommended_months": 18}, (), "recommended from 1 Dec 2026"),
        ({"months": 24, "recommended_months": 6}, (), "recommended since 1 Dec 2025"),
        ({"due_on": date(2026, 12, 31)}, (), "typed date"),
        ({"launches": 100}, (flown(date(2026, 4, 30), 1, launches=101),), "100 launches (1 launch over)"),
    ],
)
def test_which_limit_comes_first(limits: dict[str, Any], flights: tuple[Flight, ...], text: str) -> None:
    assert plain(first_limit_text(line(*flights, **limits))) == text


def test_no_record_is_said_with_its_limit() -> None:
    assert first_limit_text(line(record=None, months=12)) == "12 months, never recorded"
    assert due_text(line(record=None, months=12)) == "not known"


def test_an_event_that_leaves_days_is_due_then() -> None:
    wet = Event(id="e", item_id="wing", on=TODAY, kind="water")
    drying = line(event=wet, record=None, events=("water",), event_days=1)
    assert plain(due_text(drying)) == "9 May 2026"
    (lane,) = lanes_of(drying)
    assert lane.mark is Mark.LOOK


def test_the_detail_tells_span_booking_next_outing_and_source() -> None:
    one = line(*HALVES, months=24, hours=100, lead_days=21, source="maker's manual, page 12")
    then = due_states(WING, ServiceBook((one.rule,), (DONE,), (), HALVES), date(2026, 5, 16), today=TODAY)[0]
    first, behind = (plain(text) for text in told(one, then))
    assert "due 1 Jun 2027; 40.0 h left, about 6 Jan 2027" in first
    assert "hours run out 6 Nov to 9 May 2027" in first
    assert "book by 16 Dec 2026" in first
    assert "on the next outing, 16 May: in date" in first
    assert behind == "24 months, 100 h; last done 1 Jun 2025, Ansgar Prow, loft; rule: maker's manual, page 12"


def test_a_state_that_is_only_foreseen_is_said_to_be() -> None:
    rule = ServiceRule(id="r", item_id="wing", rule="check", hours=100)
    book = ServiceBook((rule,), (DONE,), (), HALVES)
    (due,) = due_states(WING, book, date(2027, 3, 1), today=TODAY)
    assert state_word(due) == "overdue, foreseen"
