"""The due list of 10,000 items against a raw read of the rows that it is made of, in one run.

The raw query is what `sqlite3` alone needs to open the file and fetch all rows of items, rules, records, events and
flights, with what hangs on each. Nothing that was read before is kept. Processor time, the least of several turns in
turn: other work on the machine makes single figures larger, never smaller.
"""

import sqlite3
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from scenario import EVENING, HISTORY, KIT, LIBRARY, numbered

from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.store.data_file import DataFile
from kitlog.workbench.workbench import Workbench

ITEMS = 10_000
FLOWN = 100
"""So many of them were flown."""

MOST_TIMES = 10
TURNS, MOST_TURNS = 3, 15

TABLES = (
    "item",
    "service_rule",
    "rule_event",
    "service_record",
    "record_rule",
    "record_answer",
    "event",
    "flight",
    "flown",
)


def like(rule: ServiceRule, number: int) -> ServiceRule:
    return rule.model_copy(update={"id": f"{rule.id}-{number}", "item_id": f"i{number}"})


def done(record: ServiceRecord, rule: ServiceRule, number: int) -> ServiceRecord:
    new = {"id": f"{record.id}-{rule.id}-{number}", "item_id": f"i{number}", "rules": (f"{rule.id}-{number}",)}
    return record.model_copy(update=new)


def filled(path: Path) -> Path:
    """Copies of the things that have rules, with their rules and records, and the log of the season."""
    serviced = [item for item in KIT.items if any(rule.item_id == item.id for rule in KIT.rules)]
    things: list[object] = []
    rules: list[ServiceRule] = []
    records: list[ServiceRecord] = []
    for number in range(ITEMS):
        item = serviced[number % len(serviced)]
        things.append(item.model_copy(update={"id": f"i{number}", "name": f"{item.name} {number}", "fitted_to": None}))
        for rule in (rule for rule in KIT.rules if rule.item_id == item.id):
            rules.append(like(rule, number))
            records += [done(record, rule, number) for record in HISTORY.records if rule.id in record.rules]
    flown = {"flown": tuple(f"i{number}" for number in range(FLOWN)), "carried": ()}
    flights = [flight.model_copy(update=flown) for flight in HISTORY.flights]
    with closing(DataFile.open(path, now=EVENING)) as data, data.writing() as writer:
        writer.put_all([*things, *rules, *records, *flights])  # type: ignore[list-item]
    return path


def raw(path: Path) -> int:
    with closing(sqlite3.connect(path)) as connection:
        return sum(len(connection.execute(f"SELECT * FROM {table}").fetchall()) for table in TABLES)  # noqa: S608


def seconds(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


@pytest.mark.bench
def test_ten_thousand_items_take_under_ten_times_the_raw_query(tmp_path: Path) -> None:
    path = filled(tmp_path / "many.kitlog")
    own_s = raw_s = float("inf")
    for turn in range(1, MOST_TURNS + 1):
        bench = Workbench(DataFile.open(path, now=EVENING), LIBRARY, lambda: EVENING, numbered())
        own_s = min(own_s, seconds(lambda: bench.due_list(EVENING.date())))  # noqa: B023
        bench.close()
        raw_s = min(raw_s, seconds(lambda: raw(path)))
        if turn >= TURNS and own_s < MOST_TIMES * raw_s:
            break
    print(f"\ndue list {own_s * 1e3:.0f} ms, raw query {raw_s * 1e3:.0f} ms, {own_s / raw_s:.1f} times")  # noqa: T201  # the figure is the point
    assert own_s < MOST_TIMES * raw_s
