"""Cautions about power through the assessment: cold, range, age, reserve, cables.

Charging 0..45 and discharging -20..60 deg C: several cell specifications. 80 % of health: EU 2023/1670 asks it of phones
and tablets after 800 cycles. 10 % to keep: the errors of the rule for cold and of a radio's mean (up to 8 %) found with
published cell models. Charges by hand: 10 Wh at 25 deg C, where the label energy holds whole.
"""

import pytest
from scenario import O1, changed, judged, of_code, the
from small_kit import NEW, but, item, outing

from kitlog.budget.result import State
from kitlog.packing.cables import Fit
from kitlog.packing.power_cautions import reserve_cautions

FLIGHT = {"name": "flight", "way": "flight", "low_h": 2, "likely_h": 4, "high_h": 6, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 1, "likely_h": 1, "high_h": 1, "air_c": 25}


def device(name, kind, wh=10, watts=1.0, **battery):
    ways = [{"name": "on", "power_w": watts, "basis": "measured"}]
    cell = {"wh": wh, "ways": ways, "cutoff_pct": 0, "offset_k": 0, **battery}
    return item(name, kind, 200, battery=cell)


def phone(**battery):
    return device("phone", "phone", charge_max_w=5, connector="USB-C", **battery)


def bank(ports=2, connector="USB-A, USB-C", **battery):
    cell = {"wh": 40, "fixed_c": 25, "connector": connector, **battery}
    return item("bank", "power bank", 200, battery=cell, bank={"ports": ports, "quiescent_w": 0})


def cable(name="USB-A to USB-C", n=1):
    return item("cable", "cable", 30, quantity=n).model_copy(update={"name": name})


def plugs(*devices, phase="flight"):
    return [{"phase": phase, "device": name, "bank": "bank"} for name in devices]


def assessed(*items, phases=(FLIGHT, RIDE), plugs=()):
    kit = but("phone", "radio", instead=items)
    return judged(outing(phases=list(phases), pinned=[one.id for one in items], plugs=list(plugs)), kit, NEW)


def codes(assessment):
    return {finding.code for finding in assessment.findings}


class TestCharging:
    @pytest.mark.parametrize(("air_c", "told"), [(-0.1, True), (0.0, False), (10.0, False), (45.0, False)])
    def test_below_freezing_a_cell_takes_no_charge(self, air_c, told):
        found = assessed(phone(), bank(), cable(), phases=[{**FLIGHT, "air_c": air_c}], plugs=plugs("phone"))
        assert ("power.charge_cold" in codes(found)) is told

    def test_says_where_and_what_helps(self):
        cold = {**FLIGHT, "air_c": -5}
        found = the(
            assessed(phone(), bank(), cable(), phases=[cold], plugs=plugs("phone")), "power.charge_cold", "phone"
        )
        assert (found.state, found.figure, found.margin, found.phase) == (State.LOOK, -5, -5, "flight")
        assert found.items == ("phone", "bank")
        assert [remedy.code for remedy in found.remedies] == ["carry_warmer"]

    def test_the_place_counts_not_the_air(self):
        cold = {**FLIGHT, "air_c": -5}
        warm = phone(offset_k=12)
        assert "power.charge_cold" not in codes(assessed(warm, bank(), cable(), phases=[cold], plugs=plugs("phone")))

    def test_too_hot(self):
        hot = {**FLIGHT, "air_c": 46}
        found = assessed(phone(), bank(), cable(), phases=[hot], plugs=plugs("phone"))
        assert the(found, "power.charge_hot", "phone").margin == -1

    def test_what_cannot_be_charged_is_not_mentioned(self):
        cold = {**FLIGHT, "air_c": -5}
        thing = device("vario", "instrument", connector="USB-C")
        assert "power.charge_cold" not in codes(assessed(thing, bank(), cable(), phases=[cold], plugs=plugs("vario")))

    def test_an_assumed_temperature_is_not_judged(self):
        none = {**FLIGHT, "air_c": None}
        low = phone(offset_k=-5)
        assert "power.charge_cold" not in codes(assessed(low, bank(), cable(), phases=[none], plugs=plugs("phone")))

    def test_the_worked_day_lit_and_plugged_from_take_off(self):
        """At -2 deg C the phone's cell takes nothing in flight; its load is carried all the same."""
        on = [{"phase": name, "device": "Phone", "bank": "Power bank"} for name in ("flight", "walk out")]
        (found,) = of_code(judged(changed(O1, plugs=on)), "power.charge_cold")
        assert (found.figure, found.phase) == (-2, "flight")


class TestRange:
    @pytest.mark.parametrize(
        ("air_c", "offset_k", "told"),
        [(-20.0, 0, False), (-20.5, 0, True), (-20.5, 1, False), (59.0, 1, False), (60.0, 0.5, True)],
    )
    def test_limits(self, air_c, offset_k, told):
        found = assessed(phone(offset_k=offset_k), phases=[{**FLIGHT, "air_c": air_c}])
        assert ("power.cell_range" in codes(found)) is told

    def test_a_bank_counts_while_something_hangs_on_it(self):
        cold = {**FLIGHT, "air_c": -25}
        icy = bank(fixed_c=None, offset_k=0)
        warm = phone(fixed_c=20)
        with_plug = assessed(warm, icy, cable(), phases=[cold], plugs=plugs("phone"))
        assert the(with_plug, "power.cell_range").items == ("bank",)
        assert not of_code(assessed(warm, icy, phases=[cold]), "power.cell_range")


class TestHealth:
    @pytest.mark.parametrize(("health", "told"), [(79.9, True), (80, False), (None, False)])
    def test_under_eighty(self, health, told):
        found = assessed(phone(health_pct=health))
        assert ("power.worn" in codes(found)) is told

    def test_without_phases_it_is_told_all_the_same(self):
        found = the(assessed(phone(health_pct=50), phases=[]), "power.worn", "phone")
        assert (found.state, found.figure, found.margin) == (State.LOOK, 50, -30)


class TestReserve:
    """10 Wh for 5 h: 1.9 W leave 5 %, 1.7 W leave 15 %."""

    @pytest.mark.parametrize(("watts", "told"), [(1.9, True), (1.7, False)])
    def test_a_radio(self, watts, told):
        found = assessed(device("radio", "radio", watts=watts))
        assert ("power.no_reserve" in codes(found)) is told

    def test_figures(self):
        found = the(assessed(device("radio", "radio", watts=1.9)), "power.no_reserve", "radio")
        assert (found.figure, found.margin) == (pytest.approx(5), pytest.approx(-5))
        assert found.facts == {"keep_pct": 10, "cause": "radio"}

    def test_in_warm_air_nothing_but_a_radio_needs_it(self):
        assert "power.no_reserve" not in codes(assessed(device("vario", "instrument", watts=1.9)))

    def test_a_phase_below_freezing(self):
        """-10 deg C: 75 % usable. 4 h at 1.8 W are 7.2 Wh of 7.5."""
        cold = [{**FLIGHT, "air_c": -10}]
        found = the(assessed(device("vario", "instrument", watts=1.8), phases=cold), "power.no_reserve", "vario")
        assert found.figure == pytest.approx(3)
        assert found.facts["cause"] == "cold"

    def test_what_goes_off_has_its_own_finding(self):
        found = assessed(device("radio", "radio", watts=2.5))
        assert "power.no_reserve" not in codes(found)
        assert the(found, "power.device", "radio").state is State.LOOK


class TestCables:
    def told(self, *items, **fields):
        return {c for c in codes(assessed(*items, **fields)) if "cable" in c}

    @pytest.mark.parametrize(
        ("name", "told"),
        [
            ("USB-A to USB-C", set()),
            ("USB-C to USB-C", set()),
            ("USB-A to micro-USB", {"power.cable_missing"}),
            ("Cables", {"power.cable_not_known"}),
            ("USB-C cable", {"power.cable_not_known"}),
        ],
    )
    def test_one_cable(self, name, told):
        assert self.told(phone(), bank(), cable(name), plugs=plugs("phone")) == told

    def test_none_goes_along(self):
        found = the(assessed(phone(), bank(), plugs=plugs("phone")), "power.cable_missing", "phone")
        assert (found.state, found.items) == (State.LOOK, ("phone", "bank"))

    def test_unknown_is_not_known_never_fine(self):
        found = the(assessed(phone(), bank(connector=""), cable(), plugs=plugs("phone")), "power.cable_not_known")
        assert found.state is State.NOT_KNOWN
        assert [(r.code, r.items) for r in found.remedies] == [("enter_connector", ("phone",))]

    @pytest.mark.parametrize(("n", "told"), [(1, {"power.cables_short"}), (2, set())])
    def test_two_at_a_time_need_two(self, n, told):
        radio = device("radio", "radio", charge_max_w=5, connector="USB-C")
        assert self.told(phone(), radio, bank(), cable(n=n), plugs=plugs("phone", "radio")) == told

    def test_one_after_the_other_needs_one(self):
        radio = device("radio", "radio", charge_max_w=5, connector="USB-C")
        turns = [*plugs("phone"), *plugs("radio", phase="ride")]
        assert self.told(phone(), radio, bank(), cable(), plugs=turns) == set()

    def test_no_plug_no_word(self):
        assert self.told(phone(), bank()) == set()

    def test_every_fit_is_ranked(self):
        from kitlog.packing.cable_cautions import _BAD

        assert set(_BAD) == set(Fit)


def test_a_reserve_can_be_asked_for_higher() -> None:
    from kitlog.packing.caution_case import CautionCase

    found = assessed(device("radio", "radio", watts=1.7))
    radio = device("radio", "radio", watts=1.7)
    case = CautionCase(found.power.planned, found.power.likely, (radio,))
    assert reserve_cautions(case) == []
    assert [f.figure for f in reserve_cautions(case, keep_pct=20)] == [pytest.approx(15)]


class TestPorts:
    RADIO = device("radio", "radio", charge_max_w=5, connector="USB-C")

    def of(self, ports, *names):
        return assessed(phone(), self.RADIO, bank(ports=ports), cable(n=2), plugs=plugs(*names))

    @pytest.mark.parametrize(("ports", "told"), [(2, False), (1, True), (None, True)])
    def test_more_devices_than_ports(self, ports, told):
        assert ("power.ports_short" in codes(self.of(ports, "phone", "radio"))) is told

    def test_one_device_on_unknown_ports_is_no_trouble(self):
        assert "power.ports_short" not in codes(self.of(None, "phone"))

    def test_the_first_in_the_plan_keeps_the_port_and_the_day_is_reckoned_so(self):
        both, first = self.of(1, "radio", "phone"), self.of(1, "radio")
        found = the(both, "power.ports_short", "bank")
        assert (found.state, found.items, found.phase) == (State.LOOK, ("bank", "phone"), "flight")
        assert (found.facts["plugs"], found.facts["ports"]) == (2, 1)
        ends = [day.power.likely.devices["phone"].soc_end for day in (both, first)]
        assert ends[0] == ends[1]
        assert [plug.device for plug in both.power.unplugged] == ["phone"]

    def test_unknown_ports_ask_for_their_number(self):
        found = the(self.of(None, "phone", "radio"), "power.ports_short", "bank")
        assert [remedy.code for remedy in found.remedies] == ["enter_ports"]

    def test_in_turn_two_devices_need_one_port(self):
        turns = [*plugs("phone"), *plugs("radio", phase="ride")]
        found = assessed(phone(), self.RADIO, bank(ports=1), cable(n=2), plugs=turns)
        assert "power.ports_short" not in codes(found)
