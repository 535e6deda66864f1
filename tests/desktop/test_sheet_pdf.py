"""The sheet as PDF from the page Repack: saved whole, on the paper chosen, and faults of the world in words."""

import errno
import os
from pathlib import Path

import pytest
from desk_steps import repack_page, work_on
from pdf_reading import all_text, flat, pages
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QFontDatabase
from PySide6.QtWidgets import QFileDialog

from kitlog.desktop.pdf_writing import Paper
from kitlog.desktop.repack_page.sheet_saving import ask_pdf
from kitlog.desktop.sheet_pdf import drawn_days, sheet_pdf
from kitlog.desktop.window import Window
from kitlog.fault import Fault, SystemFault
from kitlog.outing.ticks import Step
from kitlog.wording.faults import fault_text
from kitlog.wording.findings import say
from kitlog.wording.words import first_upper

LETTER_PT = (612.0, 792.0)
"""8.5 x 11 in (ANSI/ASME Y14.1)."""


def choose(monkeypatch: pytest.MonkeyPatch, to: Path | str, kind: str = "") -> list[str]:
    """Answer the dialog for files; what it offered."""
    offered: list[str] = []

    def chosen(_parent: object, title: str, proposed: str, kinds: str) -> tuple[str, str]:
        offered.extend((title, proposed, kinds))
        return str(to), kind

    monkeypatch.setattr(QFileDialog, "getSaveFileName", chosen)
    return offered


def test_saved_by_the_button_with_the_days_drawn(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot
) -> None:
    page = repack_page(window, Step.CLOSE)
    to = tmp_path / "sheet.pdf"
    offered = choose(monkeypatch, to)
    qtbot.mouseClick(page.closing.sheet_pdf_act, Qt.MouseButton.LeftButton)
    assert page.remark.text() == "Sheet saved: sheet.pdf"
    assert Path(offered[1]).name == "2026-05-09 sheet.pdf"
    read = pages(to.read_bytes())
    assert len(read) > 1
    assert sum(one.images for one in read) == 0
    text = all_text(to.read_bytes())
    assert "Headlamp" in text
    assert "5 to 95 % of days" in text
    assert "10 000 days drawn at random" in text


def test_the_paper_is_that_of_the_kind_chosen(window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page = repack_page(window, Step.CLOSE)
    to = tmp_path / "sheet.pdf"
    choose(monkeypatch, to, "PDF on US letter (*.pdf)")
    page.acts.save_sheet_pdf()
    assert {one.box for one in pages(to.read_bytes())} == {LETTER_PT}


@pytest.mark.parametrize(("locale", "paper"), [("en_US", Paper.LETTER), ("de_AT", Paper.A4)])
def test_the_paper_of_the_place_comes_first(
    window: Window, monkeypatch: pytest.MonkeyPatch, locale: str, paper: Paper
) -> None:
    page, before = repack_page(window, Step.CLOSE), QLocale()
    assert page.progress is not None
    choose(monkeypatch, "x.pdf")
    try:
        QLocale.setDefault(QLocale(locale))
        assert ask_pdf(window.desk, page.progress.assessment, page) == (Path("x.pdf"), paper)
    finally:
        QLocale.setDefault(before)


def test_nothing_is_written_if_no_file_is_chosen(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page, before = repack_page(window, Step.CLOSE), set(tmp_path.iterdir())
    choose(monkeypatch, "")
    page.acts.save_sheet_pdf()
    assert set(tmp_path.iterdir()) == before


def test_a_folder_that_is_not_there_is_said(window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    page, faults = repack_page(window, Step.CLOSE), list[Fault]()
    window.desk.faulted.connect(faults.append)
    choose(monkeypatch, tmp_path / "nowhere" / "sheet.pdf")
    page.acts.save_sheet_pdf()
    assert [fault_text(fault).what for fault in faults] == ["its folder does not exist"]
    assert "saved" not in page.remark.text()


@pytest.mark.parametrize(
    ("number", "words"), [(errno.ENOSPC, "the disk is full"), (errno.EACCES, "it may not be written or read")]
)
def test_what_lay_there_stays_if_the_sheet_cannot_be_written(
    window: Window, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, words: str
) -> None:
    page, faults, to = repack_page(window, Step.CLOSE), list[Fault](), tmp_path / "sheet.pdf"
    to.write_bytes(b"the sheet of yesterday")
    before = set(tmp_path.iterdir())
    window.desk.faulted.connect(faults.append)
    choose(monkeypatch, to)

    def failing(_handle: int) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(os, "fsync", failing)
    page.acts.save_sheet_pdf()
    monkeypatch.undo()
    assert [fault_text(fault).what for fault in faults] == [words]
    assert to.read_bytes() == b"the sheet of yesterday"
    assert set(tmp_path.iterdir()) == before


def test_it_says_what_the_web_page_and_the_findings_say(window: Window) -> None:
    bench = window.desk.bench
    outing = work_on(bench, "on foot")
    assessment, names = bench.assess(outing), window.desk.names()
    text = all_text(sheet_pdf(assessment, names, bench.library, bench.now()))
    for finding in assessment.findings:
        title = flat(first_upper(say(finding, names).title))
        assert (title in text) or finding.state.value == "fine"
    for line in assessment.lines:
        assert line.item.name in text
    assert "days drawn" not in text


def test_days_are_drawn_to_the_end_and_are_the_same_each_time(window: Window) -> None:
    bench = window.desk.bench
    assessment = window.desk.assessment()
    assert assessment is not None
    first, second = (drawn_days(assessment, bench.library) for _time in range(2))
    assert first is not None
    assert first == second
    assert first.is_final
    outing = assessment.outing.model_copy(update={"phases": ()})
    assert drawn_days(bench.assess(outing), bench.library) is None


def test_without_a_font_it_says_so(window: Window, monkeypatch: pytest.MonkeyPatch) -> None:
    bench, assessment = window.desk.bench, window.desk.assessment()
    assert assessment is not None
    monkeypatch.setattr(QFontDatabase, "families", lambda *_given: [])
    with pytest.raises(SystemFault) as caught:
        sheet_pdf(assessment, {}, bench.library, bench.now())
    assert "no font is installed" in fault_text(caught.value).line
