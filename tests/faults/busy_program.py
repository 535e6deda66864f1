"""A program that works on a data file until it is killed; each finished step is acknowledged on its output.

Run with: mode, path of the data file. The number on the last line is the newest step that is known to be done.
"""

import shutil
import sys
import types
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from itertools import count
from pathlib import Path

from kitlog.files import backup
from kitlog.kit.item import Item
from kitlog.kit.service import ServiceRule
from kitlog.store import gate, marks, migrations
from kitlog.store.data_file import DataFile
from kitlog.store.restore import restore

NOW = datetime(2027, 5, 3, 19, 30, tzinfo=UTC)


def group(number: int, size: int) -> Iterator[Item | ServiceRule]:
    """What one step writes: all of it or nothing must be there afterwards."""
    for n in range(size):
        item = Item(id=f"{number}.{n}", name=str(number), quantity=size, serves=("map",) * 3, notes="x" * 40 * n)
        yield item
        yield ServiceRule(id=item.id, item_id=item.id, rule="check", months=12)


def write(data: DataFile, number: int, size: int) -> None:
    with data.writing() as writer:
        for model in group(number, size):
            writer.put(model)
        writer.put_preference("newest", str(number))


def edit(path: Path) -> Iterator[int]:
    """Small steps, one after the other."""
    data = DataFile.open(path, now=NOW)
    for number in count(1):
        write(data, number, 1 + number % 5)
        yield number


def big_import(path: Path) -> Iterator[int]:
    """Large steps, each after a copy; a small cache, so that pages reach the disk early."""
    data = DataFile.open(path, now=NOW)
    data._raw.execute("PRAGMA cache_size=10")
    for number in count(1):
        data.copy_beside("import", NOW)
        write(data, number, 60)
        yield number


def back_up(path: Path) -> Iterator[int]:
    """Steps, each packed into the same archive."""
    data = DataFile.open(path, now=NOW)
    for number in count(1):
        write(data, number, 3)
        copy = data.copy_beside("backup", NOW)
        backup.pack(copy, path.with_name("backup.zip"), NOW)
        copy.unlink()
        yield number


def put_back(path: Path) -> Iterator[int]:
    """One of two copies after the other takes the place of the file."""
    copies = [path.with_name("even.db"), path.with_name("odd.db")]
    for number in count(1):
        restore(copies[number % 2], path, NOW)
        yield number


def migrate(path: Path) -> Iterator[int]:
    """A file of the first schema, again and again, through a step that touches every row."""
    from alembic import op

    step = types.ModuleType("kitlog_step")

    def upgrade() -> None:
        op.execute("ALTER TABLE item ADD COLUMN price INTEGER")
        op.execute("UPDATE item SET name = 'migrated', notes = notes || notes")
        op.execute("ALTER TABLE item DROP COLUMN price")

    step.upgrade = upgrade
    sys.modules[step.__name__] = step
    migrations.STEPS = (*migrations.STEPS, step.__name__)
    gate.SCHEMA = marks.SCHEMA + 1
    for number in count(1):
        old = path.with_name(f"{number}.db")
        shutil.copy(path.with_name("first.db"), old)
        old.replace(path)
        DataFile.open(path, now=NOW).close()
        yield number


def create(path: Path) -> Iterator[int]:
    """A new file for each step."""
    for number in count(1):
        DataFile.open(path.with_name(f"new{number}.db"), now=NOW).close()
        yield number


MODES: dict[str, Callable[[Path], Iterator[int]]] = {
    "edit": edit,
    "import": big_import,
    "backup": back_up,
    "restore": put_back,
    "migrate": migrate,
    "create": create,
}

if __name__ == "__main__":
    for done in MODES[sys.argv[1]](Path(sys.argv[2])):
        print(done, flush=True)  # noqa: T201  # the acknowledgement
