"""Many things that are written, taken back and done again together leave the rows that one by one would leave."""

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import event

from kitlog.fault import InputFault, SystemFault
from kitlog.kit.facets import Battery, Share, WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.outing import Outing, Override
from kitlog.store.aggregates import KIND_OF
from kitlog.store.data_file import DataFile
from kitlog.store.journal import Changes, RowChange
from kitlog.store.tables.base import METADATA
from kitlog.store.tables.log import SERVICE_RECORD
from kitlog.store.writer import TOGETHER, Writer

NOW = datetime(2027, 5, 3, 20, tzinfo=UTC)
MANY = 3 * TOGETHER
ITEM_TABLES = [name for name, kind in KIND_OF.items() if kind == "item"]


def battery(n: int) -> Battery | None:
    shares = (Share(during="flight", share=0.5), Share(during="night", share=1.0))[: n % 3]
    ways = (WayOfUse(name="on", power_w=1.5, shares=shares), WayOfUse(name="off", power_w=0.1))
    return Battery(wh=10 + n, ways=ways[: n % 4]) if n % 2 else None


def item(n: int, **more: Any) -> Item:
    serves = ("map", "audio")[: n % 3]
    host = f"i{(n * 7) % MANY}" if n % 5 == 0 and (n * 7) % MANY != n else None
    return Item(id=f"i{n}", name=f"Thing {n}", serves=serves, battery=battery(n), fitted_to=host, **more)


def models() -> list[Any]:
    """Items with parts that name each other, two of them twice, one that lies there already; rules and records."""
    items = [item(n) for n in range(MANY)]
    rules = [ServiceRule(id=f"r{n}", item_id=f"i{n}", rule="check", months=n + 1) for n in range(TOGETHER)]
    records = [
        ServiceRecord(id=f"s{n}", item_id=f"i{n}", rules=(f"r{n}",), done_on="2027-01-02") for n in range(TOGETHER)
    ]
    events = [Event(id="e", item_id="i1", on="2027-01-02", kind="water")]
    return [*items, item(3, notes="again"), item(8, notes="again"), *rules, *records, *events]


def dump(data: DataFile) -> dict[str, list[tuple[Any, ...]]]:
    return {name: data._raw.execute(f'SELECT * FROM "{name}"').fetchall() for name in METADATA.tables}  # noqa: S608


def done(data: DataFile, work: Callable[[Writer], object]) -> Changes:
    with data.writing() as writer:
        work(writer)
        return writer.changes


def one_by_one(writer: Writer) -> None:
    for model in models():
        writer.put(model)


def together(writer: Writer) -> None:
    writer.put_all(models())


@pytest.fixture
def pair(tmp_path: Path) -> Any:
    files = [DataFile.open(tmp_path / f"{name}.kitlog", now=NOW) for name in "ab"]
    for data in files:
        done(data, lambda writer: writer.put(Item(id="i5", name="Thing 5", serves=("whistle",))))
        done(data, lambda writer: writer.put(Item(id="gone", name="x")))
        done(data, lambda writer: writer.remove(Item, "gone", now=NOW))
    yield files
    for data in files:
        data.close()


def said(changes: Changes) -> list[str]:
    return sorted(
        f"{row.table} {row.key} {row.before} {dict(sorted((row.after or {}).items()))}" for row in changes.rows
    )


def test_the_same_rows_are_written_and_journalled(pair: list[DataFile]) -> None:
    single, many = pair
    first, second = done(single, one_by_one), done(many, together)
    assert {table: sorted(rows, key=repr) for table, rows in dump(many).items()} == {
        table: sorted(rows, key=repr) for table, rows in dump(single).items()
    }
    assert said(second) == said(first)
    with single.reading() as one, many.reading() as other:
        assert one.items() == other.items()


def test_what_was_taken_out_gives_its_place_in_the_order_to_none(pair: list[DataFile]) -> None:
    """SQLite's documentation of AUTOINCREMENT: a number is never given twice."""
    _single, many = pair
    done(many, lambda writer: writer.put_all([Item(id=f"n{n}", name="x") for n in range(TOGETHER)]))
    entries = [row[0] for row in many._raw.execute("SELECT entry FROM item ORDER BY entry")]
    assert entries == [1, *range(3, 3 + TOGETHER)]
    done(many, lambda writer: writer.put(Item(id="next", name="x")))
    assert many._raw.execute("SELECT entry FROM item WHERE id = 'next'").fetchone() == (3 + TOGETHER,)


@pytest.mark.parametrize("write", [one_by_one, together])
def test_undo_and_redo_put_items_back_exactly(write: Callable[[Writer], None], pair: list[DataFile]) -> None:
    data, _other = pair
    done(data, lambda writer: writer.put_all([Item(id=f"i{n}", name="old") for n in range(0, MANY, 3)]))
    before = dump(data)
    whole = done(data, write)
    after = dump(data)
    done(data, lambda writer: writer.revert(whole, now=NOW))
    found = dump(data)
    assert {table: found[table] for table in ITEM_TABLES} == {table: before[table] for table in ITEM_TABLES}
    struck = SERVICE_RECORD.columns.keys().index("struck_at")
    assert {row[struck] for row in found["service_record"]} != {None}
    done(data, lambda writer: writer.replay(whole))
    assert dump(data) == after


def test_history_that_came_in_with_many_is_struck_and_comes_back(pair: list[DataFile]) -> None:
    _single, data = pair
    items = [Item(id=f"n{n}", name="x") for n in range(TOGETHER)]
    done(data, lambda writer: writer.put_all(items))
    records = [
        ServiceRecord(id=f"s{n}", item_id=f"n{n}", rules=("check",), done_on="2027-01-02") for n in range(TOGETHER)
    ]
    changes = done(data, lambda writer: writer.put_all(records))
    after = dump(data)
    done(data, lambda writer: writer.revert(changes, now=NOW))
    with data.reading() as reader:
        assert [record.struck_at for record in reader.records()] == [NOW] * TOGETHER
    done(data, lambda writer: writer.replay(changes))
    assert dump(data) == after


def test_nothing_is_put_over_what_somebody_else_wrote(pair: list[DataFile]) -> None:
    _single, data = pair
    changes = done(data, lambda writer: writer.put_all([Item(id=f"n{n}", name="x") for n in range(TOGETHER)]))
    done(data, lambda writer: writer.put(Item(id="n7", name="mine")))
    kept = dump(data)
    with pytest.raises(SystemFault) as fault:
        done(data, lambda writer: writer.revert(changes, now=NOW))
    assert (fault.value.code, fault.value.facts["key"]) == ("undo.moved_on", ("n7",))
    assert dump(data) == kept


def test_a_struck_override_of_an_outing_that_was_removed_stays_on_record(data: DataFile) -> None:
    override = Override(finding="weight.over", reason="short flight, weighed twice", at=NOW)
    days = [Outing(id=f"d{n}", name="x", flight_types=("ridge",), first_day="2027-05-04") for n in range(TOGETHER)]
    done(data, lambda writer: writer.put(days[0].model_copy(update={"overrides": (override,)})))
    done(data, lambda writer: writer.remove(Outing, "d0", now=NOW))
    with pytest.raises(InputFault, match=r"outing\.override_dropped"):
        done(data, lambda writer: writer.put_all(days))


def test_many_take_no_more_statements_than_a_few(data: DataFile) -> None:
    sent: list[str] = []
    event.listen(data._engine, "before_cursor_execute", lambda *args: sent.append(args[2]))

    def counted(work: Callable[[Writer], object]) -> tuple[int, Changes]:
        sent.clear()
        changes = done(data, work)
        return len(sent), changes

    counts = []
    for length in (4 * TOGETHER, 20 * TOGETHER):
        new = [Item(id=f"{length} {n}", name="x", serves=("map",), battery=battery(n)) for n in range(length)]
        put, changes = counted(lambda writer, new=new: writer.put_all(new))
        back, _changes = counted(lambda writer, changes=changes: writer.revert(changes, now=NOW))
        again, _changes = counted(lambda writer, changes=changes: writer.replay(changes))
        counts.append((put, back, again))
    assert counts[0] == counts[1]


def test_the_journal_names_each_row_once(data: DataFile) -> None:
    changes = done(data, lambda writer: writer.put_all([item(n) for n in range(MANY)]))
    assert len({(row.table, row.key) for row in changes.rows}) == len(changes.rows)
    assert all(isinstance(row, RowChange) and row.before is None for row in changes.rows)
