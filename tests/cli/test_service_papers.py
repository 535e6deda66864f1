"""kitlog service papers, and papers and measured values with kitlog service record."""

from pathlib import Path

import pytest
from calling import Kitlog, one_line

from kitlog.files.papers import place_of

PDF = b"%PDF-1.7\nporosity 182 s"


@pytest.fixture
def scan(tmp_path: Path) -> Path:
    file = tmp_path / "check 2026.pdf"
    file.write_bytes(PDF)
    return file


def test_a_record_with_its_paper_and_measured_values(kitlog: Kitlog, demo: Path, scan: Path) -> None:
    measured = ("--measured", "porosity 182 s, gauge A, cell 12", "--measured", "line strength 96,5 daN")
    said = kitlog("--data", demo, "service", "record", "Wing A", "--rule", "wing.full", "--paper", scan, *measured)
    assert said.code == 0, said.err
    assert "porosity 182\u00a0s, gauge A, cell 12" in said.out
    assert "line strength 96.5\u00a0daN, gauge not given" in said.out
    (paper,) = kitlog("--data", demo, "service", "papers", "Wing A", "--json").json
    assert (paper["name"], paper["done_on"], paper["missing"]) == ("check 2026.pdf", "2026-05-08", False)
    assert place_of(demo, paper["sha256"]).read_bytes() == PDF


@pytest.mark.parametrize(
    ("measured", "words"),
    [
        ("porosity", "is no measurement"),
        ("porosity 12 daN", "porosity is not measured in daN"),
        ("porosity -3 s", "porosity of -3"),
    ],
)
def test_what_cannot_be_measured_writes_nothing(kitlog: Kitlog, demo: Path, measured: str, words: str) -> None:
    before = demo.read_bytes()
    said = kitlog("--data", demo, "service", "record", "Wing A", "--rule", "wing.full", "--measured", measured)
    assert words in one_line(said)
    assert demo.read_bytes() == before


def test_a_file_that_is_no_paper_is_named(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    (tmp_path / "run.pdf").write_bytes(b"MZ")
    before = demo.read_bytes()
    file = tmp_path / "run.pdf"
    said = one_line(kitlog("--data", demo, "service", "record", "Wing A", "--rule", "wing.full", "--paper", file))
    assert f"{file}: it is neither PDF nor JPEG nor PNG" in said
    assert demo.read_bytes() == before


def test_papers_are_added_to_an_item_listed_and_saved(kitlog: Kitlog, demo: Path, scan: Path, tmp_path: Path) -> None:
    assert kitlog("--data", demo, "service", "papers").out == "no paper is on record\n"
    assert kitlog("--data", demo, "service", "papers", "Wing A", "--add", scan).out == (
        "Wing A: check 2026.pdf, PDF, 1\u00a0kB\n"
    )
    kitlog("--data", demo, "service", "papers", "Wing A", "--add", scan)
    out = tmp_path / "out"
    out.mkdir()
    assert kitlog("--data", demo, "service", "papers", "--save", out).out.endswith(f"saved: {out / scan.name}\n")
    assert (out / scan.name).read_bytes() == PDF


def test_a_missing_paper_is_told_where_it_is_listed_and_where_it_is_saved(
    kitlog: Kitlog, demo: Path, scan: Path, tmp_path: Path
) -> None:
    kitlog("--data", demo, "service", "papers", "Wing A", "--add", scan)
    (paper,) = kitlog("--data", demo, "service", "papers", "--json").json
    place_of(demo, paper["sha256"]).unlink()
    assert "(not where it was kept)" in kitlog("--data", demo, "service", "papers").out
    said = kitlog("--data", demo, "service", "papers", "--save", tmp_path)
    assert said.code == 3
    assert "“check 2026.pdf” is not where it was kept" in said.err


def test_wrong_use(kitlog: Kitlog, demo: Path, scan: Path, tmp_path: Path) -> None:
    assert "--add" in one_line(kitlog("--data", demo, "service", "papers", "--add", scan))
    assert "no such folder" in one_line(kitlog("--data", demo, "service", "papers", "--save", tmp_path / "no"))
    assert "no item is called" in one_line(kitlog("--data", demo, "service", "papers", "Nothing"))
