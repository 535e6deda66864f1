"""Two programs on one file: each waits its turn, nothing is lost, nobody sees a lock."""

import subprocess
import sys
from pathlib import Path

import pytest
from filled_files import NOW

from kitlog.store.data_file import DataFile

WRITE = """
import sys
from datetime import UTC, datetime
from pathlib import Path
from kitlog.kit.item import Item
from kitlog.store.data_file import DataFile

name, path, count = sys.argv[1], Path(sys.argv[2]), int(sys.argv[3])
data = DataFile.open(path, now=datetime.now(UTC))
for number in range(count):
    with data.writing() as writer:
        total = int(writer.preferences().get("total", "0"))
        writer.put(Item(id=f"{name}{number}", name=name, serves=("map",)))
        writer.put_preference("total", str(total + 1))
data.close()
"""


@pytest.mark.parametrize("count", [60, pytest.param(400, marks=pytest.mark.slow)])
def test_both_write_everything(path: Path, count: int) -> None:
    DataFile.open(path, now=NOW).close()
    programs = [
        subprocess.Popen([sys.executable, "-c", WRITE, name, path, str(count)], stderr=subprocess.PIPE, text=True)
        for name in ("a", "b")
    ]
    assert [program.communicate()[1] for program in programs] == ["", ""]
    data = DataFile.open(path, now=NOW)
    with data.reading() as reader:
        assert reader.preferences() == {"total": str(2 * count)}
        assert {item.id for item in reader.items()} == {f"{name}{n}" for name in "ab" for n in range(count)}
    data.close()


def test_two_that_make_the_file_at_once_have_the_same(path: Path) -> None:
    programs = [
        subprocess.Popen([sys.executable, "-c", WRITE, name, path, "5"], stderr=subprocess.PIPE, text=True)
        for name in ("a", "b", "c")
    ]
    assert [program.communicate()[1] for program in programs] == ["", "", ""]
    data = DataFile.open(path, now=NOW)
    with data.reading() as reader:
        assert len(reader.items()) == 15
    data.close()
    assert [place.name for place in path.parent.iterdir()] == [path.name]
