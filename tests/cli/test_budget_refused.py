"""Every faulty day: exit code 2, nothing on stdout, one line on stderr that names what is at fault."""

import copy
import json
from typing import Any

import pytest
from calling import Kitlog, one_line

SOUND: dict[str, Any] = {
    "day": {
        "phases": [{"id": "flight", "hours": 4, "ambient_C": -4}, {"id": "ride", "hours": 2, "ambient_C": 18}],
        "devices": [
            {"id": "phone", "cell_Wh": 15, "draw_W": {"flight": 2, "ride": {"modes": [{"W": 1, "share": 1}]}}},
            {"id": "vario", "cell_mAh": 3000, "nominal_V": 3.7, "draw_W": {"flight": 1}},
        ],
        "banks": [{"id": "slab", "cell_Wh": 37}],
        "plugs": [{"phase": "flight", "device": "phone", "bank": "slab"}],
        "temp_table": [[-20, 0.6], [25, 1]],
    },
    "sample_h": [],
}
PHONE, SLAB = ("day", "devices", 0), ("day", "banks", 0)
VARIO_ON_SLAB = {"phase": "flight", "device": "vario", "bank": "slab"}

FAULTS: list[tuple[str, tuple[str | int, ...], Any, str]] = [
    (
        "more plugs than ports",
        ("day", "plugs", 1),
        VARIO_ON_SLAB,
        "“slab” has 2 plugs in flight, more than its ports (1)",
    ),
    ("twice in a phase", ("day", "plugs", 1), {**VARIO_ON_SLAB, "device": "phone"}, "“phone” is plugged in twice"),
    ("unknown phase of a plug", ("day", "plugs", 0, "phase"), "fligt", "no phase “fligt”"),
    ("unknown device of a plug", ("day", "plugs", 0, "device"), "fone", "no device “fone”"),
    ("unknown bank of a plug", ("day", "plugs", 0, "bank"), "slap", "no bank “slap”"),
    ("unknown phase of a draw", (*PHONE, "draw_W", "fligt"), 1, "no phase “fligt”"),
    ("phase twice", ("day", "phases", 1, "id"), "flight", "the phase “flight” stands there twice"),
    ("device twice", ("day", "devices", 1, "id"), "phone", "the device “phone” stands there twice"),
    ("bank twice", ("day", "banks", 1), {"id": "slab", "cell_Wh": 1}, "the bank “slab” stands there twice"),
    ("negative hours", ("day", "phases", 0, "hours"), -1, "flight, hours: “-1”"),
    ("negative draw", (*PHONE, "draw_W", "flight"), -2, "phone, draw_W.flight: “-2”"),
    ("negative draw of a way of use", (*PHONE, "draw_W", "ride", "modes", 0, "W"), -2, "phone, draw_W.ride.modes.0.W"),
    ("negative energy", (*PHONE, "cell_Wh"), -2, "phone, cell_Wh: “-2”"),
    ("negative power", (*PHONE, "charge_max_W"), -2, "phone, charge_max_W: “-2”"),
    ("negative limit", (*SLAB, "total_limit_W"), -2, "slab, total_limit_W: “-2”"),
    ("negative capacity", (*SLAB, "rated_mAh"), -2, "slab, rated_mAh: “-2”"),
    ("start over 1", (*PHONE, "start"), 1.1, "phone, start: “1.1”"),
    ("health under 0", (*PHONE, "health"), -0.1, "phone, health: “-0.1”"),
    ("knee over 1", (*PHONE, "knee"), 1.1, "phone, knee: “1.1”"),
    ("share over 1", (*PHONE, "draw_W", "ride", "modes", 0, "share"), 1.5, "phone, draw_W.ride.modes.0.share"),
    ("plugged below over 1", ("day", "plugs", 0, "connect_below"), 50, "phone, connect_below: “50”"),
    ("charged to over 1", ("day", "plugs", 0, "charge_to"), 80, "phone, charge_to: “80”"),
    ("cutoff 1", (*PHONE, "cutoff"), 1, "phone, cutoff: “1” is out of range (below 1"),
    ("cutoff 1 of a bank", (*SLAB, "cutoff"), 1, "slab, cutoff: “1”"),
    ("efficiency 0", (*SLAB, "eff"), 0, "slab, eff: “0”"),
    ("shares not adding to 1", (*PHONE, "draw_W", "ride", "modes", 0, "share"), 0.9, "the shares of “phone” in ride"),
    ("no shares", (*PHONE, "draw_W", "ride"), {"modes": []}, "the shares of “phone” in ride"),
    ("own table not rising", (*PHONE, "temp_table"), [[0, 0.8], [0, 0.9]], "phone, temp_table: the temperatures"),
    (
        "day's table not rising",
        ("day", "temp_table"),
        [[0, 0.8], [-5, 0.9]],
        ", temp_table: the temperatures do not rise after -5.0",
    ),
    ("usable share 0", (*SLAB, "temp_table"), [[-20, 0], [25, 1]], "slab, temp_table.0.1: “0”"),
    ("usable share over 1", ("day", "temp_table"), [[-20, 0.5], [25, 1.1]], "day.temp_table.1.1: “1.1”"),
    ("no energy", (*PHONE, "cell_Wh"), None, "the device “phone” has no energy"),
    ("two capacities", (*SLAB, "rated_mAh"), 6500, "the bank “slab” has more than one capacity"),
    ("half a capacity", ("day", "devices", 1, "nominal_V"), None, "the device “vario” lacks nominal_V"),
    ("not a number", (*PHONE, "cell_Wh"), "15", "phone, cell_Wh: “15”"),
    ("NaN", (*PHONE, "cell_Wh"), float("nan"), "phone, cell_Wh: “nan”"),
    ("unknown key", (*PHONE, "cell_wh"), 15, "phone, cell_wh: there is no such field"),
    ("after the end", ("sample_h",), [7], "the sample at 7.0 h lies after the day's end"),
    ("half a current", (*PHONE, "draw_W", "flight"), {"mA": 200}, "phone, draw_W.flight.V: it is missing"),
    ("no run time", (*PHONE, "draw_W", "flight"), {"lasts_h": 0}, "phone, draw_W.flight.lasts_h: “0”"),
    (
        "a drop that says nothing",
        (*PHONE, "draw_W", "flight"),
        {"from_pct": 60, "to_pct": 59, "hours": 1},
        "phone, draw_W.flight: from 60.0 to 59.0 % says too little about the draw",
    ),
    ("day and evening", ("storage",), {"things": []}, "day and sample_h are both there"),
]


def changed(path: tuple[str | int, ...], value: Any) -> dict[str, Any]:
    asked = copy.deepcopy(SOUND)
    here: Any = asked
    for part in path[:-1]:
        here = here[part]
    if isinstance(here, list) and path[-1] == len(here):
        here.append(value)
    else:
        here[path[-1]] = value
    return asked


def test_the_sound_day_is_answered(kitlog: Kitlog) -> None:
    assert kitlog("budget", "power", "-", "--json", stdin=json.dumps(SOUND).encode()).code == 0


@pytest.mark.parametrize("flags", [(), ("--json",)])
@pytest.mark.parametrize(("path", "value", "words"), [fault[1:] for fault in FAULTS], ids=[each[0] for each in FAULTS])
def test_one_line_names_it(
    kitlog: Kitlog, path: tuple[str | int, ...], value: Any, words: str, flags: tuple[str, ...]
) -> None:
    line = one_line(kitlog("budget", "power", "-", *flags, stdin=json.dumps(changed(path, value)).encode()))
    assert words in line


@pytest.mark.parametrize(
    ("query", "words"),
    [
        ({}, "query: its keys tell no question"),
        ({"min_soc": 0.2}, "query: its keys tell no question"),
        ({"n": 9, "plug_below": 0.5}, "query: “plug_below” asks another question than n."),
        ({"phase": "ride", "device": "phone", "bank": "slab"}, "“bank” asks another question than phase, device."),
        ({"phase": "ride", "device": "fone"}, "no device “fone”, named in query.device"),
        ({"callers": ["fone"]}, "no device “fone”, named in query.callers"),
        ({"place": "slap", "choices": [], "targets": [{"device": "phone"}]}, "no bank “slap”"),
        ({"may_be_off": ["fone"]}, "no device “fone”, named in query.may_be_off"),
        ({"chance": {"hours": {"bus": [1, 2, 3]}}}, "no phase “bus”"),
    ],
)
def test_questions(kitlog: Kitlog, query: dict[str, Any], words: str) -> None:
    asked = json.dumps({"day": SOUND["day"], "query": query})
    assert words in one_line(kitlog("budget", "power", "-", stdin=asked.encode()))


def test_a_port_is_named_with_its_charger(kitlog: Kitlog) -> None:
    chargers = [
        {"id": name, "ports": [{"id": "u", "limit_W": limit_w}]} for name, limit_w in (("wall", 5), ("desk", -1))
    ]
    hours = {"from_h": 20, "bed_h": 23, "up_h": 30, "leave_h": 31}
    asked = json.dumps({"evening": {"chargers": chargers, "things": [], **hours}})
    assert "desk, u, limit_W: “-1”" in one_line(kitlog("budget", "power", "-", stdin=asked.encode()))
