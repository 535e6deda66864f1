"""Swollen and old batteries, and journeys by air, through the assessment.

A swollen battery is not taken and not charged; a capacity test from five years on: common practice, no source. Limits by
air: see test_air_travel.
"""

from dataclasses import replace
from datetime import date

import pytest
from scenario import LIBRARY, judged, of_code, the
from small_kit import NEW, but, item, kit, other, outing, plus

from kitlog.budget.result import State
from kitlog.packing.charging import charges
from kitlog.packing.power_chance import chance_findings
from kitlog.packing.power_limits import retrieve_limit
from kitlog.packing.power_question import day_forecasts
from kitlog.wording.findings import say
from kitlog.wording.power_asked_text import retrieve_words
from kitlog.wording.remedies import remedy_text
from kitlog.wording.sheet_words import charge_text

SEEN = date(2026, 5, 1)


def phone(name="phone", mass_g=200, **fields):
    return other(item(name, "phone", mass_g), **fields)


def swollen(one):
    cell = one.battery.model_dump() if one.battery else {"wh": 10}
    return other(one, battery={**cell, "swollen_on": SEEN})


def full_phone(name="phone", **cell):
    ways = [{"name": "on", "power_w": 1.0}]
    battery = {"wh": 10, "cutoff_pct": 0, "offset_k": 0, "ways": ways, **cell}
    return item(name, "phone", 200, battery=battery)


def flight(**plan):
    hours = {"low_h": 4, "likely_h": 4, "high_h": 4, "air_c": 25}
    phases = [{"name": "flight", "way": "flight", **hours}, {"name": "ride", "way": "ride home", **hours}]
    return outing(phases=phases, **plan)


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

    def test_a_pinned_one_answers_for_nothing_and_that_is_said(self):
        """10 Wh at 1 W over four hours would do well; a beacon is there besides."""
        found = judged(flight(pinned=["phone", "beacon"]), but("phone", instead=(swollen(full_phone()),)), NEW)
        assert (found.power.likely, found.power.swollen) == (None, ("phone",))
        assert not of_code(found, "power.device")
        assert not of_code(found, "power.phone_at_landing")
        assert not of_code(found, "power.not_known", "phone")
        called = the(found, "power.caller")
        assert (called.state, called.facts["likely"], called.facts["swollen"]) == (State.FINE, ("beacon",), ("phone",))
        assert say(called, {"phone": "Phone"}).sentence.endswith("; not counted, swollen: Phone")

    def test_its_chance_is_not_told(self):
        things = (swollen(full_phone()), full_phone("second"))
        found = judged(flight(pinned=["phone", "second"]), but("phone", instead=things), NEW)
        *_rest, forecast = day_forecasts(found, LIBRARY, days=200)
        assert set(forecast.devices) == {"second"}
        told = {one.subject: one for one in chance_findings(found, forecast) if one.code == "power.phone_can_call"}
        assert told["phone"].state is State.NOT_KNOWN
        assert "seen swollen, do not take it" in say(told["phone"], {}).sentence
        assert told["second"].state is State.FINE
        any_call = next(one for one in chance_findings(found, forecast) if one.code == "power.any_can_call")
        assert (any_call.state, any_call.items) == (State.FINE, ("second",))
        assert say(any_call, {"second": "Second"}).sentence.startswith("Second: >98")

    def test_a_phone_with_a_stop_open_has_no_chance_either(self):
        things = (full_phone(), full_phone("second"))
        found = judged(flight(pinned=["phone", "second"]), but("phone", instead=things), NEW)
        *_rest, forecast = day_forecasts(found, LIBRARY, days=200)
        stopped = replace(found, grounded=frozenset({"phone"}))
        told = next(one for one in chance_findings(stopped, forecast) if one.subject == "phone")
        assert told.state is State.NOT_KNOWN
        assert "stop open" in say(told, {}).sentence

    def test_by_chance_it_is_none_of_those_that_can_call(self):
        """The second phone is dark at the end of every day (3 W of 10 Wh for 8 h), a stop is open for the first."""
        dark = full_phone("second", ways=[{"name": "on", "power_w": 3.0}])
        found = judged(flight(pinned=["phone", "second"]), but("phone", instead=(full_phone(), dark)), NEW)
        *_rest, every = day_forecasts(found, LIBRARY, days=20)
        *_rest, without = day_forecasts(replace(found, grounded=frozenset({"phone"})), LIBRARY, days=20)
        assert (every.caller_alive.probability, without.caller_alive.probability) == (1, 0)

    @pytest.mark.parametrize("plugs", [None, [{"phase": "ride", "device": "phone", "bank": "bank"}]])
    def test_a_bank_feeds_nothing(self, plugs):
        """1 W for 4 and 4 h out of 10 Wh leave 20 %, whatever hangs on it."""
        bank = item("bank", "power bank", 200, battery={"wh": 40, "swollen_on": SEEN}, bank={"ports": 1})
        kit = but("phone", instead=(full_phone(charge_max_w=5), bank))
        found = judged(flight(pinned=["bank"], plugs=plugs), kit, NEW)
        assert found.power.planned.banks == ()
        assert found.power.likely.devices["phone"].soc_end == pytest.approx(0.2, abs=0.01)

    def test_by_default_a_sound_bank_serves_in_its_place(self):
        cell = {"wh": 40, "cutoff_pct": 0}
        banks = [
            item(name, "power bank", 200, battery={**cell, **more}, bank={"ports": 1})
            for name, more in (("bad", {"swollen_on": SEEN}), ("good", {}))
        ]
        kit = but("phone", instead=(full_phone(charge_max_w=5), *banks))
        found = judged(flight(pinned=["bad", "good"]), kit, NEW)
        assert {plug.bank for plug in found.power.planned.plugs} == {"good"}

    def test_on_the_sheet_it_is_not_to_be_charged(self):
        found = judged(flight(pinned=["phone"]), but("phone", instead=(swollen(full_phone()),)), NEW)
        charge = next(one for one in charges(found) if one.item.id == "phone")
        assert charge_text(charge) == "swollen: do not take it, do not charge it"

    def test_the_longest_way_home_says_why_it_is_not_asked(self):
        found = judged(flight(pinned=["phone"]), but("phone", instead=(swollen(full_phone()),)), NEW)
        assert "seen swollen" in retrieve_words(retrieve_limit(found)).why_not

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
