"""The check lists: every line that instruction and the published lists ask for, with its flags.

The list of ids is common practice; sources that back single lines stand beside them.
"""

import re
from collections import Counter

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.kinds import Zone
from kitlog.outing.conditions import Condition
from kitlog.outing.library import Check

LIBRARY = load_library(resources_folder())
CHECKS = {check.id: check for check in LIBRARY.checks}

CRITICAL = {
    "empty": {"reserve_damp", "damage"},
    "charge": {"phone"},
    "am": {"pilot", "weather", "wind", "storm", "airspace", "someone", "kit_due", "go"},
    "launch": {
        "look",
        "lay",
        "pins",
        "speedline",
        "helmet",
        "legs",
        "chest",
        "frontcontainer",
        "carabiners",
        "speedhook",
        "final",
    },
    "land": {"wires", "ok", "call", "nosignal", "event"},
    "after": {"incident", "contact"},
}
NORMAL = {
    "empty": {"pockets", "wet", "wing_debris", "food", "batteries", "borrowed", "water", "documents"},
    "charge": {"list", "bank_first", "radio", "tracker", "airspace", "heated", "storage", "spare"},
    "am": {"thermals", "light", "retrieve", "mass"},
    "launch": {"radio", "instrument", "loose", "partner", "plan"},
    "land": {"next", "off", "drink", "count", "gate"},
    "after": {"dry", "log", "used", "restock", "charge", "money"},
}
MOMENTS = {
    "empty": "empty",
    "charge": "charge",
    "am": "morning",
    "launch": "launch",
    "land": "landing",
    "after": "afterwards",
}


def named(prefix: str, names: set[str]) -> list[Check]:
    return [CHECKS[f"{prefix}.{name}"] for name in sorted(names)]


def test_each_id_is_there_once() -> None:
    assert [name for name, times in Counter(c.id for c in LIBRARY.checks).items() if times > 1] == []


@pytest.mark.parametrize("prefix", MOMENTS)
def test_every_line_of_a_moment_is_there(prefix: str) -> None:
    for check in named(prefix, CRITICAL[prefix] | NORMAL[prefix]):
        assert check.moment == MOMENTS[prefix]
        assert not check.only_when, "asked every time"


@pytest.mark.parametrize("prefix", MOMENTS)
def test_what_is_safety_critical_needs_an_answer_each_time(prefix: str) -> None:
    assert all(check.critical for check in named(prefix, CRITICAL[prefix]))
    assert not any(check.critical for check in named(prefix, NORMAL[prefix]))


def test_some_are_critical_on_some_days() -> None:
    assert {check.id: set(check.critical_when) for check in LIBRARY.checks if check.critical_when} == {
        "charge.tracker": {Condition.ALONE, Condition.NO_SIGNAL},
        "charge.airspace": {Condition.AIRSPACE},
        "launch.radio": {Condition.PASSENGER},
        "launch.instrument": {Condition.AIRSPACE},
        "launch.partner": {Condition.PASSENGER},
    }


def test_what_starts_again_after_an_interruption() -> None:
    """Straps, pins and what is connected: three of four reported cases of open straps came from distraction (German
    association's notice on open straps, 30 June 2023, A)."""
    again = {check.id for check in LIBRARY.checks if check.again}
    own = {"pins", "speedline", "helmet", "legs", "chest", "frontcontainer", "carabiners", "speedhook", "final"}
    assert again == {f"launch.{name}" for name in own} | {"passenger.straps", "passenger.hook_in"}
    assert all(CHECKS[name].critical for name in again)


def test_launch_goes_from_what_is_hidden_later_to_the_last_seconds() -> None:
    """Leg straps are the first of the straps (FAI/CIVL, incident types, A); pins before getting into the harness
    (paragliding-lessons.com, AirDesign Donut and Icaro Xema manuals, B); the front container after the leg straps that
    it hides (German association, 2023, A)."""
    order = [check.id for check in LIBRARY.checks if check.moment == "launch"]
    place = {name.removeprefix("launch."): order.index(name) for name in order}
    assert place["look"] == 0
    assert place["pins"] < place["helmet"] < place["legs"] < place["chest"] < place["frontcontainer"]
    assert place["frontcontainer"] < place["carabiners"] < place["speedhook"]
    assert order[-1] == "launch.final"


def test_the_last_seconds_hold_the_five_points() -> None:
    """Pilot, lines, wing, wind, air and runway: German encyclopaedia article on the five-point check (B)."""
    text = CHECKS["launch.final"].text
    assert all(point in text for point in ("pilot", "lines", "wing open", "wind", "air and runway"))


def test_three_questions_stand_above_the_tiles() -> None:
    questions = [(check.label, check.moment) for check in LIBRARY.checks if check.question]
    assert questions == [("Pilot", "morning"), ("Weather", "morning"), ("Notices of the day", "morning")]


def test_each_pocket_is_emptied_by_name() -> None:
    zones = [check.zone for check in LIBRARY.checks if check.zone]
    assert len(zones) == len(set(zones))
    assert set(zones) == set(Zone) - {Zone.OVERHEAD, Zone.IN_HAND, Zone.LEFT_IN_CAR}
    assert all(check.moment == "empty" for check in LIBRARY.checks if check.zone)


def test_the_passenger_has_lines_of_their_own() -> None:
    own = {check.id for check in LIBRARY.checks if Condition.PASSENGER in check.only_when}
    assert {"passenger.straps", "passenger.mass", "passenger.clothes", "passenger.briefing"} <= own


@pytest.mark.parametrize(
    "condition", [Condition.COLD, Condition.HOT, Condition.BORDER, Condition.DUST, Condition.FIRE, Condition.SNOW]
)
def test_a_condition_brings_its_notes(condition: Condition) -> None:
    assert any(condition in check.only_when for check in LIBRARY.checks)


def test_checks_of_planning_are_named_by_a_need_and_have_a_short_name() -> None:
    needs = [*LIBRARY.base, *LIBRARY.overlays, *(n for t in LIBRARY.flight_types for n in t.needs)]
    named_by_needs = {need.check for need in needs if need.check}
    assert named_by_needs <= set(CHECKS)
    assert {check.id for check in LIBRARY.checks if check.moment == "plan"} <= named_by_needs
    assert all(CHECKS[name].label for name in named_by_needs)


def test_texts_are_short_and_promise_nothing() -> None:
    for check in LIBRARY.checks:
        assert len(check.text.split()) <= 26, check.id
        assert check.text.rstrip()[-1] in ".?", check.id
        assert not re.search(r"\b(safe|airworthy)\b", check.text), check.id
