"""The number of statements does not grow with the number of rows."""

from collections.abc import Callable
from datetime import datetime

import pytest
from sqlalchemy import event

from kitlog.kit.facets import Battery, Share, WayOfUse
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing, Phase
from kitlog.outing.pilot import Pilot
from kitlog.outing.ticks import Step, Tick
from kitlog.store.data_file import DataFile
from kitlog.store.reader import Reader

BATTERY = Battery(wh=10, ways=(WayOfUse(name="on", power_w=1, shares=(Share(during="flight", share=0.5),)),))

READINGS: dict[str, tuple[Callable[[Reader], object], int]] = {
    "pilots": (Reader.pilots, 2),
    "items": (Reader.items, 14),
    "item": (lambda reader: reader.item("i3"), 14),
    "flights": (Reader.flights, 4),
    "rules": (Reader.rules, 2),
    "records": (Reader.records, 5),
    "events": (Reader.events, 1),
    "outings": (Reader.outings, 16),
    "outing": (lambda reader: reader.outing("o3"), 16),
    "ticks": (lambda reader: reader.ticks("o3"), 1),
    "preferences": (Reader.preferences, 1),
}


def fill(data: DataFile, count: int, now: datetime) -> None:
    phases = (Phase(way="flight", likely_h=2), Phase(way="ride home", likely_h=1))
    with data.writing() as writer:
        for n in range(count):
            writer.put(Pilot(id=f"p{n}", name="x"))
            writer.put(Item(id=f"i{n}", name="x", serves=("map", "audio"), battery=BATTERY))
            writer.put(Flight(id=f"f{n}", on="2027-05-03", flown=(f"i{n}",)))
            writer.put(ServiceRule(id=f"s{n}", item_id=f"i{n}", rule="check", months=12, events=("water",)))
            writer.put(ServiceRecord(id=f"r{n}", item_id=f"i{n}", rules=(f"s{n}",), done_on="2027-05-03"))
            writer.put(Event(id=f"e{n}", item_id=f"i{n}", on="2027-05-03", kind="water"))
            writer.put(Outing(id=f"o{n}", name="x", flight_types=("ridge",), first_day="2027-05-03", phases=phases))
            writer.put(Tick(outing_id="o3", step=Step.STOW, line=f"i{n}", at=now))
            writer.put_preference(f"n{n}", "x")


@pytest.mark.parametrize("count", [10, 1_000])
def test_a_fixed_number_of_statements(data: DataFile, now: datetime, count: int) -> None:
    fill(data, count, now)
    sent: list[str] = []
    event.listen(data._engine, "before_cursor_execute", lambda *args: sent.append(args[2]))
    found = {}
    with data.reading() as reader:
        sent.clear()
        for name, (read, _) in READINGS.items():
            assert read(reader)
            found[name] = len(sent)
            sent.clear()
    assert found == {name: wanted for name, (_, wanted) in READINGS.items()}


def test_putting_sends_a_fixed_number_too(data: DataFile, now: datetime) -> None:
    fill(data, 10, now)
    sent: list[str] = []
    event.listen(data._engine, "before_cursor_execute", lambda *args: sent.append(args[2]))
    counts = []
    for length in (1, 50):
        with data.writing() as writer:
            sent.clear()
            writer.put(Item(id=f"new{length}", name="x", serves=("map",) * length))
            counts.append(len(sent))
    assert counts[0] == counts[1] == 3
