import json
from pathlib import Path

import pytest
from calling import Kitlog, one_line

from kitlog.files.outing_json import read_outing

O1, O2, O3 = "Skarnock cross-country", "Skarnock on foot, with a night out", "Lake Osmere course"
PLAN = {"name": "An hour", "flight_types": ["ridge"], "first_day": "2026-05-16", "pinned": ["Wing A"], "water_ml": 500}


def test_list(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "outing", "list")
    assert [said.out.index(word) for word in ("9\u00a0May", "20\u00a0Jun", "5\u00a0Sep")] == sorted(
        said.out.index(word) for word in ("9\u00a0May", "20\u00a0Jun", "5\u00a0Sep")
    )
    listed = kitlog("--data", demo, "outing", "list", "--json").json
    assert [(one["name"], one["worked_on"]) for one in listed] == [(O1, True), (O2, False), (O3, False)]
    assert listed[1]["last_day"] == "2026-06-21"
    assert listed[1]["flight_types"] == ["hike and fly", "bivouac"]


def test_save_adds_and_then_changes(kitlog: Kitlog, demo: Path) -> None:
    new = kitlog("--data", demo, "outing", "save", "-", stdin=json.dumps(PLAN).encode())
    assert (new.code, new.out) == (0, "saved as a new outing: An hour\n")
    changed = kitlog("--data", demo, "outing", "save", "-", stdin=json.dumps({**PLAN, "water_ml": 700}).encode())
    assert (changed.code, changed.out) == (0, "changed: An hour\n")
    listed = kitlog("--data", demo, "outing", "list", "--json").json
    assert [one["name"] for one in listed].count("An hour") == 1
    lines = kitlog("--data", demo, "pack", "--outing", "An hour", "--json").json["lines"]
    assert max(line["content_ml"] for line in lines) == 700


DATED = "Outing of 26\u00a0Nov\u00a02026"
"""As earlier versions named an outing: no keyboard has these blanks."""


def test_what_is_named_is_found_whatever_blanks_and_capitals_are_typed(kitlog: Kitlog, demo: Path) -> None:
    kitlog("--data", demo, "outing", "save", "-", stdin=json.dumps({**PLAN, "name": DATED}).encode())
    for verb in (["charge"], ["power"], ["pack", "--outing"]):
        for typed in ("Outing of 26 Nov 2026", "outing of 26 nov 2026", DATED):
            said = kitlog("--data", demo, *verb, typed, "--json")
            assert (said.code, said.err) == (0, ""), (verb, typed)
    plain = {**PLAN, "name": "Outing of 26 Nov 2026"}
    assert kitlog("--data", demo, "outing", "save", "-", stdin=json.dumps(plain).encode()).out.startswith("changed: ")
    noted = kitlog("--data", demo, "charge", "--on-hand", "power  bank=40", "--json").json
    assert noted == [{"item": "Power bank", "on_hand_pct": 40}]


def test_capitals_tell_apart_what_differs_in_nothing_else(kitlog: Kitlog, demo: Path) -> None:
    for name in ("An hour", "AN HOUR"):
        said = kitlog("--data", demo, "outing", "save", "-", stdin=json.dumps({**PLAN, "name": name}).encode())
        assert said.out == f"saved as a new outing: {name}\n"
    assert kitlog("--data", demo, "pack", "--outing", "AN HOUR", "--json").code == 0
    assert "2 " in one_line(kitlog("--data", demo, "pack", "--outing", "an hour"))


def test_save_makes_the_data_file(kitlog: Kitlog, nothing: Path) -> None:
    plan = {**PLAN, "pinned": []}
    assert kitlog("--data", nothing, "outing", "save", "-", stdin=json.dumps(plan).encode()).code == 0
    assert len(kitlog("--data", nothing, "outing", "list", "--json").json) == 1


@pytest.mark.parametrize("name", [O1, O2, O3])
def test_what_is_exported_says_the_same(kitlog: Kitlog, demo: Path, tmp_path: Path, name: str) -> None:
    file = tmp_path / "out.json"
    assert kitlog("--data", demo, "outing", "export", name, file).out == f"written: {file}\n"
    by_name = kitlog("--data", demo, "pack", "--outing", name, "--json").json
    assert kitlog("--data", demo, "pack", file, "--json").json == by_name
    tree = json.loads(file.read_text(encoding="utf-8"))
    assert "id" not in tree
    assert tree["set"]["wing"] in {"Wing A", "Wing B"}
    assert read_outing(file.read_bytes(), "out.json").name == name
    assert kitlog("--data", demo, "outing", "save", file).out == f"changed: {name}\n"
    assert kitlog("--data", demo, "pack", "--outing", name, "--json").json == by_name


def test_plugs_uses_and_twins_survive_an_export(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    plan = {
        **PLAN,
        "phases": [{"name": "flight", "way": "flight", "likely_h": 1}],
        "pinned": [{"item": "Phone"}, {"item": "Power bank", "zone": "rucksack"}],
        "plugs": [{"phase": "flight", "device": "Phone", "bank": "Power bank", "connect_below_pct": 40}],
        "uses": [{"item": "Phone", "phase": "flight", "way": "on", "share": 0.5}],
        "left_out": ["Wing B"],
    }
    kitlog("--data", demo, "outing", "save", "-", stdin=json.dumps(plan).encode())
    file = tmp_path / "out.json"
    kitlog("--data", demo, "outing", "export", "An hour", file)
    tree = json.loads(file.read_text(encoding="utf-8"))
    assert tree["plugs"][0] | {"charge_to_pct": 100.0} == {**plan["plugs"][0], "charge_to_pct": 100.0}  # type: ignore[index]
    assert tree["uses"] == plan["uses"]
    assert tree["left_out"] == ["Wing B"]
    assert tree["pinned"][1] == {"item": "Power bank", "zone": "rucksack"}


def test_unknown_and_ambiguous_names(kitlog: Kitlog, demo: Path, nothing: Path, tmp_path: Path) -> None:
    file = tmp_path / "out.json"
    assert f"Choose among: {O1}, {O2}, {O3}." in one_line(kitlog("--data", demo, "outing", "export", "X", file))
    kitlog("--data", nothing, "pilot", "--body-mass", "70")
    assert "none is saved" in one_line(kitlog("--data", nothing, "outing", "export", "X", file))
    assert not file.exists()


def test_an_export_never_lands_on_a_data_file(kitlog: Kitlog, demo: Path) -> None:
    before = demo.read_bytes()
    assert "a data file lies there" in one_line(kitlog("--data", demo, "outing", "export", O1, demo))
    assert demo.read_bytes() == before


def test_none_yet(kitlog: Kitlog, nothing: Path) -> None:
    kitlog("--data", nothing, "pilot", "--body-mass", "70")
    assert "kitlog outing save OUTING.json" in kitlog("--data", nothing, "outing", "list").out
