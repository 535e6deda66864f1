import sys
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # for any_model: importmode=importlib finds no neighbours

from kitlog.store.data_file import DataFile

NOW = datetime(2027, 5, 3, 19, 30, tzinfo=UTC)


@pytest.fixture
def now() -> datetime:
    return NOW


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "kitlog.db"


@pytest.fixture
def data(path: Path) -> Iterator[DataFile]:
    opened = DataFile.open(path, now=NOW)
    yield opened
    opened.close()


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[DataFile]:
    """One file for many examples, each of which takes back what it wrote."""
    opened = DataFile.open(tmp_path_factory.mktemp("shared") / "kitlog.db", now=NOW)
    yield opened
    opened.close()
