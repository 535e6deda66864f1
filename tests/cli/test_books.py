"""kitlog service book, kitlog kit inventory: text, PDF, JSON."""

import os
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from calling import NOW, Kitlog, one_line
from pdf_reading import all_text, bare, pages
from PySide6.QtWidgets import QApplication
from small_photo import png

from kitlog.app import App
from kitlog.files.papers import folder_of
from kitlog.kit.measurement import Measured, Measurement
from kitlog.kit.paper import Paper
from kitlog.kit.service import Result, ServiceRecord
from kitlog.workbench.workbench import Workbench

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

WING = "Wing A"


@pytest.fixture(scope="session", autouse=True)
def gui() -> QApplication:
    """One application for the process, with widgets: the window's tests may run in it as well."""
    running = QApplication.instance()
    return running if isinstance(running, QApplication) else QApplication([])


@pytest.fixture
def papers(tmp_path: Path) -> Callable[[Workbench, str], Paper]:
    def attach(bench: Workbench, name: str) -> Paper:
        file = tmp_path / name
        file.write_bytes(b"%PDF-1.4 bill" if name.endswith(".pdf") else png(colour=(len(name) * 7 % 256, 90, 40)))
        return bench.attach(file)

    return attach


@pytest.fixture
def kept(demo: Path, papers: Callable[[Workbench, str], Paper]) -> Path:
    """The demo with a serial number, a value, photos, measurements, and a record that was struck."""
    bench = App(clock=lambda: NOW).bench(demo, create=False)
    wing = next(item for item in bench.items() if item.name == WING)
    rule = next(rule for rule in bench.rules() if rule.item_id == wing.id and rule.rule == "wing.full")
    own = tuple(papers(bench, name) for name in ("front.png", "bill.pdf"))
    bench.edit_items([wing.model_copy(update={"papers": own, "serial": "DW-2231", "value": 4890.0})])
    facts = {"item_id": wing.id, "rules": (rule.id,), "result": Result.PASSED, "currency": "CHF"}
    bench.add_record(
        ServiceRecord(
            id="kept",
            done_on=date(2025, 11, 12),
            who="Workshop Lenner",
            cost=175.5,
            remarks="All lines measured.",
            papers=(papers(bench, "tear.png"),),
            measurements=(Measurement(what=Measured.POROSITY, value=201, unit="s", gauge="gauge A", place="top"),),
            **facts,
        )
    )
    bench.add_record(ServiceRecord(id="struck", done_on=date(2025, 12, 1), who="Nobody", cost=20, **facts))
    bench.strike_record("struck")
    bench.close()
    return demo


def test_the_book_says_all_that_is_on_record(kitlog: Kitlog, kept: Path) -> None:
    said = kitlog("--data", kept, "service", "book", WING)
    assert said.code == 0
    text = " ".join(said.out.split())
    for words in (
        "Service book: Wing A",
        "As kept by Ines Maravel, judged for 8 May 2026",
        "Serial number: DW-2231",
        "Made on: not on record",
        "Before the log: 112.0 h, 96 launches, as entered",
        "[struck] 1 Dec 2025: Full inspection, passed",
        "struck through on 8 May 2026: counts for nothing",
        "porosity 201 s, gauge A, top",
        "18 Apr 2026: Event: tree",
        "Papers: front.png, photo (PNG)",
        "Figures of two gauges are never joined",
        "have the last word",
    ):
        assert words.replace("\u00a0", " ") in text.replace("\u00a0", " "), words
    assert "4 890" not in text.replace("\u2009", " ")
    assert "cost" not in text
    assert all(len(line) <= 80 for line in said.out.splitlines())


def test_costs_are_shown_where_they_are_asked_for_and_struck_ones_left_out_of_the_sum(
    kitlog: Kitlog, kept: Path
) -> None:
    text = " ".join(kitlog("--data", kept, "service", "book", WING, "--costs", "--currency", "EUR").out.split())
    text = text.replace("\u2009", " ").replace("\u00a0", " ")
    for words in ("Value: 4 890 EUR", "Spent on service: 175.50 CHF", "cost: 175.50 CHF", "cost: 20 CHF"):
        assert words in text


def test_the_book_as_pdf_has_the_same_words_and_its_photos(kitlog: Kitlog, kept: Path, tmp_path: Path) -> None:
    to = tmp_path / "book.pdf"
    said = kitlog("--data", kept, "service", "book", WING, "--pdf", to)
    read, text = pages(to.read_bytes()), bare(all_text(to.read_bytes()))
    assert {page.box for page in read} == {(595.0, 842.0)}
    assert sum(page.images for page in read) == 2
    for line in said.out.splitlines():
        words = line.strip().removeprefix("[struck] ")
        if words.startswith(("Looked over", "Serial", "Due ", "Rule: ", "by ", "at ", "porosity")):
            assert bare(words.split(":")[0]) in text, line
    for words in ("Workshop Lenner", "struck through on 8 May 2026", "Handed over to", "page 1 of"):
        assert bare(words) in text
    if os.name == "posix":
        assert to.stat().st_mode & 0o077 == 0


def test_a_photo_that_is_missing_or_damaged_is_said_to_be(kitlog: Kitlog, kept: Path, tmp_path: Path) -> None:
    lying = sorted(path for path in folder_of(kept).rglob("*") if path.is_file())
    photo = next(path for path in lying if path.read_bytes() == png(colour=(len("front.png") * 7 % 256, 90, 40)))
    photo.unlink()
    to = tmp_path / "book.pdf"
    said = kitlog("--data", kept, "service", "book", WING, "--pdf", to)
    assert said.code == 0
    assert "front.png (its file is missing or damaged)" in said.out
    assert sum(page.images for page in pages(to.read_bytes())) == 1
    assert bare("Photo not shown: front.png, its file is missing or damaged.") in bare(all_text(to.read_bytes()))


def test_without_photos_they_are_listed_by_name(kitlog: Kitlog, kept: Path, tmp_path: Path) -> None:
    to = tmp_path / "book.pdf"
    kitlog("--data", kept, "service", "book", WING, "--no-photos", "--pdf", to, "--paper", "letter")
    read = pages(to.read_bytes())
    assert sum(page.images for page in read) == 0
    assert {page.box for page in read} == {(612.0, 792.0)}
    assert "front.png" in all_text(to.read_bytes())


def test_a_total_over_the_turn_of_a_year_is_said_to_be_shared_out(kitlog: Kitlog, kept: Path) -> None:
    text = " ".join(kitlog("--data", kept, "service", "book", WING).out.replace("\u00a0", " ").split())
    assert "2024: 1 entry (1 of them a total shared out)" in text
    assert "A total entered over the turn of a year is shared out by days" in text


def test_the_book_as_json_keeps_struck_entries(kitlog: Kitlog, kept: Path) -> None:
    told = kitlog("--data", kept, "service", "book", WING, "--json").json
    assert told["item"]["serial"] == "DW-2231"
    assert [entry["on"] for entry in told["history"] if entry["struck"]] == ["2025-12-01"]
    assert told["airtime_h"] == pytest.approx(180.4, abs=0.05)
    years = told["log"]["years"]
    assert sum(year["airtime_h"] for year in years) == pytest.approx(told["log"]["airtime_h"])
    assert sum(year["launches"] for year in years) == told["log"]["launches"]
    assert [(year["year"], year["flights"], year["shared_totals"]) for year in years][-1] == (2024, 1, 1)
    assert {rule["judged"]["state"] for rule in told["rules"]} <= {"in date", "due soon", "overdue", "no record"}


def test_the_inventory_has_serials_values_photos_and_what_is_missing(
    kitlog: Kitlog, kept: Path, tmp_path: Path
) -> None:
    to = tmp_path / "inventory.pdf"
    said = kitlog("--data", kept, "kit", "inventory", "--pdf", to, "--currency", "EUR")
    text = " ".join(said.out.split()).replace("\u2009", " ").replace("\u00a0", " ")
    for words in (
        "Listed: 49 items",
        "4 890 EUR, of 1 with a value",
        "serial number DW-2231",
        "Without a value: Wing B",
    ):
        assert words in text
    printed, read = bare(all_text(to.read_bytes())), pages(to.read_bytes())
    assert sum(page.images for page in read) == 1
    assert "4890EUR" in printed
    for words in ("Policy and claim number", "front.png", "Papers: front.png, photo (PNG)"):
        assert bare(words) in printed


def test_the_inventory_of_some_items(kitlog: Kitlog, kept: Path) -> None:
    told = kitlog("--data", kept, "kit", "inventory", WING, "Helmet A", "--json").json
    assert [item["name"] for item in told["items"]] == [WING, "Helmet A"]
    assert (told["value"], told["without_value"], told["owner"]) == (4890.0, ["Helmet A"], "Ines Maravel")
    assert kitlog("--data", kept, "kit", "inventory", "Helmet A", "--json").json["value"] is None


def test_refused(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    assert "no item is called “Wing C”" in one_line(kitlog("--data", demo, "service", "book", "Wing C"))
    assert "--pdf FILE is missing" in one_line(kitlog("--data", demo, "kit", "inventory", "--paper", "A4"))
    assert "a data file lies there" in one_line(kitlog("--data", demo, "kit", "inventory", "--pdf", demo))
    assert "its folder does not exist" in one_line(
        kitlog("--data", demo, "service", "book", WING, "--pdf", tmp_path / "no" / "x.pdf")
    )
