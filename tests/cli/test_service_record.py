"""Service records by the command line, on the demo."""

from pathlib import Path

import pytest
from calling import Kitlog, one_line

FULL = ("service", "record", "Wing A", "--rule", "wing.full")


def test_all_its_fields(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog(
        *("--data", demo, *FULL, "--rule", "wing.trim", "--on", "2026-05-07", "--who", "Loft Tarn"),
        *("--result", "passed with remarks", "--hours", "240", "--launches", "340", "--cost", "180.5"),
        *("--currency", "EUR", "--remarks", "two cells thin", "--next-due", "2027-05-07", "--next-within", "60"),
        *("--measured", "porosity 182 s, gauge A, cell 12", "--measured", "line strength 96 daN", "--json"),
    ).json
    assert (said["item"], said["result"], said["cost"], said["currency"]) == (
        "Wing A",
        "passed with remarks",
        180.5,
        "EUR",
    )
    assert [one["unit"] for one in said["measurements"]] == ["s", "daN"]
    due = {one["rule"]: one for one in said["due"]}
    assert set(due) == {"wing.full", "wing.trim"}
    assert due["wing.full"]["due_on"] == "2027-05-07"
    assert due["wing.full"]["hours_left"] == pytest.approx(60)


def test_in_words(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, *FULL, "--who", "Loft Tarn", "--result", "failed", "--cost", "90")
    words = " ".join(said.out.replace("\u00a0", " ").split())
    assert "Recorded: Wing A, 8 May 2026 Loft Tarn, failed, 90.00" in words
    assert "full inspection: overdue; failed on 8 May 2026: open until it passes" in words
    assert "last word" in words
    assert all(len(line) <= 80 for line in said.out.splitlines())


def test_it_answers_what_happened_that_day(kitlog: Kitlog, demo: Path) -> None:
    kitlog("--data", demo, "service", "event", "tree", "Wing A")
    said = kitlog("--data", demo, "service", "record", "Wing A", "--rule", "wing.event")
    assert "answers 1 event of that day" in said.out
    assert "check after an event: in date" in said.out


def test_hours_that_run_backwards_are_asked_about(kitlog: Kitlog, demo: Path) -> None:
    assert "--sure" in one_line(kitlog("--data", demo, *FULL, "--hours", "2"))
    assert kitlog("--data", demo, *FULL, "--hours", "2", "--sure").code == 0


def test_papers_lie_beside_the_data_file(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    paper = tmp_path / "protocol of the loft.pdf"
    paper.write_bytes(b"%PDF-1.4\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\n%%EOF\n")
    said = kitlog("--data", demo, *FULL, "--paper", paper, "--json").json
    (kept,) = said["papers"]
    assert (kept["name"], kept["media_type"]) == (paper.name, "application/pdf")
    (stored,) = demo.parent.rglob(f"{kept['sha256']}*")
    assert stored.read_bytes() == paper.read_bytes()


@pytest.mark.parametrize(
    ("options", "named"),
    [
        (("Wing A", "--rule", "reserve.repack"), "reserve.repack"),
        (("Wing X", "--rule", "wing.full"), "Wing X"),
        (("Wing A",), "--rule"),
        (("Wing A", "--rule", "wing.full", "--on", "2026-05-09"), "2026-05-09"),
        (("Wing A", "--rule", "wing.full", "--next-due", "2026-01-01"), "2026-01-01"),
        (("Wing A", "--rule", "wing.full", "--measured", "porous"), "porous"),
        (("Wing A", "--rule", "wing.full", "--measured", "porosity 12 daN"), "daN"),
        (("Wing A", "--rule", "wing.full", "--measured", "porosity -5 s"), "--measured"),
        (("Wing A", "--rule", "wing.full", "--result", "fine"), "passed with remarks"),
        (("Wing A", "--rule", "wing.full", "--hours", "-1"), "--hours"),
        (("Wing A", "--rule", "wing.full", "--paper", "nowhere.pdf"), "nowhere.pdf"),
        (("Wing A", "--rule", "wing.full", "--who", "x" * 300), "--who"),
    ],
)
def test_refusals(kitlog: Kitlog, demo: Path, options: tuple[str, ...], named: str) -> None:
    before = demo.read_bytes()
    assert named in one_line(kitlog("--data", demo, "service", "record", *options))
    assert demo.read_bytes() == before
