"""The incidents of the library against the table of grounds: what each opens, on what, and whether it is a stop.

Sources as read for this project, as in ``test_library_rules``; A: official text, B: second-hand, P: common practice.
"""

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.incidents import follow_ups
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.service import Grounds

LIBRARY = load_library(resources_folder())
STARTERS = {starter.name: starter for starter in LIBRARY.starter_rules}


def opened(incident: str, kind: Kind) -> dict[str, tuple[Grounds, int]]:
    """What an incident opens on a thing without any rule: rule, grounds, days within which it is to be done."""
    found = LIBRARY.incident(incident)
    assert found is not None
    (one,) = follow_ups(found, [Item(id="i", name="i", kind=kind)], ())
    return {name: (STARTERS[name].grounds, STARTERS[name].event_days) for name in one.takes}


STOP_NOW = (Grounds.YES, 0)
WITHIN_A_DAY = (Grounds.NO, 1)


@pytest.mark.parametrize(
    ("incident", "kind", "opens"),
    [
        # At once, a stop: the table of grounds; reserve thrown, wet or damp, sand, impact: a packer's page (B) and P.
        ("reserve thrown", Kind.RESERVE, {"reserve.event": STOP_NOW}),
        ("reserve thrown", Kind.HARNESS, {"harness.event": STOP_NOW}),
        ("water", Kind.RESERVE, {"reserve.event": STOP_NOW}),
        ("damp", Kind.RESERVE, {"reserve.event": STOP_NOW}),
        ("sand or salt", Kind.RESERVE, {"reserve.event": STOP_NOW}),
        ("crash", Kind.RESERVE, {"reserve.event": STOP_NOW}),
        # Line lengths after a tree or water: MAC Para Muse 4 manual p. 21 (B); dried on the same day: P.
        ("water", Kind.WING, {"wing.event": STOP_NOW, "any.dry": WITHIN_A_DAY}),
        ("tree", Kind.WING, {"wing.event": STOP_NOW}),
        ("line cut", Kind.WING, {"wing.event": STOP_NOW}),
        ("crash", Kind.WING, {"wing.event": STOP_NOW}),
        # Impact on the protector, reserve thrown, water, sand: P.
        ("hard landing", Kind.HARNESS, {"harness.event": STOP_NOW}),
        ("tree", Kind.HARNESS, {"harness.event": STOP_NOW}),
        ("water", Kind.HARNESS, {"harness.event": STOP_NOW, "any.dry": WITHIN_A_DAY}),
        ("sand or salt", Kind.HARNESS, {"harness.event": STOP_NOW, "any.rinse": WITHIN_A_DAY}),
        # Replaced: all makers (B); dropped on rock: DHV notice, 2005 (A).
        ("helmet blow", Kind.HELMET, {"helmet.event": STOP_NOW}),
        ("carabiner knock", Kind.CARABINER, {"carabiner.event": STOP_NOW}),
        # First fit by an authorised person: DHV and OeAeC order, 1997 (A).
        ("new pairing", Kind.RESERVE, {"reserve.fit": STOP_NOW}),
        # After a manoeuvre course: a stop only where law, school or event asks for it (P).
        ("manoeuvre course", Kind.WING, {"wing.siv": (Grounds.BY_LAW, 0)}),
        # Dirt in a self-locking gate: P.
        ("sand or salt", Kind.CARABINER, {"any.rinse": WITHIN_A_DAY}),
    ],
)
def test_what_each_opens(incident: str, kind: Kind, opens: dict[str, tuple[Grounds, int]]) -> None:
    assert opened(incident, kind) == opens


def test_every_rule_that_an_incident_names_answers_to_its_event() -> None:
    strikes = [strike for incident in LIBRARY.incidents for strike in incident.strikes]
    assert len(strikes) > 30
    for strike in strikes:
        for name in strike.rules:
            assert strike.event in STARTERS[name].events, (strike.event, name)
            assert set(strike.kinds) <= set(STARTERS[name].kinds), (strike.event, name)


def test_every_kind_is_struck_once_by_an_incident() -> None:
    for incident in LIBRARY.incidents:
        kinds = [kind for strike in incident.strikes for kind in strike.kinds]
        assert len(kinds) == len(set(kinds)), incident.name


def test_every_event_of_a_starter_can_be_logged() -> None:
    logged = {strike.event for incident in LIBRARY.incidents for strike in incident.strikes}
    asked = {event for starter in LIBRARY.starter_rules for event in starter.events}
    same_by_another_name = {"sand": "sand or salt", "dropped on rock": "knock", "bent": "gate not closing"}
    assert asked - logged == set(same_by_another_name)
    assert set(same_by_another_name.values()) <= logged


def test_names_are_told_apart_without_capitals() -> None:
    names = [incident.name.casefold() for incident in LIBRARY.incidents]
    assert len(names) == len(set(names))
    assert LIBRARY.incident("Hard Landing") is LIBRARY.incident("hard landing")
