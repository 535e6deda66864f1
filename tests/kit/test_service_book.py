"""What is found by item and rule."""

from datetime import date

from kitlog.kit.flights import Flight
from kitlog.kit.service import Event, ServiceRecord
from kitlog.kit.service_book import ServiceBook

DAY = date(2026, 3, 1)


def test_only_flights_with_the_item_count() -> None:
    own = Flight(id="a", on=DAY, flown=("wing", "harness"))
    other = Flight(id="b", on=DAY, flown=("other wing",), carried=("wing",))
    assert ServiceBook(flights=(own, other)).flown_with("wing") == (own,)


def test_what_is_struck_is_left_out_and_the_rest_stands_by_day() -> None:
    late, early = (
        ServiceRecord(id=name, item_id="wing", rules=("rule", "other"), done_on=on)
        for name, on in (("late", date(2026, 2, 2)), ("early", date(2026, 1, 1)))
    )
    struck = late.model_copy(update={"id": "struck", "struck_at": "2026-02-03T08:00:00Z"})
    book = ServiceBook(records=(late, struck, early))
    assert [record.id for record in book.records_of("rule")] == ["early", "late"]
    happened = Event(id="e", item_id="wing", on=DAY, kind="tree")
    gone = Event(id="g", item_id="wing", on=DAY, kind="tree", struck_at="2026-03-02T08:00:00Z")
    assert ServiceBook(events=(gone, happened)).events_of("wing") == (happened,)


def test_the_log_begins_with_its_first_day() -> None:
    assert ServiceBook().log_begins_on is None
    flights = tuple(Flight(id=str(on), on=on) for on in (DAY, date(2025, 1, 1)))
    assert ServiceBook(flights=flights).log_begins_on == date(2025, 1, 1)
