"""Bad outings: each is refused with code 2 and one line that names file and field, and the data file stays as it is."""

import json
from pathlib import Path
from typing import Any

import pytest
from calling import Kitlog, one_line

GOOD: dict[str, Any] = {
    "name": "A day",
    "flight_types": ["ridge"],
    "first_day": "2026-05-09",
    "phases": [{"name": "flight", "way": "flight", "low_h": 1, "likely_h": 2, "high_h": 3, "air_c": 4}],
    "pinned": ["Wing A"],
}
PHASE = GOOD["phases"][0]


def with_fields(**fields: object) -> bytes:
    return json.dumps({**GOOD, **fields}).encode()


def with_phase(**fields: object) -> bytes:
    return with_fields(phases=[{**PHASE, **fields}])


def raw(field: str, value: str) -> bytes:
    """A value that is no JSON of Python's making."""
    return json.dumps({**GOOD, field: "HERE"}).replace('"HERE"', value).encode()


PLUG = {"phase": "flihgt", "device": "Phone", "bank": "Power bank"}
ANSWER = {"check": "am.wether", "value": "light", "at": "2026-05-09T06:00:00Z"}

BAD: dict[str, tuple[bytes, str]] = {
    "plug in no phase": (with_fields(plugs=[PLUG]), "plugs.phase: no phase is called “flihgt”. Choose among: flight."),
    "plug without phases": (with_fields(phases=[], plugs=[PLUG]), "plugs.phase: the outing has no phase “flihgt”"),
    "use in no phase": (
        with_fields(uses=[{"item": "Phone", "phase": "walk", "way": "on", "share": 1.0}]),
        "uses.phase: no phase is called “walk”. Choose among: flight.",
    ),
    "answer to no check": (
        with_fields(answers=[ANSWER]),
        "answers.check: no check is called “am.wether”. Choose among: am.weather, ",
    ),
    "empty": (b"", "no JSON, from line 1, column 1"),
    "blank": (b"  \n \n", "no JSON, from line 3, column 1"),
    "not json": (b"name: A day", "no JSON"),
    "cut off": (with_fields()[:40], "no JSON"),
    "comma at the end": (b'{"name": "A day",}', "no JSON"),
    "comment": (b'// mine\n{"name": "A day"}', "no JSON"),
    "two objects": (with_fields() + with_fields(), "no JSON"),
    "a list": (b"[]", "does not hold one JSON object"),
    "a number": (b"42", "does not hold one JSON object"),
    "null": (b"null", "does not hold one JSON object"),
    "utf-16": (with_fields().decode().encode("utf-16"), "not UTF-8"),
    "latin-1": (with_fields(name="Sk\u00e5rn\u00f8ck").decode().encode() + b"\xe5", "not UTF-8"),
    "two boms": (b"\xef\xbb\xbf\xef\xbb\xbf" + with_fields(), "no JSON"),
    "nan": (raw("top_m", "NaN"), "top_m: “nan” is no finite number"),
    "infinity": (raw("top_m", "Infinity"), "top_m: “inf” is no finite number"),
    "minus infinity": (raw("top_m", "-Infinity"), "top_m: “-inf” is no finite number"),
    "1e999": (raw("top_m", "1e999"), "top_m"),
    "five thousand digits": (raw("water_ml", "9" * 5_000), "water_ml"),
    "beyond 64 bits": (raw("water_ml", str(2**70)), "water_ml"),
    "key twice": (b'{"name": "A", "name": "B"}', "the key “name” stands there twice"),
    "key twice, deep": (b'{"phases": [{"way": "flight", "way": "night"}]}', "the key “way” stands there twice"),
    "deep": (b'{"phases": ' + b"[" * 100_000, "nested too deeply"),
    "deep and closed": (raw("phases", "[" * 50_000 + "]" * 50_000), "nested too deeply"),
    "lone surrogate": (
        b'{"name": "\\ud800", "flight_types": ["ridge"], "first_day": "2026-05-09"}',
        "half a character",
    ),
    "nul": (with_fields(name="A\0B"), "name: it holds a character that cannot be shown (U+0000)"),
    "escape": (with_fields(name="\x1b[2J"), "name: it holds a character that cannot be shown (U+001B)"),
    "right to left override": (with_fields(way_home="\u202etrain"), "way_home: it holds a character"),
    "line break in a name": (with_fields(name="A\nB"), "name: it holds a character"),
    "a name of 1 MB": (with_fields(name="x" * 1_000_000), "name: it is too long (at most 200)"),
    "an item of 1 MB": (with_fields(pinned=["x" * 1_000_000]), "pinned.0.item: it is too long"),
    "empty name": (with_fields(name=""), "name: it is empty"),
    "blank name": (with_fields(name="  "), "name: it is empty"),
    "unknown key": (with_fields(wind="west"), "wind: there is no such field"),
    "unknown key, deep": (with_phase(wind=3), "phases.0.wind: there is no such field"),
    "no name": (json.dumps({k: v for k, v in GOOD.items() if k != "name"}).encode(), "name: it is missing"),
    "no flight type": (with_fields(flight_types=[]), "flight_types: the list is too short"),
    "flight type of another": (with_fields(flight_types=["balloon"]), "no flight type is called “balloon”"),
    "flight type is text": (with_fields(flight_types="ridge"), "flight_types"),
    "name is a number": (with_fields(name=5), "name: “5” is not what is wanted here"),
    "31.02.": (with_fields(first_day="31.02.2026"), "first_day: “31.02.2026” is"),
    "31 February": (with_fields(first_day="2026-02-31"), "first_day: “2026-02-31” is no day"),
    "a day as number": (with_fields(first_day=1_778_284_800), "first_day"),
    "days reversed": (with_fields(last_day="2026-05-08"), "the last day, 2026-05-08, is not on or soon after"),
    "days years apart": (with_fields(last_day="2027-05-08"), "the last day, 2027-05-08, is not on or soon after"),
    "before 1970": (with_fields(first_day="1914-05-09"), "first_day"),
    "no such zone": (with_fields(time_zone="Mars/North"), "“Mars/North” is no time zone"),
    "zone that leaves the folder": (with_fields(time_zone="../../etc/passwd"), "is no time zone"),
    "latitude": (with_fields(site={"lat_deg": 91}), "site.lat_deg: “91” is out of range (at most 90"),
    "site is text": (with_fields(site="Skarnock"), "site"),
    "durations fall": (with_phase(low_h=3, high_h=1), "the durations of flight do not rise"),
    "negative duration": (with_phase(low_h=-1), "phases.0.low_h: “-1” is out of range"),
    "duration as text": (with_phase(likely_h="2"), "phases.0.likely_h"),
    "too cold": (with_phase(air_c=-300), "phases.0.air_c: “-300” is out of range (at least -60"),
    "unknown way": (with_phase(way="swim"), "phases.0.way: “swim” is not in the list"),
    "phase twice": (with_fields(phases=[PHASE, PHASE]), "two phases have the same name"),
    "unknown condition": (with_fields(conditions={"fog": True}), "conditions.fog"),
    "condition as text": (with_fields(conditions={"water": "yes"}), "conditions.water"),
    "condition as number": (with_fields(conditions={"water": 1}), "conditions.water"),
    "unknown role": (with_fields(people=[{"name": "Jo", "role": "chef"}]), "people.0.role: “chef” is not in the list"),
    "told without zone": (
        with_fields(people=[{"name": "Jo", "role": "contact", "told_at": "2026-05-08T18:00:00"}]),
        "people.0.told_at: “2026-05-08T18:00:00” is a time without an offset",
    ),
    "unknown demand": (with_fields(demanded=["mother"]), "demanded.0: “mother” is not in the list"),
    "negative water": (with_fields(water_ml=-1), "water_ml: “-1” is out of range"),
    "water in litres": (with_fields(water_ml=1.5), "water_ml"),
    "unknown item pinned": (with_fields(pinned=["Wing Z"]), "pinned.item: no item is called “Wing Z”"),
    "unknown item of the set": (with_fields(set={"wing": "Wing Z"}), "set.wing: no item is called “Wing Z”"),
    "unknown item left out": (with_fields(left_out=["Wing Z"]), "left_out: no item is called “Wing Z”"),
    "pinned in pieces of none": (with_fields(pinned=[{"item": "Food bar", "n": 0}]), "pinned.0.n: “0” is out of range"),
    "unknown zone": (with_fields(pinned=[{"item": "Food bar", "zone": "hat"}]), "“hat” is not in the list"),
    "override without reason": (
        with_fields(overrides=[{"finding": "x", "reason": "", "at": "2026-05-08T18:00:00Z"}]),
        "overrides.0.reason: it is empty",
    ),
    "answer without time": (
        with_fields(answers=[{"check": "am.pilot", "value": "yes"}]),
        "answers.0.at: it is missing",
    ),
    "far too large": (b'{"name": "' + b"x" * 6_000_000, "the file is larger than 5000000 bytes"),
}


@pytest.mark.parametrize("name", BAD)
@pytest.mark.parametrize("verb", ["pack", "outing save"])
def test_refused_in_one_line(kitlog: Kitlog, demo: Path, tmp_path: Path, name: str, verb: str) -> None:
    content, words = BAD[name]
    file, before = tmp_path / "bad.json", demo.read_bytes()
    file.write_bytes(content)
    line = one_line(kitlog("--data", demo, *verb.split(), file))
    assert line.startswith(f"kitlog: {file}")
    assert words in line
    assert len(line) < 500 + len(str(file))
    assert line.rstrip("\n").isprintable() or "\u00a0" in line
    assert demo.read_bytes() == before


def test_the_corpus_is_large_enough() -> None:
    assert len(BAD) >= 40


def test_an_outing_that_is_refused_makes_no_data_file(kitlog: Kitlog, nothing: Path) -> None:
    one_line(kitlog("--data", nothing, "outing", "save", "-", stdin=with_fields()))
    one_line(kitlog("--data", nothing, "outing", "save", "-", stdin=with_fields(pinned=[], flight_types=["balloon"])))
    assert not nothing.exists()


@pytest.mark.parametrize("change", [{}, {"last_day": "2026-05-10"}, {"name": "\u0645\u0631\u062d\u0628\u0627"}])
def test_the_good_one_is_good(kitlog: Kitlog, demo: Path, change: dict[str, Any]) -> None:
    assert kitlog("--data", demo, "pack", "-", stdin=with_fields(**change)).code == 0


def test_an_ambiguous_name(kitlog: Kitlog, nothing: Path) -> None:
    rows = b"name,kind,mass_g\nWing,wing,4000\nWing,wing,5000\n"
    kitlog("--data", nothing, "kit", "import", "-", stdin=rows)
    line = one_line(kitlog("--data", nothing, "pack", "-", stdin=with_fields(pinned=["Wing"])))
    assert "pinned.item: 2 items are called “Wing”. Name it by its id: kitlog kit list --json." in line
    first = kitlog("--data", nothing, "kit", "list", "--json").json[0]["id"]
    assert kitlog("--data", nothing, "pack", "-", stdin=with_fields(pinned=[first])).code == 0


@pytest.mark.parametrize("file", ["no.json", "."])
def test_a_file_that_cannot_be_read(kitlog: Kitlog, demo: Path, file: str) -> None:
    assert one_line(kitlog("--data", demo, "pack", file)).startswith(f"kitlog: {file}: the file cannot be read: ")


def test_standard_input_is_named(kitlog: Kitlog, demo: Path) -> None:
    assert one_line(kitlog("--data", demo, "pack", "-", stdin=b"{")).startswith("kitlog: standard input: ")
