"""Papers in the window: the backup tells what is missing, a data file that moved alone says so at the start."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog

from kitlog.desktop.window import Window
from kitlog.desktop.window_memory import WindowMemory
from kitlog.desktop.windows import Windows
from kitlog.files import backup
from kitlog.files.papers import folder_of, place_of
from kitlog.files.resources import resources_folder
from kitlog.kit.paper import Paper
from kitlog.paint.icons import IconSet
from kitlog.workbench.workbench import Workbench


@pytest.fixture
def paper(demo_bench: Workbench, tmp_path: Path) -> Paper:
    (tmp_path / "bill.pdf").write_bytes(b"%PDF-1.7 a bill")
    paper = demo_bench.attach(tmp_path / "bill.pdf")
    demo_bench.edit_items([demo_bench.items()[0].model_copy(update={"papers": (paper,)})])
    return paper


def back_up(window: Window, to: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(to), ""))
    window.acts.back_up()


def test_the_backup_of_the_window_carries_the_papers(
    window: Window, paper: Paper, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    back_up(window, tmp_path / "b", monkeypatch)
    assert [one.sha256 for one in backup.check(tmp_path / "b").papers] == [paper.sha256]
    assert not window.strip.isVisible()


def test_a_paper_that_could_not_go_in_is_told(
    window: Window, demo_bench: Workbench, paper: Paper, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place_of(demo_bench.path, paper.sha256).unlink()
    back_up(window, tmp_path / "b", monkeypatch)
    assert backup.check(tmp_path / "b").papers == ()
    assert window.strip.isVisible()


def test_a_data_file_that_moved_without_its_papers_says_so_at_the_start(
    demo_bench: Workbench,
    paper: Paper,
    tmp_path: Path,
    open_file: Callable[[Path], Workbench],
    memory: WindowMemory,
    styled: object,
    qtbot,
) -> None:
    icons = IconSet(resources_folder() / "icons")
    (tmp_path / "usb").mkdir()
    moved = open_file(Path(shutil.copy(demo_bench.path, tmp_path / "usb" / "kit.kitlog")))
    lost = moved.papers_lost()
    assert lost is not None
    assert lost.facts["folder"] == str(folder_of(moved.path))
    windows = Windows(icons, memory, None)
    window = windows.open(moved)
    qtbot.addWidget(window)
    qtbot.waitUntil(window.strip.isVisible)
    shutil.copytree(folder_of(demo_bench.path), folder_of(moved.path))
    assert moved.papers_lost() is None
    windows.let_go()
