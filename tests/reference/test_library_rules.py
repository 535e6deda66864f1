"""The starter service rules against the published intervals they rest on.

Sources as read for this project; A: official text, B: second-hand, P: common practice, no source.
"""

import re

import pytest

from kitlog.files.resources import load_library, resources_folder
from kitlog.kit.kinds import Kind
from kitlog.kit.service import CountsFrom, Grounds, ServiceRule
from kitlog.outing.library import StarterRule

LIBRARY = load_library(resources_folder())
RULES = {rule.name: rule for rule in LIBRARY.starter_rules}

STOPS = {
    "wing.event",
    "harness.event",
    "reserve.fit",
    "reserve.event",
    "helmet.event",
    "carabiner.event",
    "beacon.battery",
    "tracker.subscription",
    "buoyancy.service",
    "buoyancy.cartridge",
}
BY_LAW = {
    "wing.full",
    "wing.siv",
    "harness.visual",
    "reserve.repack",
    "reserve.life",
    "carabiner.age",
    "papers.expiry",
}
NEVER_A_STOP = {
    "wing.trim",
    "wing.lowlines",
    "harness.protector",
    "reserve.check",
    "reserve.rubbers",
    "helmet.age",
    "speed.line",
    "any.capacity",
    "any.storage",
    "any.dry",
    "any.rinse",
    "beacon.selftest",
    "instrument.airspace",
    "firstaid.check",
    "knife.blade",
    "maker.notices",
}


HOW_SURE = re.compile(r"official text|second-hand|from memory|common practice", re.IGNORECASE)


def rule(name: str) -> StarterRule:
    return RULES[name]


def test_each_rule_of_the_table_is_there_once_with_its_grounds() -> None:
    grounds = {Grounds.YES: STOPS, Grounds.BY_LAW: BY_LAW, Grounds.NO: NEVER_A_STOP}
    assert len(LIBRARY.starter_rules) == len(RULES) == sum(map(len, grounds.values()))
    for ground, names in grounds.items():
        assert {name for name, one in RULES.items() if one.grounds is ground} == names


def test_every_rule_says_where_it_comes_from_and_how_sure_that_is() -> None:
    typed_by_the_pilot = {"wing.lowlines", "beacon.battery", "tracker.subscription", "papers.expiry"}
    for one in RULES.values():
        assert one.name in typed_by_the_pilot or HOW_SURE.search(one.source), one.name


def test_every_rule_is_about_something() -> None:
    assert all(one.kinds or one.serves for one in RULES.values())
    assert {name for one in RULES.values() for name in one.serves} <= set(LIBRARY.served_by_name())


@pytest.mark.parametrize("name", sorted(set(RULES) - {"wing.lowlines"}))
def test_every_rule_with_a_limit_can_be_taken_over(name: str) -> None:
    one = rule(name)
    taken = ServiceRule(
        id="r",
        item_id="i",
        rule=one.name,
        months=one.months,
        recommended_months=one.recommended_months,
        hours=one.hours,
        launches=one.launches,
        due_on="2027-01-31" if one.typed else None,
        events=one.events,
        counts_from=one.counts_from,
        ground_handling=one.ground_handling,
        lead_days=one.lead_days,
        grounds=one.grounds,
        source=one.source,
    )
    assert taken.grounds is one.grounds


def test_the_change_of_lower_lines_is_offered_without_a_figure() -> None:
    one = rule("wing.lowlines")
    assert not any((one.months, one.hours, one.launches, one.typed, one.events))


def test_full_inspection_of_the_wing() -> None:
    """24 months or 100 h: Independence Airtaxi2 manual (B). Ground handling counted: Gin Evora manual p. 31 and
    Gravity X-pressure manual (B). Inside the spread of 12 (schools, MAC Para Velvet manual, B) to 36 months and 80
    (paraworld.ch, B) to 200 h (Gin Evora, B); 24 months was obligatory by the DHV order of 13 November 1997 (A, dated)."""
    one = rule("wing.full")
    assert (one.months, one.hours, one.ground_handling) == (24, 100, True)
    assert 12 <= (one.months or 0) <= 36
    assert 80 <= (one.hours or 0) <= 200


def test_trim_of_the_wing() -> None:
    """Lines 50 to 100 h or yearly: Gin Evora manual p. 31 (B); the starter is the short end."""
    assert (rule("wing.trim").months, rule("wing.trim").hours) == (12, 50)


def test_events_of_the_wing() -> None:
    """Line lengths after a tree or water: MAC Para Muse 4 manual p. 21 (B); the others P."""
    assert {"tree", "water"} <= set(rule("wing.event").events)
    assert len(rule("wing.event").events) == 11


def test_repack_of_the_reserve() -> None:
    """12 months required, 6 recommended: MAC Para Aegis manual (B); at least each 6 months: BHPA as quoted by the
    Derbyshire Soaring Club, 2021 (B); 6 or 12 by maker: airvolution.ch (B)."""
    one = rule("reserve.repack")
    assert (one.recommended_months, one.months) == (6, 12)
    assert one.counts_from is CountsFrom.RECORD


def test_full_check_and_life_of_the_reserve() -> None:
    """24 months; 10 years, then to 12 with a yearly check: MAC Para Aegis manual (B)."""
    assert rule("reserve.check").months == 24
    assert rule("reserve.life").months == 10 * 12
    assert rule("reserve.life").counts_from is CountsFrom.MADE
    assert str(12 * 12) in rule("reserve.life").spread


def test_first_fit_is_an_event_that_stops() -> None:
    """Compatibility check by an authorised person: DHV and OeAeC order of 13 November 1997 (A)."""
    one = rule("reserve.fit")
    assert one.events == ("new pairing",)
    assert one.grounds is Grounds.YES


def test_harness_with_each_repack_protector_by_the_school_page() -> None:
    """At every repack: Gin Gingo Airlite manual p. 18 (B). Foam 5 years, airbag 3: paraworld.ch (B)."""
    assert rule("harness.visual").months == rule("reserve.repack").months
    assert rule("harness.visual").events == ("reserve repacked",)
    assert rule("harness.protector").months == 3 * 12
    assert str(5 * 12) in rule("harness.protector").spread


def test_helmet() -> None:
    """ABS shell 3 to 4 years: flypureair (B). After any severe blow: all makers (B)."""
    assert 36 <= (rule("helmet.age").months or 0) <= 48
    assert rule("helmet.age").counts_from is CountsFrom.FIRST_USE
    assert "blow" in rule("helmet.event").events


def test_carabiners() -> None:
    """Every 2 years: Woody Valley harness manuals as quoted by lu-glidz, June 2020 (B). Damaged or not closing by
    itself: at once, DHV 2005 (A)."""
    assert rule("carabiner.age").months == 24
    assert "gate not closing" in rule("carabiner.event").events


def test_buoyancy() -> None:
    """Yearly; cartridge 5 years: Ocean Navigator on one maker's notice, Sea Angler 2019 (B)."""
    assert rule("buoyancy.service").months == 12
    assert rule("buoyancy.cartridge").months == 60
    assert rule("buoyancy.cartridge").typed


def test_printed_and_paid_dates_are_typed() -> None:
    typed = {name for name, one in RULES.items() if one.typed}
    assert typed == {
        "beacon.battery",
        "tracker.subscription",
        "instrument.airspace",
        "buoyancy.cartridge",
        "firstaid.check",
        "papers.expiry",
    }


def test_common_practice_without_source() -> None:
    """P: 6 months or 100 launches, 12 months, 3 to 6 months, 24 months, monthly."""
    assert (rule("speed.line").months, rule("speed.line").launches) == (6, 100)
    assert rule("any.capacity").months == rule("firstaid.check").months == 12
    assert (rule("any.storage").recommended_months, rule("any.storage").months) == (3, 6)
    assert rule("knife.blade").months == 24
    assert rule("knife.blade").serves == ("hook knife",)
    assert rule("reserve.rubbers").months == rule("beacon.selftest").months == 1


def test_rules_of_batteries_are_offered_for_kinds_that_have_one() -> None:
    powered = {kind for kind in Kind if LIBRARY.facts(kind).used_in}
    for name in ("any.capacity", "any.storage"):
        assert set(rule(name).kinds) <= powered | {Kind.POWER_BANK}
