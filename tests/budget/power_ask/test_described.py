"""Draws and capacities as pilots know them, in the JSON of the day."""

import json

import pytest

from kitlog.budget.power_ask.ask import answer
from kitlog.fault import InputFault


def day(draw, *, device=None, hours=100.0):
    return {
        "phases": [{"id": "day", "hours": hours, "ambient_C": 25}],
        "devices": [{"id": "radio", "cell_Wh": 10, "draw_W": {"day": draw}, **(device or {})}],
    }


def off_h(draw, **how):
    text = json.dumps({"day": day(draw, **how), "sample_h": []})
    return answer(text)["devices"]["radio"]["first_off_h"]


def refused(draw, **how):
    with pytest.raises(InputFault) as caught:
        off_h(draw, **how)
    return caught.value


def test_a_current_at_its_volts():
    """By hand: 250 mA x 4 V = 1 W on 10 Wh."""
    assert off_h({"mA": 250, "V": 4}) == pytest.approx(10.0)


@pytest.mark.parametrize("device", [{}, {"health": 0.8}, {"health": 0.8, "cutoff": 0.1}])
def test_it_lasts_as_long_as_it_was_said_to_last(device):
    assert off_h({"lasts_h": 9}, device=device) == pytest.approx(9.0)


def test_a_drop_that_was_measured():
    """By hand: 37 % of 10 Wh x .9 in 4.5 h is .74 W; 9 Wh last 12.162 h."""
    drop = {"from_pct": 100, "to_pct": 63, "hours": 4.5}
    assert off_h(drop, device={"health": 0.9}) == pytest.approx(9 / 0.74)


def test_a_capacity_in_milliamp_hours_counts_for_hours_too():
    mah = {"cell_Wh": None, "cell_mAh": 2000, "nominal_V": 5}
    assert off_h({"lasts_h": 9}, device=mah) == pytest.approx(9.0)


def test_ways_of_use_may_be_described_each_in_its_own_way():
    """By hand: .5 x 1 W + .25 x 2 W + .25 x 10 Wh / 10 h = 1.25 W."""
    modes = [{"W": 1, "share": 0.5}, {"mA": 400, "V": 5, "share": 0.25}, {"lasts_h": 10, "share": 0.25}]
    assert off_h({"modes": modes}) == pytest.approx(8.0)


def test_watts_and_modes_are_what_they_were():
    assert off_h(1) == off_h(1.0) == off_h({"modes": [{"W": 1, "share": 1}]}) == pytest.approx(10.0)


class TestErrors:
    def chance(self, draw, hours, **query):
        asked = {"day": day(draw, hours=hours), "query": {"n": 2000, **query}}
        return answer(json.dumps(asked))["answer"]["radio"]

    def test_a_drop_brings_its_error_into_the_chance(self):
        """10 points in 1 h, give or take one: .9 to 1.1 W; 10 h are as likely as not to be lasted."""
        assert self.chance({"from_pct": 50, "to_pct": 40, "hours": 1}, 10.0) == pytest.approx(0.5, abs=0.05)
        assert self.chance(1.0, 9.999) == 1.0

    def test_a_draw_that_the_question_names_counts_instead(self):
        named = {"draws": {"radio": {"day": [1, 1, 1]}}}
        assert self.chance({"from_pct": 50, "to_pct": 40, "hours": 1}, 9.999, **named) == 1.0

    def test_a_way_among_others_brings_its_share_of_the_error(self):
        modes = {"modes": [{"from_pct": 50, "to_pct": 40, "hours": 1, "share": 0.5}, {"W": 1, "share": 0.5}]}
        assert 0.0 < self.chance(modes, 9.8) < 1.0

    def test_the_chance_of_changes_too(self):
        drop = {"from_pct": 50, "to_pct": 40, "hours": 1}
        asked = {"day": day(drop, device={"start": 0.99}, hours=9.95), "query": {"chance": {"n": 200}}}
        (full,) = answer(json.dumps(asked))["answer"]
        assert 0 < full["chance"]["before"]["probability"] < full["chance"]["after"]["probability"] < 1


class TestRefused:
    @pytest.mark.parametrize(
        ("draw", "code", "facts"),
        [
            ({"mA": 100}, "field.missing", {"field": "draw_W.day.V"}),
            ({"mA": 100, "V": 0}, "number.out_of_range", {"field": "draw_W.day.V"}),
            ({"mA": -1, "V": 5}, "number.out_of_range", {"field": "draw_W.day.mA"}),
            ({"mA": 100, "V": 5, "lasts_h": 3}, "field.unknown", {"field": "draw_W.day.lasts_h"}),
            ({"lasts_h": 0}, "number.out_of_range", {"field": "draw_W.day.lasts_h"}),
            ({"from_pct": 50, "to_pct": 49, "hours": 1}, "draw.drop_too_small", {"field": "draw_W.day"}),
            ({"from_pct": 40, "to_pct": 50, "hours": 1}, "draw.charge_rose", {"field": "draw_W.day"}),
            ({"from_pct": 101, "to_pct": 50, "hours": 1}, "number.out_of_range", {"field": "draw_W.day.from_pct"}),
            ({"modes": [{"lasts_h": 9, "share": 0.9}]}, "draw.shares", {"phase": "day"}),
            ({"modes": [{"W": 1, "mA": 3, "share": 1}]}, "field.unknown", {"field": "draw_W.day.modes.0.mA"}),
        ],
    )
    def test_the_device_is_named(self, draw, code, facts):
        fault = refused(draw)
        assert (fault.code, fault.facts["id"]) == (code, "radio")
        assert facts.items() <= fault.facts.items()

    @pytest.mark.parametrize(
        ("device", "code"),
        [
            ({"cell_Wh": None}, "cell.missing"),
            ({"cell_mAh": 100, "nominal_V": 4}, "cell.two_figures"),
            ({"cell_Wh": 0}, "number.out_of_range"),
            ({"health": 0}, "number.out_of_range"),
        ],
    )
    def test_a_run_time_needs_a_cell(self, device, code):
        fault = refused({"lasts_h": 9}, device=device)
        assert (fault.code, fault.facts["id"]) == (code, "radio")

    def test_minutes_are_taken_for_what_they_are(self):
        assert off_h({"lasts_h": 0.02}) == pytest.approx(0.02)


class TestRatedAtThePort:
    def lamp(self, **bank):
        asked = {
            "phases": [{"id": "night", "hours": 100, "ambient_C": 25}],
            "devices": [{"id": "lamp", "cell_Wh": 0, "draw_W": {"night": 2}}],
            "banks": [{"id": "bank", **bank}],
            "plugs": [{"phase": "night", "device": "lamp", "bank": "bank"}],
        }
        return answer(json.dumps({"day": asked, "sample_h": []}))["banks"]["bank"]

    @pytest.mark.parametrize("eff", [0.85, 0.65, 1.0])
    def test_the_loss_comes_off_once_whatever_it_is(self, eff):
        """Printed on one 10,000 mAh bank: rated 6,500 mAh at 5 V (gearbest.com): 32.5 Wh leave its ports."""
        assert self.lamp(rated_mAh=6500, eff=eff)["delivered_Wh"] == pytest.approx(32.5)

    def test_age_takes_its_part(self):
        assert self.lamp(rated_mAh=6500, health=0.8)["delivered_Wh"] == pytest.approx(26.0)

    @pytest.mark.parametrize("more", [{"cell_Wh": 37}, {"cell_mAh": 10_000, "nominal_V": 3.7}])
    def test_one_capacity_is_enough(self, more):
        with pytest.raises(InputFault) as caught:
            self.lamp(rated_mAh=6500, **more)
        assert (caught.value.code, caught.value.facts["id"]) == ("cell.two_figures", "bank")
