"""The run at the start of a season; what ends one, and what is asked, are common practice without a source."""

from datetime import date
from typing import Any

import pytest
from small_kit import item

from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.season_start import SeasonLine, SeasonWhy, season_ended_on, season_start
from kitlog.kit.service import Event, Result, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook

AUTUMN = date(2026, 10, 1)
SPRING = date(2027, 3, 1)


def rule(item_id: str, name: str, **limits: Any) -> ServiceRule:
    return ServiceRule.model_validate({"id": f"{item_id} {name}", "item_id": item_id, "rule": name} | limits)


def record(item_id: str, on: date, *rules: str, **fields: Any) -> ServiceRecord:
    ids = tuple(f"{item_id} {name}" for name in rules)
    plain = {"id": f"{item_id} {on} {ids}", "item_id": item_id, "rules": ids, "done_on": on}
    return ServiceRecord.model_validate(plain | fields)


def run(*items: Item, book: ServiceBook = ServiceBook(), lying: frozenset[str] = frozenset()) -> tuple[SeasonLine, ...]:  # noqa: B008  # frozen
    return season_start(items, book, SPRING, since=AUTUMN, lying=lying)


def whys(line: SeasonLine) -> list[tuple[str, SeasonWhy]]:
    return [(ask.due.rule, ask.why) for ask in line.asks]


WING = item("wing", "wing")
TRIM = rule("wing", "wing.trim", months=24)


def test_what_was_looked_at_before_autumn_is_asked_for() -> None:
    book = ServiceBook((TRIM,), (record("wing", date(2026, 9, 30), "wing.trim"),))
    (line,) = run(WING, book=book)
    assert (line.looked_on, line.not_looked) == (date(2026, 9, 30), True)
    assert whys(line) == [("wing.trim", SeasonWhy.NOT_LOOKED)]


def test_what_was_looked_at_since_is_left_out() -> None:
    assert run(WING, book=ServiceBook((TRIM,), (record("wing", AUTUMN, "wing.trim"),))) == ()


def test_a_look_at_the_thing_alone_counts_and_moves_no_date() -> None:
    trim, look = record("wing", date(2026, 9, 30), "wing.trim"), record("wing", SPRING)
    assert run(WING, book=ServiceBook((TRIM,), (trim, look))) == ()


def test_a_struck_look_counts_for_nothing() -> None:
    look = record("wing", SPRING, struck_at="2027-03-01T10:00:00Z")
    assert len(run(WING, book=ServiceBook((TRIM,), (look,)))) == 1


def test_without_rules_only_what_one_flies_with_is_looked_over() -> None:
    jacket, lost = item("jacket", "garment"), item("old wing", "wing", state="lost")
    assert [line.item.id for line in run(jacket, WING, lost, item("used up", "helmet", quantity=0))] == ["wing"]


@pytest.mark.parametrize(
    ("kind", "one", "why"),
    [
        ("power bank", rule("x", "any.capacity", months=12), SeasonWhy.CAPACITY),
        ("power bank", rule("x", "any.storage", months=6), SeasonWhy.STORAGE),
        ("wing", rule("x", "maker.notices", months=6), SeasonWhy.NOTICES),
        ("tracker", rule("x", "tracker.subscription", due_on=date(2028, 1, 1)), SeasonWhy.DATED),
    ],
)
def test_what_each_season_asks_by_name(kind: str, one: ServiceRule, why: SeasonWhy) -> None:
    """A look at the thing itself does not answer it; a record of the rule does."""
    thing = item("x", kind, first_used_on=date(2026, 9, 1))
    looked = record("x", date(2027, 1, 5))
    (line,) = run(thing, book=ServiceBook((one,), (looked,)))
    assert (line.not_looked, whys(line)) == (False, [(one.rule, why)])
    assert run(thing, book=ServiceBook((one,), (looked, record("x", date(2027, 1, 5), one.rule)))) == ()


def test_what_is_open_is_in_the_run_whatever_was_looked_at() -> None:
    event = rule("wing", "wing.event", events=("tree",))
    book = ServiceBook((event,), (record("wing", AUTUMN),), (Event(id="e", item_id="wing", on=SPRING, kind="tree"),))
    (line,) = run(WING, book=book)
    assert whys(line) == [("wing.event", SeasonWhy.OPEN)]


def test_a_failed_look_stays_open() -> None:
    book = ServiceBook((TRIM,), (record("wing", SPRING, "wing.trim", result=Result.FAILED),))
    assert whys(run(WING, book=book)[0]) == [("wing.trim", SeasonWhy.OPEN)]


def test_what_falls_due_in_the_season_is_told_beside_the_look() -> None:
    book = ServiceBook((TRIM,), (record("wing", date(2025, 6, 1), "wing.trim"),))
    assert whys(run(WING, book=book)[0]) == [("wing.trim", SeasonWhy.IN_SEASON)]


def test_no_record_is_asked_as_not_known() -> None:
    assert whys(run(WING, book=ServiceBook((TRIM,)))[0]) == [("wing.trim", SeasonWhy.NO_RECORD)]


def test_a_rule_that_does_not_apply_is_not_asked() -> None:
    off = TRIM.model_copy(update={"applies": False})
    assert run(WING, book=ServiceBook((off,)))[0].asks == ()


def test_a_cell_that_lay_is_looked_at() -> None:
    bank = item("bank", "power bank")
    assert run(bank) == ()
    assert [line.lies for line in run(bank, lying=frozenset({"bank"}))] == [True]


def test_the_order_is_that_in_which_kit_is_laid_out() -> None:
    things = [item("b helmet", "helmet"), item("a helmet", "helmet"), item("reserve", "reserve"), WING]
    assert [line.item.id for line in run(*things)] == ["wing", "reserve", "a helmet", "b helmet"]


def flight(first: date, last: date | None = None) -> Flight:
    return Flight(id=str(first), on=first, until=last, flown=("wing",))


@pytest.mark.parametrize(
    ("flights", "ended"),
    [
        ((), AUTUMN),
        ((flight(date(2026, 8, 1)), flight(date(2026, 10, 18)), flight(date(2027, 2, 20))), date(2026, 10, 18)),
        ((flight(date(2026, 8, 1)), flight(date(2026, 10, 18))), date(2026, 10, 18)),
        ((flight(date(2026, 5, 1), date(2026, 12, 31)), flight(date(2027, 2, 20))), date(2026, 12, 31)),
        (tuple(flight(date(2026, month, 15)) for month in range(4, 13)), date(2026, 12, 15)),
        (tuple(flight(date(2027, 1, day)) for day in range(1, 29)), date(2027, 1, 28)),
    ],
)
def test_a_season_ends_with_the_longest_pause_of_the_year(flights: tuple[Flight, ...], ended: date) -> None:
    assert season_ended_on(flights, SPRING) == ended


def test_who_flies_all_year_round_has_no_pause() -> None:
    days = [date.fromordinal(n) for n in range(date(2026, 3, 1).toordinal(), SPRING.toordinal(), 20)]
    assert season_ended_on([flight(day) for day in days], SPRING) == AUTUMN


@pytest.mark.parametrize(("on", "autumn"), [(date(2026, 10, 1), date(2025, 10, 1)), (date(2026, 10, 2), AUTUMN)])
def test_the_last_autumn(on: date, autumn: date) -> None:
    assert season_ended_on((), on) == autumn
