"""The tables fit the models, and the file itself refuses what no model would hold."""

from datetime import date
from typing import Any

import annotated_types as at
import pytest
from pydantic import BaseModel
from pydantic.fields import FieldInfo
from sqlalchemy import Table
from sqlalchemy.types import REAL

from kitlog.kit.item import FACETS
from kitlog.store import aggregates
from kitlog.store.aggregates import ROOTS, key_names
from kitlog.store.data_file import DataFile
from kitlog.store.shape import Many, One, Root, all_parts
from kitlog.store.tables.base import METADATA
from kitlog.store.tables.coded import DayText, WordText
from kitlog.store.tables.kit import PREFERENCE

STORE_ONLY = {"entry", "position"}


def parts_with_models(root: Root[Any]) -> list[Many | One]:
    return [part for part in all_parts(root.parts) if isinstance(part, Many | One)]


def columns_for(model: type[BaseModel], table: Table, prefix: str = "") -> dict[str, FieldInfo]:
    return {prefix + name: info for name, info in model.model_fields.items() if prefix + name in table.c}


def bounded() -> list[tuple[Table, str, FieldInfo]]:
    """Every column that stands for a field, with the field."""
    found = []
    for root in ROOTS.values():
        pairs = [(root.model, root.table, ""), *((p.model, p.table, "") for p in parts_with_models(root))]
        pairs += [(inner, root.table, prefix) for inner, prefix in root.inside.values()]
        for model, table, prefix in pairs:
            found += [(table, name, info) for name, info in columns_for(model, table, prefix).items()]
    return found


@pytest.mark.parametrize("root", ROOTS.values(), ids=lambda root: root.table.name)
def test_every_field_has_its_column_or_its_table(root: Root[Any]) -> None:
    elsewhere = {part.field for part in root.parts} | set(root.inside)
    assert set(columns_for(root.model, root.table)) | elsewhere == set(root.model.model_fields)
    for part in parts_with_models(root):
        own = set(columns_for(part.model, part.table)) | {inner.field for inner in part.parts}
        assert own == set(part.model.model_fields)
    for name, (inner, prefix) in root.inside.items():
        assert name in root.model.model_fields
        assert set(columns_for(inner, root.table, prefix)) == {prefix + field for field in inner.model_fields}


def test_every_column_stands_for_something() -> None:
    known = {(table.name, name) for table, name, _ in bounded()}
    for root in ROOTS.values():
        known |= {(root.table.name, column) for column in root.planned.values()}
        for part in all_parts(root.parts):
            known |= {(part.table.name, getattr(part, name, "")) for name in ("column", "key_column")}
            known |= {(part.table.name, name) for name in key_names(part.table)}
    known |= {(PREFERENCE.name, "name"), (PREFERENCE.name, "value")}
    every = {
        (table.name, column)
        for table in METADATA.tables.values()
        for column in table.columns.keys()  # noqa: SIM118  # not a dictionary
        if column not in STORE_ONLY
    }
    assert every <= known


def test_every_facet_of_an_item_is_kept() -> None:
    assert {part.field for part in aggregates.ITEMS.parts} == {*FACETS, "serves", "papers"}


def test_every_table_belongs_to_a_kind() -> None:
    assert set(aggregates.KIND_OF) == set(METADATA.tables)


def limits(info: FieldInfo) -> list[Any]:
    """The limits of a field, also inside ``Annotated[...] | None``."""
    marks = list(info.metadata)
    for part in getattr(info.annotation, "__args__", ()):
        for mark in getattr(part, "__metadata__", ()):
            marks += mark.metadata if isinstance(mark, FieldInfo) else [mark]
    return marks


def just_outside(table: Table, column: str, info: FieldInfo) -> list[Any]:
    if isinstance(table.c[column].type, DayText):
        return ["1969-12-31", "2101-01-01"]
    step = 1e-6 if isinstance(table.c[column].type, REAL) else 1
    outside: list[Any] = []
    for mark in limits(info):
        outside += [mark.ge - step] if isinstance(mark, at.Ge) else []
        outside += [mark.gt] if isinstance(mark, at.Gt) else []
        outside += [mark.le + step] if isinstance(mark, at.Le) else []
        outside += [mark.lt] if isinstance(mark, at.Lt) else []
    return outside


def just_inside(info: FieldInfo) -> list[Any]:
    included = {at.Ge: "ge", at.Le: "le"}
    return [getattr(mark, included[type(mark)]) for mark in limits(info) if type(mark) in included]


def refused_by(data: DataFile, table: Table, column: str, value: object) -> bool:
    """Whether the column's own CHECK refuses a value, tried on an empty copy of the column."""
    checks = " AND ".join(f"({check.sqltext})" for check in table.c[column].constraints)
    quoted = f'"{column}"'
    verdict = data._raw.execute(f"SELECT {checks or 1} FROM (SELECT ? AS {quoted})", (value,)).fetchone()[0]  # noqa: S608
    return verdict == 0


@pytest.mark.parametrize(
    ("table", "column", "info"), bounded(), ids=lambda value: str(getattr(value, "name", value))[:30]
)
def test_the_range_of_a_field_is_the_range_of_its_column(
    shared: DataFile, table: Table, column: str, info: FieldInfo
) -> None:
    assert all(refused_by(shared, table, column, value) for value in just_outside(table, column, info))
    assert not any(refused_by(shared, table, column, value) for value in just_inside(info))


def test_ranges_were_really_looked_at() -> None:
    assert sum(bool(just_outside(*entry)) for entry in bounded()) > 70


@pytest.mark.parametrize(
    ("statement", "what"),
    [
        ("UPDATE item SET quantity = -1", "CHECK"),
        ("UPDATE item SET quantity = 'many'", "cannot store TEXT"),
        ("UPDATE item SET name = ''", "CHECK"),
        ("UPDATE item SET made_on = '2127-01-01'", "CHECK"),
        ("UPDATE item SET name = NULL", "NOT NULL"),
    ],
)
def test_the_file_refuses_what_no_model_holds(data: DataFile, statement: str, what: str) -> None:
    from kitlog.kit.item import Item

    with data.writing() as writer:
        writer.put(Item(id="i", name="n", made_on=date(2020, 2, 29)))
    with pytest.raises(Exception, match=what):
        data._raw.execute(statement)


def test_words_of_closed_lists_are_no_part_of_the_schema() -> None:
    """A new kind of item must not need a new table."""
    words = [c for table in METADATA.tables.values() for c in table.c if isinstance(c.type, WordText)]
    assert words
    assert not any(column.constraints for column in words)
