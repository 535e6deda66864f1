"""What is on record about a rule, in words (dates of the worked example)."""

from dataclasses import replace
from datetime import date

import pytest
from scenario import DEMO
from small_kit import item

from kitlog.kit.due import Due, DueState, due_states
from kitlog.kit.flights import Flight
from kitlog.kit.foresight import RunOut
from kitlog.kit.service import Event, Result, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook
from kitlog.wording.due_sentence import due_sentence, span_text

BOOK = ServiceBook(DEMO.rules, DEMO.records, DEMO.events, DEMO.flights)


def due(name: str, rule: str, on: date) -> Due:
    one = next(i for i in DEMO.items if i.name == name)
    return next(d for d in due_states(one, BOOK, on) if d.rule == rule)


def said(name: str, rule: str, on: date) -> str:
    return due_sentence(due(name, rule, on)).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("name", "rule", "on", "sentence"),
    [
        ("Reserve A", "reserve.repack", date(2026, 2, 28), "due 31 Aug 2026"),
        ("Reserve A", "reserve.repack", date(2026, 5, 8), "recommended by 28 Feb 2026; due 31 Aug 2026"),
        ("Reserve A", "reserve.repack", date(2026, 8, 20), "recommended by 28 Feb 2026; due 31 Aug 2026"),
        ("Reserve A", "reserve.repack", date(2026, 9, 5), "overdue since 31 Aug 2026"),
        ("First aid kit", "firstaid.check", date(2026, 5, 8), "due 8 May 2026"),
        ("First aid kit", "firstaid.check", date(2026, 5, 9), "overdue since 8 May 2026"),
        ("Wing A", "wing.full", date(2026, 5, 8), "due 20 May 2026; 22.1 h left, about 30 Oct 2026"),
        ("Speed bar A", "speed.line", date(2026, 5, 8), "4 launches left"),
        ("Helmet A", "helmet.event", date(2026, 5, 8), "open since 18 Apr 2026: blow"),
        ("Harness B", "harness.visual", date(2026, 5, 8), "no record: not known until a first one is entered"),
        ("Wing A", "wing.event", date(2026, 5, 8), "in date"),
    ],
)
def test_sentences(name: str, rule: str, on: date, sentence: str) -> None:
    assert said(name, rule, on) == sentence


@pytest.mark.parametrize(("left", "sentence"), [(1, "1 launch left"), (0, "0 launches left"), (-1, "1 launch over")])
def test_one_and_many(left: int, sentence: str) -> None:
    one = replace(due("Speed bar A", "speed.line", date(2026, 5, 8)), launches_left=left)
    assert due_sentence(one) == sentence


def test_hours_over() -> None:
    one = replace(due("Wing A", "wing.full", date(2026, 5, 8)), hours_left=-2.5, due_on=None, state=DueState.OVERDUE)
    assert due_sentence(one) == "2.5\u00a0h over the limit"


WING = item("wing", "wing", opening_h=0.0)
FULL = ServiceRule(id="r", item_id="wing", rule="wing.full", hours=100, ground_handling=True)


def flown(on: date, hours: float) -> Flight:
    return Flight(id=f"f{on}", on=on, until=on, airtime_min=60 * hours, flown=("wing",))


def judged(book: ServiceBook, on: date, **more: object) -> str:
    (one,) = due_states(WING, book, on, **more)  # type: ignore[arg-type]
    return due_sentence(one).replace("\u00a0", " ")


BUSY = ServiceBook((FULL,), (), (), (flown(date(2026, 1, 10), 30), flown(date(2026, 4, 30), 64)))


def test_hours_foreseen_are_said_to_be() -> None:
    """94 h in the last year: 0.2575 h a day; 36 days from 8 May to 13 June are 9.27 h, of 6 h that are left."""
    today, on = date(2026, 5, 8), date(2026, 6, 13)
    assert judged(BUSY, on, today=today) == "6.0 h left, about 31 May 2026; foreseen 3.3 h over on 13 Jun 2026"


def test_a_day_near_enough_says_nothing_of_what_is_foreseen() -> None:
    assert judged(BUSY, date(2026, 5, 10), today=date(2026, 5, 8)) == "6.0 h left, about 31 May 2026"


def test_the_least_that_is_left_is_said_to_be_the_least() -> None:
    old = WING.model_copy(update={"opening_h": 40.0})
    record = ServiceRecord(id="s", item_id="wing", rules=("r",), done_on=date(2025, 1, 1))
    book = ServiceBook((FULL,), (record,), (), (flown(date(2026, 4, 30), 10),))
    (one,) = due_states(old, book, date(2026, 5, 8))
    assert due_sentence(one).replace("\u00a0", " ").startswith("at least 50.0 h left")


def test_a_failed_check_is_said_with_its_day() -> None:
    record = ServiceRecord(id="s", item_id="wing", rules=("r",), done_on=date(2026, 5, 1), result=Result.FAILED)
    book = ServiceBook((FULL,), (record,), (), ())
    assert judged(book, date(2026, 5, 8)).startswith("failed on 1 May 2026: open until it passes")


def test_a_date_that_the_inspector_set_is_said_to_be_set() -> None:
    day = date(2026, 9, 1)
    record = ServiceRecord(id="s", item_id="wing", rules=("r",), done_on=date(2026, 5, 1), next_due_on=day)
    book = ServiceBook((FULL,), (record,), (), ())
    assert "due 1 Sep 2026, as set at the last check" in judged(book, date(2026, 5, 8))
    assert "overdue since 1 Sep 2026, as set at the last check" in judged(book, date(2026, 9, 2))


def test_days_to_answer_an_event_are_said() -> None:
    dry = FULL.model_copy(update={"hours": None, "events": ("water",), "event_days": 1})
    book = ServiceBook((dry,), (), (Event(id="e", item_id="wing", on=date(2026, 5, 7), kind="water"),), ())
    assert judged(book, date(2026, 5, 8)) == "water on 7 May 2026: due 8 May 2026"
    assert judged(book, date(2026, 5, 9)) == "water on 7 May 2026: overdue since 8 May 2026"


@pytest.mark.parametrize(
    ("early", "late", "text"),
    [
        (date(2026, 7, 3), date(2026, 9, 14), "3 Jul to 14 Sep"),
        (date(2026, 9, 10), date(2027, 1, 25), "10 Sep to 25 Jan 2027"),
        (date(2027, 1, 3), date(2027, 5, 14), "3 Jan to 14 May 2027"),
        (date(2026, 9, 10), None, "10 Sep at the earliest"),
        (None, None, ""),
    ],
)
def test_the_span_of_the_day_on_which_hours_run_out(early: date | None, late: date | None, text: str) -> None:
    assert span_text(RunOut(early, None, late), date(2026, 5, 8)).replace("\u00a0", " ") == text
