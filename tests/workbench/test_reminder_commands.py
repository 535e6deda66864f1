"""Calendar files of the invented season, one after the other, as a calendar would take them in.

What a calendar does with a second file: the entry of a UID is replaced by one with a higher SEQUENCE (RFC 5546 2.1.4), and
STATUS:CANCELLED takes it away (RFC 5545 3.8.1.11).
"""

from datetime import date, timedelta
from pathlib import Path

import pytest
from icalendar import Calendar, Event
from scenario import EVENING

from kitlog.fault import InputFault, SystemFault
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.kit.service import Result, ServiceRecord, ServiceRule
from kitlog.workbench.reads import DueLine
from kitlog.workbench.workbench import Workbench

TODAY = EVENING.date()


def line(bench: Workbench, item: str, rule: str) -> DueLine:
    return next(one for one in bench.due(TODAY) if (one.item.name, one.rule.rule) == (item, rule))


def uid_start(bench: Workbench, item: str, rule: str) -> str:
    return f"{line(bench, item, rule).rule.id}."


def file_of(bench: Workbench, name: str = "kit.ics") -> Path:
    return bench.path.with_name(name)


def written(bench: Workbench) -> list[Event]:
    bench.write_calendar(file_of(bench))
    return list(Calendar.from_ical(file_of(bench).read_bytes()).walk("VEVENT"))


def of(events: list[Event], start: str) -> list[Event]:
    return [event for event in events if str(event["uid"]).startswith(start)]


def day(event: Event) -> date:
    found: date = event.decoded("dtstart")
    return found


def record(bench: Workbench, item: str, rule: str, on: date = TODAY, result: Result = Result.PASSED) -> str:
    found = line(bench, item, rule)
    new = ServiceRecord(
        id=f"done {item} {rule} {on}", item_id=found.item.id, rules=(found.rule.id,), done_on=on, result=result
    )
    return bench.add_record(new)


def test_one_entry_a_rule_with_a_day(bench: Workbench) -> None:
    events = written(bench)
    dated = [one for one in bench.due(TODAY) if one.due.due_on is not None]
    assert len(events) == len(dated) == 17
    assert {str(event["uid"]).partition(".")[0] for event in events} == {one.rule.id for one in dated}
    full = of(events, uid_start(bench, "Wing A", "wing.full"))[0]
    assert (day(full), str(full["summary"])) == (date(2026, 5, 20), "Due: Wing A, full inspection")
    assert "Book by 29\u00a0Apr\u00a02026: it takes 21 days." in str(full["description"])
    assert "22.1\u00a0h left, about 30\u00a0Oct\u00a02026" in str(full["description"])


def test_a_second_file_says_the_same_with_the_same_numbers(bench: Workbench) -> None:
    first, second = written(bench), written(bench)
    assert [(e["uid"], e["sequence"], e["dtstart"].dt) for e in first] == [
        (e["uid"], e["sequence"], e["dtstart"].dt) for e in second
    ]
    assert all("last-modified" in event for event in first)
    assert not any("last-modified" in event for event in second)


def test_another_rule_moves_the_entry(bench: Workbench) -> None:
    written(bench)
    rule = line(bench, "Wing A", "wing.full").rule
    bench.save_rule(rule.model_copy(update={"months": 36}))
    (moved,) = of(written(bench), f"{rule.id}.")
    assert (day(moved), moved["sequence"], str(moved["status"])) == (date(2026, 10, 30), 1, "CONFIRMED"), (
        "the hours run out first"
    )


def test_a_done_service_is_cancelled_and_the_next_is_an_entry_of_its_own(bench: Workbench) -> None:
    start = uid_start(bench, "Wing A", "wing.full")
    (before,) = of(written(bench), start)
    record(bench, "Wing A", "wing.full")
    gone, new = sorted(of(written(bench), start), key=day)
    assert (gone["uid"], gone["sequence"], str(gone["status"])) == (before["uid"], 1, "CANCELLED")
    assert (str(new["status"]), new["sequence"], day(new)) == ("CONFIRMED", 0, date(2028, 5, 8))
    assert new["uid"] != before["uid"]


def test_undoing_the_record_brings_the_entry_back(bench: Workbench) -> None:
    start = uid_start(bench, "Wing A", "wing.full")
    written(bench)
    record(bench, "Wing A", "wing.full")
    written(bench)
    bench.undo()
    back, gone = sorted(of(written(bench), start), key=day)
    assert (back["sequence"], str(back["status"])) == (2, "CONFIRMED")
    assert str(gone["status"]) == "CANCELLED"


def test_a_failed_check_keeps_its_entry_on_the_day_it_failed(bench: Workbench) -> None:
    start = uid_start(bench, "Wing A", "wing.full")
    (before,) = of(written(bench), start)
    record(bench, "Wing A", "wing.full", result=Result.FAILED)
    (after,) = of(written(bench), start)
    assert (after["uid"], day(after), after["sequence"]) == (before["uid"], TODAY, 1)
    assert "Failed on" in str(after["description"])


def test_what_is_retired_or_deleted_is_cancelled(bench: Workbench) -> None:
    vest, card = (
        line(bench, "Life vest", "buoyancy.service"),
        line(bench, "Satellite messenger", "tracker.subscription"),
    )
    written(bench)
    bench.edit_items([vest.item.model_copy(update={"state": ItemState.RETIRED})])
    bench.delete_rule(card.rule.id)
    events = written(bench)
    for rule in (vest.rule, card.rule):
        (gone,) = of(events, f"{rule.id}.")
        assert str(gone["status"]) == "CANCELLED"
        assert str(gone["summary"]) == ("Due: Life vest, service" if rule is vest.rule else "No longer due")


def test_lent_and_borrowed_things_are_told_by_their_day(bench: Workbench, clock) -> None:
    wing = next(item for item in bench.items() if item.name == "Wing B")
    lent = {"state": ItemState.LENT, "lent_to": "Ines", "back_by": TODAY + timedelta(days=6)}
    bench.edit_items([Item.model_validate({**wing.model_dump(), **lent})])
    (event,) = of(written(bench), f"back-{wing.id}.")
    assert (str(event["summary"]), day(event)) == ("Comes back: Wing B", TODAY + timedelta(days=6))
    assert str(event["description"]) == "Lent to Ines"
    assert [item.name for item in bench.to_remember().back] == ["Wing B"]
    bench.edit_items([wing])
    (gone,) = of(written(bench), f"back-{wing.id}.")
    assert str(gone["status"]) == "CANCELLED"


def test_hours_that_ran_out_keep_their_day(bench: Workbench, clock) -> None:
    found = line(bench, "Wing A", "wing.full")
    rule = ServiceRule.model_validate({**found.rule.model_dump(), "months": None, "hours": 77.0})
    bench.save_rule(rule)
    (first,) = of(written(bench), f"{rule.id}.")
    assert day(first) == TODAY
    clock.at = EVENING + timedelta(days=3)
    (later,) = of(written(bench), f"{rule.id}.")
    assert (day(later), later["sequence"]) == (TODAY, 0)


def test_two_programs_on_one_file_count_on(bench: Workbench, another: Workbench) -> None:
    rule = line(bench, "Wing A", "wing.full").rule
    bench.write_calendar(file_of(bench))
    another.save_rule(rule.model_copy(update={"months": 36}))
    another.write_calendar(file_of(bench))
    bench.look_again()
    bench.save_rule(rule.model_copy(update={"months": 30}))
    (event,) = of(written(bench), f"{rule.id}.")
    assert event["sequence"] == 2


def test_it_is_no_step_that_could_be_undone(bench: Workbench) -> None:
    bench.write_calendar(file_of(bench))
    assert bench.undoable is None


class TestRefused:
    @pytest.mark.parametrize("content", [b"milk", b"BEGIN:VCALENDAR\r\nPRODID:-//Someone//Else//EN\r\n"])
    def test_what_it_did_not_write(self, bench: Workbench, content: bytes) -> None:
        file_of(bench).write_bytes(content)
        with pytest.raises(InputFault) as told:
            bench.write_calendar(file_of(bench))
        assert told.value.code == "calendar.not_ours"
        assert file_of(bench).read_bytes() == content

    def test_a_folder_that_is_missing_leaves_nothing_remembered(self, bench: Workbench) -> None:
        with pytest.raises(SystemFault):
            bench.write_calendar(bench.path.parent / "no" / "kit.ics")
        assert all(event["sequence"] == 0 and "last-modified" in event for event in written(bench))

    def test_a_folder_of_that_name(self, bench: Workbench) -> None:
        file_of(bench).mkdir()
        with pytest.raises(SystemFault) as told:
            bench.write_calendar(file_of(bench))
        assert told.value.code == "file.folder"


def test_what_there_is_to_remember(bench: Workbench) -> None:
    found = bench.to_remember()
    assert [row.item.name for row in found.overdue] == ["Harness A", "Helmet A", "Power bank"]
    assert {row.item.name for row in found.due_soon} >= {"First aid kit", "Wing A", "Carabiners A", "Speed bar A"}
    assert found.back == ()


def test_the_short_list_judges_as_the_long_one(bench: Workbench) -> None:
    for on in (TODAY, date(2026, 9, 5), date(2027, 12, 31)):
        short, long = bench.due_list(on), bench.due(on)
        assert [row.due for row in short] == [one.due for one in long]
        assert [row.item.name for row in short] == [one.item.name for one in long]


def test_an_empty_file_has_nothing_to_say(empty: Workbench) -> None:
    assert written(empty) == []
    assert empty.to_remember().overdue == ()
    assert empty.next_outing() is None
