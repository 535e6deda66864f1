"""Undo puts rows exactly as they were, redo exactly as they are; what an inspector reads is struck, never erased."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from any_model import instances
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kitlog.fault import InputFault, SystemFault
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing, Override
from kitlog.outing.pilot import Pilot
from kitlog.outing.ticks import Step, Tick
from kitlog.store.aggregates import OF_HISTORY
from kitlog.store.data_file import DataFile
from kitlog.store.journal import Changes
from kitlog.store.tables.base import METADATA
from kitlog.store.writer import Writer

NOW = datetime(2027, 5, 3, 20, tzinfo=UTC)
ITEM = Item(id="item", name="Item")
RECORD = ServiceRecord(id="r", item_id="item", rules=("check", "pack"), done_on="2027-01-02")
EVENT = Event(id="e", item_id="item", on="2027-01-02", kind="water")
OVERRIDE = Override(finding="weight.over", reason="short flight, weighed twice", at=NOW)
OUTING = Outing(id="day", name="Day", flight_types=("ridge",), first_day="2027-05-04")

Dump = dict[str, list[tuple[Any, ...]]]


def dump(data: DataFile) -> Dump:
    """Every row as SQLite has it."""
    return {name: data._raw.execute(f'SELECT * FROM "{name}"').fetchall() for name in METADATA.tables}  # noqa: S608


def done(data: DataFile, work: Callable[[Writer], object]) -> Changes:
    with data.writing() as writer:
        work(writer)
        return writer.changes


def put(*models: Any) -> Callable[[Writer], None]:
    def work(writer: Writer) -> None:
        for model in models:
            writer.put(model)

    return work


def undone(data: DataFile, changes: Changes, now: datetime = NOW) -> Changes:
    return done(data, lambda writer: writer.revert(changes, now=now))


def redone(data: DataFile, changes: Changes) -> Changes:
    return done(data, lambda writer: writer.replay(changes))


IDS = st.sampled_from(["a", "b"])
ERASABLE = st.one_of(
    instances(Pilot, id=IDS),
    instances(Item, id=IDS, fitted_to=st.sampled_from([None, "a", "b"])),
    instances(Flight, id=IDS),
    instances(ServiceRule, id=IDS, item_id=IDS),
    instances(Outing, id=IDS, overrides=st.just(())),
    instances(Tick, outing_id=IDS, step=st.sampled_from(Step), line=IDS),
)
HISTORY = st.one_of(instances(Event, id=IDS), instances(ServiceRecord, id=IDS))
REMOVALS = st.tuples(st.sampled_from([Pilot, Item, Flight, ServiceRule, Outing]), IDS)
STEPS = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))


def step_of(action: Any) -> Callable[[Writer], object]:
    if isinstance(action, tuple):
        return lambda writer: writer.remove(action[0], action[1], now=NOW)
    return put(action)


def try_step(data: DataFile, action: Any) -> Changes | None:
    """A step, unless it would leave something naming what is not there."""
    try:
        return done(data, step_of(action))
    except InputFault:
        return None


@pytest.fixture
def fresh(tmp_path: Path) -> Callable[[], DataFile]:
    """A new file for each example."""
    opened: list[DataFile] = []

    def open_one() -> DataFile:
        for old in opened:
            old.close()
        opened.append(DataFile.open(tmp_path / f"{len(opened)}.db", now=NOW))
        return opened[-1]

    return open_one


@STEPS
@given(actions=st.lists(ERASABLE | REMOVALS, max_size=8))
def test_undo_leads_back_and_redo_forth_through_the_same_states(
    fresh: Callable[[], DataFile], actions: list[Any]
) -> None:
    data = fresh()
    done(data, put(Item(id="a", name="a"), Item(id="b", name="b"), OUTING))
    states, steps = [dump(data)], []
    for action in actions:
        changes = try_step(data, action)
        if changes is not None:
            steps.append(changes)
            states.append(dump(data))
    for _ in range(2):
        for number in reversed(range(len(steps))):
            undone(data, steps[number])
            assert dump(data) == states[number]
        for number, changes in enumerate(steps):
            redone(data, changes)
            assert dump(data) == states[number + 1]
    data.close()


@STEPS
@given(data=st.data(), actions=st.lists(ERASABLE | HISTORY | REMOVALS, min_size=3, max_size=10))
def test_history_only_grows_and_redo_restores_it(
    fresh: Callable[[], DataFile], data: st.DataObject, actions: list[Any]
) -> None:
    file = fresh()
    done(file, put(Item(id="a", name="a"), Item(id="b", name="b")))
    steps = [changes for action in actions if (changes := try_step(file, action)) is not None]
    final = dump(file)
    back = data.draw(st.integers(0, len(steps)))
    for changes in reversed(steps[len(steps) - back :]):
        before = dump(file)
        undone(file, changes)
        assert all(len(dump(file)[name]) >= len(before[name]) for name in ("event", "service_record", "override"))
    for changes in steps[len(steps) - back :]:
        redone(file, changes)
    assert dump(file) == final
    file.close()


@pytest.mark.parametrize(
    "model", [EVENT, RECORD, Event(id="e", item_id="x", on="2027-01-02", kind="blow", struck_at=NOW)]
)
def test_an_entry_taken_back_is_struck(data: DataFile, model: Event | ServiceRecord) -> None:
    entered = done(data, put(model))
    taken_back = undone(data, entered, NOW + timedelta(hours=1))
    with data.reading() as reader:
        (found,) = reader.events() + reader.records()
    assert found == model.model_copy(update={"struck_at": model.struck_at or NOW + timedelta(hours=1)})
    assert taken_back.touched == (entered.touched if model.struck_at is None else frozenset())
    redone(data, entered)
    with data.reading() as reader:
        assert reader.events() + reader.records() == (model,)


def test_a_correction_of_a_record_is_taken_back_exactly(data: DataFile) -> None:
    done(data, put(RECORD))
    before = dump(data)
    corrected = done(data, put(RECORD.model_copy(update={"rules": ("check", "pack", "lines"), "who": "a workshop"})))
    undone(data, corrected)
    assert dump(data) == before


def test_a_strike_by_the_pilot_is_taken_back_exactly(data: DataFile) -> None:
    done(data, put(EVENT))
    before = dump(data)
    undone(data, done(data, put(EVENT.model_copy(update={"struck_at": NOW}))))
    assert dump(data) == before


def test_entered_and_corrected_in_one_step(data: DataFile) -> None:
    step = done(data, put(RECORD, RECORD.model_copy(update={"rules": ("check",)})))
    after = dump(data)
    undone(data, step)
    with data.reading() as reader:
        assert [record.struck_at for record in reader.records()] == [NOW]
    redone(data, step)
    assert dump(data) == after


def test_an_override_taken_back_is_struck_and_can_be_followed_by_another(data: DataFile) -> None:
    done(data, put(OUTING))
    entered = done(data, put(OUTING.model_copy(update={"overrides": (OVERRIDE,)})))
    undone(data, entered)
    struck = OVERRIDE.model_copy(update={"struck_at": NOW})
    with data.reading() as reader:
        outing = reader.outing("day")
    assert outing is not None
    assert outing.overrides == (struck,)
    other = OVERRIDE.model_copy(update={"reason": "another"})
    done(data, put(outing.model_copy(update={"overrides": (*outing.overrides, other)})))
    with data.reading() as reader:
        assert reader.outing("day").overrides == (struck, other)


def test_an_override_cannot_be_dropped(data: DataFile) -> None:
    done(data, put(OUTING.model_copy(update={"overrides": (OVERRIDE,)})))
    before = dump(data)
    with pytest.raises(InputFault, match=r"outing\.override_dropped"):
        done(data, put(OUTING))
    assert dump(data) == before


def test_overrides_outlive_their_outing(data: DataFile) -> None:
    whole = OUTING.model_copy(update={"overrides": (OVERRIDE,)})
    done(data, put(whole, Tick(outing_id="day", step=Step.STOW, line="x", at=NOW)))
    before = dump(data)
    removal = done(data, lambda writer: writer.remove(Outing, "day", now=NOW))
    assert dump(data)["tick"] == []
    assert len(dump(data)["override"]) == 1
    assert dump(data)["override"][0][-1] == NOW.isoformat(timespec="microseconds")
    with pytest.raises(InputFault, match=r"outing\.override_dropped"):
        done(data, put(OUTING))
    undone(data, removal)
    assert dump(data) == before


def test_undoing_what_history_names_goes_on(data: DataFile) -> None:
    """An item and its event taken back, one after the other: the event stays, struck, and both can be done again."""
    steps = [done(data, put(ITEM)), done(data, put(EVENT))]
    final = dump(data)
    for step in reversed(steps):
        undone(data, step)
    with data.reading() as reader:
        assert (reader.items(), [event.struck_at for event in reader.events()]) == ((), [NOW])
    for step in steps:
        redone(data, step)
    assert dump(data) == final


def test_nothing_is_put_over_what_somebody_else_wrote(data: DataFile, path: Path) -> None:
    step = done(data, put(ITEM, EVENT))
    other = DataFile.open(path, now=NOW)
    done(other, put(ITEM.model_copy(update={"name": "renamed"})))
    other.close()
    before = dump(data)
    with pytest.raises(SystemFault) as caught:
        undone(data, step)
    assert (caught.value.code, caught.value.facts) == ("undo.moved_on", {"table": "item", "key": ("item",)})
    with pytest.raises(SystemFault, match=r"undo\.moved_on"):
        redone(data, step)
    assert dump(data) == before


def test_undo_that_would_leave_something_loose_is_refused(data: DataFile) -> None:
    step = done(data, put(ITEM))
    done(data, put(Item(id="other", name="x", fitted_to="item")))
    before = dump(data)
    with pytest.raises(InputFault, match=r"data_file\.dangling"):
        undone(data, step)
    assert dump(data) == before


def test_a_place_in_the_order_is_never_given_twice(data: DataFile) -> None:
    """Else what undo puts back would find another thing in its place."""
    done(data, put(ITEM, Item(id="last", name="last")))
    removal = done(data, lambda writer: writer.remove(Item, "last", now=NOW))
    done(data, put(Item(id="new", name="new")))
    undone(data, removal)
    with data.reading() as reader:
        assert [item.id for item in reader.items()] == ["item", "last", "new"]


def test_an_item_fitted_to_itself(data: DataFile) -> None:
    """Nonsense, but the model allows it, and removing it must be undone like any other."""
    done(data, put(ITEM.model_copy(update={"fitted_to": "item"})))
    before = dump(data)
    undone(data, done(data, lambda writer: writer.remove(Item, "item", now=NOW)))
    assert dump(data) == before


def test_preferences_too(data: DataFile) -> None:
    states = [dump(data)]
    steps = []
    for value in ("metric", "imperial", None):
        steps.append(done(data, lambda writer, value=value: writer.put_preference("units", value)))
        states.append(dump(data))
    for number in (2, 1, 0):
        undone(data, steps[number])
        assert dump(data) == states[number]


def test_history_is_what_the_tables_say_it_is() -> None:
    struck = {name for name, table in METADATA.tables.items() if "struck_at" in table.c}
    of_record = {"record_rule", "record_measurement", "record_paper", "record_answer"}
    assert struck | of_record == OF_HISTORY
