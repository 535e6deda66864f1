"""What is offered for a device in trouble: a few changes that were run, tried on the whole outing, cheapest first."""

from dataclasses import replace
from typing import Any

import pytest
from scenario import LIBRARY, judged, of_code, the
from small_kit import NEW, but, item, outing

from kitlog.budget.result import Finding, Remedy, State, Topic
from kitlog.kit.item import Item
from kitlog.packing.assessment import Assessment
from kitlog.packing.computed_remedies import MOST, settled, with_power_changes
from kitlog.packing.power_changes import weighed_changes
from kitlog.packing.power_remedies import is_computed, power_remedy
from kitlog.wording.remedies import remedy_text

FLIGHT = {"name": "flight", "way": "flight", "low_h": 3, "likely_h": 4, "high_h": 5, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 2, "likely_h": 2, "high_h": 2, "air_c": 25}
CABLE = item("cable", "cable", 20, battery={"connector": "USB-C to USB-C"})
NAMES = {
    "a": "Power bank A",
    "b": "Power bank B",
    "c": "Power bank C",
    "phone": "Phone",
    "vario": "Vario",
    "gloves": "Heated gloves",
}


def device(name: str, kind: str, wh: float, watts: float, *more: dict[str, Any], **battery: Any) -> Item:
    on = [{"during": moving, "share": 1.0} for moving in ("flight", "ride home")]
    ways = [{"name": "on", "power_w": watts, "shares": on}, *more]
    cell = {"wh": wh, "cutoff_pct": 0, "offset_k": 0, "charge_max_w": 6, "connector": "USB-C", "ways": ways, **battery}
    return item(name, kind, 150, battery=cell)


def bank(name: str, wh: float, mass_g: int | None, **how: Any) -> Item:
    cell = {"wh": wh, "fixed_c": 25, "cutoff_pct": 0, "connector": "USB-C"}
    return item(
        name, "power bank", mass_g, battery=cell, bank={"efficiency_pct": 100, "quiescent_w": 0, "ports": 1, **how}
    )


def assessed(*items: Item, along: tuple[str, ...] = (), **plan: Any) -> Assessment:
    kit = but("phone", "radio", instead=items)
    stay = [one.id for one in items if one.kind == "power bank" and one.id not in along]
    fields = {"phases": [FLIGHT, RIDE], "pinned": along, "left_out": stay, "plugs": [], **plan}
    return judged(outing(**fields), kit, NEW)


def said(finding: Finding) -> list[str]:
    return [remedy_text(remedy, NAMES).replace("\xa0", " ") for remedy in finding.remedies]


class TestWhatIsSaid:
    def test_a_bank_instead_by_hand(self) -> None:
        """2 Wh are left at the landing, and the ride asks 4. Bank A gives 1 Wh at 8 W: .25 of load, .75 x .9 into the phone,
        off after 4 + .125 + 2.675 / 2 = 5.4625 h. B charges at 5.4 W to 80 % in 1.111 h and tapers for .889 h to
        1 - .2 exp(-2.7 x .889) = 98.19 %, 4.909 h at 2 W: 6 + 4.909 - 5.4625 = 5.45 h more."""
        plugs = [{"phase": "ride", "device": "phone", "bank": "a"}]
        banks = (bank("a", 1, 100), bank("b", 30, 184))
        day = assessed(device("phone", "phone", 10, 2), *banks, CABLE, along=("a", "cable"), plugs=plugs)
        assert said(the(day, "power.device", "phone"))[0] == (
            "Take Power bank B instead of Power bank A: +5.4 h, lasts with 10 % or more; +84 g"
        )

    def test_one_that_does_not_make_it_last_says_what_is_still_short(self) -> None:
        day = assessed(device("phone", "phone", 10, 3), bank("b", 3, 90), CABLE)
        (text,) = [one for one in said(the(day, "power.device", "phone")) if "Power bank B" in one]
        assert text.startswith("Take Power bank B along for Phone (")
        assert "still " in text
        assert text.endswith(" short; +110 g")

    def test_an_unknown_mass_is_said(self) -> None:
        day = assessed(device("phone", "phone", 10, 2), bank("b", 30, None), CABLE)
        assert any(text.endswith("; mass not known") for text in said(the(day, "power.device", "phone")))

    def test_more_than_a_day_is_not_told_any_closer(self) -> None:
        modes = {"name": "flight mode", "power_w": 0.01}
        lit = {**FLIGHT, "low_h": 6, "likely_h": 6, "high_h": 6}
        day = assessed(device("phone", "phone", 10, 2, modes), phases=[lit])
        assert said(the(day, "power.device", "phone"))[0] == (
            "Put Phone in flight mode (flight), without being followed: over +24 h, lasts with 10 % or more"
        )


class TestWhichAreOffered:
    def test_of_each_sort_one_and_no_more_than_a_few(self) -> None:
        ways = [{"name": "flight mode", "power_w": 0.2}]
        banks = [bank("a", 20, 300), bank("b", 30, 250), bank("c", 40, 400)]
        day = assessed(device("phone", "phone", 10, 2, *ways), *banks, CABLE, bank("d", 2, 60), along=("d",))
        remedies = the(day, "power.device", "phone").remedies
        assert len(remedies) <= MOST
        assert len({(remedy.code, remedy.items[0]) for remedy in remedies}) == len(remedies)
        (added,) = (remedy for remedy in remedies if remedy.code == "add_bank")
        assert added.items[1] == "b"  # of those that make it last the lightest

    def test_computed_ones_stand_in_the_place_of_advice(self) -> None:
        remedies = the(
            assessed(device("phone", "phone", 10, 2), bank("b", 30, 200), CABLE), "power.device", "phone"
        ).remedies
        assert all(is_computed(remedy) for remedy in remedies)
        assert remedies != ()

    def test_without_any_the_advice_stays(self) -> None:
        day = assessed(
            device("phone", "phone", 20, 0.5), device("vario", "instrument", 1, 1, charge_max_w=0), along=("vario",)
        )
        assert [remedy.code for remedy in the(day, "power.device", "vario").remedies] == ["draw_less"]

    def test_none_for_what_lasts(self) -> None:
        day = assessed(device("phone", "phone", 20, 0.5), bank("b", 30, 200), CABLE)
        assert all(not finding.remedies for finding in of_code(day, "power.device"))

    def test_nothing_is_run_where_nothing_is_in_trouble(self) -> None:
        day = assessed(device("phone", "phone", 20, 0.5), bank("b", 30, 200), CABLE)
        assert with_power_changes(day, (), LIBRARY) is day.findings

    def test_one_that_brings_a_stop_is_not_offered(self) -> None:
        """Banks are as heavy as a man is not: out of the wing's range."""
        heavy = bank("b", 30, 40_000)
        kept = assessed(device("phone", "phone", 10, 2), heavy, CABLE, set={"wing": "wing"})
        assert "add_bank" not in {remedy.code for remedy in the(kept, "power.device", "phone").remedies}
        light = assessed(device("phone", "phone", 10, 2), bank("b", 30, 400), CABLE, set={"wing": "wing"})
        assert "add_bank" in {remedy.code for remedy in the(light, "power.device", "phone").remedies}


class TestLanding:
    def test_ranked_by_the_charge_at_the_landing(self) -> None:
        """2.5 W from 10 Wh: empty at the landing. Put on charge afterwards it lasts the day, but that is no remedy here."""
        day = assessed(device("phone", "phone", 10, 1.9), bank("b", 30, 200), CABLE, phases=[FLIGHT, RIDE])
        landing = the(day, "power.phone_at_landing")
        assert landing.state is State.STOP
        for remedy in landing.remedies:
            if is_computed(remedy):
                assert float(str(remedy.facts["landing_pct"])) > (landing.figure or 0)


def test_advice_goes_only_where_something_computed_is_left() -> None:
    advice, run = Remedy("draw_less", ("x",)), Remedy("start_full", ("x",), {"all_last": True})
    finding = Finding("power.device", Topic.POWER, State.LOOK, remedies=(advice, Remedy("weigh", ("x",))))
    assert settled([finding]) == (finding,)
    (left,) = settled([replace(finding, remedies=(run, *finding.remedies))])
    assert [remedy.code for remedy in left.remedies] == ["start_full", "weigh"]


def test_a_device_without_reserve_is_helped_though_it_lasts() -> None:
    """6.36 of 7 Wh are used: 9.1 % are left, and 10 are to be in hand for the bursts of a radio."""
    radio = device("radio", "radio", 7, 1.06)
    fixed = {**FLIGHT, "low_h": 4, "high_h": 4}
    day = assessed(device("phone", "phone", 30, 0.5), radio, bank("b", 30, 200), CABLE, phases=[fixed, RIDE])
    reserve = the(day, "power.no_reserve", "radio")
    assert reserve.figure == pytest.approx(100 * 0.64 / 7)
    (remedy,) = reserve.remedies
    assert (remedy.code, remedy.items[:2]) == ("add_bank", ("radio", "b"))


def test_a_cable_has_no_cell_to_be_described() -> None:
    day = assessed(device("phone", "phone", 30, 0.5), CABLE, along=("cable",))
    assert not of_code(day, "power.not_known")


def test_what_keeps_the_only_caller_alive_is_offered_where_nothing_is_left_to_call_with() -> None:
    """Flying with others no beacon is taken; the phone alone calls, and goes off after 5 of 6 h."""
    day = assessed(device("phone", "phone", 10, 2), bank("b", 30, 200), CABLE)
    caller = the(day, "power.caller")
    assert caller.state is State.STOP
    computed = [remedy for remedy in caller.remedies if is_computed(remedy)]
    assert [remedy.code for remedy in computed] == ["add_bank"]
    assert computed[0].facts["lasts"] is True
    assert "take_caller" in {remedy.code for remedy in caller.remedies}


def test_a_bank_at_home_whose_label_contradicts_itself_is_no_trouble() -> None:
    """10 Wh in the cell, and 10,000 mAh at 5 V at its ports: 50 Wh."""
    odd = bank("b", 10, 100, rated_mah=10_000, efficiency_pct=None)
    day = assessed(device("phone", "phone", 10, 2), odd, CABLE)
    assert "add_bank" not in {remedy.code for remedy in the(day, "power.device", "phone").remedies}


class TestCautions:
    """Gloves that do not last, and at home a bank on which they would."""

    BIG = bank("big", 60, 240)

    def added(self, air_c: float, cable: Item) -> Remedy:
        gloves = device("gloves", "gloves", 12, 4, place="under the shell", offset_k=None)
        plan = {"phases": [{**FLIGHT, "air_c": air_c}, RIDE], "left_out": ["big"]}
        day = assessed(device("phone", "phone", 40, 0.5), gloves, self.BIG, cable, along=("gloves", cable.id), **plan)
        return next(one for one in the(day, "power.device", "gloves").remedies if one.code == "add_bank")

    def text(self, air_c: float, cable: Item) -> str:
        return remedy_text(self.added(air_c, cable), NAMES | {"big": "Bank big"}).replace("\xa0", " ")

    def test_a_cell_that_takes_no_charge_in_the_cold(self) -> None:
        assert "; +240 g; but look at Heated gloves (plugged into Bank big in flight, but under 0 °C" in self.text(
            -30, CABLE
        )

    def test_a_cable_of_which_nothing_is_known_leaves_the_mass_of_the_bank(self) -> None:
        unnamed = item("unnamed", "cable", 20)
        assert "cautions" in self.added(25, unnamed).facts
        assert self.text(25, unnamed).endswith("; at least +240 g, cable not known")

    def test_without_cautions_there_is_no_word_of_them(self) -> None:
        assert "cautions" not in self.added(25, CABLE).facts
        assert self.text(25, CABLE).endswith("; +240 g")

    def test_a_bank_whose_charge_is_not_known_is_said_to_be_reckoned_empty(self) -> None:
        """The bank that gives nothing helps nobody; it is told why, where it is tried."""
        unknown = [{"item": "big", "low_pct": 0, "likely_pct": 0, "high_pct": 100}]
        gloves = device("gloves", "gloves", 12, 4, place="under the shell", offset_k=None)
        phone = device("phone", "phone", 40, 0.5)
        fields = {"along": ("gloves", "big", "cable"), "starts": unknown}
        day = assessed(phone, gloves, self.BIG, CABLE, **fields)
        tried = weighed_changes(day, (phone, gloves, self.BIG, CABLE), LIBRARY)
        plugged = [one for one in tried if one.candidate.code == "plug_too" and "big" in one.candidate.ids]
        assert plugged
        for one in plugged:
            text = remedy_text(power_remedy(one), NAMES | {"big": "Bank big"}).replace("\xa0", " ")
            assert text.endswith("; the charge of Bank big at the start is not known: reckoned from 0 %")

    def test_flight_mode_stands_last(self) -> None:
        modes = {"name": "flight mode", "power_w": 0.2}
        day = assessed(device("phone", "phone", 10, 2, modes), bank("b", 30, 200), CABLE)
        codes = [one.code for one in the(day, "power.device", "phone").remedies if is_computed(one)]
        assert codes[-1] == "flight_mode"
        assert len(codes) > 1
