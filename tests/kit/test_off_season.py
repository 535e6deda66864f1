"""Moving a check out of the season; days and months counted by hand."""

from datetime import date, timedelta

import pytest

from kitlog.kit.due import Due, DueState
from kitlog.kit.flights import Flight
from kitlog.kit.foresight import RunOut
from kitlog.kit.kinds import Kind
from kitlog.kit.off_season import Proposal, proposal, season_of
from kitlog.kit.service import CountsFrom, Event, Grounds, ServiceRule

TODAY = date(2026, 11, 25)


def flight(on: date, until: date | None = None) -> Flight:
    return Flight(id=f"f{on}", on=on, until=until, airtime_min=60)


FLOWN = tuple(flight(date(year, month, 10)) for year in (2024, 2025, 2026) for month in range(3, 11))
"""Three seasons from March to October."""

SEASON = season_of(FLOWN, TODAY)


def rule(**facts: object) -> ServiceRule:
    return ServiceRule.model_validate(
        {"id": "r", "item_id": "i", "rule": "wing.full", "months": 24, "lead_days": 21} | facts
    )


def due(day: date | None = date(2027, 6, 20), state: DueState = DueState.IN_DATE, **facts: object) -> Due:
    return Due("i", "r", "wing.full", Grounds.YES, state, TODAY, due_on=day, **facts)


def asked(the_rule: ServiceRule | None = None, the_due: Due | None = None, kind: Kind = Kind.WING) -> Proposal | None:
    return proposal(the_rule or rule(), the_due or due(), kind, SEASON)


def test_due_in_june_costs_four_months_in_february() -> None:
    assert asked() == Proposal(date(2027, 6, 20), date(2027, 2, 1), 4, 3)


def test_the_season_is_what_the_log_of_three_years_tells() -> None:
    assert SEASON.flying_days == dict.fromkeys(range(3, 11), 3) | {1: 0, 2: 0, 11: 0, 12: 0}
    old = season_of((flight(date(2022, 1, 5)), *FLOWN), TODAY)
    assert old.flying_days[1] == 0, "January was flown nearly five years ago"


def test_two_flights_of_a_day_are_one_flying_day() -> None:
    day = date(2026, 7, 1)
    twice = (flight(day), flight(day).model_copy(update={"id": "g"}))
    assert season_of(twice, TODAY).flying_days[7] == 1


def test_what_a_log_does_not_cover_is_not_known_and_never_free() -> None:
    young = season_of((flight(date(2026, 5, 4)),), TODAY)
    assert young.flying_days == {5: 1, 6: 0, 7: 0, 8: 0, 9: 0, 10: 0}
    assert proposal(rule(), due(date(2027, 5, 20)), Kind.WING, young) is None
    assert season_of((), TODAY).flying_days == {}


def test_a_total_over_more_than_a_month_tells_of_none_of_its_months() -> None:
    total = flight(date(2025, 11, 1), date(2026, 4, 30))
    season = season_of((flight(date(2026, 5, 4)), total), TODAY)
    assert 2 not in season.flying_days
    month = season_of((flight(date(2026, 1, 1), date(2026, 1, 31)),), TODAY)
    assert month.flying_days[1] == 2, "its first and its last day"


def test_a_planned_outing_makes_a_month_part_of_the_season() -> None:
    planned = season_of(FLOWN, TODAY, [date(2027, 2, 14)])
    assert proposal(rule(), due(), Kind.WING, planned) == Proposal(date(2027, 6, 20), date(2027, 1, 1), 5, 3)


@pytest.mark.parametrize(
    ("the_rule", "the_due"),
    [
        (None, due(date(2027, 1, 20))),
        (None, due(state=DueState.OVERDUE)),
        (None, due(event=Event(id="e", item_id="i", on=TODAY, kind="water"))),
        (None, due(None)),
        (rule(months=6), None),
        (rule(counts_from=CountsFrom.MADE), None),
        (rule(months=None, due_on=date(2027, 6, 20)), None),
        (None, due(date(2027, 9, 20))),
        (None, due(date(2029, 6, 20))),
    ],
    ids=[
        "due out of the season",
        "overdue",
        "called for by an event",
        "no day known",
        "four of six months are too many",
        "counted from the day of make: an early check gains nothing",
        "a typed date",
        "February is seven months before",
        "nobody plans that far",
    ],
)
def test_nothing_to_gain(the_rule: ServiceRule | None, the_due: Due | None) -> None:
    assert asked(the_rule, the_due) is None


def test_due_early_in_the_season_the_workshop_time_counts() -> None:
    """Due on 10 November with 21 days at the workshop: it would be away in October."""
    assert asked(None, due(date(2027, 11, 10))) is None, "the last free month is eight months before"
    (march,) = [asked(None, due(date(2027, 3, 5)))]
    assert march == Proposal(date(2027, 3, 5), date(2027, 2, 1), 1, 3)


def test_the_month_must_hold_the_time_at_the_workshop() -> None:
    """From 1 February on 40 days reach into March; from 1 January on they end in February."""
    found = asked(rule(lead_days=40))
    assert found is not None
    assert (found.in_month, found.costs_months) == (date(2027, 1, 1), 5)


def test_a_check_at_home_of_a_thing_that_is_not_missed_is_left_alone() -> None:
    assert asked(rule(lead_days=0), None, Kind.FIRST_AID) is None
    assert asked(rule(lead_days=0)) is not None
    assert asked(rule(), None, Kind.FIRST_AID) is not None


def test_hours_that_run_out_in_the_season_count_as_well() -> None:
    runs_out = RunOut(None, date(2027, 5, 2), None)
    found = asked(rule(months=None, hours=100), due(date(2028, 3, 1), runs_out=runs_out))
    assert found == Proposal(date(2027, 5, 2), date(2027, 2, 1), 3, 3)


def test_this_month_is_proposed_while_there_is_time_left() -> None:
    """On 25 November with 3 days needed; on 25 February 21 days reach into March."""
    soon = Due("i", "r", "x", Grounds.YES, DueState.IN_DATE, date(2027, 2, 5), due_on=date(2027, 4, 1))
    late = Due("i", "r", "x", Grounds.YES, DueState.IN_DATE, date(2027, 2, 25), due_on=date(2027, 4, 1))
    season = season_of(FLOWN, date(2027, 2, 5))
    assert proposal(rule(), soon, Kind.WING, season) == Proposal(soon.due_on or TODAY, date(2027, 2, 1), 2, 3)
    assert proposal(rule(), late, Kind.WING, season) is None


def test_thousands_of_flights_are_looked_at_once() -> None:
    many = [flight(TODAY - timedelta(days=n)) for n in range(5_000)]
    assert all(days > 0 for days in season_of(many, TODAY).flying_days.values())
