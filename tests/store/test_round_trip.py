"""Whatever a model may hold comes back from the file as it went in."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from any_model import instances
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pydantic import ValidationError

from kitlog.fault import InputFault
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing
from kitlog.outing.pilot import Pilot
from kitlog.outing.ticks import Tick
from kitlog.store.data_file import DataFile
from kitlog.store.reader import Reader
from kitlog.store.writer import Writer
from kitlog.units.text import unfit_character

ITEM = Item(id="host", name="Host")
OUTING = Outing(id="day", name="Day", flight_types=("ridge",), first_day="2027-05-04")

READ: dict[type, Callable[[Reader], tuple[Any, ...]]] = {
    Pilot: Reader.pilots,
    Item: Reader.items,
    Flight: Reader.flights,
    ServiceRule: Reader.rules,
    ServiceRecord: Reader.records,
    Event: Reader.events,
    Outing: Reader.outings,
    Tick: Reader.ticks,
}
ONE: dict[type, Callable[[Reader, str], Any]] = {
    Pilot: Reader.pilot,
    Item: Reader.item,
    Flight: Reader.flight,
    ServiceRule: Reader.rule,
    ServiceRecord: Reader.record,
    Event: Reader.event,
    Outing: Reader.outing,
}
TIED: dict[type, dict[str, st.SearchStrategy[Any]]] = {
    Item: {"fitted_to": st.sampled_from([None, "host"])},
    ServiceRule: {"item_id": st.just("host")},
    Tick: {"outing_id": st.just("day")},
}
EACH = st.sampled_from(list(READ)).flatmap(lambda model: instances(model, **TIED.get(model, {})))
MANY = settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))


class TakenBack(Exception):  # noqa: N818  # nothing is wrong
    """Ends a transaction without a trace."""


@contextmanager
def taken_back(data: DataFile) -> Iterator[Writer]:
    """A transaction that leaves nothing behind."""
    with suppress(TakenBack), data.writing() as writer:
        yield writer
        raise TakenBack


@MANY
@given(model=EACH)
def test_any_thing_comes_back_as_it_was(shared: DataFile, model: Any) -> None:
    with taken_back(shared) as writer:
        writer.put(ITEM)
        writer.put(OUTING)
        writer.put(model)
        assert READ[type(model)](writer)[-1] == model
        if type(model) in ONE:
            assert ONE[type(model)](writer, model.id) == model


@MANY
@given(data=st.data(), kind=st.sampled_from(list(READ)))
def test_putting_again_leaves_only_the_newer(shared: DataFile, data: st.DataObject, kind: type) -> None:
    tied = TIED.get(kind, {})
    first = data.draw(instances(kind, **tied))
    same = {name: st.just(getattr(first, name)) for name in ("id", "step", "line") if hasattr(first, name)}
    kept = {"overrides": st.just(first.overrides)} if kind is Outing else {}
    second = data.draw(instances(kind, **{**tied, **same, **kept}))
    with taken_back(shared) as writer:
        for model in (ITEM, OUTING, first, second):
            writer.put(model)
        assert READ[kind](writer)[-1] == second
        assert first == second or first not in READ[kind](writer)


@settings(max_examples=8, deadline=None, suppress_health_check=list(HealthCheck))
@given(models=st.lists(EACH, max_size=6, unique_by=lambda m: (type(m), getattr(m, "id", (str(m.model_dump()))))))
def test_it_is_still_there_after_closing(tmp_path: Path, now: datetime, models: list[Any]) -> None:
    path = tmp_path / "kitlog.db"
    path.unlink(missing_ok=True)
    first = DataFile.open(path, now=now)
    with first.writing() as writer:
        for model in (ITEM, OUTING, *models):
            writer.put(model)
        written = {kind: read(writer) for kind, read in READ.items()}
    first.close()
    second = DataFile.open(path, now=now, create=False)
    with second.reading() as reader:
        assert {kind: read(reader) for kind, read in READ.items()} == written
    second.close()


def test_order_is_the_order_of_entry(data: DataFile) -> None:
    names = ["m", "a", "z", "B", "ä"]
    with data.writing() as writer:
        for name in names:
            writer.put(Item(id=name, name=name))
        writer.put(Item(id="a", name="changed"))
    with data.reading() as reader:
        assert [item.id for item in reader.items()] == names


@pytest.mark.parametrize("fold", [0, 1])
def test_the_repeated_hour_keeps_its_moment(data: DataFile, fold: int) -> None:
    # Times of two zones in a repeated hour never compare equal (PEP 495), so the moment itself is compared.
    at = datetime(2027, 10, 31, 2, 30, tzinfo=ZoneInfo("Europe/Vienna"), fold=fold)
    with data.writing() as writer:
        writer.put(OUTING)
        writer.put(Tick(outing_id="day", step="stow", line="x", at=at))
        changes = writer.changes
    with data.reading() as reader:
        (tick,) = reader.ticks("day")
    assert tick.at == at.astimezone(UTC)
    with data.writing() as writer:
        writer.revert(changes, now=at)
        writer.replay(changes)


def test_a_time_before_the_first_year_is_refused_in_words(data: DataFile) -> None:
    at = datetime(1, 1, 1, tzinfo=timezone(timedelta(hours=14)))
    with pytest.raises(InputFault) as caught, data.writing() as writer:
        writer.put(Event(id="e", item_id="i", on="2027-05-03", kind="blow", struck_at=at))
    assert caught.value.code == "time.out_of_range"


@pytest.mark.parametrize("field", ["name", "maker", "notes"])
def test_a_text_that_grows_when_composed_is_measured_as_it_is_stored(data: DataFile, field: str) -> None:
    # U+0958 is excluded from composition (Unicode, CompositionExclusions.txt): NFC makes two characters of it.
    limit = 5_000 if field == "notes" else 100
    item = Item(**{"id": "i", "name": "n", field: "\u0958" * limit})
    with data.writing() as writer:
        writer.put(item)
    with data.reading() as reader:
        assert reader.item("i") == item
    with pytest.raises(ValidationError, match="at most"):
        Item(**{"id": "i", "name": "n", field: "\u0958" * (limit + 1)})


def test_nothing_planned_and_nothing_plugged_differ(data: DataFile) -> None:
    with data.writing() as writer:
        for plugs in (None, ()):
            writer.put(OUTING.model_copy(update={"plugs": plugs}))
            assert writer.outing("day").plugs == plugs


@MANY
@given(name=st.text(st.characters(codec="utf-8", exclude_categories=("Cs", "Cc")), min_size=1), value=st.text())
def test_preferences_hold_any_fit_text(shared: DataFile, name: str, value: str) -> None:
    with taken_back(shared) as writer:
        if any(unfit_character(text, breaks=True) for text in (name, value)):
            with pytest.raises(InputFault, match=r"text\.unfit_character"):
                writer.put_preference(name, value)
            return
        writer.put_preference(name, value)
        assert writer.preferences() == {name: value}
        writer.put_preference(name, None)
        assert writer.preferences() == {}
