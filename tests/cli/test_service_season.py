"""Days and states of the demo: worked by hand beside the table of the invented kit, not by this program."""

from pathlib import Path

from calling import Kitlog, one_line


def stops(kitlog: Kitlog, demo: Path, *options: str) -> dict[tuple[str, str], str]:
    lines = kitlog("--data", demo, "service", "stops", *options, "--json").json
    return {(line["item"], line.get("rule", "")): line["stops"] for line in lines}


def test_what_stops_tonight_and_in_september(kitlog: Kitlog, demo: Path) -> None:
    tonight, later = stops(kitlog, demo), stops(kitlog, demo, "--on", "2026-09-05")
    assert tonight["Helmet A", "helmet.event"] == "stop"
    assert ("First aid kit", "firstaid.check") not in tonight
    assert later["First aid kit", "firstaid.check"] == "look"
    assert later["Satellite messenger", "tracker.subscription"] == "stop"
    assert later["Wing A", "wing.full"] == "look"
    assert stops(kitlog, demo, "--on", "2026-09-05", "--law")["Wing A", "wing.full"] == "stop"


def test_it_is_said_that_hours_are_foreseen_and_the_makers_have_the_last_word(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "service", "stops", "--on", "2026-09-05")
    words = " ".join(said.out.split())
    assert "5 Sep 2026" in words.replace("\u00a0", " ")
    assert "foreseen" in words
    assert "a stop where law, school or event asks for it" in words
    assert "last word" in words
    assert all(len(line) <= 80 for line in said.out.splitlines())


def test_strict_tells_a_stop_by_the_code(kitlog: Kitlog, demo: Path) -> None:
    assert kitlog("--data", demo, "service", "stops", "--strict").code == 1
    assert kitlog("--data", demo, "service", "stops").code == 0


def test_the_run_before_a_season(kitlog: Kitlog, demo: Path) -> None:
    run = kitlog("--data", demo, "service", "season", "--json").json
    assert run["since"] == "2026-01-11"
    found = {line["item"]: line for line in run["items"]}
    assert found["Harness B"]["not_looked"]
    assert [rule["why"] for rule in found["Power bank"]["rules"]] == ["open"]
    assert "Wing A" not in found
    said = kitlog("--data", demo, "service", "season")
    assert "moves no due date" in " ".join(said.out.split())
    assert all(len(line) <= 80 for line in said.out.splitlines())


def test_a_look_takes_it_out_of_the_run(kitlog: Kitlog, demo: Path) -> None:
    done = ("--done", "harness.visual", "--note", "seams good")
    said = kitlog("--data", demo, "service", "season", "--looked", "Harness B", *done, "--json")
    assert "Harness B" not in {line["item"] for line in said.json["items"]}
    assert ("Harness B", "harness.visual") not in stops(kitlog, demo)


def test_what_cannot_be_is_refused_in_a_line(kitlog: Kitlog, demo: Path, tmp_path: Path) -> None:
    assert "Harness X" in one_line(kitlog("--data", demo, "service", "season", "--looked", "Harness X"))
    wrong_rule = ("--looked", "Harness B", "--done", "wing.full")
    assert "wing.full" in one_line(kitlog("--data", demo, "service", "season", *wrong_rule))
    assert "--looked" in one_line(kitlog("--data", demo, "service", "season", "--done", "wing.full"))
    missing = tmp_path / "none.kitlog"
    one_line(kitlog("--data", missing, "service", "season", "--looked", "Harness B"))
    assert not missing.exists()
