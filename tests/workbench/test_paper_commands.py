"""Papers through the workbench: bytes first, rows second; opened, saved, missed, swept."""

import os
import shutil
from datetime import timedelta
from pathlib import Path

import pytest
from scenario import EVENING

from kitlog.fault import InputFault, SystemFault
from kitlog.files import backup
from kitlog.files.papers import folder_of, place_of
from kitlog.kit.paper import MediaType, Paper
from kitlog.kit.service import ServiceRecord
from kitlog.workbench.paper_check import lacking_papers, sweep_papers
from kitlog.workbench.workbench import Workbench

PDF, PNG = b"%PDF-1.7\nporosity 182 s", b"\x89PNG\r\n\x1a\n...."


@pytest.fixture
def scan(tmp_path: Path) -> Path:
    file = tmp_path / "check 2026.pdf"
    file.write_bytes(PDF)
    return file


def on_record(bench: Workbench, *papers: Paper) -> ServiceRecord:
    rule = next(rule for rule in bench.rules() if rule.rule == "wing.full")
    record = ServiceRecord(
        id=bench.new_id(), item_id=rule.item_id, rules=(rule.id,), done_on=EVENING.date(), papers=papers
    )
    bench.add_record(record)
    return record


def code(call) -> str:
    with pytest.raises((InputFault, SystemFault)) as caught:
        call()
    return caught.value.code


def test_a_paper_is_attached_to_a_record_and_read_back(bench: Workbench, scan: Path) -> None:
    paper = bench.attach(scan)
    assert (paper.name, paper.media_type, paper.size) == ("check 2026.pdf", MediaType.PDF, len(PDF))
    record = on_record(bench, paper)
    scan.unlink()
    assert bench.papers_of(record.item_id) == (paper,)
    assert bench.paper_bytes(paper) == PDF
    assert bench.papers_lacking() == ()


def test_what_is_no_paper_is_refused_with_its_file(bench: Workbench, tmp_path: Path) -> None:
    (tmp_path / "run.pdf").write_bytes(b"MZ")
    with pytest.raises(InputFault) as caught:
        bench.attach(tmp_path / "run.pdf")
    assert (caught.value.code, caught.value.facts["file"]) == ("paper.not_a_paper", str(tmp_path / "run.pdf"))


def test_saved_into_a_folder_it_takes_no_name_that_is_taken(bench: Workbench, scan: Path, tmp_path: Path) -> None:
    paper = bench.attach(scan)
    folder = tmp_path / "out"
    folder.mkdir()
    names = [bench.save_paper(paper, folder).name for _ in range(3)]
    assert names == ["check 2026.pdf", "check 2026 2.pdf", "check 2026 3.pdf"]
    assert bench.save_paper(paper, tmp_path / "other.pdf").read_bytes() == PDF


def test_papers_of_an_item_are_its_own_and_those_of_its_records(bench: Workbench, scan: Path, tmp_path: Path) -> None:
    photo = tmp_path / "wing.png"
    photo.write_bytes(PNG)
    record = on_record(bench, bench.attach(scan))
    item = bench.item(record.item_id)
    assert item is not None
    bench.edit_items([item.model_copy(update={"papers": (bench.attach(photo), bench.attach(scan))})])
    assert [paper.name for paper in bench.papers_of(record.item_id)] == ["wing.png", "check 2026.pdf"]
    bench.strike_record(record.id)
    assert len(bench.papers_of(record.item_id)) == 2
    assert code(lambda: bench.papers_of("nobody")) == "item.unknown"


def test_missing_and_damaged_papers_are_named(bench: Workbench, scan: Path) -> None:
    paper = bench.attach(scan)
    on_record(bench, paper)
    place_of(bench.path, paper.sha256).write_bytes(b"%PDF-1.7 other")
    assert [fault.code for fault in lacking_papers(bench.path)] == ["paper.damaged"]
    place_of(bench.path, paper.sha256).unlink()
    assert [(f.code, f.facts["name"]) for f in bench.papers_lacking()] == [("paper.missing", "check 2026.pdf")]
    bench.attach(scan)
    assert lacking_papers(bench.path) == ()


def test_a_data_file_that_moved_without_its_folder_says_so(bench: Workbench, scan: Path, tmp_path: Path) -> None:
    on_record(bench, bench.attach(scan))
    moved = tmp_path / "moved.kitlog"
    shutil.copy(bench.path, moved)
    assert [fault.code for fault in lacking_papers(moved)] == ["paper.folder_missing"]
    shutil.copytree(folder_of(bench.path), folder_of(moved))
    assert lacking_papers(moved) == ()


@pytest.mark.skipif(os.name == "nt", reason="links want rights there")
def test_a_link_to_the_data_file_finds_its_papers(bench: Workbench, scan: Path, tmp_path: Path) -> None:
    on_record(bench, bench.attach(scan))
    (tmp_path / "elsewhere").mkdir()
    link = tmp_path / "elsewhere" / "link.kitlog"
    link.symlink_to(bench.path)
    assert lacking_papers(link) == ()


def test_a_paper_whose_record_is_undone_stays_with_the_struck_record(bench: Workbench, scan: Path) -> None:
    record = on_record(bench, bench.attach(scan))
    bench.undo()
    assert next(r for r in bench.records() if r.id == record.id).struck_at is not None
    assert sweep_papers(bench.path, EVENING + timedelta(days=3_000)) == 0


def test_sweeping_spares_what_a_dated_copy_still_names(bench: Workbench, scan: Path, tmp_path: Path) -> None:
    item = bench.items()[0]
    other = tmp_path / "b.png"
    other.write_bytes(PNG)
    paper, orphan = bench.attach(scan), bench.attach(other)
    bench.edit_items([item.model_copy(update={"papers": (paper,)})])
    bench._data.copy_beside("by hand", EVENING)
    bench.edit_items([item])
    late = EVENING + timedelta(days=3_000)
    assert sweep_papers(bench.path, late) == 1
    assert not place_of(bench.path, orphan.sha256).exists()
    assert place_of(bench.path, paper.sha256).exists()
    (copy,) = (bench.path.parent / "backups").iterdir()
    copy.write_bytes(b"SQLite format 3\0 damaged")
    assert sweep_papers(bench.path, late) == 0
    copy.unlink()
    assert sweep_papers(bench.path, late) == 1


def test_a_backup_carries_the_papers_and_names_those_that_are_missing(
    bench: Workbench, scan: Path, tmp_path: Path
) -> None:
    (tmp_path / "b.png").write_bytes(PNG)
    paper, gone = bench.attach(scan), bench.attach(tmp_path / "b.png")
    on_record(bench, paper, gone)
    assert bench.backup(tmp_path / "whole") == ()
    place_of(bench.path, gone.sha256).unlink()
    lacking = bench.backup(tmp_path / "part")
    assert [(fault.code, fault.facts["name"]) for fault in lacking] == [("paper.missing", "b.png")]
    assert {p.sha256 for p in backup.check(tmp_path / "whole").papers} == {paper.sha256, gone.sha256}
    assert {p.sha256 for p in backup.check(tmp_path / "part").papers} == {paper.sha256}
