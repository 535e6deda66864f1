import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for neighbours: importmode=importlib finds none

from kitlog.kit.item import Item
from kitlog.kit.service import Event, ServiceRule
from kitlog.store.data_file import DataFile

NOW = datetime(2027, 5, 3, 19, 30, tzinfo=UTC)


@pytest.fixture
def now() -> datetime:
    return NOW


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "kitlog.db"


def kit(name: str, count: int) -> list[Item]:
    return [Item(id=f"i{n}", name=name, serves=("map", "audio"), notes="x" * n) for n in range(count)]


def fill(path: Path, name: str, count: int = 40) -> None:
    """A closed data file of items that all have one name."""
    data = DataFile.open(path, now=NOW)
    with data.writing() as writer:
        for item in kit(name, count):
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


@pytest.fixture
def filled(path: Path) -> Iterator[Path]:
    fill(path, "old")
    yield path
    assert not list(path.parent.glob(".*.part*"))
