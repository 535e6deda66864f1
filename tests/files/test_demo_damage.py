"""A demo scenario that is missing a file, or was changed, is refused with the file and the reason."""

import shutil
from itertools import count
from pathlib import Path

import pytest

from kitlog.fault import SystemFault
from kitlog.files.demo import load_demo

FOLDER = Path(__file__).parents[2] / "resources" / "demo"


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    return Path(shutil.copytree(FOLDER, tmp_path / "demo"))


@pytest.mark.parametrize("file", ["kit.csv", "service.csv", "season.toml", "outings/lake-osmere-course.json"])
def test_a_missing_file_is_named(copy: Path, file: str) -> None:
    (copy / file).unlink()
    refused(copy, file)


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("kit.csv", "Wing A,wing,1,5240", "Wing A,wing,1,heavy"),
        ("service.csv", "Wing A,wing.full", "Wing Z,wing.full"),
        ("season.toml", 'kind = "blow"', 'kind = "blow"\nunknown = 1'),
        ("season.toml", 'item = "Helmet A"', 'item = "Helmet Z"'),
        ("season.toml", 'item = "Headlamp"', 'item = "Lantern"'),
        ("season.toml", "[pilot]", "[pilot"),
        ("outings/skarnock-cross-country.json", '"Wing A",', '"Wing Z",'),
        ("outings/skarnock-cross-country.json", '"top_m": 3280', '"top_m": "high"'),
        ("outings/skarnock-cross-country.json", "{", ""),
    ],
)
def test_a_changed_file_is_named(copy: Path, file: str, old: str, new: str) -> None:
    text = (copy / file).read_text(encoding="utf-8")
    assert old in text
    (copy / file).write_text(text.replace(old, new, 1), encoding="utf-8")
    refused(copy, file)


def refused(copy: Path, file: str) -> None:
    numbers = count()
    with pytest.raises(SystemFault) as caught:
        load_demo(copy, lambda: str(next(numbers)))
    assert caught.value.code == "demo.damaged"
    assert caught.value.facts["file"] == str(copy / file)
    assert caught.value.facts["reason"]
