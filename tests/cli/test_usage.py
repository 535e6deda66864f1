import sys
from pathlib import Path

import pytest
from calling import Kitlog, one_line

from kitlog import __version__

VERBS = (
    *("kit", "kit import", "kit list", "kit export", "due", "pack", "budget", "flights", "flights add"),
    *("flights list", "pilot", "outing", "outing list", "outing save", "outing export", "demo", "backup"),
    *("restore", "verify"),
)


def test_version(kitlog: Kitlog) -> None:
    assert kitlog("--version") == type(kitlog("--version"))(0, f"kitlog {__version__}\n", "")


def test_help_names_every_verb_and_ends_with_the_cautions(kitlog: Kitlog) -> None:
    said = kitlog("--help")
    assert said.code == 0
    words = said.out.split()
    assert {verb.split()[0] for verb in VERBS} <= set(words)
    plain = " ".join(words)
    assert "The maker's manual, national rules and licensed inspectors and packers have the last word." in plain
    assert "kitlog alarms nobody" in plain


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_has_help(kitlog: Kitlog, verb: str) -> None:
    said = kitlog(*verb.split(), "--help")
    assert said.code == 0
    assert said.out.startswith(f"usage: kitlog {verb} ")
    assert "show this help" in said.out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ("foo", "there is no verb “foo”. See: kitlog --help."),
        ("kit foo", "there is no verb “foo”. See: kitlog kit --help."),
        ("kit", "VERB is missing. See: kitlog kit --help."),
        ("flights", "VERB is missing. See: kitlog flights --help."),
        ("due --foo", "“--foo” is not known here."),
        ("due --o 2026-05-09", "“--o 2026-05-09” is not known here."),
        ("due --on", "--on: it wants a value after it. See: kitlog due --help."),
        ("due --on 9.5.2026", "--on: “9.5.2026” is no day of the calendar. Write it as YYYY-MM-DD"),
        ("due --on 2026-02-30", "--on: “2026-02-30” is no day of the calendar."),
        ("due --on 1914-02-28", "--on: “1914-02-28” lies outside 1970 to 2100."),
        ("due --within -1", "--within: “-1” is out of range (at least 0"),
        ("due --within 1.5", "--within: “1.5” is no whole number."),
        ("due --within 99999999999999999999", "--within: “99999999999999999999” is"),
        ("due --data x", "--data stands before the verb. Write: kitlog --data FILE VERB."),
        ("kit import", "FILE is missing. See: kitlog kit import --help."),
        ("kit list --json=3", "--json: it takes no value, but “3” was given."),
        ("pack", "OUTING.json or --outing NAME is missing. See: kitlog pack --help."),
        ("pack a.json --outing b", "--outing: it does not go together with OUTING.json. Take one of the two."),
        ("budget", "NAME is missing."),
        ("budget air", "there is no budget “air” yet. Choose among: power, weight."),
        ("budget weight", "FILE is missing."),
        ("backup", "FILE is missing."),
        ("verify x", "“x” is not known here."),
        ("pilot --body-mass", "--body-mass: it wants a value after it."),
        ("pilot --body-mass 74,5", "--body-mass: “74,5” is no number. Write it in digits with a point"),
        ("pilot --body-mass nan", "--body-mass: “nan” is no number."),
        ("pilot --body-mass 1e1", "--body-mass: “1e1” is no number."),
        ("pilot --body-mass 74000", "--body-mass: “74000” is out of range (at least 20, at most 250)."),
        ("pilot --how naked", "--how: it says nothing without --body-mass. Add --body-mass, or take it out."),
        ("flights add --airtime 60", "--on is missing. See: kitlog flights add --help."),
        ("flights add --on 2026-05-01 --airtime -1", "--airtime: “-1” is out of range (at least 0"),
        ("--data", "--data: it wants a value after it."),
    ],
)
def test_wrong_use_is_said_in_one_line(kitlog: Kitlog, home: Path, arguments: str, words: str) -> None:
    assert words in one_line(kitlog(*arguments.split()))
    assert not home.exists()


def test_what_was_typed_cannot_play_with_the_terminal(kitlog: Kitlog) -> None:
    assert "\x1b" not in one_line(kitlog("due", "--on", "\x1b[2J"))
    assert "\x1b" not in one_line(kitlog("\x1b[2J"))
    assert "\x1b" not in one_line(kitlog("due", "--\x1b[2J"))


@pytest.mark.parametrize("empty", ["", "."])
def test_an_empty_name_is_not_the_usual_file(kitlog: Kitlog, home: Path, empty: str) -> None:
    assert "it is a folder" in one_line(kitlog("--data", empty, "kit", "list"), 3)
    assert not home.exists()


def test_without_a_screen_the_window_says_so(kitlog: Kitlog, nothing: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    assert "there is no screen to open a window on" in one_line(kitlog("--data", nothing), 3)
    assert "there is no screen to open a window on" in one_line(kitlog("--data", nothing, "demo"), 3)
    assert not nothing.exists()


def test_a_wrong_choice_names_the_option_and_what_can_be_chosen(kitlog: Kitlog) -> None:
    line = one_line(kitlog("kit", "import", "kit.csv", "--mass-unit", "stone"))
    assert line == "kitlog: --mass-unit: “stone” cannot be chosen. Choose among: g, kg, oz, lb.\n"
