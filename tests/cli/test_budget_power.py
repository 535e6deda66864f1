"""Every question of the power budget through the command line: the keys of its JSON, and what it says in words."""

import json
from typing import Any, ClassVar

import pytest
from calling import Kitlog

from kitlog.wording.figures import NO_BREAK, THIN

DAY: dict[str, Any] = {
    "phases": [{"id": "flight", "hours": 4, "ambient_C": 25}, {"id": "retrieve", "hours": 2, "ambient_C": 25}],
    "devices": [
        {"id": "phone", "cell_Wh": 10, "draw_W": {"flight": 1, "retrieve": 1}, "charge_max_W": 5},
        {"id": "radio", "cell_Wh": 4, "start": 0.9, "draw_W": {"flight": 1}},
    ],
    "banks": [{"id": "bank", "cell_Wh": 10}],
}
ON_A_BANK = {**DAY, "plugs": [{"phase": "flight", "device": "phone", "bank": "bank"}]}
FLIGHT = {"flight": [3, 4, 5]}
PHONE_FULL = [{"device": "phone", "min_soc": 0.5}]


def plain(text: str) -> str:
    """What a person reads: the lines of a sentence joined, with ordinary blanks."""
    return " ".join(text.replace(NO_BREAK, " ").replace(THIN, " ").split())


def said(kitlog: Kitlog, asked: dict[str, Any]) -> str:
    found = kitlog("budget", "power", "-", stdin=json.dumps(asked).encode())
    assert (found.code, found.err) == (0, "")
    assert all(len(line) <= 80 for line in found.out.splitlines())
    return plain(found.out)


def told(kitlog: Kitlog, asked: dict[str, Any]) -> Any:
    found = kitlog("budget", "power", "-", "--json", stdin=json.dumps(asked).encode())
    assert (found.code, found.err) == (0, "")
    return found.json


class TestDay:
    def test_in_words(self, kitlog: Kitlog) -> None:
        text = said(kitlog, {"day": DAY, "sample_h": [1]})
        assert "phone lasts; 40.0 % at the end; 4:00 h more unplugged" in text
        assert "radio goes off at 3:36 h, 2:24 h off in all; 0.0 % at the end" in text
        assert "bank gives 0.00 Wh; 100.0 % at the end, 8.50 Wh left at its ports" in text
        assert "at 1:00 h phone 90.0 %, radio 65.0 %" in text

    def test_a_plug_that_comes_too_late_is_flagged(self, kitlog: Kitlog) -> None:
        plug = {"phase": "flight", "device": "phone", "bank": "bank", "connect_below": 0}
        text = said(kitlog, {"day": {**DAY, "plugs": [plug]}, "sample_h": []})
        assert "phone is off before it is plugged into bank in flight: it switches itself off at 0.0 %" in text


class TestLimits:
    @pytest.mark.parametrize(
        ("more", "answer", "words"),
        [
            ({}, 6.0, "Longest retrieve with phone on: 6:00 h."),
            ({"min_soc": 0.2}, 4.0, "Longest retrieve with phone on and at 20.0 % or more: 4:00 h."),
            ({"horizon_h": 3}, None, "retrieve with phone on may last longer than 3:00 h."),
            ({"min_soc": 0.7}, 0.0, "retrieve with phone on and at 70.0 % or more cannot even begin."),
        ],
    )
    def test_the_longest_retrieve(
        self, kitlog: Kitlog, more: dict[str, float], answer: float | None, words: str
    ) -> None:
        asked = {"day": DAY, "query": {"phase": "retrieve", "device": "phone", **more}}
        assert told(kitlog, asked)["answer"] == (None if answer is None else pytest.approx(answer))
        assert said(kitlog, asked) == words

    @pytest.mark.parametrize(
        ("most_wh", "least", "words"),
        [
            (40, 0.7, "Smallest bank that will do: 3.53 Wh in the cell, 3.00 Wh at its ports; so will all up to 40.0 Wh."),
            (40, 0.3, "Nothing is needed of bank."),
            (3, 0.7, "Not even 3.0 Wh in bank will do."),
        ],
    )  # fmt: skip
    def test_the_smallest_bank(self, kitlog: Kitlog, most_wh: float, least: float, words: str) -> None:
        """By hand: 10 Wh less 6 h at 1 W leave 40 %; 70 % ask for 3 Wh at the port, 3.5294 Wh at .85 in the cell."""
        targets = [{"device": "phone", "min_soc": least}]
        asked = {"day": ON_A_BANK, "query": {"bank": "bank", "max_Wh": most_wh, "targets": targets}}
        text = said(kitlog, asked)
        assert text.startswith(words)
        assert "from the largest down in steps of" in text

    def test_what_is_said_is_rounded_to_the_side_that_will_do(self, kitlog: Kitlog) -> None:
        """By hand: 4 h at 1 W on 10 Wh: .4; at 1.00003 W a little more, and said as 40.1 %."""
        day = {**DAY, "devices": [{"id": "phone", "cell_Wh": 10, "draw_W": {"flight": 1.00003}}]}
        asked = {"day": day, "query": {"device": "phone", "targets": [{"device": "phone"}]}}
        assert told(kitlog, asked)["answer"] == pytest.approx(0.400012, abs=1e-7)
        assert said(kitlog, asked).startswith(
            "phone has to start at 40.1 % or more; from there on every start will do."
        )

    def test_the_lowest_start_may_be_none(self, kitlog: Kitlog) -> None:
        asked = {"day": DAY, "query": {"device": "phone", "targets": PHONE_FULL}}
        assert told(kitlog, asked) == {"answer": None}
        assert said(kitlog, asked).startswith("Not even a full phone will do.")

    def test_the_lightest_bank(self, kitlog: Kitlog) -> None:
        """By hand: half a phone asks for 1 Wh at the port: 1.18 Wh at .85."""
        choices = [
            {"bank": {"id": name, **capacity}, "mass_g": mass_g}
            for name, capacity, mass_g in (
                ("heavy", {"cell_Wh": 20}, 300),
                ("rated", {"rated_mAh": 1000}, 90),
                ("tiny", {"cell_Wh": 1.1}, 40),
                ("bare", {"cell_Wh": 9, "ports": 0}, 50),
            )
        ]
        asked = {"day": ON_A_BANK, "query": {"place": "bank", "choices": choices, "targets": PHONE_FULL}}
        answer = told(kitlog, asked)["answer"]
        assert (answer["lightest"]["bank"], answer["lightest"]["mass_g"]) == ("rated", 90)
        assert [trial["bank"] for trial in answer["tried"]] == [None, "tiny", "bare", "rated", "heavy"]
        assert answer["tried"][0]["targets"]["phone"].keys() == {
            "met", "first_off_h", "soc_over", "margin_Wh", "hours_more",
        }  # fmt: skip
        text = said(kitlog, asked)
        assert text.startswith("Lightest that will do: rated, 90 g.")
        assert "no bank 0 g phone ends 10.0 % too low" in text
        assert "bare 50 g too few ports" in text


class TestChances:
    def test_the_chance_with_its_error(self, kitlog: Kitlog) -> None:
        asked = {"day": DAY, "query": {"n": 2000, "hours": FLIGHT}}
        share = told(kitlog, asked)["answer"]["radio"]
        text = said(kitlog, asked)
        assert f"radio lasts {100 * share:.0f} % ± 1" in text
        assert "2 000 days drawn" in text

    def test_a_charge_asked_for_at_the_end_is_named(self, kitlog: Kitlog) -> None:
        """Lasting is one thing, lasting with a charge another: whoever asked for it reads it beside the figure."""
        query = {"n": 200, "hours": FLIGHT, "min_soc": {"radio": 0.125}}
        text = said(kitlog, {"day": DAY, "query": query})
        assert "radio lasts with 12.5 % or more" in text
        assert "phone lasts >9" in text
        forecast = said(kitlog, {"day": DAY, "query": {**query, "callers": [], "fan_steps": None}})
        assert forecast.startswith("All devices last with their charge to keep: ")
        assert "lasts lasts with 12.5 % or more on at the end" in forecast

    def test_the_forecast(self, kitlog: Kitlog) -> None:
        asked = {"day": DAY, "query": {"callers": ["phone"], "n": 2000, "hours": FLIGHT, "fan_steps": 2}}
        answer = told(kitlog, asked)["answer"]
        assert {"days", "devices", "all_last", "caller_alive", "fan"} <= answer.keys()
        assert answer["caller_alive"]["probability"] == 1.0
        text = said(kitlog, asked)
        assert text.startswith("phone can still call at the end: >99.8 %")
        assert f"All devices last: {100 * answer['all_last']['probability']:.0f} % ± 1" in text
        assert "switched off by 5 % 50 % 95 % of the days radio 3:36 h 3:36 h on" in text
        assert "likely day phone" in text

    def test_several_callers_without_a_fan(self, kitlog: Kitlog) -> None:
        asked = {"day": DAY, "query": {"callers": ["phone", "radio"], "n": 100, "fan_steps": None}}
        assert told(kitlog, asked)["answer"]["fan"] is None
        assert said(kitlog, asked).startswith("At least one of phone, radio can still call at the end: >9")


class TestChanges:
    ASKED: ClassVar[dict[str, Any]] = {
        "day": DAY,
        "query": {
            "spare_banks": [{"bank": {"id": "slim", "cell_Wh": 12}, "mass_g": 110}],
            "other_uses": [{"device": "radio", "name": "receive only", "draw_W": {"flight": 0.5}}],
            "may_be_off": ["radio"],
            "high_hours": {"flight": 7.5},
        },
    }

    def test_what_it_gains_and_weighs(self, kitlog: Kitlog) -> None:
        text = said(kitlog, self.ASKED)
        assert "As planned: radio goes off at 3:36 h, 0:24 h short" in text
        assert "3:54 h short in the high case" in text
        assert "Use radio less: receive only – radio +3:36 h; all lasts on the likely day – 0 g" in text
        assert "Charge radio full before leaving – radio +0:24 h; all lasts on the likely day – 0 g" in text
        assert "Leave radio off – no hours gained; all the rest lasts – 0 g" in text

    def test_in_hours_probability_and_grams(self, kitlog: Kitlog) -> None:
        asked = {**self.ASKED, "query": {**self.ASKED["query"], "chance": {"hours": FLIGHT, "n": 400}}}
        full = next(one for one in told(kitlog, asked)["answer"] if one["change"] == "start_full")
        assert full["devices"]["radio"]["gain_h"] == pytest.approx(0.4)
        assert full["chance"]["gain"] > 0
        before, after = (100 * full["chance"][when]["probability"] for when in ("before", "after"))
        assert f"all last {after:.0f} % ± 2 instead of {before:.0f} % (+" in said(kitlog, asked)

    def test_nothing_needs_changing(self, kitlog: Kitlog) -> None:
        asked = {"day": DAY, "query": {"targets": [{"device": "phone"}], "spare_banks": []}}
        assert told(kitlog, asked) == {"answer": []}
        assert said(kitlog, asked) == "As planned all lasts; nothing needs changing."

    def test_a_charge_asked_for_is_named_in_every_sentence(self, kitlog: Kitlog) -> None:
        """10 Wh at 2 W: never off till 5 h, with 30 % left till 3.5 h; the likely flight takes 4."""
        base = TestChangesByChance
        targets = [{"device": "phone", "min_soc": 0.3}]
        text = said(kitlog, {"day": base.DAY, "query": {**base.QUERY, "targets": targets}})
        assert "As planned: phone lasts, but ends under 30 %" in text
        assert "As planned: phone lasts with 30 % or more on " in text
        assert "Use phone less: dark – phone +5:00 h; all lasts with its charge to keep – " in text
        assert " – all last with their charge to keep >99.2 % instead of " in text

    def test_a_device_that_does_not_come_back_any_more(self, kitlog: Kitlog) -> None:
        """As in tests/budget/power/changes: the radio takes what the phone was charged with on the walk."""
        both = {"draw_W": {"flight": 1, "ride": 1}, "charge_max_W": 5, "charge_eff": 1, "knee": 1}
        day = {
            "phases": [
                {"id": name, "hours": h, "ambient_C": 25} for name, h in (("flight", 5), ("walk", 1), ("ride", 1))
            ],
            "devices": [{"id": "phone", "cell_Wh": 4, **both}, {"id": "radio", "cell_Wh": 1, **both}],
            "banks": [{"id": "bank", "cell_Wh": 4.5, "eff": 1, "ports": 2}],
            "plugs": [{"phase": "walk", "device": "phone", "bank": "bank"}],
        }
        text = said(kitlog, {"day": day, "query": {"cable_g": {"radio": 20}}})
        assert "(flight, walk, ride) – phone −1:00 h, radio" in text
        assert "but then phone is off at the end, 1:00 h longer in all" in text

    def test_a_spare_bank_that_is_there_already(self, kitlog: Kitlog) -> None:
        asked = {"day": DAY, "query": {"spare_banks": [{"bank": {"id": "radio", "cell_Wh": 30}}]}}
        refused = kitlog("budget", "power", "-", stdin=json.dumps(asked).encode())
        assert (refused.code, refused.out) == (2, "")
        assert "radio, query.spare_banks: the device “radio” stands there twice" in refused.err


class TestChangesByChance:
    """A phone of 10 Wh at 2 W lasts 5 h. A flight of (3, 4, 6) h is no longer than that on 1 - 1 / (3 x 2) = 83.3 % of
    the days (distribution function of the triangle, as handbooks have it)."""

    DAY: ClassVar[dict[str, Any]] = {
        "phases": [{"id": "flight", "hours": 4, "ambient_C": 25}],
        "devices": [{"id": "phone", "cell_Wh": 10, "draw_W": {"flight": 2}, "charge_max_W": 5}],
    }
    QUERY: ClassVar[dict[str, Any]] = {
        "spare_banks": [{"bank": {"id": "tiny", "cell_Wh": 0.5, "eff": 1}, "mass_g": 30}],
        "other_uses": [{"device": "phone", "name": "dark", "draw_W": {"flight": 1}}],
        "chance": {"n": 500, "hours": {"flight": [3, 4, 6]}},
    }

    def test_what_lasts_too_seldom_is_in_trouble_though_the_likely_day_is_well(self, kitlog: Kitlog) -> None:
        dark, tiny = told(kitlog, {"day": self.DAY, "query": self.QUERY})["answer"]
        assert (dark["change"], tiny["change"]) == ("use_less", "add_bank")
        assert dark["chance"]["before"]["probability"] == pytest.approx(5 / 6, abs=0.05)
        assert dark["chance"]["after"]["probability"] == 1
        assert 0 < tiny["chance"]["gain"] < dark["chance"]["gain"]
        text = said(kitlog, {"day": self.DAY, "query": self.QUERY})
        assert text.startswith("As planned all lasts on the likely day As planned: phone lasts on 8")
        assert "of 500 days drawn: too seldom to rely on" in text
        assert "Use phone less: dark – phone +5:00 h; all lasts – all last >99.2 % instead of 8" in text
        assert "(flight) – phone +0:15 h; all lasts on the likely day – all last 9" in text

    def test_in_both_cases(self, kitlog: Kitlog) -> None:
        query = {**self.QUERY, "high_hours": {"flight": 4.5}}
        text = said(kitlog, {"day": self.DAY, "query": query})
        assert text.startswith("As planned all lasts on the likely and on the high day As planned: phone lasts on 8")
        assert "phone +0:15 h; all lasts on the likely and on the high day – " in text

    def test_nothing_to_hand(self, kitlog: Kitlog) -> None:
        query = {"chance": self.QUERY["chance"]}
        assert told(kitlog, {"day": self.DAY, "query": query}) == {"answer": []}
        assert said(kitlog, {"day": self.DAY, "query": query}).endswith("Nothing that is to hand would change that.")

    def test_seldom_off_is_well(self, kitlog: Kitlog) -> None:
        """P(flight > 5 h) = 1 / (2.1 x 1.1) x .1^2 = .4 % for (3, 4, 5.1)."""
        query = {**self.QUERY, "chance": {"n": 500, "hours": {"flight": [3, 4, 5.1]}}}
        assert told(kitlog, {"day": self.DAY, "query": query}) == {"answer": []}
        assert said(kitlog, {"day": self.DAY, "query": query}) == "As planned all lasts; nothing needs changing."

    def test_a_name_that_nothing_has_is_refused_first(self, kitlog: Kitlog) -> None:
        query = {**self.QUERY, "may_be_off": ["fone"]}
        refused = kitlog("budget", "power", "-", stdin=json.dumps({"day": self.DAY, "query": query}).encode())
        assert (refused.code, refused.out) == (2, "")
        assert "fone" in refused.err


class TestNight:
    EVENING: ClassVar[dict[str, Any]] = {
        "chargers": [{"id": "wall", "ports": [{"id": "left", "limit_W": 10}]}],
        "things": [
            {"id": "phone", "cell_Wh": 10, "start": 0.5, "charge_max_W": 10, "charge_eff": 1, "knee": 1},
            {"id": "old", "cell_Wh": 10, "start": 0.5, "charge_max_W": 10, "swollen": True},
        ],
        "from_h": 19.5, "bed_h": 22, "up_h": 30, "leave_h": 30.5, "place_C": 20,
    }  # fmt: skip

    def test_steps_by_the_clock_and_when_each_is_full(self, kitlog: Kitlog) -> None:
        """By hand: 4.95 Wh at 10 W: 29.7 min."""
        answer = told(kitlog, {"evening": self.EVENING})
        assert answer["things"][0]["full_h"] == pytest.approx(19.995)
        text = said(kitlog, {"evening": self.EVENING})
        assert text.startswith("19:30 put phone on wall, left; it stays there overnight")
        assert "phone 50 % now, full at 20:00" in text
        assert "old 50 % now; swollen: not charged" in text

    def test_what_is_left_out_is_not_full_and_the_missing_plug_is_named(self, kitlog: Kitlog) -> None:
        assert not told(kitlog, {"evening": self.EVENING})["all_full"]
        assert told(kitlog, {"evening": self.EVENING})["all_chargeable_full"]
        things = [{"id": "phone", "cell_Wh": 10, "start": 0.5, "charge_max_W": 10, "connector": "USB-C"}]
        asked = {"evening": {**self.EVENING, "chargers": [], "things": things}}
        assert told(kitlog, asked)["remedies"][0]["connectors"] == ["USB-C"]
        assert "A charger of 10 W with a USB-C plug – 5.0 Wh more, all full" in said(kitlog, asked)
        port = {"id": "left", "connector": "USB-A"}
        asked["evening"] |= {"chargers": [{"id": "wall", "ports": [port]}], "cables": []}
        assert "One more cable USB-A to USB-C – 5.0 Wh more, all full" in said(kitlog, asked)

    def test_where_not_every_plan_was_compared_it_says_so(self, kitlog: Kitlog) -> None:
        chargers = [{"id": "wall", "ports": [{"id": "left"}, {"id": "right"}]}]
        sizes = [(3 + n, (0.0, 0.1, 0.2, 0.3, 0.4)[n % 5]) for n in range(12)]
        things = [{"id": f"t{wh}", "cell_Wh": wh, "start": start, "charge_max_W": 5} for wh, start in sizes]
        asked = {"evening": {**self.EVENING, "chargers": chargers, "things": things}}
        assert not told(kitlog, asked)["complete"]
        assert "Not every plan was compared: this is the best of those tried." in said(kitlog, asked)
        assert "Not every plan" not in said(kitlog, {"evening": self.EVENING})

    def test_short_of_full_and_what_would_help(self, kitlog: Kitlog) -> None:
        asked = {"evening": {**self.EVENING, "from_h": 19.5, "bed_h": 19.6, "up_h": 19.6, "leave_h": 19.6}}
        text = said(kitlog, asked)
        assert "phone 50 % now, 60 % at leaving, 3.9 Wh short of full" in text
        assert "Start at 19:00 – 3.9 Wh more, all that can be charged full" in text

    def test_storage(self, kitlog: Kitlog) -> None:
        things = [{"id": "bank", "start": 0.9, "unused_days": 50}, {"id": "phone", "start": 0.9, "unused_days": 2}]
        asked = {"storage": {"things": things}}
        assert [one["act"] for one in told(kitlog, asked)["things"]] == ["use_down", "leave"]
        text = said(kitlog, asked)
        assert "bank 90 % now: use it down to 50 % (unused for six weeks or more)" in text
        assert "phone 90 % now: leave it (in use)" in text


def test_one_schema_covers_them_all(kitlog: Kitlog) -> None:
    schema = kitlog("budget", "power", "--schema").json
    assert schema["properties"].keys() == {"day", "sample_h", "query", "evening", "storage"}
    keys = {key for form in schema["$defs"].values() for key in form.get("properties", {})}
    assert {
        "phase", "bank", "targets", "n", "callers", "fan_steps", "place", "choices", "spare_banks", "chance",
        "mA", "lasts_h", "from_pct", "rated_mAh", "chargers", "things",
    } <= keys  # fmt: skip
