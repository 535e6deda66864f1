"""What holds for every day, whatever its figures (hypothesis)."""

import sys
from math import inf
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitlog.budget.power.day import Day
from kitlog.budget.power.plan import plan_day
from kitlog.budget.power.recorder import Recorder
from kitlog.budget.power.run import run_day
from kitlog.budget.power.simulate import simulate

sys.path.insert(0, str(Path(__file__).parents[2] / "reference"))  # importmode=importlib finds no neighbours
from power_days import random_day

raw_days = st.randoms(use_true_random=False).map(random_day)
quick = settings(max_examples=150, deadline=None)


class Watcher(Recorder):
    """Sees every stretch of a day: what is granted at its start, when a bank gives most."""

    def record(self, run, for_h):
        for bank in run.banks:
            if bank.state == "on":
                granted_w = sum(device.grant_w for device in bank.members)
                assert granted_w <= bank.plan.total_limit_w + 1e-9
                assert granted_w == pytest.approx(bank.out_w, abs=1e-9)
                assert all(amount <= 0 for amount, _ in bank.out_terms)
                for device in bank.members:
                    assert -1e-12 <= device.grant_w <= device.demand_w + 1e-9 or device.starved
                    assert device.grant_w <= device.plug.cap_w + 1e-9
        super().record(run, for_h)


@quick
@given(raw_days)
def test_no_bank_gives_more_than_its_limits(raw):
    plan = plan_day(Day.model_validate(raw))
    run_day(plan, Watcher(len(plan.devices), len(plan.banks)))


@quick
@given(raw_days)
def test_every_charge_is_between_empty_and_full_and_no_course_has_a_gap(raw):
    day = Day.model_validate(raw)
    result = simulate(day)
    end_h = sum(phase.hours for phase in day.phases)
    for course in (*result.device_courses.values(), *result.bank_courses.values()):
        times_h = [time_h for time_h, _ in course.points]
        assert times_h == sorted(times_h)
        assert all(0 <= soc <= 1 for _, soc in course.points)
        if course.points:
            assert (times_h[0], times_h[-1]) == (0, pytest.approx(end_h))


@quick
@given(raw_days)
def test_a_bank_gives_what_it_loses(raw):
    """Energy from the cell = delivered / efficiency + own consumption x time on."""
    day = Day.model_validate(raw)
    result = simulate(day)
    for bank in day.banks:
        found = result.banks[bank.id]
        if found.soc_end is not None:
            on_h = sum(span.to_h - span.from_h for span in result.bank_courses[bank.id].states if span.what == "on")
            used_wh = (bank.start - found.soc_end) * bank.label_wh * bank.health
            assert used_wh == pytest.approx(found.delivered_wh / bank.eff + bank.quiescent_W * on_h, abs=1e-8)


@quick
@given(raw_days)
def test_a_device_ends_with_what_went_in_and_out(raw):
    """Off times are those of the picture; a device that was never plugged has lost its load times its time on."""
    day = Day.model_validate(raw)
    result = simulate(day)
    for device in day.devices:
        found, course = result.devices[device.id], result.device_courses[device.id]
        assert found.off_h == pytest.approx(sum(span.to_h - span.from_h for span in course.off), abs=1e-9)
        if course.off:
            assert found.first_off_h <= course.off[0].from_h
        if found.soc_end is not None:
            assert found.soc_end == pytest.approx(course.points[-1][1] if course.points else device.start)
        if found.soc_end is not None and not course.plugged and not course.off:
            drawn_wh = sum(
                phase.hours * getattr(device.draw_W.get(phase.id, 0), "mean_w", device.draw_W.get(phase.id, 0))
                for phase in day.phases
            )
            assert (device.start - found.soc_end) * device.label_wh == pytest.approx(drawn_wh, abs=1e-9)


@quick
@given(raw_days, st.data())
def test_splitting_a_phase_in_two_of_equal_conditions_changes_nothing(raw, data):
    """Unless a restart waits (a device without a cell always waits) or a plug has a threshold: these are judged anew."""
    for device in raw["devices"]:
        device["restart_margin"] = None
        device["cell_Wh"] = device["cell_Wh"] or 5
    for plug in raw["plugs"]:
        plug.pop("connect_below", None)
    at = data.draw(st.integers(0, len(raw["phases"]) - 1))
    part = data.draw(st.floats(0, 1))
    whole, halved = simulate(Day.model_validate(raw)), simulate(Day.model_validate(halve(raw, at, part)))
    for name, device in whole.devices.items():
        other = halved.devices[name]
        near(device.first_off_h, other.first_off_h)
        near(device.off_h, other.off_h)
        near(device.soc_end, other.soc_end)
        near(device.margin_wh, other.margin_wh, 1e-6)
    for name, bank in whole.banks.items():
        other = halved.banks[name]
        assert bank.state_end == other.state_end
        near(bank.auto_off_h, other.auto_off_h)
        near(bank.empty_h, other.empty_h)
        near(bank.delivered_wh, other.delivered_wh, 1e-6)


def near(one, other, apart=1e-7):
    assert one == other or abs(one - other) <= apart


def halve(raw, at, part):
    phase = raw["phases"][at]
    first = {**phase, "hours": phase["hours"] * part}
    second = {**phase, "id": "second", "hours": phase["hours"] - phase["hours"] * part}
    twice = [{**plug, "phase": "second"} for plug in raw["plugs"] if plug["phase"] == phase["id"]]
    devices = [
        {**device, "draw_W": device["draw_W"] | {"second": device["draw_W"].get(phase["id"], 0)}}
        for device in raw["devices"]
    ]
    phases = [*raw["phases"][:at], first, second, *raw["phases"][at + 1 :]]
    return {**raw, "phases": phases, "devices": devices, "plugs": raw["plugs"] + twice}


@quick
@given(raw_days, st.floats(1, 3))
def test_more_energy_in_the_bank_never_shortens_a_device_s_life(raw, more):
    """For one device on one bank, plugged from the start of the phases: a threshold can make more energy do harm."""
    raw = {**raw, "devices": raw["devices"][:1], "banks": raw["banks"][:1]}
    raw["plugs"] = [
        {**plug, "connect_below": None, "bank": raw["banks"][0]["id"]}
        for plug in raw["plugs"]
        if plug["device"] == raw["devices"][0]["id"]
    ]
    larger = [{**bank, "cell_Wh": bank["cell_Wh"] and bank["cell_Wh"] * more} for bank in raw["banks"]]
    with_less = next(iter(simulate(Day.model_validate(raw)).devices.values()))
    with_more = next(iter(simulate(Day.model_validate({**raw, "banks": larger})).devices.values()))
    assert life_h(with_more) >= life_h(with_less) - 1e-9


def life_h(device):
    return inf if device.first_off_h is None else device.first_off_h


@quick
@given(raw_days, st.floats(0, 30))
def test_colder_never_adds_margin_when_nothing_is_charged(raw, colder_c):
    """Without restarts: a device that the cold stops early has kept its charge for a warmer phase."""
    devices = [{**device, "restart_margin": None} for device in raw["devices"]]
    raw = {**raw, "devices": devices, "plugs": []}
    phases = [{**phase, "ambient_C": phase["ambient_C"] - colder_c} for phase in raw["phases"]]
    warm = simulate(Day.model_validate(raw)).devices
    cold = simulate(Day.model_validate({**raw, "phases": phases})).devices
    for name, device in warm.items():
        assert cold[name].margin_wh <= device.margin_wh + 1e-9


@quick
@given(raw_days)
def test_the_order_in_which_things_are_named_does_not_matter(raw):
    turned = {**raw, "devices": raw["devices"][::-1], "banks": raw["banks"][::-1], "plugs": raw["plugs"][::-1]}
    one, other = simulate(Day.model_validate(raw)), simulate(Day.model_validate(turned))
    for name, device in one.devices.items():
        near(device.first_off_h, other.devices[name].first_off_h)
        near(device.soc_end, other.devices[name].soc_end)
    for name, bank in one.banks.items():
        assert bank.state_end == other.banks[name].state_end
        near(bank.delivered_wh, other.banks[name].delivered_wh)
