"""Which files of folders are read, and what is told of the others."""

import os
from pathlib import Path

import pytest

from kitlog.fault import InputFault
from kitlog.files.recordings.search import label_of, recordings_among


def found(*paths: Path) -> list[str]:
    return [str(one.name) if isinstance(one, Path) else one.code for one in recordings_among(paths)]


def make(folder: Path, *names: str) -> None:
    for name in names:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(b"x")


def test_a_folder_is_searched_below_in_any_case_and_sorted(tmp_path: Path) -> None:
    make(tmp_path, "b.IGC", "a.igc", "c.Igc", "2026/z.igc", "2025/y.iGc", "notes.txt", "igc")
    assert found(tmp_path) == ["a.igc", "b.IGC", "c.Igc", "y.iGc", "z.igc"]


def test_a_file_is_read_whatever_it_is_called_and_where_it_was_named(tmp_path: Path) -> None:
    make(tmp_path, "flight.txt", ".hidden.igc", "a.igc")
    assert found(tmp_path / "flight.txt", tmp_path / ".hidden.igc") == ["flight.txt", ".hidden.igc"]


def test_none_is_read_twice(tmp_path: Path) -> None:
    make(tmp_path, "a.igc", "b.igc")
    assert found(tmp_path / "b.igc", tmp_path, tmp_path / ".." / tmp_path.name / "a.igc") == ["b.igc", "a.igc"]


def test_hidden_ones_are_told_of(tmp_path: Path) -> None:
    make(tmp_path, "._a.igc", "a.igc", ".trash/b.igc")
    assert found(tmp_path) == ["recording.hidden", "a.igc", "recording.hidden"]


def test_a_folder_that_is_hidden_itself_was_named_by_the_person(tmp_path: Path) -> None:
    make(tmp_path, ".card/a.igc")
    assert found(tmp_path / ".card") == ["a.igc"]


def test_an_empty_folder_is_told_of(tmp_path: Path) -> None:
    make(tmp_path, "notes.txt")
    assert found(tmp_path) == ["recording.none_in_folder"]


def test_what_is_not_there_is_left_to_the_reading(tmp_path: Path) -> None:
    assert found(tmp_path / "gone") == ["gone"]


def test_a_folder_that_cannot_be_looked_into_is_told_of(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    make(tmp_path, "a.igc", "shut/b.igc")
    real = os.scandir

    def scandir(path: str) -> object:  # for root every folder is open
        if Path(path).name == "shut":
            raise PermissionError(13, "Permission denied", path)
        return real(path)

    monkeypatch.setattr(os, "scandir", scandir)
    one, fault = recordings_among([tmp_path])
    assert isinstance(one, Path)
    assert isinstance(fault, InputFault)
    assert (fault.code, fault.facts["file"]) == ("recording.cannot_read", str(tmp_path / "shut"))


def test_links_to_folders_cannot_lead_round(tmp_path: Path) -> None:
    make(tmp_path, "a.igc")
    (tmp_path / "round").symlink_to(tmp_path, target_is_directory=True)
    assert found(tmp_path) == ["a.igc"]


@pytest.mark.parametrize(
    ("name", "shown"), [("flug ü.igc", "flug ü.igc"), ("a\nb.igc", "a\ufffdb.igc"), ("a\udcff.igc", "a\ufffd.igc")]
)
def test_a_name_can_be_shown(name: str, shown: str) -> None:
    assert label_of(Path(name)) == shown
