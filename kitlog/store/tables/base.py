"""What all tables share: one collection, names for constraints, STRICT types."""

from sqlalchemy import Column, MetaData, Table
from sqlalchemy.schema import SchemaItem

METADATA = MetaData(
    naming_convention={
        "ck": "%(table_name)s_%(constraint_name)s",
        "ix": "%(table_name)s_by_%(column_0_name)s",
    }
)
"""Every table of the data file."""


def root(name: str, *columns: "Column[object] | SchemaItem") -> Table:
    """A table of things that stand for themselves, in order of entry."""
    return Table(name, METADATA, *columns, sqlite_strict=True, sqlite_autoincrement=True)


def part(name: str, *columns: "Column[object] | SchemaItem") -> Table:
    """A table of parts of such things, found by their owner and place alone."""
    return Table(name, METADATA, *columns, sqlite_strict=True, sqlite_with_rowid=False)
