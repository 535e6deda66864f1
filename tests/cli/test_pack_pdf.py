"""kitlog pack --pdf: the sheet to print, beside the answer."""

import os
from pathlib import Path

import pytest
from calling import Kitlog, one_line
from pdf_reading import all_text, pages
from PySide6.QtWidgets import QApplication

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

O1, O3 = "Skarnock cross-country", "Lake Osmere course"


@pytest.fixture(scope="session", autouse=True)
def gui() -> QApplication:
    """One application for the process, with widgets: the window's tests may run in it as well."""
    running = QApplication.instance()
    return running if isinstance(running, QApplication) else QApplication([])


def test_the_sheet_beside_the_answer(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    to = tmp_path / "sheet.pdf"
    answer = kitlog("--data", demo, "pack", "--outing", O1, "--json", "--pdf", to).json
    data = to.read_bytes()
    read, text = pages(data), all_text(data)
    assert len(read) > 1
    assert sum(page.images for page in read) == 0
    assert {page.box for page in read} == {(595.0, 842.0)}
    for finding in answer["findings"]:
        assert finding["state"] == "fine" or " ".join(finding["title"].split())[1:] in text
    for line in answer["lines"]:
        assert line["item"] in text
    assert "made 8 May 2026, 20:00" in text
    assert "5 to 95 % of days" in text
    if os.name == "posix":
        assert to.stat().st_mode & 0o077 == 0


def test_us_letter_and_the_web_page_at_once(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    to, web = tmp_path / "sheet.pdf", tmp_path / "sheet.html"
    said = kitlog("--data", demo, "pack", "--outing", O3, "--pdf", to, "--paper", "letter", "--html", web, "--strict")
    assert said.code == 1
    assert {page.box for page in pages(to.read_bytes())} == {(612.0, 792.0)}
    assert web.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")


def test_refused(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    call = ("--data", demo, "pack", "--outing", O1)
    assert "“A5” cannot be chosen" in one_line(kitlog(*call, "--pdf", tmp_path / "x.pdf", "--paper", "A5"))
    assert "--pdf FILE is missing" in one_line(kitlog(*call, "--paper", "A4"))
    assert "its folder does not exist" in one_line(kitlog(*call, "--pdf", tmp_path / "no" / "x.pdf"))
    before = demo.read_bytes()
    assert "a data file lies there" in one_line(kitlog(*call, "--pdf", demo))
    assert demo.read_bytes() == before
    assert list(tmp_path.glob("*.pdf")) == []
