from datetime import date

import pytest

from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.record_questions import answered_that_day, record_questions
from kitlog.kit.service import Event, Result, ServiceRecord, ServiceRule

WING = Item.model_validate({"id": "w", "name": "w", "made_on": "2020-03-01", "opening_h": 50, "opening_launches": 80})
FLIGHT = Flight.model_validate({"id": "f", "on": "2026-04-01", "airtime_min": 600, "launches": 4, "flown": ["w"]})
RULES = (
    ServiceRule.model_validate({"id": "event", "item_id": "w", "rule": "e", "events": ["tree"]}),
    ServiceRule.model_validate({"id": "full", "item_id": "w", "rule": "f", "months": 24}),
)


def record(**fields: object) -> ServiceRecord:
    base = {"id": "r", "item_id": "w", "rules": ["event"], "done_on": "2026-05-01"}
    return ServiceRecord.model_validate({**base, **fields})


def asked(one: ServiceRecord, *others: ServiceRecord) -> list[str]:
    return [question.code for question in record_questions(one, WING, others, [FLIGHT])]


@pytest.mark.parametrize(
    ("fields", "codes"),
    [
        ({}, []),
        ({"hours": 60.0, "launches": 84}, []),
        ({"hours": 59.5}, []),  # whole hours on the paper
        ({"hours": 59.0}, ["record.hours_below_log"]),
        ({"launches": 83}, ["record.launches_below_log"]),
        ({"hours": 50.0, "done_on": "2026-04-01"}, []),  # the flight of that day may come after it
        ({"hours": 130.0}, []),  # the log may not tell all
        ({"hours": 130.1}, ["record.hours_above_log"]),
        ({"done_on": "2020-02-29"}, ["record.before_made"]),
    ],
)
def test_against_the_log_and_the_make(fields: dict[str, object], codes: list[str]) -> None:
    assert asked(record(**fields)) == codes


@pytest.mark.parametrize(
    ("there", "day", "codes"),
    [
        (69.9, "2026-04-20", []),
        (70.0, "2026-04-20", []),
        (70.1, "2026-04-20", ["record.hours_backwards"]),
        (69.9, "2026-05-20", ["record.hours_backwards"]),
        (70.1, "2026-05-20", []),
        (90.0, "2026-05-01", []),
    ],
)
def test_against_other_records(there: float, day: str, codes: list[str]) -> None:
    assert asked(record(hours=70.0), record(id="o", hours=there, done_on=day)) == codes


def test_the_nearest_record_is_named() -> None:
    others = (record(id="a", hours=80, done_on="2025-01-01"), record(id="b", hours=75, done_on="2026-01-01"))
    (question,) = record_questions(record(hours=70.0), WING, others, [])
    assert (question.facts["other"], question.facts["other_day"]) == (75.0, date(2026, 1, 1))


def test_struck_ones_itself_and_other_items_say_nothing() -> None:
    struck = record(id="s", hours=90, done_on="2026-01-01", struck_at="2026-02-01T00:00Z")
    assert asked(record(hours=70), struck, record(hours=90, done_on="2026-01-01")) == []
    assert asked(record(hours=70), record(id="x", item_id="x", hours=90, done_on="2026-01-01")) == []


def event(name: str, **fields: object) -> Event:
    return Event.model_validate({"id": name, "item_id": "w", "on": "2026-05-01", "kind": "Tree", **fields})


EVENTS = (
    event("that day"),
    event("other kind", kind="water"),
    event("other day", on="2026-04-30"),
    event("other item", item_id="x"),
    event("struck", struck_at="2026-05-02T00:00Z"),
)


def test_events_of_the_same_day_are_answered_by_the_rules_that_ask_for_them() -> None:
    assert answered_that_day(record(), RULES, EVENTS) == ("that day",)
    assert answered_that_day(record(rules=["full"]), RULES, EVENTS) == ()


def test_a_failed_look_answers_nothing() -> None:
    assert answered_that_day(record(result=Result.FAILED), RULES, EVENTS) == ()
