"""What lies: six weeks without a flight, or the end of the season.

40 to 60 %: trade practice. Six weeks: a round figure of the planning text, no source.
"""

from datetime import date, timedelta

import pytest
from scenario import EVENING
from small_kit import item, other

from kitlog.kit.flights import Flight
from kitlog.packing.storage_due import storage_due

TODAY = EVENING.date()


def cell(name, pct=None, at=EVENING, kind="phone", **fields):
    battery = {"wh": 10, "on_hand_pct": pct, "on_hand_at": at if pct is not None else None}
    return item(name, kind, battery=battery, **fields)


def flight(days_ago, *names, carried=()):
    day = TODAY - timedelta(days=days_ago)
    return Flight(id=f"f{days_ago}", on=day, airtime_min=60, launches=1, flown=names, carried=carried)


def due(items, flights, **how):
    return {line.item.id: line for line in storage_due(items, flights, EVENING, **how)}


@pytest.mark.parametrize(("days", "listed"), [(41, False), (42, True)])
def test_six_weeks_after_the_last_flight(days, listed):
    found = due([cell("a", 90)], [flight(days, carried=("a",)), flight(days + 30, "a")])
    assert ("a" in found) is listed
    if listed:
        assert (found["a"].act, found["a"].from_pct, found["a"].to_pct) == ("use_down", 90, 50)
        assert found["a"].last_used == TODAY - timedelta(days=days)


def test_out_of_season_all_of_it():
    found = due([cell("a", 20), cell("b", 50)], [flight(1, "a", "b")], season_over=True)
    assert (found["a"].act, found["a"].why) == ("charge", "season_over")
    assert (found["b"].act, found["b"].why) == ("leave", "in_band")


def test_what_is_in_no_flight_is_not_known():
    assert (due([cell("a", 50)], [])["a"].act, due([cell("a", 50)], [])["a"].why) == ("not_known", "use_not_known")


@pytest.mark.parametrize(
    ("seen", "known"),
    [(EVENING - timedelta(days=41), True), (EVENING - timedelta(days=43), False)],
)
def test_an_old_look_at_the_charge_does_not_count(seen, known):
    found = due([cell("a", 90, seen)], [flight(60, "a")])["a"]
    assert found.on_hand.known is known
    assert found.act == ("use_down" if known else "not_known")


def test_nor_does_one_from_before_the_last_flight():
    found = due([cell("a", 90, EVENING - timedelta(days=5))], [flight(2, "a")], season_over=True)["a"]
    assert (found.act, found.why) == ("not_known", "charge_not_known")


def test_swollen_goes_to_the_collection_point_however_new():
    swollen = other(cell("a", 50), battery={"wh": 10, "swollen_on": date(2026, 5, 1)})
    assert due([swollen], [flight(1, "a")])["a"].act == "dispose"


def test_without_a_cell_there_is_nothing_to_store():
    things = [item("rope"), item("beacon", "beacon", battery={"wh": 5}), cell("gone", 50, state="retired")]
    assert due(things, [], season_over=True) == {}
    assert due([item("phone", "phone")], [], season_over=True)["phone"].act == "not_known"
