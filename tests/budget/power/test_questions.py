"""The four questions, on days that can be worked out by hand."""

from math import exp

import pytest
from scipy.optimize import brentq
from scipy.stats import triang

from kitlog.budget.power.chance import chance
from kitlog.budget.power.day import Day
from kitlog.budget.power.longest_phase import longest_phase
from kitlog.budget.power.lowest_start import lowest_start
from kitlog.budget.power.question import Chance, LongestPhase, LowestStart, SmallestBank
from kitlog.budget.power.simulate import simulate
from kitlog.budget.power.smallest_bank import smallest_bank
from kitlog.budget.power.walk_down import MOST_RUNS, WalkDown
from kitlog.fault import InputFault

CAR = {"id": "car", "cell_Wh": None}
BANK = {"id": "bank", "cell_Wh": 1, "eff": 0.8, "health": 0.9, "quiescent_W": 0.1}


def day(hours, phone, banks=(), plugs=()):
    return Day.model_validate(
        {
            "phases": [{"id": name, "hours": value, "ambient_C": 25} for name, value in hours.items()],
            "devices": [{"id": "phone", "cell_Wh": 10, "draw_W": dict.fromkeys(hours, 1.0), **phone}],
            "banks": banks,
            "plugs": plugs,
        }
    )


def plug(phase, bank="car", **how):
    return {"phase": phase, "device": "phone", "bank": bank, **how}


class TestLongestPhase:
    def ask(self, hours, phone=None, banks=(), plugs=(), **query):
        asked = {"phase": "ride", "device": "phone", "horizon_h": 48} | query
        return longest_phase(day(hours, phone or {}, banks, plugs), LongestPhase.model_validate(asked))

    def test_until_it_goes_off(self):
        assert self.ask({"flight": 4, "ride": 1}) == pytest.approx(6.0)

    def test_until_it_falls_under_what_is_to_be_left(self):
        assert self.ask({"flight": 4, "ride": 1}, min_soc=0.2) == pytest.approx(4.0)

    def test_along_a_bend(self):
        """A camera's charging fades beside a phone that gets what is left: the level is 1.5 - .5 exp(-.1 t) W, so the
        phone, at 2 W, loses .5 t + 5 (1 - exp(-.1 t)) Wh. Solved by scipy's brentq."""
        with_camera = Day.model_validate(
            {
                "phases": [{"id": "ride", "hours": 1, "ambient_C": 25}],
                "devices": [
                    {"id": "phone", "cell_Wh": 10, "draw_W": {"ride": 2.0}},
                    {"id": "cam", "cell_Wh": 9, "start": 0.5, "charge_max_W": 1.0, "charge_eff": 0.9, "knee": 0},
                ],
                "banks": [{**CAR, "total_limit_W": 1.5, "ports": 2}],
                "plugs": [plug("ride"), {"phase": "ride", "device": "cam", "bank": "car"}],
            }
        )
        query = LongestPhase(phase="ride", device="phone", min_soc=0.9, horizon_h=100)
        expected = brentq(lambda t: 0.5 * t + 5 * (1 - exp(-0.1 * t)) - 1, 0, 3, xtol=1e-13)
        assert longest_phase(with_camera, query) == pytest.approx(expected, abs=1e-10)

    def test_off_for_a_while_before_does_not_matter(self):
        """Dead in the cold with 4 Wh of its 5 locked; back in the warm."""
        cold = Day.model_validate(
            {
                "phases": [{"id": "flight", "hours": 3, "ambient_C": -20}, {"id": "ride", "hours": 1, "ambient_C": 25}],
                "devices": [{"id": "phone", "cell_Wh": 10, "start": 0.5, "draw_W": {"flight": 1, "ride": 1}}],
            }
        )
        query = LongestPhase(phase="ride", device="phone")
        assert longest_phase(cold, query) == pytest.approx(4.0)

    def test_none_past_the_horizon(self):
        assert self.ask({"flight": 4, "ride": 1}, banks=[CAR], plugs=[plug("ride")]) is None

    @pytest.mark.parametrize("hours", [{"flight": 11, "ride": 1}, {"flight": 9.5, "ride": 1}])
    def test_nothing_if_it_fails_at_the_start(self, hours):
        assert self.ask(hours, {"restart_margin": None}, min_soc=0.1) == 0.0

    def test_a_phase_without_duration_can_be_asked_about(self):
        assert self.ask({"flight": 4, "ride": 0}) == pytest.approx(6.0)
        assert self.ask({"flight": 4, "ride": 1, "home": 0}) == pytest.approx(6.0)

    def test_a_dip_under_what_is_to_be_left_counts_though_it_is_charged_again(self):
        how = {"charge_max_W": 5, "charge_eff": 1}
        assert self.ask({"ride": 1}, how, [CAR], [plug("ride", connect_below=0.4)], min_soc=0.5) == pytest.approx(5.0)
        assert self.ask({"ride": 1}, how, [CAR], [plug("ride", connect_below=0.5)], min_soc=0.5) is None

    def test_only_the_last_phase_can_be_asked_about(self):
        with pytest.raises(InputFault) as refused:
            self.ask({"ride": 1, "home": 2})
        assert refused.value.code == "query.phase_not_last"
        assert refused.value.facts == {"id": "ride", "last": "home"}


class TestSmallestBank:
    def ask(self, hours, phone, banks, plugs, max_wh=100.0, min_soc=0.0):
        targets = [{"device": "phone", "min_soc": min_soc}]
        query = SmallestBank.model_validate({"bank": "bank", "max_Wh": max_wh, "targets": targets})
        return smallest_bank(day(hours, phone, banks, plugs), query)

    def test_what_a_lamp_needs(self):
        """By hand: 3 h at 2 W / .8 + .1 W = 7.8 Wh, of a bank with .9 of its label."""
        lamp = {"cell_Wh": 0, "draw_W": {"night": 2}}
        asked = ({"night": 3}, lamp, [BANK], [plug("night", "bank")])
        assert self.ask(*asked) == pytest.approx(7.8 / 0.9, abs=1e-5)
        assert self.ask(*asked, max_wh=8.6) is None

    def test_nothing_if_none_is_needed(self):
        assert self.ask({"flight": 3}, {}, [BANK], [plug("flight", "bank")]) == 0.0

    def test_a_larger_bank_can_do_harm_so_all_larger_ones_must_do(self):
        """The bank carries the phone for B of 5 h: it ends at .4 + B/10. At .5 or under (B <= 1) it is put on the car's
        socket, and is full; above, it must have .75 by itself for 7.5 h more: B = 3.5."""
        bank = {"id": "bank", "cell_Wh": 1, "eff": 1, "port_limit_W": 1}
        phone = {"start": 0.9, "charge_max_W": 10, "charge_eff": 1, "knee": 1}
        hours = {"flight": 5, "car": 0.5, "home": 7}
        plugs = [plug("flight", "bank"), plug("car", connect_below=0.5)]
        assert self.ask(hours, phone, [bank, CAR], plugs) == pytest.approx(3.5, abs=1e-5)


class TestLowestStart:
    def ask(self, hours, phone=None, banks=(), plugs=(), min_soc=0.0):
        query = LowestStart.model_validate({"device": "phone", "targets": [{"device": "phone", "min_soc": min_soc}]})
        return lowest_start(day(hours, phone or {}, banks, plugs), query)

    def test_enough_for_the_day(self):
        assert self.ask({"flight": 4}, min_soc=0.25) == pytest.approx(0.65, abs=1e-8)

    def test_any_or_none(self):
        assert self.ask({"flight": 4}, {"draw_W": {}}) == 0.0
        assert self.ask({"flight": 11}) is None

    def test_a_fuller_start_can_be_worse_so_all_fuller_ones_must_do(self):
        """9.5 h in all. Up to .7925 the phone is plugged in flight, charged and lasts; up to .8 it is plugged too late; from
        there on it is never plugged, and needs .95. Halving 0..1 would call an empty phone enough."""
        phone = {"charge_max_W": 20, "charge_eff": 1, "knee": 1}
        asked = ({"flight": 3, "home": 6.5}, phone, [CAR], [plug("flight", connect_below=0.5)])
        assert self.ask(*asked) == pytest.approx(0.95, abs=1e-8)
        for start, lasts in [(0.0, True), (0.55, True), (0.792, True), (0.794, False), (0.9, False), (0.96, True)]:
            result = simulate(day(asked[0], {**phone, "start": start}, *asked[2:]))
            assert (result.devices["phone"].first_off_h is None) is lasts

    def test_a_narrow_gap_between_two_steps_is_found(self):
        """In a phase without load the plug decides by the start alone: up to .5012 plugged, above not, .504 needed."""
        hours = {"wait": 1, "flight": 5.04}
        phone = {"draw_W": {"flight": 1.0}, "charge_max_W": 20, "charge_eff": 1, "knee": 1}
        found = self.ask(hours, phone, [CAR], [plug("wait", connect_below=0.5012)])
        assert found == pytest.approx(0.504, abs=1e-8)


class TestChance:
    def ask(self, hours, phone=None, banks=(), plugs=(), /, **query):
        odds = chance(day(hours, phone or {}, banks, plugs), Chance.model_validate({"n": 4000, "seed": 7} | query))
        return odds["phone"]

    def close(self, odds, expected):
        return abs(odds.probability - expected) < 4 * odds.standard_error

    def test_an_uncertain_draw(self):
        """5 h on 10 Wh: lasts under 2 W. scipy.stats.triang for (1, 1.5, 3)."""
        odds = self.ask({"flight": 5}, draws={"phone": {"flight": [1, 1.5, 3]}})
        assert self.close(odds, triang.cdf(2, c=0.5 / 2, loc=1, scale=2))

    def test_an_uncertain_start(self):
        """8 h at 1 W: lasts from .8. scipy.stats.triang for (.6, .9, 1)."""
        assert self.close(
            self.ask({"flight": 8}, start={"phone": [0.6, 0.9, 1]}), triang.sf(0.8, c=0.75, loc=0.6, scale=0.4)
        )

    def test_an_uncertain_start_of_the_bank(self):
        lamp = {"cell_Wh": 0}
        bank = {"id": "bank", "cell_Wh": 10, "eff": 1}
        odds = self.ask({"night": 5}, lamp, [bank], [plug("night", "bank")], start={"bank": [0.2, 0.2, 1]})
        assert self.close(odds, triang.sf(0.5, c=0, loc=0.2, scale=0.8))

    @pytest.mark.parametrize("least", [0.3, {"phone": 0.3}])
    def test_with_something_to_be_left(self, least):
        odds = self.ask({"flight": 1}, hours={"flight": [5, 6, 9]}, min_soc=least)
        assert self.close(odds, triang.cdf(7, c=1 / 4, loc=5, scale=4))

    @pytest.mark.parametrize(("hours", "probability"), [(9.9, 1.0), (10.1, 0.0)])
    def test_low_and_high_may_be_the_same(self, hours, probability):
        odds = self.ask({"flight": 1}, hours={"flight": [hours] * 3}, n=5)
        assert (odds.probability, odds.standard_error) == (probability, 0.0)

    def test_the_same_seed_gives_the_same_days_in_whatever_order_they_are_named(self):
        first = {"wait": [0, 1, 2], "flight": [4, 6, 9]}
        last = dict(reversed(first.items()))
        hours = {"wait": 1, "flight": 5}
        assert self.ask(hours, hours=first) == self.ask(hours, hours=last)
        assert self.ask(hours, hours=first) != self.ask(hours, hours=first, seed=8)

    def test_each_device_by_itself(self):
        both = Day.model_validate(
            {
                "phases": [{"id": "flight", "hours": 5, "ambient_C": 25}],
                "devices": [
                    {"id": "weak", "cell_Wh": 1, "draw_W": {"flight": 1}},
                    {"id": "strong", "cell_Wh": 90, "draw_W": {"flight": 1}},
                ],
            }
        )
        odds = chance(both, Chance(n=10, hours={"flight": (2, 3, 4)}))
        assert {name: each.probability for name, each in odds.items()} == {"weak": 0.0, "strong": 1.0}


class TestWalkDown:
    def walk(self, holds, story=lambda x: None, largest=1.0, breakpoints=()):
        walk = WalkDown(lambda x: (holds(x), story(x)), largest, breakpoints)
        return walk.least(), walk.runs

    def test_stops_at_the_first_gap_from_above(self):
        least, runs = self.walk(lambda x: x >= 0.7312 or x < 0.4)
        assert least == pytest.approx(0.7312, abs=1e-8)
        assert runs <= MOST_RUNS

    def test_what_it_gives_will_itself_do(self):
        least, _ = self.walk(lambda x: x > 0.333)
        assert least > 0.333

    def test_finds_a_gap_within_a_step_where_the_story_changes(self):
        least, _ = self.walk(lambda x: not 0.60001 < x < 0.60002, lambda x: x > 0.60001)
        assert least == pytest.approx(0.60002, abs=1e-6)

    @pytest.mark.parametrize("changes", [3, 30, 1000])
    def test_keeps_to_its_runs(self, changes):
        least, runs = self.walk(lambda x: x > 0.0123, lambda x: int(x * changes))
        assert least == pytest.approx(0.0123, abs=1e-8)
        assert runs <= MOST_RUNS

    def test_breakpoints_are_tried(self):
        seen = []
        self.walk(lambda x: seen.append(x) or True, breakpoints=[0.12345, 2.0])
        assert 0.12345 in seen
        assert max(seen) == 1.0
