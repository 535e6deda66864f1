"""Every released schema leads to the newest, whole or not at all, and a copy is made first."""

import json
import re
import shutil
import sqlite3
import subprocess
import sys
import types
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from alembic import op
from sqlalchemy import Column, Integer, Text

from kitlog.fault import SystemFault
from kitlog.kit.item import Item
from kitlog.kit.service import Result, ServiceRule
from kitlog.store import connection, copies, gate, marks, migrations
from kitlog.store.aggregates import ROOTS
from kitlog.store.data_file import DataFile
from kitlog.store.migrations import run
from kitlog.store.verify import verify

OLD = sorted((Path(__file__).parent / "old").glob("schema_*.db"))


def shape(raw: sqlite3.Connection) -> dict[str, Any]:
    """What a schema is, whatever words made it: columns, keys, references, indexes, checks, strictness."""
    tables = {}
    for name, strict, without_rowid in raw.execute(
        "SELECT name, strict, wr FROM pragma_table_list WHERE type = 'table'"
    ):
        if name.startswith("sqlite_"):
            continue
        sql = raw.execute("SELECT sql FROM sqlite_schema WHERE name = ?", (name,)).fetchone()[0]
        tables[name] = {
            "columns": raw.execute("SELECT * FROM pragma_table_xinfo(?)", (name,)).fetchall(),
            "references": sorted(raw.execute("SELECT * FROM pragma_foreign_key_list(?)", (name,)).fetchall()),
            "unique": sorted(
                (
                    unique,
                    origin,
                    tuple(raw.execute("SELECT name FROM pragma_index_info(?)", (index,)).fetchall()),
                )
                for _, index, unique, origin, _ in raw.execute("SELECT * FROM pragma_index_list(?)", (name,))
            ),
            "checks": sorted(
                re.findall(r"CONSTRAINT \w+\s+CHECK \([^()]*(?:\([^()]*\))?[^()]*\)", " ".join(sql.split()))
            ),
            "all checks": sql.count(" CHECK ("),
            "deferred": sql.count("DEFERRABLE INITIALLY DEFERRED"),
            "autoincrement": "AUTOINCREMENT" in sql,
            "kind": (strict, without_rowid),
        }
    return tables


def open_raw(path: Path) -> sqlite3.Connection:
    return sqlite3.connect(path, isolation_level=None)


@pytest.fixture
def migrated(tmp_path: Path) -> sqlite3.Connection:
    """An empty database through every step."""
    path = tmp_path / "steps.db"
    path.touch()
    raw = connection.connect(path)
    with connection.engine_on(raw).connect() as plain, plain.begin():
        run.run_steps(plain, 0, migrations.STEPS)
    return raw


def test_the_steps_lead_to_the_tables(migrated: sqlite3.Connection, data: DataFile) -> None:
    wanted = shape(data._raw)
    found = shape(migrated)
    assert found.keys() == wanted.keys()
    for name, table in wanted.items():
        assert found[name] == table
    assert sum(len(table["checks"]) for table in wanted.values()) == sum(
        table["all checks"] for table in wanted.values()
    )
    for pragma in ("user_version", "application_id"):
        assert migrated.execute(f"PRAGMA {pragma}").fetchone() == data._raw.execute(f"PRAGMA {pragma}").fetchone()
    migrated.close()


def test_the_number_of_steps_is_the_schema() -> None:
    assert len(migrations.STEPS) == marks.SCHEMA


def test_there_is_an_old_file_of_every_schema() -> None:
    assert [path.name for path in OLD] == [f"schema_{number}.db" for number in range(1, marks.SCHEMA + 1)]


@pytest.mark.parametrize("old", OLD, ids=lambda path: path.stem)
def test_an_old_file_holds_what_it_held(old: Path, path: Path, now: datetime) -> None:
    shutil.copy(old, path)
    expected = json.loads(old.with_suffix(".json").read_text())
    data = DataFile.open(path, now=now)
    with data.reading() as reader:
        found = {
            root.table.name: reader._all(root)  # every kind, also those of later schemas
            for root in ROOTS.values()
        }
    data.close()
    models = {root.table.name: root.model for root in ROOTS.values()}
    expected["service_record"] = [result_known(record) for record in expected["service_record"]]
    for kind, rows in expected.items():
        assert found[kind] == tuple(models[kind].model_validate(row) for row in rows)
        assert rows
    assert verify(path) == ()


def result_known(record: dict[str, Any]) -> dict[str, Any]:
    """Results were free words up to schema 2: what is none of today's words stands in the remarks since."""
    if record.get("result") in {"", None, *Result}:
        return record | {"result": record.get("result") or None}
    return record | {"result": None, "remarks": "\n".join(filter(None, (record["result"], record.get("remarks"))))}


USING_ALEMBIC = """
import sys
from datetime import datetime, UTC
from pathlib import Path
from kitlog.store.data_file import DataFile
for _ in range(2):
    DataFile.open(Path(sys.argv[1]), now=datetime.now(UTC)).close()
print(sorted(name for name in ("alembic", "mako", "sqlalchemy.orm") if name in sys.modules))
"""


def test_alembic_is_loaded_only_when_a_step_is_due(path: Path) -> None:
    run = subprocess.run([sys.executable, "-c", USING_ALEMBIC, path], capture_output=True, text=True, check=True)
    assert run.stdout == "[]\n"


@pytest.fixture
def made(data: DataFile, path: Path) -> Path:
    with data.writing() as writer:
        for number in range(100):
            writer.put(Item(id=f"i{number}", name="x", serves=("map",)))
            writer.put(ServiceRule(id=f"r{number}", item_id=f"i{number}", rule="check", months=12))
    data.close()
    return path


@pytest.fixture
def step(monkeypatch: pytest.MonkeyPatch) -> Callable[[Callable[[], None]], None]:
    """Let a function be the next step after the released ones."""

    def add(upgrade: Callable[[], None]) -> None:
        module = types.ModuleType(f"kitlog_step_{len(migrations.STEPS) + 1}")
        module.upgrade = upgrade
        monkeypatch.setitem(sys.modules, module.__name__, module)
        monkeypatch.setattr(migrations, "STEPS", (*migrations.STEPS, module.__name__))
        monkeypatch.setattr(gate, "SCHEMA", gate.SCHEMA + 1)

    return add


def rename_all() -> None:
    op.execute("UPDATE item SET name = 'renamed'")


def schema_of(path: Path) -> tuple[int, dict[str, Any], list[Any]]:
    raw = open_raw(path)
    try:
        rows = raw.execute("SELECT name FROM item ORDER BY entry").fetchall()
        return raw.execute("PRAGMA user_version").fetchone()[0], shape(raw), rows
    finally:
        raw.close()


def test_a_step_that_is_due_runs_once_after_a_copy(made: Path, now: datetime, step: Callable[..., None]) -> None:
    before = schema_of(made)
    step(rename_all)
    data = DataFile.open(made, now=now)
    with data.reading() as reader:
        assert {item.name for item in reader.items()} == {"renamed"}
    assert data._raw.execute("PRAGMA foreign_keys").fetchone()[0] == 1
    data.close()
    (copy,) = copies.copies_of(made)
    assert copy.reason == f"schema-{marks.SCHEMA}"
    assert schema_of(copy.path) == before
    DataFile.open(made, now=now).close()
    assert len(copies.copies_of(made)) == 1


def make_anew() -> None:
    with op.batch_alter_table("item", recreate="always") as batch:
        batch.add_column(Column("price", Integer))


def leave_loose() -> None:
    op.execute("DELETE FROM item WHERE id = 'i7'")


def fail_half_way() -> None:
    op.add_column("item", Column("price", Integer))
    op.create_table("shop", Column("id", Text, primary_key=True))
    op.execute("DELETE FROM item_serves")
    raise RuntimeError("power")


def break_sql() -> None:
    op.execute("UPDATE item SET quantity = 1")
    op.execute("UPDATE item SET quantity = -1")


@pytest.mark.parametrize("upgrade", [fail_half_way, leave_loose, break_sql])
def test_a_failing_step_leaves_the_file_as_it_was(
    made: Path, now: datetime, step: Callable[..., None], upgrade: Callable[[], None]
) -> None:
    before, content = schema_of(made), made.read_bytes()
    step(rename_all)
    step(upgrade)
    with pytest.raises(SystemFault) as caught:
        DataFile.open(made, now=now)
    assert caught.value.code in {"data_file.migration_failed", "data_file.refused_row"}
    assert made.read_bytes() == content
    assert schema_of(made) == before
    (copy,) = copies.copies_of(made)
    assert schema_of(copy.path) == before
    if caught.value.code == "data_file.migration_failed":
        assert caught.value.facts["copy"] == str(copy.path)


def test_a_table_made_anew_loses_nothing_that_points_to_it(
    made: Path, now: datetime, step: Callable[..., None]
) -> None:
    """With foreign keys on, DROP deletes what points to the table (measured: 100 of 100 rows)."""
    raw = connection.connect(made)
    connection.settle(raw, made)
    step(make_anew)
    run.bring_up_to_date(raw, made, now, migrations.STEPS)
    assert raw.execute("SELECT count(*) FROM item_serves").fetchone()[0] == 100
    assert raw.execute("SELECT count(*) FROM service_rule").fetchone()[0] == 100
    assert "price" in {row[1] for row in raw.execute("PRAGMA table_info(item)")}
    raw.close()


def test_two_processes_do_not_both_run_it(made: Path, now: datetime, step: Callable[..., None]) -> None:
    runs = []
    step(lambda: runs.append(1))
    raws = [connection.connect(made) for _ in range(2)]
    for raw in raws:
        connection.settle(raw, made)
        run.bring_up_to_date(raw, made, now, migrations.STEPS)
        raw.close()
    assert runs == [1]


def test_an_older_copy_can_be_put_back(made: Path, now: datetime, step: Callable[..., None]) -> None:
    from kitlog.store.restore import restore

    step(rename_all)
    DataFile.open(made, now=now).close()
    (copy,) = copies.copies_of(made)
    assert verify(copy.path) == ()
    restore(copy.path, made, now)
    assert schema_of(made)[0] == marks.SCHEMA
    DataFile.open(made, now=now).close()
    assert schema_of(made)[0] == marks.SCHEMA + 1
