"""Events by the command line, on the demo: Wing A, Harness A and Reserve A belong together; Helmet A took a knock."""

from pathlib import Path

import pytest
from calling import Kitlog, one_line


def state_of(kitlog: Kitlog, demo: Path, item: str, rule: str, *options: str) -> str | None:
    lines = kitlog("--data", demo, "due", *options, "--json").json
    return next((line["state"] for line in lines if (line["item"], line["rule"]) == (item, rule)), None)


def test_one_incident_hits_several_items(kitlog: Kitlog, demo: Path) -> None:
    hit = ("Wing A", "Harness A", "Reserve A")
    said = kitlog("--data", demo, "service", "event", "water", *hit, "--on", "2026-05-07", "--json").json
    assert said["written"]
    found = {one["item"]: {(line["rule"], line["how"]) for line in one["opens"]} for one in said["items"]}
    assert found == {
        "Wing A": {("wing.event", "on record"), ("any.dry", "taken")},
        "Harness A": {("harness.event", "on record"), ("any.dry", "taken")},
        "Reserve A": {("reserve.event", "taken")},
    }
    assert all(one["event_id"] for one in said["items"])
    assert state_of(kitlog, demo, "Reserve A", "reserve.event") == "overdue"
    assert state_of(kitlog, demo, "Wing A", "any.dry") == "due soon"


def test_what_it_would_open_is_told_without_writing(kitlog: Kitlog, demo: Path) -> None:
    before = demo.read_bytes()
    said = kitlog("--data", demo, "service", "event", "crash", "Wing A", "Phone", "--dry-run")
    words = " ".join(said.out.split())
    assert "Would be logged: crash, 8 May 2026" in words.replace("\u00a0", " ")
    assert "check after an event: at once, a stop until it is done" in words
    assert "“crash” is added to it" in words
    assert "opens nothing; it stays in the history" in words
    assert all(len(line) <= 80 for line in said.out.splitlines())
    assert demo.read_bytes() == before


@pytest.mark.parametrize(
    ("what", "asked"),
    [
        ("water", "Fitted to Harness A: Reserve A, Carabiners A, Speed bar A. Add what got wet too."),
        ("tree", "Reserve A is fitted to Harness A: add it if it was struck too."),
    ],
)
def test_what_is_fitted_to_a_struck_thing_is_named(kitlog: Kitlog, demo: Path, what: str, asked: str) -> None:
    event = ("--data", demo, "service", "event", what, "Wing A", "Harness A")
    assert asked in kitlog(*event, "--dry-run").err
    named = kitlog(*event, "--json").json["fitted_too"]
    assert ("Reserve A", "Harness A") in [(one["item"], one["fitted_to"]) for one in named]
    assert "Reserve A" not in kitlog(*event, "Reserve A", "--dry-run").err
    kitlog("--data", demo, "service", "event", what, "Reserve A")
    assert "Reserve A" not in kitlog(*event, "--dry-run").err


def test_what_such_a_thing_cannot_happen_to_is_not_named(kitlog: Kitlog, demo: Path) -> None:
    assert "fitted to" not in kitlog("--data", demo, "service", "event", "reserve repacked", "Harness A").err


def test_what_a_later_record_has_answered_is_told(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "service", "event", "tree", "Wing A", "--on", "2026-04-26", "--dry-run")
    words = " ".join(said.out.replace("\u00a0", " ").split())
    assert "check after an event: answered already by the record of 27 Apr 2026" in words
    assert "at once" not in words


def test_what_can_be_logged_is_listed_with_what_it_opens(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "service", "incidents")
    for name in ("reserve thrown", "water", "tree", "hard landing", "crash", "sand or salt", "line cut"):
        assert f"\n{name}" in f"\n{said.out}"
    assert "helmet, if struck: replace after a blow" in said.out
    assert "dry it: within 1 day, a look until it is done" in " ".join(said.out.split())
    assert all(len(line) <= 80 for line in said.out.splitlines())
    assert len(kitlog("--data", demo, "service", "incidents", "--json").json) > 20


def test_what_can_be_logged_is_listed_before_there_is_a_data_file(kitlog: Kitlog, home: Path, nothing: Path) -> None:
    assert "\nhard landing" in kitlog("service", "incidents").out
    assert not list(home.rglob("*.kitlog"))
    assert "no such file" in one_line(kitlog("--data", nothing, "service", "incidents"), 3)


def test_a_mistake_is_struck_through_and_stays(kitlog: Kitlog, demo: Path) -> None:
    said = kitlog("--data", demo, "service", "event", "tree", "Wing A", "--json").json
    assert state_of(kitlog, demo, "Wing A", "wing.event") == "overdue"
    struck = kitlog("--data", demo, "service", "strike", said["items"][0]["event_id"])
    assert "stays in the history of Wing A" in struck.out
    assert state_of(kitlog, demo, "Wing A", "wing.event") != "overdue"


@pytest.mark.parametrize(
    ("options", "named"),
    [
        (("rain of frogs", "Wing A"), "hard landing"),
        (("tree", "Wing X"), "Wing X"),
        (("tree", "Wing A", "--on", "2026-05-09"), "2026-05-09"),
        (("tree", "Reserve A", "--on", "2017-01-01"), "Reserve A"),
        (("tree",), "ITEM"),
    ],
)
def test_refusals(kitlog: Kitlog, demo: Path, options: tuple[str, ...], named: str) -> None:
    before = demo.read_bytes()
    assert named in one_line(kitlog("--data", demo, "service", "event", *options))
    assert demo.read_bytes() == before


def test_nothing_is_made_by_a_mistake(kitlog: Kitlog, nothing: Path) -> None:
    one_line(kitlog("--data", nothing, "service", "event", "tree", "Wing A"))
    one_line(kitlog("--data", nothing, "service", "strike", "e"), 3)
    assert not nothing.exists()
