"""Swollen and old batteries, and journeys by air, through the assessment.

A swollen battery is not taken and not charged; a capacity test from five years on: common practice, no source. Limits by
air: see test_air_travel.
"""

from datetime import date

import pytest
from scenario import judged, of_code, the
from small_kit import NEW, but, item, kit, other, outing, plus

from kitlog.budget.result import State
from kitlog.wording.findings import say
from kitlog.wording.remedies import remedy_text

SEEN = date(2026, 5, 1)


def phone(name="phone", mass_g=200, **fields):
    return other(item(name, "phone", mass_g), **fields)


def swollen(one):
    return other(one, battery={"wh": 10, "swollen_on": SEEN})


def taken(assessment):
    return {line.item.id for line in assessment.lines}


class TestSwollen:
    def test_the_next_best_goes_instead_even_if_it_is_heavier(self):
        found = judged(outing(), but("phone", instead=(swollen(phone("light", 100)), phone("heavy", 300))), NEW)
        assert "heavy" in taken(found)
        assert "light" not in taken(found)
        told = the(found, "power.swollen", "light")
        assert (told.state, [remedy.code for remedy in told.remedies]) == (State.LOOK, ["recycle"])
        assert any((passed.item.id, passed.reason) == ("light", "swollen") for passed in found.passed_over)

    def test_alone_the_essential_need_is_a_stop_and_says_why(self):
        found = judged(outing(), but("phone", "beacon", instead=(swollen(phone()),)), NEW)
        missing = [f for f in of_code(found, "need.missing") if "phone" in f.items]
        assert missing
        assert {f.state for f in missing} == {State.STOP}
        assert {f.facts["reason"] for f in missing} == {"swollen"}

    def test_pinned_with_an_essential_need_on_it_it_is_a_stop_with_the_next_best(self):
        pinned = outing(pinned=["old"])
        things = (swollen(phone("old")), phone("new", 300))
        found = the(judged(pinned, but("phone", instead=things), NEW), "power.swollen", "old")
        assert found.state is State.STOP
        assert [(r.code, r.items) for r in found.remedies] == [("swap", ("old", "new")), ("recycle", ("old",))]

    def test_pinned_without_any_need_on_it_it_is_a_look(self):
        lamp = swollen(item("toy", "other"))
        assert the(judged(outing(pinned=["toy"]), plus(lamp), NEW), "power.swollen", "toy").state is State.LOOK

    def test_a_pinned_one_counts_for_no_call(self):
        found = judged(outing(pinned=["phone"]), but("phone", "beacon", instead=(swollen(phone()),)), NEW)
        assert "phone" not in the(found, "power.caller").facts["likely"]

    def test_what_no_need_asks_for_and_what_is_retired_is_not_mentioned(self):
        things = (swollen(item("toy", "other")), other(swollen(phone("gone")), state="retired"))
        assert not of_code(judged(outing(), plus(*things), NEW), "power.swollen")

    def test_words(self):
        found = the(judged(outing(pinned=["phone"]), but("phone", instead=(swollen(phone()),)), NEW), "power.swollen")
        assert say(found, {}).sentence.startswith(
            "its battery was seen swollen on 1\u00a0May\u00a02026: do not take it"
        )
        assert "collection point" in remedy_text(found.remedies[-1], {})


class TestAge:
    @pytest.mark.parametrize(
        ("fields", "told"),
        [
            ({"made_on": "2021-05-09"}, True),
            ({"made_on": "2021-05-10"}, False),
            ({"made_on": "2022-01-01", "bought_on": "2020-01-01"}, False),
            ({"bought_on": "2020-01-01"}, True),
            ({}, False),
        ],
    )
    def test_five_years_on_the_day_of_the_outing(self, fields, told):
        found = judged(outing(), but("phone", instead=(phone(battery={"wh": 10}, **fields),)), NEW)
        assert bool(of_code(found, "power.old")) is told

    def test_asks_for_a_capacity_test_and_names_its_source(self):
        old = phone(battery={"wh": 10}, made_on="2019-05-09")
        found = the(judged(outing(), but("phone", instead=(old,)), NEW), "power.old", "phone")
        assert (found.state, found.figure, found.margin) == (State.LOOK, 84, -24)
        assert [remedy.code for remedy in found.remedies] == ["test_capacity"]
        assert "common practice, no source" in say(found, {}).sentence

    def test_without_a_battery_on_record_and_for_a_beacon_nothing_is_said(self):
        beacon = item("beacon", "beacon", battery={"wh": 5}, made_on="2015-01-01")
        things = (phone(made_on="2015-01-01"), beacon)
        assert not of_code(judged(outing(), but("phone", "beacon", instead=things), NEW), "power.old")


class TestByAir:
    BANK = other(item("bank", "power bank", 400), battery={"wh": 120}, bank={}, quantity=3)

    def codes(self, **fields):
        found = judged(outing(pinned=[{"item": "bank", "n": 3}], **fields), plus(self.BANK), NEW)
        return {f.code for f in found.findings if f.code.startswith("power.air")}

    def test_only_where_it_is_ticked(self):
        assert self.codes() == set()
        assert self.codes(conditions={"by air": False}) == set()
        assert self.codes(conditions={"by air": True}) >= {
            "power.air_approval",
            "power.air_too_many",
            "power.air_cabin",
        }

    def test_so_many_as_go_along_are_counted(self):
        two = outing(pinned=[{"item": "bank", "n": 2}], conditions={"by air": True})
        found = judged(two, plus(self.BANK), NEW)
        assert not [f for f in of_code(found, "power.air_too_many") if f.subject == "bank"]

    def test_words_name_limits_dates_and_sources(self):
        found = judged(outing(pinned=["bank"], conditions={"by air": True}), plus(self.BANK), NEW)
        sentence = say(the(found, "power.air_cabin"), {}).sentence.replace("\u00a0", " ")
        for part in ("100 Wh", "160 Wh", "67th edition (2026)", "2 power banks", "27 Mar 2026", "Doc 9284", "stricter"):
            assert part in sentence
        many = next(f for f in of_code(found, "power.air_too_many") if f.subject == "bank")
        assert "Doc 9284" in say(many, {}).sentence


def test_a_kit_without_batteries_has_nothing_to_say():
    found = judged(outing(), kit(), NEW)
    assert not [f for f in found.findings if f.code in {"power.swollen", "power.old"}]
