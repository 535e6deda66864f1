"""Data files with something in them, and what is in them."""

from datetime import UTC, datetime
from pathlib import Path

from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRule
from kitlog.store.data_file import DataFile

NOW = datetime(2027, 5, 3, 19, 30, tzinfo=UTC)


def fill(path: Path, name: str, count: int = 40) -> None:
    """A closed data file of items that all have one name."""
    data = DataFile.open(path, now=NOW)
    with data.writing() as writer:
        for n in range(count):
            item = Item(id=f"i{n}", name=name, serves=("map", "audio"), notes="x" * n)
            writer.put(item)
            writer.put(ServiceRule(id=f"r{item.id}", item_id=item.id, rule="check", months=12))
            writer.put(Event(id=f"e{item.id}", item_id=item.id, on="2027-01-02", kind="water"))
    data.close()


def names_in(path: Path) -> set[str]:
    """The names of the items, each with both its parts; opening checks all pages and references."""
    data = DataFile.open(path, now=NOW, create=False)
    try:
        with data.reading() as reader:
            items = reader.items()
            assert len(reader.rules()) == len(items)
    finally:
        data.close()
    assert all(len(item.serves) == 2 for item in items)
    return {item.name for item in items}
