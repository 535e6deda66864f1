"""What is on record about a rule, in words (dates of the worked example)."""

from dataclasses import replace
from datetime import date

import pytest
from scenario import DEMO

from kitlog.kit.due import Due, DueState, due_states
from kitlog.kit.service_book import ServiceBook
from kitlog.wording.findings import due_sentence

BOOK = ServiceBook(DEMO.rules, DEMO.records, DEMO.events, DEMO.flights)


def due(item: str, rule: str, on: date) -> Due:
    one = next(i for i in DEMO.items if i.name == item)
    return next(d for d in due_states(one, BOOK, on) if d.rule == rule)


def said(item: str, rule: str, on: date) -> str:
    return due_sentence(due(item, rule, on)).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("item", "rule", "on", "sentence"),
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
def test_sentences(item: str, rule: str, on: date, sentence: str) -> None:
    assert said(item, rule, on) == sentence


@pytest.mark.parametrize(("left", "sentence"), [(1, "1 launch left"), (0, "0 launches left"), (-1, "1 launch over")])
def test_one_and_many(left: int, sentence: str) -> None:
    one = replace(due("Speed bar A", "speed.line", date(2026, 5, 8)), launches_left=left)
    assert due_sentence(one) == sentence


def test_hours_over() -> None:
    one = replace(due("Wing A", "wing.full", date(2026, 5, 8)), hours_left=-2.5, due_on=None, state=DueState.OVERDUE)
    assert due_sentence(one) == "2.5\u00a0h over the limit"
