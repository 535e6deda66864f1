"""kitlog backup, restore, verify: with papers beside the data file."""

import os
import shutil
from pathlib import Path

import pytest
from calling import NOW, Kitlog, one_line

from kitlog.app import open_bench
from kitlog.files.papers import folder_of, place_of
from kitlog.kit.paper import Paper

PDF = b"%PDF-1.7\nporosity 182 s, gauge A"


@pytest.fixture
def paper(demo: Path, tmp_path: Path) -> Paper:
    """A paper of the first item of the demo."""
    scan = tmp_path / "bill.pdf"
    scan.write_bytes(PDF)
    bench = open_bench(demo, clock=lambda: NOW)
    paper = bench.attach(scan)
    bench.edit_items([bench.items()[0].model_copy(update={"papers": (paper,)})])
    bench.close()
    return paper


def test_papers_come_back_with_the_data_file(kitlog: Kitlog, demo: Path, paper: Paper, tmp_path: Path) -> None:
    file, new = tmp_path / "b", tmp_path / "new.kitlog"
    assert kitlog("--data", demo, "backup", file).code == 0
    said = kitlog("--data", new, "restore", file)
    assert said.out == f"restored: {new}\n1 paper is back beside it\n"
    assert (said.code, said.err) == (0, "")
    assert place_of(new, paper.sha256).read_bytes() == PDF
    assert kitlog("--data", new, "verify").code == 0


def test_a_missing_paper_is_named_by_verify_and_by_backup(
    kitlog: Kitlog, demo: Path, paper: Paper, tmp_path: Path
) -> None:
    place_of(demo, paper.sha256).unlink()
    assert "the paper “bill.pdf” is not where it was kept" in one_line(kitlog("--data", demo, "verify"), 3)
    said = kitlog("--data", demo, "backup", tmp_path / "b")
    assert (said.code, said.out) == (3, f"backup written: {tmp_path / 'b'}\n")
    assert "“bill.pdf”" in said.err
    assert kitlog("--data", tmp_path / "new.kitlog", "restore", tmp_path / "b").code == 3


def test_a_data_file_that_moved_without_its_papers_says_so(
    kitlog: Kitlog, demo: Path, paper: Paper, tmp_path: Path
) -> None:
    moved = Path(shutil.copy(demo, tmp_path / "moved.kitlog"))
    said = one_line(kitlog("--data", moved, "verify"), 3)
    assert str(folder_of(moved)) in said
    shutil.copytree(folder_of(demo), folder_of(moved))
    assert kitlog("--data", moved, "verify").code == 0


def test_verify_clears_what_nothing_has_named_for_a_day(kitlog: Kitlog, demo: Path, paper: Paper) -> None:
    orphan = place_of(demo, "ab" + "0" * 62)
    orphan.parent.mkdir(exist_ok=True)
    orphan.write_bytes(PDF)
    young = NOW.timestamp() - 3_600
    os.utime(orphan, (young, young))
    assert kitlog("--data", demo, "verify").out == f"sound: {demo}\n"
    os.utime(orphan, (young - 86_400, young - 86_400))
    assert "1 file was cleared" in kitlog("--data", demo, "verify").out
    assert not orphan.exists()
    assert place_of(demo, paper.sha256).exists()
