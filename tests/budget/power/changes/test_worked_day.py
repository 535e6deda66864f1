"""Remedies of the worked cross-country day: what its table says of each, found by running them."""

import sys
from pathlib import Path

import pytest

from kitlog.budget.power.changes.given import ToHand
from kitlog.budget.power.changes.weigh import plan, remedies
from kitlog.budget.power.question import Target

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from worked import VARIO, worked


def to_hand(**fields):
    return ToHand.model_validate(fields)


def weighed(day, high=None, targets=(), **fields):
    return remedies(plan(day, high, [Target(device=name) for name in targets]), to_hand(**fields))


def the(found, code, *ids):
    (one,) = (one for one in found if one.candidate.code == code and one.candidate.ids[: len(ids)] == ids)
    return one


def close(figure, tolerance=0.001):
    return pytest.approx(figure, abs=tolerance)


LOW_HEAT = {"device": "gloves", "name": "low", "draw_W": {"flight": 16.2 / 7}}
"""16.2 Wh that last 7 h on low, as high (5.4 W) lasts 3 h and medium (3.24 W) 5 h."""


class TestGloves:
    def test_trouble_is_found_with_its_hours(self):
        planned = plan(worked())
        assert planned.trouble == {"gloves"}
        assert planned.likely.fares["gloves"].short_h == close(0.661)

    def test_leaving_them_off_makes_all_last_but_gives_them_up(self):
        one = the(weighed(worked(), may_be_off=["gloves"]), "leave_off", "gloves")
        assert one.all_last
        assert one.candidate.gives_up == {"gloves"}
        assert "gloves" not in one.devices
        assert one.harms == ()

    def test_low_heat_lasts_by_hand(self):
        """14.58 Wh less the floor at +8 deg C (14.69 %): 12.438 Wh; on 2.314 W for 4.5 h 2.024 Wh or .875 h are left."""
        one = the(weighed(worked(), other_uses=[LOW_HEAT]), "use_less", "gloves")
        gloves = one.devices["gloves"]
        assert one.all_last
        assert one.cut_h == close(0.661)
        assert gloves.likely.first_off_h is None
        floor_now = 1 - (0.85 + 0.15 * 25 / 25) * 0.95  # +28 deg C on the ride: 5 %
        assert gloves.likely.hours_more == close((14.58 * (1 - floor_now) - 4.5 * 16.2 / 7) / (16.2 / 7))

    def test_low_heat_falls_short_on_a_high_day_by_hand(self):
        """12.438 Wh / 2.314 W = 5.374 h of 6 h."""
        one = the(weighed(worked(), worked("high"), other_uses=[LOW_HEAT]), "use_less", "gloves")
        floor = 1 - (0.85 + 0.15 * 8 / 25) * 0.95
        usable_wh = 14.58 * (1 - floor)
        assert one.all_last
        assert one.all_last_high is False
        assert one.devices["gloves"].high.short_h == close(6 - usable_wh / (16.2 / 7))
        assert one.cut_high_h == close(2.161 - one.devices["gloves"].high.short_h)

    def test_what_keeps_the_gloves_goes_before_what_gives_them_up(self):
        found = weighed(worked(), may_be_off=["gloves"], other_uses=[LOW_HEAT])
        assert [one.candidate.code for one in found] == ["use_less", "leave_off"]


class TestPhoneLitInTheCold:
    def test_dies_in_flight(self):
        fare = plan(worked(lit=True), targets=[Target(device="phone")]).likely.fares["phone"]
        assert fare.first_off_h == close(5.876)
        assert fare.life_h == fare.first_off_h

    def test_a_bank_on_the_ride_comes_too_late(self):
        found = weighed(worked(lit=True), targets=["phone"], plug_phases=["ride"])
        one = the(found, "plug_too", "phone")
        assert not one.all_last
        assert one.devices["phone"].likely.first_off_h == close(5.876)
        assert 100 * one.devices["phone"].likely.soc_end == close(91.1, 0.06)
        assert one.cut_h == 0

    def test_a_bank_from_take_off_makes_it_last(self):
        phases = ["flight", "walk", "ride"]
        one = the(
            weighed(worked(lit=True), worked("high", lit=True), targets=["phone"], plug_phases=phases), "plug_too"
        )
        assert (one.all_last, one.all_last_high) == (True, True)
        assert 100 * one.devices["phone"].likely.soc_end == close(99.99, 0.006)
        assert one.candidate.facts["phases"] == tuple(phases)
        assert one.cut_h == close(9 - 5.876)

    def test_screen_off_in_flight_makes_it_last(self):
        dark = {"device": "phone", "name": "screen off", "draw_W": {"flight": 1.1}}
        one = the(weighed(worked(lit=True), targets=["phone"], other_uses=[dark]), "use_less", "phone")
        assert one.all_last
        assert 100 * one.devices["phone"].likely.soc_end == close(46.4, 0.06)

    def test_a_tenth_of_the_time_lit_is_reckoned_by_shares(self):
        modes = {"modes": [{"W": 2.6, "share": 0.1}, {"W": 1.1, "share": 0.9}]}
        tenth = {"device": "phone", "name": "screen 10 %", "draw_W": {"flight": modes}}
        one = the(weighed(worked(lit=True), targets=["phone"], other_uses=[tenth]), "use_less", "phone")
        assert 100 * one.devices["phone"].likely.soc_end == close(46.4 - 100 * 0.15 * 4.5 / 15.57, 0.06)

    def test_under_the_shell_it_sees_the_landing_and_dies_on_the_ride_by_hand(self):
        """+12 K: no floor in its way in flight (13.55 %), 19.08 % at landing; at 30 deg C all over 5 % counts: 2.19 Wh,
        less .9 for the walk, at .8 W 1.614 h into the ride."""
        shell = {"id": "phone", "place": "under the shell", "temp_offset_C": 12}
        one = the(weighed(worked(lit=True), targets=["phone"], warmer_places=[shell]), "carry_warmer", "phone")
        landing_wh = 15.57 * 0.95 - 1.5 * 0.6 - 4.5 * 2.6
        off_h = 7 + (landing_wh - 0.9) / 0.8
        assert one.devices["phone"].likely.first_off_h == close(off_h)
        assert one.devices["phone"].gain_h == close(off_h - 5.876)
        assert one.candidate.facts == {"place": "under the shell", "by_k": 12}
        assert not one.all_last

    def test_nothing_is_offered_where_all_lasts(self):
        assert weighed(worked(), targets=["phone"], may_be_off=["gloves"]) == ()


class TestBankThatFallsAsleep:
    DAY = worked(more=[VARIO], plugs=[("flight", "vario")])

    def test_is_found(self):
        planned = plan(self.DAY, targets=[Target(device="vario")])
        assert planned.sleepy == {"bank"}
        assert planned.likely.banks["bank"].auto_off_h == close(1.5 + 32 / 3600, 1e-6)

    def test_the_phone_keeps_it_awake(self):
        """1.1 W of the phone and .15 of the vario are over .25 W; at -2 deg C the phone's cell takes nothing."""
        found = weighed(self.DAY, targets=["vario"], plug_phases=["flight"])
        one = the(found, "plug_too", "phone", "bank")
        assert [(mend.code, mend.id) for mend in one.mends] == [("asleep", "bank")]
        assert one.harms == ()
