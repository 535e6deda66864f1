"""All or nothing, one at a time, and what somebody else wrote is noticed."""

import os
import threading
from datetime import datetime
from pathlib import Path

import pytest

from kitlog.fault import InputFault, SystemFault
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing
from kitlog.outing.ticks import Step, Tick
from kitlog.store.data_file import DataFile

WING = Item(id="wing", name="Wing")
RESERVE = Item(id="reserve", name="Reserve", fitted_to="harness")
HARNESS = Item(id="harness", name="Harness")
RULE = ServiceRule(id="rule", item_id="wing", rule="check", months=24)
OUTING = Outing(id="day", name="Day", flight_types=("ridge",), first_day="2027-05-04")


@pytest.mark.parametrize("error", [ValueError, KeyboardInterrupt, InputFault])
def test_any_exception_takes_everything_back(data: DataFile, error: type[BaseException]) -> None:
    failure = error("stop")
    with pytest.raises(error), data.writing() as writer:  # noqa: PT012  # the block is what is tested
        writer.put(WING)
        writer.put(RULE)
        raise failure
    with data.reading() as reader:
        assert (reader.items(), reader.rules()) == ((), ())
    with data.writing() as writer:
        writer.put(WING)


def test_only_what_differs_is_written(data: DataFile) -> None:
    with data.writing() as writer:
        writer.put(WING)
        assert len(writer.changes.rows) == 1
        writer.put(WING)
        assert len(writer.changes.rows) == 1
        writer.put(WING.model_copy(update={"serves": ("map",)}))
        assert [row.table for row in writer.changes.rows] == ["item", "item_serves"]


def test_what_changed_is_named_by_kind_and_id(data: DataFile, now: datetime) -> None:
    with data.writing() as writer:
        for model in (WING, RULE, OUTING):
            writer.put(model)
        writer.put(Tick(outing_id="day", step=Step.STOW, line="wing", at=now))
        writer.put_preference("units", "metric")
        kinds = {
            "item": "wing",
            "service_rule": "rule",
            "outing": "day",
            "tick": "day",
            "preference": "units",
        }
        assert writer.changes.touched == frozenset(kinds.items())


def test_things_may_come_before_what_they_name(data: DataFile) -> None:
    with data.writing() as writer:
        for model in (RESERVE, RULE, HARNESS, WING):
            writer.put(model)
    with data.reading() as reader:
        assert reader.item("reserve") == RESERVE


@pytest.mark.parametrize(("model", "table"), [(RESERVE, "item"), (RULE, "service_rule")])
def test_naming_what_is_not_there_is_refused(data: DataFile, model: Item | ServiceRule, table: str) -> None:
    with pytest.raises(InputFault) as caught, data.writing() as writer:
        writer.put(model)
    assert (caught.value.code, caught.value.facts) == (
        "data_file.dangling",
        {"table": table, "refers_to": "item"},
    )
    with data.writing() as writer:
        writer.put(WING)
    with data.reading() as reader:
        assert reader.items() == (WING,)


def test_the_past_may_name_what_is_gone(data: DataFile, now: datetime) -> None:
    record = ServiceRecord(id="r", item_id="wing", rules=("rule",), done_on="2027-01-02")
    event = Event(id="e", item_id="wing", on="2027-01-02", kind="water")
    flight = Flight(id="f", on="2027-01-02", flown=("wing",), carried=("x",))
    with data.writing() as writer:
        for model in (WING, RULE, record, event, flight):
            writer.put(model)
    with data.writing() as writer:
        assert writer.remove(ServiceRule, "rule", now=now)
        assert writer.remove(Item, "wing", now=now)
    with data.reading() as reader:
        assert (reader.items(), reader.rules()) == ((), ())
        assert (reader.records(), reader.events(), reader.flights()) == ((record,), (event,), (flight,))


def test_an_item_with_rules_stays(data: DataFile, now: datetime) -> None:
    with data.writing() as writer:
        writer.put(WING)
        writer.put(RULE)
    with pytest.raises(InputFault, match=r"data_file\.dangling"), data.writing() as writer:
        writer.remove(Item, "wing", now=now)
    with data.reading() as reader:
        assert reader.items() == (WING,)


def test_removing_a_harness_loosens_what_was_fitted_to_it(data: DataFile, now: datetime) -> None:
    with data.writing() as writer:
        writer.put(HARNESS)
        writer.put(RESERVE)
    with data.writing() as writer:
        assert writer.remove(Item, "harness", now=now)
        assert writer.item("reserve") == RESERVE.model_copy(update={"fitted_to": None})
        changes = writer.changes
    assert changes.touched == {("item", "harness"), ("item", "reserve")}
    with data.writing() as writer:
        writer.revert(changes, now=now)
    with data.reading() as reader:
        assert reader.items() == (HARNESS, RESERVE)


def test_ticks_are_named_by_outing_step_and_line(data: DataFile, now: datetime) -> None:
    with data.writing() as writer:
        writer.put(OUTING)
        for step in (Step.LAY_OUT, Step.STOW):
            writer.put(Tick(outing_id="day", step=step, line="wing", at=now))
        writer.put(Tick(outing_id="day", step=Step.STOW, line="wing", at=now, mark="missing"))
    with data.writing() as writer:
        assert [tick.mark for tick in writer.ticks("day")] == ["done", "missing"]
        assert writer.remove(Tick, "day", "lay out", "wing", now=now)
        assert not writer.remove(Tick, "day", Step.LAY_OUT, "wing", now=now)
        assert [tick.step for tick in writer.ticks("day")] == [Step.STOW]
        assert writer.ticks("other") == ()


def test_removing_what_is_not_there_changes_nothing(data: DataFile, now: datetime) -> None:
    with data.writing() as writer:
        assert not writer.remove(Item, "nothing", now=now)
        assert not writer.changes


def test_no_transaction_inside_another(data: DataFile) -> None:
    with data.writing(), pytest.raises(RuntimeError), data.reading():
        pytest.fail("two at once")
    with data.reading(), pytest.raises(RuntimeError), data.writing():
        pytest.fail("two at once")


def test_nothing_after_the_end(data: DataFile) -> None:
    with data.writing() as writer:
        pass
    with pytest.raises(RuntimeError):
        writer.put(WING)
    assert not writer.changes


def test_threads_take_turns(data: DataFile) -> None:
    def enter(start: int) -> None:
        for number in range(start, start + 25):
            with data.writing() as writer:
                writer.put(Item(id=f"i{number}", name="x"))

    threads = [threading.Thread(target=enter, args=(start,)) for start in (0, 100, 200)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    with data.reading() as reader:
        assert len(reader.items()) == 75


def test_another_window_that_wrote_is_noticed(data: DataFile, path: Path, now: datetime) -> None:
    before = data.data_version()
    with data.writing() as writer:
        writer.put(WING)
    assert data.data_version() == before
    other = DataFile.open(path, now=now)
    with other.writing() as writer:
        writer.put(HARNESS)
    other.close()
    assert data.data_version() != before


def test_a_file_put_in_its_place_is_noticed(data: DataFile, path: Path, now: datetime) -> None:
    copy = data.copy_beside("import", now)
    os.replace(copy, path)  # noqa: PTH105  # as another process would
    for step in (data.data_version, lambda: data.writing().__enter__(), lambda: data.reading().__enter__()):
        with pytest.raises(SystemFault, match=r"data_file\.replaced"):
            step()
    path.unlink()
    with pytest.raises(SystemFault, match=r"data_file\.missing"):
        data.data_version()


def test_a_damaged_row_is_named(data: DataFile, path: Path) -> None:
    """A flipped bit inside a text passes SQLite's own check; the word is then none of ours."""
    with data.writing() as writer:
        writer.put(WING)
    for column, value in (("kind", "wink"), ("made_on", "2020-02-30"), ("name", "\u202e")):
        data._raw.execute(f"UPDATE item SET {column} = ?", (value,))  # noqa: S608
        with pytest.raises(SystemFault) as caught, data.reading() as reader:
            reader.items()
        assert (caught.value.code, caught.value.facts["table"]) == ("data_file.damaged", "item")
        data._raw.execute("UPDATE item SET kind = 'other', made_on = NULL, name = 'Wing'")
    data._raw.execute("UPDATE item SET name = CAST(x'ff' AS TEXT)")
    with pytest.raises(SystemFault, match=r"data_file\.damaged"), data.reading() as reader:
        reader.items()


def test_closing_twice(path: Path, now: datetime) -> None:
    data = DataFile.open(path, now=now)
    data.close()
    data.close()
