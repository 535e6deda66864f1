"""What is on record about one item, put together: pairs, use, rules, history."""

from datetime import UTC, date, datetime

import pytest
from small_kit import item

from kitlog.kit.flights import Flight
from kitlog.kit.item_book import item_book
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.kit.service_book import ServiceBook

TODAY = date(2026, 5, 8)
WING = item("wing", "wing", 5_000, opening_h=20.0, opening_launches=30)
RULE = ServiceRule(id="full", item_id="wing", rule="wing.full", months=24)
STRUCK_AT = datetime(2026, 4, 1, 12, tzinfo=UTC)


def flight(day: date, minutes: float = 60.0, **more: object) -> Flight:
    return Flight.model_validate(
        {"id": f"f{day}", "on": day, "airtime_min": minutes, "flown": ("wing",), **more},
    )


def record(day: date, **more: object) -> ServiceRecord:
    fields = {"id": f"r{day}", "item_id": "wing", "rules": ("full",), "done_on": day, **more}
    return ServiceRecord.model_validate(fields)


def event(day: date, **more: object) -> Event:
    return Event.model_validate({"id": f"e{day}", "item_id": "wing", "on": day, "kind": "tree", **more})


def test_use_is_opening_balance_and_log_and_each_year_has_its_part() -> None:
    flights = (
        flight(date(2025, 6, 1), launches=2, recordings=("0" * 64,)),
        flight(date(2025, 12, 30), 120, until=date(2026, 1, 2)),
        flight(date(2026, 5, 8), 30, ground_handling_min=30),
        flight(date(2026, 5, 9), 600),
    )
    book = item_book(WING, [WING], ServiceBook(flights=flights), TODAY, "Ines")
    assert (book.total.airtime_h, book.total.launches, book.total.ground_h) == (23.5, 34, 0.5)
    assert (book.total.hours_known, book.total.launches_known) == (True, True)
    assert [(year.year, year.flights, year.used.airtime_h) for year in book.years] == [(2026, 2, 1.5), (2025, 2, 2.0)]
    assert sum(year.used.airtime_h for year in book.years) == book.logged.airtime_h
    assert (book.flights, book.recorded, book.log_begins_on, book.owner) == (3, 1, date(2025, 6, 1), "Ines")


def test_a_typed_total_is_shared_out_by_days_over_its_years() -> None:
    """225 days of 2024 and 128 of 2025, counted with both ends."""
    total = flight(date(2024, 5, 21), 353 * 60, until=date(2025, 5, 8), launches=353)
    book = item_book(WING, [WING], ServiceBook(flights=(total, flight(date(2025, 6, 1), 90))), TODAY)
    said = [(year.year, year.flights, year.shared, round(year.used.airtime_h, 9)) for year in book.years]
    assert said == [(2025, 2, 1, 129.5), (2024, 1, 1, 225.0)]
    assert [year.used.launches for year in book.years] == [129, 225]


def test_a_year_between_the_ends_of_a_total_has_its_part() -> None:
    totals = (
        flight(date(2023, 12, 31), 600, until=date(2025, 1, 1), launches=1),
        flight(date(2024, 7, 1), 60, until=date(2025, 3, 3), launches=1),
    )
    book = item_book(WING, [WING], ServiceBook(flights=totals), TODAY)
    assert [(year.year, year.flights, year.shared) for year in book.years] == [(2025, 2, 2), (2024, 2, 2), (2023, 1, 1)]
    assert sum(year.used.airtime_h for year in book.years) == pytest.approx(11.0)
    assert sum(year.used.launches for year in book.years) == book.logged.launches == 2


def test_what_is_not_known_before_the_log_stays_not_known() -> None:
    bare = item("wing", "wing")
    total = item_book(bare, [bare], ServiceBook(flights=(flight(TODAY),)), TODAY).total
    assert (total.airtime_h, total.hours_known, total.launches_known) == (1.0, False, False)


def test_history_is_by_day_and_struck_entries_stay_in_it() -> None:
    fell = event(date(2026, 3, 1))
    records = (
        record(date(2026, 3, 5), answers=(fell.id,)),
        record(date(2025, 1, 1), struck_at=STRUCK_AT),
        record(date(2026, 2, 1), item_id="other"),
    )
    book = item_book(WING, [WING], ServiceBook((RULE,), records, (fell,)), TODAY)
    assert [(entry.on, entry.struck) for entry in book.history] == [
        (date(2025, 1, 1), True),
        (date(2026, 3, 1), False),
        (date(2026, 3, 5), False),
    ]
    assert book.history[-1].rules == ("wing.full",)
    assert book.history[-1].answered == (fell,)
    assert [one.done_on for one in book.records] == [date(2026, 3, 5)]
    assert [judged.due.due_on for judged in book.rules] == [date(2028, 3, 5)]


def test_hours_at_an_entry_are_as_written_or_by_the_log_or_not_known() -> None:
    records = (record(date(2025, 5, 1)), record(date(2025, 7, 1)), record(date(2025, 8, 1), hours=50.0))
    log = (flight(date(2025, 6, 1), 90), flight(date(2025, 7, 15)))
    history = item_book(WING, [WING], ServiceBook((RULE,), records, flights=log), TODAY).history
    assert [(entry.hours, entry.by_log) for entry in history] == [(None, True), (21.5, True), (50.0, False)]


def test_pairs_are_named() -> None:
    harness, reserve = item("harness", "harness"), item("reserve", "reserve", fitted_to="harness")
    kit = (harness, reserve)
    assert item_book(harness, kit, ServiceBook(), TODAY).guests == ("reserve",)
    assert item_book(reserve, kit, ServiceBook(), TODAY).host == "harness"
