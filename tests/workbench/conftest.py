import shutil
from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path

import pytest
from scenario import EVENING, LIBRARY, numbered

from kitlog.files.resources import resources_folder
from kitlog.store.data_file import DataFile
from kitlog.workbench.workbench import Workbench


class Clock:
    """A clock that is set by hand."""

    def __init__(self) -> None:
        self.at = EVENING

    def __call__(self) -> datetime:
        return self.at


def bench_on(path: Path, clock: Callable[[], datetime] = Clock(), ids: Callable[[], str] | None = None) -> Workbench:  # noqa: B008
    return Workbench(DataFile.open(path, now=EVENING), LIBRARY, clock, ids or numbered())


@pytest.fixture(scope="session")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A data file with the demo scenario, closed."""
    path = tmp_path_factory.mktemp("filled") / "demo.kitlog"
    bench = bench_on(path)
    bench.fill_with_demo(resources_folder() / "demo")
    bench.close()
    return path


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def bench(filled: Path, tmp_path: Path, clock: Clock) -> Iterator[Workbench]:
    """A workbench on its own copy of the demo scenario; nothing can be undone yet."""
    path = tmp_path / "demo.kitlog"
    shutil.copy(filled, path)
    fresh = numbered()
    opened = bench_on(path, clock, lambda: f"new {fresh()}")
    yield opened
    opened.close()


@pytest.fixture
def another(bench: Workbench) -> Iterator[Workbench]:
    """A second workbench on the same data file, as another process has it."""
    fresh = numbered()
    opened = bench_on(bench.path, bench.now, lambda: f"other {fresh()}")
    yield opened
    opened.close()


@pytest.fixture
def empty(tmp_path: Path, clock: Clock) -> Iterator[Workbench]:
    """A workbench on a new data file."""
    opened = bench_on(tmp_path / "new.kitlog", clock)
    yield opened
    opened.close()
