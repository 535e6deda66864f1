import json
from pathlib import Path
from typing import Any

import pytest
from calling import Kitlog, one_line

from kitlog.budget.power_ask import ask

LAMP: dict[str, Any] = {
    "day": {
        "phases": [{"id": "night", "hours": 24, "ambient_C": 25}],
        "devices": [{"id": "lamp", "cell_Wh": 10, "draw_W": {"night": 0.25}}],
    },
    "sample_h": [12],
}
LOADS: dict[str, Any] = {
    "pilot_g": 74_000,
    "loads": [{"name": "Wing", "kind": "wing", "mass_g": 5_000, "mass_source": "kitchen scale"}],
    "wing": {"min_kg": 70, "max_kg": 90},
}


def test_power_is_what_the_budget_answers(kitlog: Kitlog, home: Path) -> None:
    said = kitlog("budget", "power", "-", "--json", stdin=json.dumps(LAMP).encode())
    assert (said.code, said.json) == (0, ask.answer(json.dumps(LAMP)))
    assert said.json["devices"]["lamp"]["soc_end"] == pytest.approx(0.4)  # 10 Wh less 24 h of 0.25 W
    assert not home.exists()


def test_weight_from_a_file(kitlog: Kitlog, home: Path, tmp_path: Path) -> None:
    file = tmp_path / "loads.json"
    file.write_text(json.dumps(LOADS))
    said = kitlog("budget", "weight", file, "--json")
    assert said.json["mass"]["take_off_g"] == 79_000
    assert said.json["wing"] == {
        "fit": "inside",
        "landing_fit": "inside",
        "position_pct": 45.0,
        "landing_position_pct": 45.0,
    }
    assert not home.exists()


def test_weight_in_words(kitlog: Kitlog) -> None:
    said = kitlog("budget", "weight", "-", stdin=json.dumps(LOADS).encode())
    assert said.code == 0
    assert "take_off_g" in said.out
    assert all(len(line) <= 80 for line in said.out.splitlines())


@pytest.mark.parametrize("budget", ["power", "weight"])
def test_schema(kitlog: Kitlog, budget: str) -> None:
    schema = kitlog("budget", budget, "--schema").json
    assert schema["additionalProperties"] is False


@pytest.mark.parametrize(
    ("budget", "content", "words"),
    [
        ("power", b"{", "no JSON, from line 1, column 2"),
        ("power", b"\xff\xfe{\0", "not UTF-8"),
        ("power", b'{"day": {"phases": []}}', ""),
        ("power", json.dumps({**LAMP, "query": {"n": 1}}).encode(), "sample_h and query are both there"),
        ("weight", b"[]", "does not hold one JSON object"),
        ("weight", b'{"pilot_g": NaN}', "pilot_g: “nan” is not what is wanted"),
        ("weight", b'{"pilot_g": 74}', "pilot_g: “74” is out of range (at least 20000)"),
        ("weight", b'{"loads": [{"mass_g": 1}]}', "loads.0.name: it is missing"),
        ("weight", b'{"loads": [{"name": "a", "mass_g": 1.5}]}', "loads.0.mass_g"),
        ("weight", b'{"loads": [{"name": "a", "kind": "kite"}]}', "loads.0.kind: “kite” is not in the list"),
        ("weight", b'{"wing": {"min_kg": 90, "max_kg": 70}}', "wing: the least load, 90000, is above the greatest"),
        ("weight", b'{"wind": 3}', "wind: there is no such field"),
    ],
)
def test_refused_by_file_and_field(kitlog: Kitlog, tmp_path: Path, budget: str, content: bytes, words: str) -> None:
    file = tmp_path / "asked.json"
    file.write_bytes(content)
    line = one_line(kitlog("budget", budget, file))
    assert line.startswith(f"kitlog: {file}")
    assert words in line
