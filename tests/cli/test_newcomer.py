"""Eight things and a guess for each: the first five minutes of a new pilot."""

import json
from pathlib import Path

import pytest
from calling import Kitlog

KIT = """name,kind,mass_g,wing_min_kg,wing_max_kg
My wing,wing,4800,75,95
Harness,harness,3600,,
Reserve,reserve,1500,,
Helmet,helmet,420,,
Phone,phone,210,,
Vario,instrument,180,,
Radio,radio,200,,
Water bottle,vessel,120,,
"""

FIVE_LINES = """{"name": "First ridge day",
 "flight_types": ["ridge"],
 "first_day": "2026-05-09",
 "phases": [{"way": "flight", "likely_h": 1}],
 "water_ml": 1000}
"""


def test_first_five_minutes(kitlog: Kitlog, nothing: Path, tmp_path: Path) -> None:
    kit, outing = tmp_path / "kit.csv", tmp_path / "outing.json"
    kit.write_text(KIT)
    outing.write_text(FIVE_LINES)
    data = ("--data", nothing)
    assert kitlog(*data, "kit", "import", kit).code == 0
    without_body = kitlog(*data, "pack", outing)
    assert "Enter your body mass of today" in without_body.out
    assert kitlog(*data, "pilot", "--body-mass", "74").code == 0
    said = kitlog(*data, "pack", outing)
    assert said.code == 0
    # 74,000 + 4,800 + 3,600 + 1,500 + 420 + 210 + 180 + 200 + 120 + 1,000 of water, by hand
    answer = kitlog(*data, "pack", outing, "--json").json
    assert answer["mass"]["take_off_g"] == 86_030
    assert answer["mass"]["landing_g"] == 85_030
    assert answer["mass"]["position_pct"] == pytest.approx(55.15)
    assert "Weigh My wing: take-off mass narrows by" in said.out
    assert {line["item"] for line in answer["lines"]} >= {"My wing", "Harness", "Reserve", "Helmet", "Phone", "Radio"}
    missing = {one["need"] for one in answer["missing"] if one["state"] == "stop"}
    assert {"carabiners", "gloves", "footwear"} <= missing
    told = {finding["code"] for finding in answer["findings"] if finding["state"] == "stop"}
    assert "people.missing" in told
    assert json.loads(FIVE_LINES)["name"] in said.out
