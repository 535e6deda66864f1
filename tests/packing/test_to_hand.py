"""What is to hand for changes to an outing's power, from a real kit."""

from datetime import date
from typing import Any

import pytest
from scenario import LIBRARY, judged
from small_kit import NEW, item, outing, plus

from kitlog.budget.power.changes.given import ToHand
from kitlog.kit.item import Item
from kitlog.kit.kinds import Place
from kitlog.kit.service import ServiceRule
from kitlog.packing.kit import Kit
from kitlog.packing.to_hand import to_hand

FLIGHT = {"name": "flight", "way": "flight", "likely_h": 4, "air_c": -2}
RIDE = {"name": "ride", "way": "ride home", "likely_h": 2, "air_c": 15}


def bank(name: str, **fields: Any) -> Item:
    more = {"battery": {"wh": 20, "connector": "USB-C", **fields.pop("battery", {})}}
    return item(name, "power bank", fields.pop("mass_g", 200), **{**more, **fields})


def camera(**battery: Any) -> Item:
    cell = {"wh": 6, "charge_max_w": 5, "ways": [{"name": "on", "power_w": 1}], "connector": "micro-USB", **battery}
    return item("camera", "camera", 100, battery=cell)


def cable(name: str, ends: str, mass_g: int | None = 20) -> Item:
    return item(name, "cable", mass_g, battery={"connector": ends})


def hand(*kit: Item, along: tuple[str, ...] = ("camera",), **plan: Any) -> ToHand:
    whole = plus(*kit)
    return found(whole, pinned=along, phases=[FLIGHT, RIDE], plugs=[], **plan)


def found(kit: Kit, **plan: Any) -> ToHand:
    return to_hand(judged(outing(**plan), kit, NEW), kit.items, LIBRARY)


class TestSpareBanks:
    def test_banks_that_stay_at_home_with_their_mass(self) -> None:
        (spare,) = hand(camera(), bank("big")).spare_banks
        assert (spare.bank.id, spare.bank.cell_Wh, spare.mass_g) == ("big", 20, 200)

    @pytest.mark.parametrize(
        "fields",
        [
            {"state": "lent"},
            {"quantity": 0},
            {"battery": {"swollen_on": date(2026, 4, 1)}},
            {"battery": {"wh": None}},
            {"bank": {"ports": 0}},
        ],
    )
    def test_none_that_cannot_go_or_be_reckoned_with(self, fields: dict[str, Any]) -> None:
        assert hand(camera(), bank("big", **fields)).spare_banks == ()

    def test_none_with_an_open_stop(self) -> None:
        rule = {"id": "r", "item_id": "big", "rule": "bank", "due_on": date(2026, 5, 1), "grounds": "yes"}
        kit = plus(camera(), bank("big"), rules=(ServiceRule.model_validate(rule),))
        plan = {"pinned": ("camera",), "phases": [FLIGHT, RIDE]}
        assert found(kit, **plan).spare_banks == ()
        assert found(plus(camera(), bank("big")), **plan).spare_banks != ()

    def test_one_that_goes_along_is_no_spare_and_its_mass_is_known(self) -> None:
        found = hand(camera(), bank("big"), along=("camera", "big"))
        assert found.spare_banks == ()
        assert found.mass_g == {"big": 200}

    def test_a_mass_that_is_not_known_stays_so(self) -> None:
        assert hand(camera(), bank("big", mass_g=None)).spare_banks[0].mass_g is None
        assert hand(camera(), bank("big", mass_g=None), along=("camera", "big")).mass_g == {}


class TestCables:
    def test_one_that_goes_along_adds_nothing(self) -> None:
        wire = cable("wire", "USB-C to micro-USB")
        assert hand(camera(), bank("big"), wire, along=("camera", "big", "wire")).cable_g == {"camera": 0}

    def test_of_those_at_home_the_lightest_that_fits(self) -> None:
        wires = (cable("long", "USB-C to micro-USB", 40), cable("short", "micro-USB to USB-C", 15))
        other = cable("other", "USB-C to USB-C", 5)
        assert hand(camera(), bank("big"), *wires, other, along=("camera", "big")).cable_g == {"camera": 15}

    @pytest.mark.parametrize(
        "wire", [None, cable("wire", "USB-C to barrel"), cable("wire", "USB-C to micro-USB", None)]
    )
    def test_else_not_known(self, wire: Item | None) -> None:
        wires = [] if wire is None else [wire]
        assert hand(camera(), bank("big"), *wires, along=("camera", "big")).cable_g == {}

    def test_a_cable_of_unknown_ends_may_fit_or_not(self) -> None:
        wire = item("wire", "cable", 20)
        assert hand(camera(), bank("big"), wire, along=("camera", "big", "wire")).cable_g == {}

    def test_a_cable_that_is_taken_does_not_count(self) -> None:
        wire, second = cable("wire", "USB-C to micro-USB"), cable("second", "USB-C to micro-USB", 25)
        clip = item("clip", "instrument", 50, battery=camera().battery)
        plan = {"plugs": [{"phase": "ride", "device": "clip", "bank": "big"}], "phases": [FLIGHT, RIDE]}
        kit = plus(camera(), clip, bank("big", bank={"ports": 2}), wire, second)
        one = found(kit, pinned=("camera", "clip", "big", "wire"), **plan)
        assert one.cable_g == {"camera": 25, "clip": 0}


class TestPlaces:
    def phone(self, **battery: Any) -> Kit:
        cell = {"wh": 10, "charge_max_w": 5, "ways": [{"name": "on", "power_w": 1}], **battery}
        items = [one for one in plus().items if one.id != "phone"]
        return Kit(pilot=plus().pilot, items=(*items, item("phone", "phone", 200, battery=cell)))

    def places(self, **battery: Any) -> list[tuple[str, float]]:
        hand = found(self.phone(**battery), phases=[FLIGHT, RIDE])
        return [(place.place, place.temp_offset_C) for place in hand.warmer_places if place.id == "phone"]

    def test_step_by_step_warmer(self) -> None:
        assert self.places(place=Place.COCKPIT) == [("closed pocket", 2), ("under the shell", 12)]
        assert self.places(place=Place.CLOSED_POCKET) == [("under the shell", 12)]
        assert self.places(place=Place.UNDER_SHELL) == []
        assert self.places(fixed_c=20) == []

    def test_in_flight_it_is_plugged_where_it_lies_closed(self) -> None:
        assert found(self.phone(), phases=[FLIGHT, RIDE]).also_plugged == {}
        pocket = found(self.phone(place=Place.CLOSED_POCKET), phases=[FLIGHT, RIDE])
        assert pocket.also_plugged == {"phone": ("flight",)}
        assert pocket.plug_phases == ("ride",)

    def test_what_has_to_be_seen_stays_where_it_is(self) -> None:
        vario = item("vario", "instrument", 50, battery={"wh": 2, "ways": [{"name": "on", "power_w": 0.2}]})
        assert not [place for place in hand(vario, along=("vario",)).warmer_places if place.id == "vario"]


class TestMayBeOff:
    def test_what_no_need_asks_for(self) -> None:
        assert hand(camera()).may_be_off == ("camera",)

    def test_not_what_is_needed(self) -> None:
        """Warm gloves are essential in the cold."""
        gloves = item(
            "hot", "gloves", 400, serves=("warm",), battery={"wh": 16, "ways": [{"name": "on", "power_w": 3}]}
        )
        kit = plus(gloves, camera())
        plan = {"pinned": ("hot", "camera"), "phases": [FLIGHT, RIDE]}
        assert set(found(kit, conditions={"cold": False}, **plan).may_be_off) == {"hot", "camera"}
        assert found(kit, conditions={"cold": True}, **plan).may_be_off == ("camera",)

    def test_not_what_can_call(self) -> None:
        second = item("second", "phone", 150, battery={"wh": 9, "ways": [{"name": "on", "power_w": 1}]})
        assert hand(second, along=("second",)).may_be_off == ()


def test_nothing_is_to_hand_for_a_day_that_was_not_simulated() -> None:
    assert found(plus(bank("big"))) == ToHand()
