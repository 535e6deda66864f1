"""What is asked about a flight before it stands in the log, in whatever order the two are entered."""

from datetime import UTC, date, datetime, timedelta

from kitlog.kit.flight_questions import ASKED, questions
from kitlog.kit.flights import Flight

DAY = date(2026, 5, 2)
NOON = datetime(2026, 5, 2, 12, tzinfo=UTC)
WINGS = {"a", "b"}


def entry(name: str, minutes: float = 60, **more: object) -> Flight:
    return Flight.model_validate({"id": name, "on": DAY, "airtime_min": minutes, "flown": ("a", "harness"), **more})


def total(name: str, first: date, last: date, **more: object) -> Flight:
    return entry(name, 3_000, on=first, until=last, launches=30, **more)


def asked(one: Flight, *log: Flight) -> list[str]:
    codes = [reason.code for reason in questions(one, log, WINGS)]
    assert set(codes) <= ASKED
    return codes


def both_orders(one: Flight, other: Flight) -> tuple[list[str], list[str]]:
    return asked(one, other), asked(other, one)


TIMED = {"takeoff_at": NOON, "landing_at": NOON + timedelta(minutes=60)}
RECORDED = {**TIMED, "recordings": ("0" * 64,)}


def test_without_times_beside_one_with_times() -> None:
    assert both_orders(entry("1"), entry("2", **RECORDED)) == (["flight.same_day"], ["flight.same_day"])
    assert both_orders(entry("1"), entry("2", flown=("b", "harness"), **RECORDED)) == ([], [])
    assert both_orders(entry("1", flown=()), entry("2", **TIMED)) == (["flight.same_day"], ["flight.same_day"])


def test_a_take_off_alone_and_its_airtime_are_times() -> None:
    near, later = entry("1", takeoff_at=NOON + timedelta(minutes=10)), entry("1", takeoff_at=NOON + timedelta(hours=3))
    assert both_orders(near, entry("2", **RECORDED)) == (["flight.overlaps"], ["flight.overlaps"])
    assert both_orders(later, entry("2", **RECORDED)) == ([], [])


def test_two_hops_by_hand_ask_nothing_unless_they_are_as_long() -> None:
    assert both_orders(entry("1", 8), entry("2", 11)) == ([], [])
    assert both_orders(entry("1", 8), entry("2", 8)) == (["flight.same_day"], ["flight.same_day"])


def test_totals_that_share_a_month() -> None:
    one = total("1", date(2025, 1, 1), date(2025, 6, 30))
    found = both_orders(one, total("2", date(2025, 6, 1), date(2025, 12, 31)))
    assert found == (["flight.total_over_flights"], ["flight.total_over_flights"])
    assert both_orders(one, total("2", date(2025, 7, 1), date(2025, 12, 31))) == ([], [])
    assert both_orders(one, total("2", date(2025, 1, 1), date(2025, 6, 30), flown=("b", "harness"))) == ([], [])


def test_a_flight_in_a_total() -> None:
    season = total("1", date(2026, 4, 1), DAY)
    assert both_orders(entry("2", **TIMED), season) == (["flight.in_a_total"], ["flight.total_over_flights"])
    assert both_orders(entry("2", on=date(2026, 5, 3)), season) == ([], [])
    (told,) = questions(season, [entry("2", 61), entry("3", 30)], WINGS)
    assert told.facts == {"minutes": 91, "first": DAY, "last": DAY}


def test_hours_on_the_ground_are_no_flight_in_a_total() -> None:
    on_ground = entry("2", 0, launches=0, ground_handling_min=60)
    assert both_orders(on_ground, total("1", date(2026, 4, 1), DAY)) == ([], [])


def test_two_wings_in_one_flight_but_not_in_a_total() -> None:
    assert asked(entry("1", flown=("a", "b"))) == ["flight.two_wings"]
    assert asked(total("1", DAY, DAY, flown=("a", "b"))) == []


LONG = {"takeoff_at": NOON, "landing_at": NOON + timedelta(minutes=220)}


def test_airtime_and_times_that_differ_by_more_than_the_ground_explains() -> None:
    assert asked(entry("1", 135, **LONG)) == ["flight.airtime_under_span"]
    assert asked(entry("1", 210, **LONG)) == []
    assert asked(entry("1", 135, ground_handling_min=80, **LONG)) == []
    assert asked(entry("1", 135, launches=2, **LONG)) == []


def test_a_launch_without_airtime() -> None:
    assert asked(entry("1", 0)) == ["flight.no_airtime"]
    assert asked(entry("1", 0, **LONG)) == ["flight.no_airtime"]
    assert asked(entry("1", 0, launches=0, ground_handling_min=60)) == []


def test_a_harness_without_a_wing() -> None:
    assert asked(entry("1", flown=("harness",))) == ["flight.no_wing"]
    assert asked(entry("1", flown=())) == []
    assert asked(entry("1", flown=("harness",), until=date(2026, 5, 4))) == []
