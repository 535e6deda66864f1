from pathlib import Path

import pytest
from calling import Kitlog, one_line


def test_enter_and_show(kitlog: Kitlog, nothing: Path) -> None:
    said = kitlog("--data", nothing, "pilot", "--name", "Bo", "--body-mass", "71.25", "--how", "naked, morning")
    assert (said.code, said.out) == (0, "Bo\n  8\u00a0May\u00a02026  71.25\u00a0kg  naked, morning\n")
    pilot = kitlog("--data", nothing, "pilot", "--json").json
    assert pilot["masses"] == [{"taken_on": "2026-05-08", "mass_g": 71_250, "how": "naked, morning"}]
    assert kitlog("--data", nothing, "pilot").out == said.out


def test_a_name_is_not_needed_for_a_mass(kitlog: Kitlog, nothing: Path) -> None:
    assert kitlog("--data", nothing, "pilot", "--body-mass", "74", "--json").json["masses"][0]["mass_g"] == 74_000


def test_earlier_masses_stay_and_one_of_the_same_day_is_replaced(kitlog: Kitlog, nothing: Path) -> None:
    for mass, day in (("74", "2026-01-02"), ("73", "2026-03-04"), ("72.5", "2026-03-04")):
        kitlog("--data", nothing, "pilot", "--body-mass", mass, "--taken-on", day)
    masses = kitlog("--data", nothing, "pilot", "--json").json["masses"]
    assert [(m["taken_on"], m["mass_g"]) for m in masses] == [("2026-01-02", 74_000), ("2026-03-04", 72_500)]
    kitlog("--data", nothing, "pilot", "--name", "Bo")
    again = kitlog("--data", nothing, "pilot", "--json").json
    assert (again["name"], again["masses"]) == ("Bo", masses)


def test_the_mass_counts_in_the_take_off_mass(kitlog: Kitlog, demo: Path) -> None:
    kitlog("--data", demo, "pilot", "--body-mass", "75")
    packed = kitlog("--data", demo, "pack", "--outing", "Skarnock cross-country", "--json").json
    assert packed["mass"]["take_off_g"] == 97_200


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (("--body-mass", "74", "--taken-on", "2026-05-09"), "--taken-on: 2026-05-09 has not been yet"),
        (("--name", ""), "--name: it is empty"),
        (("--name", "a\u202eb"), "--name: it holds a character that cannot be shown (U+202E)"),
        (("--body-mass", "74", "--how", "x" * 300), "--how: it is too long"),
        (("--taken-on", "2026-05-01"), "--taken-on: it says nothing without --body-mass"),
    ],
)
def test_refused(kitlog: Kitlog, nothing: Path, more: tuple[str, ...], words: str) -> None:
    assert words in one_line(kitlog("--data", nothing, "pilot", *more))
    assert not nothing.exists()


def test_nobody_yet(kitlog: Kitlog, nothing: Path) -> None:
    assert kitlog("--data", nothing, "pilot").code == 3
    kitlog("--data", nothing, "flights", "add", "--on", "2026-05-01", "--airtime", "5")
    assert "kitlog pilot --body-mass KG" in kitlog("--data", nothing, "pilot").out
    assert kitlog("--data", nothing, "pilot", "--json").json is None
    kitlog("--data", nothing, "pilot", "--name", "Bo")
    assert "Body mass not known" in kitlog("--data", nothing, "pilot").out
