"""The repack of the demo: figures worked by hand beside the table of the invented kit, not by this program.

Take-off masses, positions, landing masses, tolerances and sums by zone come from there. Practice margins in them: common
practice, no source.
"""

import json
from pathlib import Path
from typing import Any

import pytest
from calling import Kitlog, one_line

from kitlog.files.resources import resources_folder

SAMPLES = resources_folder() / "demo" / "outings"
O1, O2, O3 = "Skarnock cross-country", "Skarnock on foot, with a night out", "Lake Osmere course"

FINDING = {
    *("code", "key", "topic", "state", "figure", "unit", "margin", "sure", "items", "item_ids", "phase", "source"),
    *("title", "sentence", "remedies", "override"),
}
LINE = {
    *(
        "item",
        "item_id",
        "n",
        "mass_g",
        "mass_source",
        "content_ml",
        "line_mass_g",
        "zone",
        "zone_on_foot",
        "needs",
        "strength",
    ),
    *("why", "pinned", "guessed"),
}
MASS = {
    *("take_off_g", "landing_g", "tolerance_g", "tolerance_sum_g", "position_pct", "landing_position_pct"),
    *("pilot_g", "pack_g", "by_zone", "unknown"),
}


@pytest.fixture
def packed(kitlog: Kitlog, demo: Path) -> Any:
    return lambda name: kitlog("--data", demo, "pack", "--outing", name, "--json").json


@pytest.mark.parametrize(
    ("name", "take_off", "landing", "position", "tolerance", "plain"),
    [
        (O1, 96_200, 93_790, 56.0, 1_007, 1_418),
        (O2, 87_902, 85_682, 89.5, 1_006, 1_325),
        (O3, 92_625, 91_405, 38.1, 1_005, 1_301),
    ],
)
def test_masses(
    packed: Any, name: str, take_off: int, landing: int, position: float, tolerance: int, plain: int
) -> None:
    mass = packed(name)["mass"]
    assert set(mass) >= MASS
    assert (mass["take_off_g"], mass["landing_g"], mass["pilot_g"]) == (take_off, landing, 74_000)
    assert mass["position_pct"] == pytest.approx(position, abs=0.06)
    assert (round(mass["tolerance_g"]), round(mass["tolerance_sum_g"])) == (tolerance, plain)


def test_zones(packed: Any) -> None:
    assert packed(O1)["mass"]["by_zone"] == {
        "overhead": 5_240,
        "harness": 5_884,
        "worn": 4_323,
        "cockpit": 1_224,
        "side pocket": 151,
        "back pocket": 3_698,
        "under seat": 1_680,
    }


def test_shape_of_the_answer(packed: Any) -> None:
    answer = packed(O1)
    assert all(set(finding) == FINDING for finding in answer["findings"])
    assert all(set(line) == LINE for line in answer["lines"])
    assert {"need", "label", "strength", "state", "why", "reason", "instead"} <= set(answer["missing"][0])
    assert {"item", "need", "reason"} <= set(answer["passed_over"][0])
    assert set(answer["counts"]) == {"stop", "look", "not_known", "open_questions"}
    assert set(answer["conditions"].values()) <= {"yes", "no", "open"}
    assert answer["conditions"]["airspace"] == "yes"
    assert answer["conditions"]["no signal"] == "no"
    states = [finding["state"] for finding in answer["findings"]]
    assert states == sorted(states, key=["stop", "look", "not known", "fine"].index)
    assert [states.count(state) for state in ("stop", "look", "not known")] == [
        answer["counts"][name] for name in ("stop", "look", "not_known")
    ]
    assert "fine" in states
    devices = {device["item"] for device in answer["power"]["devices"]}
    assert {"Phone", "Handheld radio", "Heated gloves"} <= devices
    assert {bank["item"] for bank in answer["power"]["banks"]} == {"Power bank"}


def test_lines_give_the_mass_of_one_piece_and_of_the_line(packed: Any) -> None:
    answer = packed(O1)
    lines = {line["item"]: line for line in answer["lines"]}
    assert (lines["Food bar"]["n"], lines["Food bar"]["mass_g"], lines["Food bar"]["line_mass_g"]) == (4, 55, 220)
    bladder = lines["Bladder 2 l"]
    assert (bladder["mass_g"], bladder["content_ml"], bladder["line_mass_g"]) == (138, 2_000, 2_138)
    assert lines["Dry clothes"]["zone"] == "left in the car"
    flying = sum(line["line_mass_g"] for line in lines.values() if line["zone"] != "left in the car")
    assert flying + 74_000 == answer["mass"]["take_off_g"]
    assert len(lines) == 38  # 37 rows that leave the ground, and the dry clothes


def test_stops_of_the_course(packed: Any) -> None:
    answer = packed(O3)
    stops = {finding["title"] for finding in answer["findings"] if finding["state"] == "stop"}
    assert stops == {"Satellite messenger: paid to", "Life vest: service"}
    remedies = [r for f in answer["findings"] if f["code"] == "weight.mid_range" for r in f["remedies"]]
    assert not any("ballast" in remedy for remedy in remedies)


def test_strict(kitlog: Kitlog, demo: Path) -> None:
    assert kitlog("--data", demo, "pack", "--outing", O1, "--strict").code == 0
    assert kitlog("--data", demo, "pack", "--outing", O3, "--strict").code == 1
    assert kitlog("--data", demo, "pack", "--outing", O3).code == 0
    assert kitlog("--data", demo, "pack", "--outing", O3, "--strict", "--json").json["counts"]["stop"] == 2


def test_a_file_and_its_name_in_the_data_file_say_the_same(kitlog: Kitlog, demo: Path) -> None:
    before = demo.read_bytes()
    file = SAMPLES / "skarnock-cross-country.json"
    by_file, by_name = (
        kitlog("--data", demo, "pack", *arguments, "--json").json for arguments in ((file,), ("--outing", O1))
    )
    assert by_file == by_name
    piped = kitlog("--data", demo, "pack", "-", "--json", stdin=b"\xef\xbb\xbf" + file.read_bytes())
    assert piped.json == by_name
    assert demo.read_bytes() == before
    assert list(demo.parent.iterdir()) == [demo]


def test_text_in_its_order_and_in_80_columns(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "pack", "--outing", O3)
    parts = (
        *("2 stop, 11 look, 9 not known", "Findings, worst first", "■ stop", "◆ look", "○ not known"),
        *("Questions to you", "Packing list", "Left in the car", "Missing", "Stays at home", "Take-off mass"),
        *("92.6\u00a0kg", "Full before leaving", "have the last word.", "kitlog alarms nobody"),
    )
    places = [said.out.index(part) for part in parts]
    assert places == sorted(places)
    assert all(len(line) <= 80 for line in said.out.splitlines())
    assert all(line == line.rstrip() for line in said.out.splitlines())


def test_text_and_json_never_call_anything_safe(kitlog: Kitlog, demo: Path) -> None:
    for form in ((), ("--json",)):
        words = kitlog("--data", demo, "pack", "--outing", O1, *form).out.casefold()
        assert not any(word in words for word in (" safe ", "airworthy", "all good"))


def test_the_sheet_beside_the_answer(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    sheet = tmp_path / "sheet.html"
    said = kitlog("--data", demo, "pack", "--outing", O1, "--json", "--html", sheet)
    assert said.json["outing"] == O1
    text = sheet.read_text(encoding="utf-8")
    assert text.startswith("<!DOCTYPE html>")
    assert "Sheet for 9\u00a0May\u00a02026" in text
    assert kitlog("--data", demo, "pack", "--outing", O1, "--html", sheet).code == 0
    before = demo.read_bytes()
    assert "a data file lies there" in one_line(kitlog("--data", demo, "pack", "--outing", O1, "--html", demo))
    assert demo.read_bytes() == before


def test_schema_needs_no_data_file(kitlog: Kitlog, home: Path) -> None:
    schema = kitlog("pack", "--schema").json
    assert {"name", "flight_types", "first_day", "phases", "pinned", "conditions"} <= set(schema["properties"])
    assert schema["additionalProperties"] is False
    assert not home.exists()


def test_no_outing_of_that_name(kitlog: Kitlog, demo: Path) -> None:
    line = one_line(kitlog("--data", demo, "pack", "--outing", "Elsewhere"))
    assert "no outing is called “Elsewhere”" in line
    assert O1 in line


def test_html_in_an_item_name_stays_text(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    name = "<img src=x onerror=alert(1)>"
    kitlog("--data", nothing, "kit", "import", "-", stdin=f"name,kind,mass_g\n{name},wing,4800\n".encode())
    outing, sheet = tmp_path / "o.json", tmp_path / "s.html"
    outing.write_text(json.dumps({"name": "<b>x</b>", "flight_types": ["ridge"], "first_day": "2026-05-09"}))
    said = kitlog("--data", nothing, "pack", outing, "--html", sheet)
    assert name in said.out
    text = sheet.read_text(encoding="utf-8")
    assert "<img" not in text
    assert "<b>" not in text
    assert "&lt;img src=x onerror=alert(1)&gt;" in text
