"""The order of events and the states of banks and devices, rule by rule. Figures by hand from the rules of the model."""

from math import exp, log

import pytest

from kitlog.budget.power.day import Day
from kitlog.budget.power.simulate import simulate

SUPPLY = {"id": "bank", "cell_Wh": 100, "eff": 1, "ports": 3}
SLEEPY = {**SUPPLY, "min_out_W": 1.5, "auto_off_s": 1800}


def phase(name, hours, ambient_c=25):
    return {"id": name, "hours": hours, "ambient_C": ambient_c}


def plug(name, device="vario", bank="bank", **how):
    return {"phase": name, "device": device, "bank": bank, **how}


def device(name="vario", load_w=1.0, phases=("a", "b", "c"), **figures):
    return {"id": name, "cell_Wh": 10, "draw_W": dict.fromkeys(phases, load_w), **figures}


def run(phases, devices, banks=(), plugs=(), sample_h=()):
    named = {each["id"] for each in phases}
    devices = [
        {**each, "draw_W": {name: watts for name, watts in each["draw_W"].items() if name in named}} for each in devices
    ]
    day = Day.model_validate({"phases": phases, "devices": devices, "banks": banks, "plugs": plugs})
    return simulate(day, sample_h)


def states(result, bank="bank"):
    return [(span.what, round(span.from_h, 9), round(span.to_h, 9)) for span in result.bank_courses[bank].states]


class TestDevices:
    def test_goes_off_at_its_floor_and_stays_off_in_the_phase(self):
        result = run([phase("a", 12)], [device(cutoff=0.1)])
        vario = result.devices["vario"]
        assert vario.first_off_h == pytest.approx(9.0)
        assert (vario.off_h, vario.soc_end) == (pytest.approx(3.0), pytest.approx(0.1))
        assert not vario.on_at_end

    def test_cold_raises_the_floor_and_gives_back_when_it_is_warm_again(self):
        cold = run([phase("a", 2), phase("b", 1, -20), phase("c", 1)], [device(start=0.7)])
        # the floor at -20 is .4, reached just as the cold phase ends: an instant that belongs to the warm one
        vario = cold.devices["vario"]
        assert vario.first_off_h is None
        assert vario.phase_end_soc == pytest.approx((0.5, 0.4, 0.3))
        assert vario.margin_wh == pytest.approx(3.0)
        assert vario.reserve_wh == pytest.approx(1.0)

    def test_a_start_below_the_floor_is_off_at_once_if_it_draws(self):
        result = run([phase("a", 1, -20)], [device(start=0.3), device("idle", 0.0, start=0.3)])
        assert result.devices["vario"].first_off_h == 0.0
        assert result.devices["idle"].first_off_h is None
        assert result.devices["idle"].margin_wh == 0.0

    def test_a_fully_carried_load_goes_on_below_the_floor(self):
        result = run([phase("a", 1, -20)], [device(start=0.3)], [SUPPLY], [plug("a")])
        assert result.devices["vario"].first_off_h is None
        assert result.devices["vario"].soc_end == 0.3  # too cold to be charged

    def test_comes_back_with_enough_margin_at_a_phase_start_and_keeps_its_first_time(self):
        phases = [phase("a", 1, -20), phase("b", 1)]
        back = run(phases, [device(start=0.4, restart_margin=0.4)]).devices["vario"]
        assert (back.first_off_h, back.off_h, back.on_at_end) == (0.0, 1.0, True)
        assert back.soc_end == pytest.approx(0.3)
        for margin in (0.41, None):
            gone = run(phases, [device(start=0.4, restart_margin=margin)]).devices["vario"]
            assert (gone.off_h, gone.on_at_end, gone.soc_end) == (2.0, False, 0.4)
            assert (gone.margin_wh, gone.hours_more) == (0.0, 0.0)

    def test_an_off_device_still_charges(self):
        result = run([phase("a", 1), phase("b", 1)], [device(start=0, charge_max_W=4, load_w=5, charge_eff=1)],
                     [{**SUPPLY, "port_limit_W": 3}], [plug("a")])  # fmt: skip
        vario = result.devices["vario"]
        assert vario.first_off_h == 0.0
        assert vario.phase_end_soc == pytest.approx((0.3, 0.0))  # on again in b, and off when empty
        assert vario.off_h == pytest.approx(1 + 1 - 3 / 5)

    def test_all_that_fail_together_go_together_before_shares_are_looked_at_again(self):
        """Two dead devices on 3 W: neither is carried (1.5 of 2 W each); both go, though one alone would have lasted."""
        banks = [{**SUPPLY, "total_limit_W": 3}]
        pair = [device("one", 2.0, start=0), device("two", 2.0, start=0)]
        result = run([phase("a", 1)], pair, banks, [plug("a", "one"), plug("a", "two")])
        assert [each.first_off_h for each in result.devices.values()] == [0.0, 0.0]

    def test_a_switch_off_leaves_more_for_the_others(self):
        """5 W for 4 + 4 W: one has no cell and goes at once; the other then gets all it asks."""
        pair = [device("lamp", 4.0, cell_Wh=0), device("phone", 4.0, start=0.5)]
        result = run([phase("a", 1)], pair, [{**SUPPLY, "total_limit_W": 5}], [plug("a", "lamp"), plug("a", "phone")])
        assert result.devices["lamp"].first_off_h == 0.0
        assert result.devices["phone"].soc_end == 0.5

    def test_without_a_cell_there_is_no_charge_to_speak_of(self):
        lamp = run([phase("a", 1)], [device("lamp", health=0)]).devices["lamp"]
        assert (lamp.soc_end, lamp.phase_end_soc, lamp.samples_soc) == (None, None, None)
        assert (lamp.margin_wh, lamp.margin_pct, lamp.hours_more) == (0.0, None, None)
        assert (lamp.first_off_h, lamp.off_h) == (0.0, 1.0)

    def test_without_a_cell_it_comes_back_with_each_phase_that_feeds_it(self):
        lamp = device("lamp", cell_Wh=0, restart_margin=None)
        result = run([phase("a", 1), phase("b", 1), phase("c", 1)], [lamp], [SUPPLY], [plug("b", "lamp")])
        assert [(span.from_h, span.to_h) for span in result.device_courses["lamp"].off] == [(0.0, 1.0), (2.0, 3.0)]


class TestPlugs:
    def test_is_plugged_when_it_gets_low_enough(self):
        result = run([phase("a", 6)], [device()], [SUPPLY], [plug("a", connect_below=0.6)], [2.0, 4.0, 6.0])
        assert result.devices["vario"].samples_soc == pytest.approx((0.8, 0.6, 0.6))
        assert [(span.from_h, span.what) for span in result.device_courses["vario"].plugged] == [
            (pytest.approx(4), "bank")
        ]

    def test_is_plugged_before_it_would_go_off_when_both_fall_together(self):
        result = run([phase("a", 12)], [device(cutoff=0.1)], [SUPPLY], [plug("a", connect_below=0.1)])
        assert result.devices["vario"].first_off_h is None
        assert [late.device for late in result.late_plugs] == ["vario"]

    def test_a_plug_planned_for_under_the_floor_comes_too_late_and_is_told(self):
        result = run([phase("a", 12)], [device(cutoff=0.1)], [SUPPLY], [plug("a", connect_below=0.05)])
        assert result.devices["vario"].first_off_h == pytest.approx(9.0)
        assert result.device_courses["vario"].plugged == ()
        (late,) = result.late_plugs
        assert (late.phase, late.device, late.bank, late.connect_below) == ("a", "vario", "bank", 0.05)
        assert late.floor_soc == pytest.approx(0.1)

    def test_stays_plugged_to_the_end_of_the_phase_and_is_judged_anew_in_the_next(self):
        charged = device(charge_max_W=20, charge_eff=1, knee=1)
        result = run(
            [phase("a", 5), phase("b", 1)], [charged], [SUPPLY],
            [plug("a", connect_below=0.8, charge_to=0.9), plug("b", connect_below=0.8)],
        )  # fmt: skip
        assert result.devices["vario"].phase_end_soc == pytest.approx((0.9, 0.8))

    def test_charging_ends_where_told_and_nothing_is_discharged_into_the_bank(self):
        result = run([phase("a", 2)], [device(charge_max_W=9)], [SUPPLY], [plug("a", charge_to=0.5)])
        assert result.devices["vario"].soc_end == 1.0
        assert result.banks["bank"].delivered_wh == pytest.approx(2.0)

    @pytest.mark.parametrize(("ambient_c", "charges"), [(-0.1, False), (0, True), (45, True), (45.1, False)])
    def test_takes_no_charge_outside_its_band_but_its_load_is_carried(self, ambient_c, charges):
        chilly = device(start=0.5, charge_max_W=2)
        result = run([phase("a", 1, ambient_c)], [chilly], [{**SUPPLY, "temp_fixed_C": 25}], [plug("a")])
        assert (result.devices["vario"].soc_end > 0.5) is charges
        assert result.devices["vario"].soc_end >= 0.5

    def test_warm_in_a_pocket(self):
        pocket = [device("worn", temp_offset_C=10), device("fixed", temp_fixed_C=25), device("bare")]
        floors = run([phase("a", 1, -10)], pocket).device_courses
        assert [course.floors[0].floor_soc for course in floors.values()] == pytest.approx([0.15, 0.0, 0.25])


class TestLimits:
    def test_fair_shares_under_a_total_limit(self):
        """6 W for 1, 4 and 4 W: 1, 2.5, 2.5; the short ones drain at 1.5 W."""
        trio = [device("one", 1.0), device("two", 4.0), device("three", 4.0)]
        plugs = [plug("a", each["id"]) for each in trio]
        result = run([phase("a", 2)], trio, [{**SUPPLY, "total_limit_W": 6}], plugs)
        assert [each.soc_end for each in result.devices.values()] == pytest.approx([1.0, 0.7, 0.7])
        assert result.banks["bank"].delivered_wh == pytest.approx(12.0)

    def test_a_port_and_an_input_have_their_own_limits(self):
        pair = [device("phone", 4.0, input_limit_W=3), device("lamp", 4.0)]
        plugs = [plug("a", "phone"), plug("a", "lamp")]
        result = run([phase("a", 1)], pair, [{**SUPPLY, "port_limit_W": 3.5}], plugs)
        assert [each.soc_end for each in result.devices.values()] == pytest.approx([0.9, 0.95])

    @pytest.mark.parametrize(("charge_w", "after_wh"), [(5.0, 0.9), (0.0, 0.0)])
    def test_first_starved_then_fed_as_a_neighbour_fades(self, charge_w, after_wh):
        """A camera takes .5 exp(-.1 t) of 1.3 W, the phone needs 1 W: it drains until exp(-.1 t) = .6, and then charges
        with .9 of what is over, if it can be charged at all."""
        camera = device("camera", 0.0, cell_Wh=9, start=0.5, charge_max_W=1, knee=0)
        phone = device("phone", 1.0, start=0.5, charge_max_W=charge_w)
        plugs = [plug("a", "camera"), plug("a", "phone")]
        turn_h = -log(0.6) / 0.1
        result = run([phase("a", 10)], [camera, phone], [{**SUPPLY, "total_limit_W": 1.3}], plugs, [turn_h, 10.0])
        lost_wh = 5 * (1 - 0.6) - 0.3 * turn_h
        over_wh = 0.3 * (10 - turn_h) - 5 * (0.6 - exp(-1))
        expected = (0.5 - lost_wh / 10, 0.5 - lost_wh / 10 + after_wh * over_wh / 10)
        assert result.devices["phone"].samples_soc == pytest.approx(expected, abs=1e-12)

    def test_a_charger_that_turns_all_into_heat(self):
        result = run([phase("a", 1)], [device(start=0.5, charge_max_W=5, charge_eff=0)], [SUPPLY], [plug("a")])
        assert result.devices["vario"].soc_end == 0.5
        assert result.banks["bank"].delivered_wh == pytest.approx(6.0)

    def test_a_bank_that_may_give_nothing_gives_nothing(self):
        result = run([phase("a", 1)], [device()], [{**SUPPLY, "total_limit_W": 0}], [plug("a")])
        assert result.devices["vario"].soc_end == pytest.approx(0.9)


class TestBanks:
    def test_falls_asleep_under_a_trickle(self):
        result = run([phase("a", 2)], [device()], [SLEEPY], [plug("a")])
        assert result.banks["bank"].auto_off_h == pytest.approx(0.5)
        assert states(result) == [("on", 0, 0.5), ("auto_off", 0.5, 2)]
        assert result.devices["vario"].soc_end == pytest.approx(0.85)

    def test_equality_is_enough_to_stay_awake(self):
        result = run([phase("a", 2)], [device(load_w=1.5)], [SLEEPY], [plug("a")])
        assert result.banks["bank"].auto_off_h is None

    def test_low_current_mode_never_sleeps(self):
        result = run([phase("a", 2)], [device()], [{**SLEEPY, "low_current_mode": True}], [plug("a")])
        assert result.banks["bank"].auto_off_h is None

    def test_the_clock_runs_on_across_a_boundary_when_the_device_stays_plugged(self):
        result = run([phase("a", 0.3), phase("b", 1)], [device()], [SLEEPY], [plug("a"), plug("b")])
        assert result.banks["bank"].auto_off_h == pytest.approx(0.5)

    def test_the_clock_goes_back_when_enough_is_drawn(self):
        load = {"a": 1.0, "b": 2.0, "c": 1.0}
        vario = {**device(), "draw_W": load}
        phases = [phase("a", 0.4), phase("b", 0.1), phase("c", 1)]
        result = run(phases, [vario], [SLEEPY], [plug(name) for name in load])
        assert result.banks["bank"].auto_off_h == pytest.approx(1.0)

    def test_a_device_left_plugged_does_not_wake_it_but_a_new_one_does(self):
        pair = [device(), device("lamp", 1.0)]
        phases = [phase("a", 1), phase("b", 1)]
        left = run(phases, pair, [SLEEPY], [plug("a"), plug("b")])
        assert states(left)[-1] == ("auto_off", 0.5, 2)
        woken = run(phases, pair, [SLEEPY], [plug("a"), plug("b"), plug("b", "lamp")])
        assert states(woken) == [("on", 0, 0.5), ("auto_off", 0.5, 1), ("on", 1, 2)]
        assert woken.banks["bank"].auto_off_h == pytest.approx(0.5)

    def test_a_late_plug_wakes_it(self):
        pair = [device(), device("lamp", 1.0)]
        plugs = [plug("a"), plug("a", "lamp", connect_below=0.8)]
        result = run([phase("a", 4)], pair, [SLEEPY], plugs)
        assert states(result) == [("on", 0, 0.5), ("auto_off", 0.5, 2), ("on", 2, 4)]

    def test_a_new_device_puts_the_clock_back(self):
        tiny = [device("one", 0.5), device("two", 0.5, start=0.99)]
        plugs = [plug("a", "one"), plug("a", "two", connect_below=0.97)]
        result = run([phase("a", 2)], tiny, [SLEEPY], plugs)
        assert result.banks["bank"].auto_off_h == pytest.approx(0.4 + 0.5)

    def test_is_off_without_a_device_and_awake_again_with_the_next(self):
        phases = [phase("a", 1), phase("b", 1), phase("c", 1)]
        result = run(phases, [device()], [SLEEPY], [plug("a"), plug("c")])
        assert states(result) == [
            ("on", 0, 0.5),
            ("auto_off", 0.5, 1),
            ("off", 1, 2),
            ("on", 2, 2.5),
            ("auto_off", 2.5, 3),
        ]

    def test_sleep_comes_as_charging_fades(self):
        """Output 2 exp(-t): under 1 W from ln 2, asleep half an hour later. By hand: E 9, A0 2, efficiency .9, knee 0."""
        fading = device(load_w=0.0, start=0.0, charge_max_W=2, knee=0, charge_eff=0.9, cell_Wh=1.8)
        result = run([phase("a", 4)], [fading], [{**SLEEPY, "min_out_W": 1}], [plug("a")])
        assert result.banks["bank"].auto_off_h == pytest.approx(0.6931471805599453 + 0.5, abs=1e-8)

    def test_emptied_by_use_and_not_brought_back_by_warming(self):
        small = {**SUPPLY, "cell_Wh": 10, "temp_offset_C": 0}
        phases = [phase("a", 8, -20), phase("b", 1)]
        result = run(phases, [device(temp_fixed_C=25)], [small], [plug("a"), plug("b")])
        assert result.banks["bank"].empty_h == pytest.approx(6.0)
        assert states(result) == [("on", 0, 6), ("empty", 6, 9)]
        assert result.banks["bank"].in_hand_wh == pytest.approx(4.0)

    def test_brought_back_by_a_new_plug_when_warmth_has_unlocked_some(self):
        small = {**SUPPLY, "cell_Wh": 10}
        phases = [phase("a", 8, -20), phase("b", 1), phase("c", 1)]
        result = run(phases, [device(temp_fixed_C=25)], [small], [plug("a"), plug("c")])
        assert states(result) == [("on", 0, 6), ("empty", 6, 8), ("off", 8, 9), ("on", 9, 10)]
        assert result.banks["bank"].soc_end == pytest.approx(0.3)

    def test_emptied_by_cold_at_a_phase_start(self):
        half = {**SUPPLY, "cell_Wh": 10, "start": 0.5}
        result = run([phase("a", 2), phase("b", 1, -20)], [device()], [half], [plug("a"), plug("b")])
        assert result.banks["bank"].empty_h == 2.0
        assert result.banks["bank"].soc_end == pytest.approx(0.3)
        assert result.banks["bank"].in_hand_wh == 0.0

    def test_without_a_cell_it_is_empty_at_the_first_plug(self):
        result = run([phase("a", 1), phase("b", 1)], [device()], [{**SUPPLY, "cell_Wh": 0}], [plug("b")])
        assert result.banks["bank"].empty_h == 1.0
        assert result.devices["vario"].soc_end == pytest.approx(0.8)

    def test_empty_comes_before_asleep(self):
        both = {**SLEEPY, "cell_Wh": 0.5}
        bank = run([phase("a", 1)], [device()], [both], [plug("a")]).banks["bank"]
        assert (bank.empty_h, bank.auto_off_h, bank.state_end) == (pytest.approx(0.5), None, "empty")

    def test_pays_for_its_own_electronics_only_while_on(self):
        bank = {**SUPPLY, "cell_Wh": 10, "quiescent_W": 0.5}
        result = run([phase("a", 2), phase("b", 2)], [device()], [bank], [plug("a")])
        assert result.banks["bank"].soc_end == pytest.approx(1 - (2 * 1 + 2 * 0.5) / 10)

    def test_a_wall_socket_never_empties(self):
        result = run([phase("a", 1000)], [device(load_w=50)], [{**SUPPLY, "cell_Wh": None}], [plug("a")])
        bank = result.banks["bank"]
        assert (bank.soc_end, bank.in_hand_wh, bank.state_end) == (None, None, "on")
        assert bank.delivered_wh == pytest.approx(50_000)


class TestZeroHours:
    def test_a_phase_without_duration_is_skipped_whole(self):
        """No cold that kills, no restart, no wake, and what was plugged before still counts as plugged."""
        phases = [phase("a", 1), phase("b", 0, -60), phase("c", 1)]
        sleepy = {**SUPPLY, "min_out_W": 5, "auto_off_s": 3600 * 0.5, "temp_fixed_C": 25}
        result = run(phases, [device(start=0.3)], [sleepy], [plug("a"), plug("c")])
        assert states(result) == [("on", 0, 0.5), ("auto_off", 0.5, 2)]
        vario = result.devices["vario"]
        assert vario.first_off_h is None
        assert vario.phase_end_soc[1] == vario.phase_end_soc[0]
        assert vario.reserve_wh == 0.0

    def test_margins_are_those_of_the_last_phase_that_has_a_duration(self):
        result = run([phase("a", 1), phase("b", 0, -20)], [device()])
        assert result.devices["vario"].margin_wh == pytest.approx(9.0)

    def test_a_day_without_any_duration(self):
        result = run([phase("a", 0, 25), phase("b", 0, -20)], [device(start=0.7)], [SUPPLY], [plug("a")], [0.0])
        vario = result.devices["vario"]
        assert (vario.first_off_h, vario.on_at_end, vario.samples_soc) == (None, True, (0.7,))
        assert vario.margin_wh == pytest.approx(3.0)
        assert result.banks["bank"].state_end == "off"
        assert result.device_courses["vario"].points == ()
