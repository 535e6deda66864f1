"""Every published service interval that was found, as a rule that can be expressed and is judged as its source says.

A: official text read, B: second-hand source read, M: from memory, P: common practice, no source. Whichever limit comes
first governs; the due date itself is still in date. Months are reckoned against `dateutil.relativedelta`.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

import pytest
from dateutil.relativedelta import relativedelta

from kitlog.kit.due import Due, DueState, due_states
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import CountsFrom, Event, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook

DONE = date(2024, 2, 29)
DAY = timedelta(days=1)
SOON = DONE + 21 * DAY
ITEM = Item(
    id="i",
    name="It",
    kind=Kind.WING,
    made_on=date(2015, 8, 31),
    bought_on=date(2016, 1, 15),
    first_used_on=date(2016, 3, 31),
    opening_h=0,
    opening_launches=0,
    opening_ground_h=0,
)
START = {
    CountsFrom.RECORD: DONE,
    CountsFrom.FIRST_USE: date(2016, 3, 31),
    CountsFrom.BOUGHT: date(2016, 1, 15),
    CountsFrom.MADE: date(2015, 8, 31),
}


def rule(**limits: Any) -> ServiceRule:
    return ServiceRule.model_validate({"id": "r", "item_id": "i", "rule": "published", "warn_days": 0, **limits})


def record(**fields: Any) -> ServiceRecord:
    return ServiceRecord.model_validate({"id": "d", "item_id": "i", "rules": ("r",), "done_on": DONE, **fields})


def judged(
    one: ServiceRule,
    on: date,
    *,
    last: ServiceRecord | None = None,
    flights: tuple[Flight, ...] = (),
    events: tuple[Event, ...] = (),
) -> Due:
    (due,) = due_states(ITEM, ServiceBook((one,), (last or record(),), events, flights), on)
    return due


def flown(hours: float, *, launches: int = 1, ground: bool = False) -> Flight:
    """Hours on one line of the log, over three weeks after the service, in the air or on the ground."""
    minutes = {"ground_handling_min" if ground else "airtime_min": hours * 60}
    fields = {"id": "f", "on": DONE + DAY, "until": SOON, "airtime_min": 0, "launches": launches, "flown": ("i",)}
    return Flight.model_validate({**fields, **minutes})


@dataclass(frozen=True)
class Published:
    """An interval as it was published: the rule it makes, and where it stands."""

    source: str
    limits: dict[str, Any]

    def __str__(self) -> str:
        return self.source


INTERVALS = [
    # reserve repack
    Published("BHPA advice as quoted by the Derbyshire Soaring Club, 2021 (B): 6 months", {"months": 6}),
    Published("MAC Para Aegis manual (B): 12 months required, 6 recommended", {"months": 12, "recommended_months": 6}),
    Published("MAC Para Aegis manual (B): full check every 24 months", {"months": 24}),
    Published(
        "MAC Para Aegis manual (B): life of 10 years, to 12 with a yearly check",
        {"months": 144, "recommended_months": 120, "counts_from": "made"},
    ),
    Published("airvolution.ch (B): 6 or 12 months by maker, the short one", {"months": 6}),
    Published("airvolution.ch (B): 6 or 12 months by maker, the long one", {"months": 12}),
    Published("aerofix.com (B): at least yearly", {"months": 12}),
    Published(
        "Gin Gingo Airlite manual p. 18 (B): harness at each repack, normally every 6 months",
        {"months": 6, "events": ("reserve repacked",)},
    ),
    Published(
        "DHV notice, 14 February 2017 (A): the maker's interval, early after water or sand; months here 12",
        {"months": 12, "events": ("water", "sand")},
    ),
    # wing inspection
    Published("DHV order, 13 November 1997 (A, dated): 24 months", {"months": 24, "grounds": "by law"}),
    Published("MAC Para Velvet manual (B): 24 months", {"months": 24}),
    Published("MAC Para Velvet manual (B): schools 12 months", {"months": 12}),
    Published(
        "Gravity X-pressure manual, 2020 (B): 24 months or 150 h, ground handling counted",
        {"months": 24, "hours": 150, "ground_handling": True},
    ),
    Published("Gravity X-pressure manual, 2020 (B): schools 12 months", {"months": 12, "hours": 150}),
    Published("Independence Airtaxi2 manual (B): 24 months or 100 h", {"months": 24, "hours": 100}),
    Published("Independence Airtaxi2 manual (B): training, commercial tandem 12 months", {"months": 12, "hours": 100}),
    Published("Independence Airtaxi2 manual (B): lines every 20 h", {"hours": 20}),
    Published(
        "Gin Evora manual p. 31 (B): 36 months or 200 h, ground handling counted",
        {"months": 36, "hours": 200, "ground_handling": True},
    ),
    Published("Gin Evora manual p. 31 (B): lines 50 h or yearly, the short end", {"months": 12, "hours": 50}),
    Published("Gin Evora manual p. 31 (B): lines 100 h or yearly, the long end", {"months": 12, "hours": 100}),
    Published("paraworld.ch (B): 2 years, 80 h or 150 flights", {"months": 24, "hours": 80, "launches": 150}),
    Published("paraworld.ch (B): 2 years, 100 h or 150 flights", {"months": 24, "hours": 100, "launches": 150}),
    # harness, carabiners, helmet
    Published("paraworld.ch (B): foam protector replaced at 5 years", {"months": 60, "counts_from": "first use"}),
    Published("paraworld.ch (B): airbag every 3 years", {"months": 36}),
    Published(
        "Woody Valley harness manuals as quoted by lu-glidz, June 2020 (B): carabiners every 2 years",
        {"months": 24, "counts_from": "first use"},
    ),
    Published("5 years or 500 h (P, M)", {"months": 60, "hours": 500}),
    Published(
        "flypureair (B): ABS shell 3 to 4 years",
        {"months": 48, "recommended_months": 36, "counts_from": "first use"},
    ),
    Published("Edelrid, climbing helmets (B): 10 years in use", {"months": 120, "counts_from": "first use"}),
    Published("Edelrid, climbing helmets (B): 12 years stored", {"months": 144, "counts_from": "made"}),
    Published("Black Diamond (B): 5 to 8 years", {"months": 96, "recommended_months": 60, "counts_from": "first use"}),
    Published("Black Diamond (B): 2 to 5 years", {"months": 60, "recommended_months": 24, "counts_from": "first use"}),
]


def months_of(published: Published, name: str) -> date:
    start = START[CountsFrom(published.limits.get("counts_from", "record"))]
    return start + relativedelta(months=published.limits[name])


@pytest.mark.parametrize("published", [p for p in INTERVALS if "months" in p.limits], ids=str)
def test_by_the_calendar_it_is_in_date_to_its_day_and_overdue_the_day_after(published: Published) -> None:
    due_on = months_of(published, "months")
    on_the_day, after = (judged(rule(**published.limits), day) for day in (due_on, due_on + DAY))
    assert on_the_day.due_on == due_on
    assert on_the_day.state is not DueState.OVERDUE
    assert after.state is DueState.OVERDUE


@pytest.mark.parametrize("published", [p for p in INTERVALS if "recommended_months" in p.limits], ids=str)
def test_a_recommended_date_comes_before_the_due_one(published: Published) -> None:
    recommended = months_of(published, "recommended_months")
    last = record(done_on=min(DONE, recommended))
    assert judged(rule(**published.limits), recommended, last=last).state is DueState.IN_DATE
    assert judged(rule(**published.limits), recommended + DAY, last=last).state is DueState.RECOMMENDED_PASSED


@pytest.mark.parametrize("published", [p for p in INTERVALS if "hours" in p.limits], ids=str)
def test_by_hours_it_is_in_date_to_the_last_and_overdue_beyond(published: Published) -> None:
    one, hours = rule(**published.limits), published.limits["hours"]
    assert judged(one, SOON, flights=(flown(hours),)).state is DueState.DUE_SOON
    beyond = judged(one, SOON, flights=(flown(hours + 1),))
    assert (beyond.state, beyond.hours_left) == (DueState.OVERDUE, -1)


@pytest.mark.parametrize("published", [p for p in INTERVALS if "hours" in p.limits], ids=str)
def test_ground_handling_counts_only_where_the_manual_counts_it(published: Published) -> None:
    hours = published.limits["hours"]
    due = judged(rule(**published.limits), SOON, flights=(flown(hours + 1, launches=0, ground=True),))
    assert (due.state is DueState.OVERDUE) == published.limits.get("ground_handling", False)


@pytest.mark.parametrize("published", [p for p in INTERVALS if "launches" in p.limits], ids=str)
def test_by_flights_it_is_in_date_to_the_last_and_overdue_beyond(published: Published) -> None:
    one, flights = rule(**published.limits), published.limits["launches"]
    assert judged(one, SOON, flights=(flown(1, launches=flights),)).state is DueState.DUE_SOON
    assert judged(one, SOON, flights=(flown(1, launches=flights + 1),)).state is DueState.OVERDUE


@pytest.mark.parametrize(
    "event",
    [
        "water",  # DHV notice, 14 February 2017 (A): repack early after water or sand
        "sand",
        "reserve repacked",  # Gin Gingo Airlite manual p. 18 (B): the harness with each repack
        "new pairing",  # DHV and OeAeC order, 13 November 1997, in force 1 January 1998 (A): check of the first fit
        "blow",  # all makers (B): replace a helmet after any severe blow
        "gate not closing",  # DHV 2005 (A): replace a carabiner at once
    ],
)
def test_what_is_due_at_once_after_an_event(event: str) -> None:
    one, day = rule(months=1_200, events=(event,)), DONE + 10 * DAY
    happened = Event(id="e", item_id="i", on=day, kind=event)
    assert judged(one, day - DAY, events=(happened,)).state is DueState.IN_DATE
    assert judged(one, day, events=(happened,)).state is DueState.OVERDUE


NEXT_BY_POROSITY = [(150, 12, 100), (110, 9, 80), (70, 6, 60), (25, 3, 40), (18, 1, 20)]
"""Least seconds, months, hours: Safe Gliders workshop (B); below 18 s it is not fit."""


@pytest.mark.parametrize(("seconds", "months", "hours"), NEXT_BY_POROSITY)
def test_the_next_interval_by_porosity_is_what_the_inspector_sets(seconds: int, months: int, hours: int) -> None:
    """It stands over the rule of the manual, here 24 months or 150 h."""
    one = rule(months=24, hours=150)
    measured = ({"what": "porosity", "value": seconds, "unit": "s", "gauge": "JDC"},)
    next_due_on = DONE + relativedelta(months=months)
    last = record(result="passed", measurements=measured, next_due_on=next_due_on, next_within_h=hours)
    assert judged(one, next_due_on, last=last).state is not DueState.OVERDUE
    assert judged(one, next_due_on + DAY, last=last).state is DueState.OVERDUE
    assert judged(one, SOON, last=last, flights=(flown(hours - 11),)).state is DueState.IN_DATE
    assert judged(one, SOON, last=last, flights=(flown(hours + 1),)).state is DueState.OVERDUE


def test_below_the_last_line_it_failed_and_is_open() -> None:
    """< 18 s is not fit: Safe Gliders workshop (B)."""
    measured = ({"what": "porosity", "value": 17, "unit": "s"},)
    failed = record(result="failed", measurements=measured)
    assert judged(rule(months=24, hours=150), DONE, last=failed).state is DueState.OVERDUE


def test_a_yearly_look_prolongs_a_life_as_its_inspector_sets_it() -> None:
    """To 12 years with a yearly check: MAC Para Aegis manual (B)."""
    one = rule(months=120, counts_from="made")
    looked = date(2025, 8, 20)
    last = record(done_on=looked, result="passed", next_due_on=looked + relativedelta(years=1))
    assert judged(one, date(2025, 9, 1)).state is DueState.OVERDUE
    assert judged(one, date(2026, 8, 20), last=last).state is not DueState.OVERDUE
    assert judged(one, date(2026, 8, 21), last=last).state is DueState.OVERDUE


@pytest.mark.parametrize(
    ("last", "months", "due_on"),
    [
        (date(2025, 8, 31), 6, date(2026, 2, 28)),
        (date(2024, 2, 29), 12, date(2025, 2, 28)),
        (date(2023, 8, 31), 6, date(2024, 2, 29)),
    ],
)
def test_month_ends_are_clipped(last: date, months: int, due_on: date) -> None:
    """Common practice (P), no source; the same as `dateutil.relativedelta`."""
    due = judged(rule(months=months), last, last=record(done_on=last))
    assert due.due_on == due_on == last + relativedelta(months=months)


def test_the_interval_of_another_sport_is_no_starter() -> None:
    """180 days belong to parachutes for jumping (M): no starter for a reserve counts days."""
    from kitlog.files.resources import load_library, resources_folder

    starters = [one for one in load_library(resources_folder()).starter_rules if Kind.RESERVE in one.kinds]
    assert starters
    assert all(one.months != 180 and "180" not in one.source for one in starters)
