"""Every caution about power, as the command `kitlog pack` tells it.

Charging 0..45 and discharging -20..60 deg C: several cell specifications. 80 % of health: EU 2023/1670. 10 % to keep:
errors of the rule for cold and of a radio's mean against published cell models. Least load of a bank: a vario alone at
30 mA and 5 V draws 0.15 W, under the 0.25 W at which the bank switches itself off. Five years, swollen: common practice,
no source. By air: IATA DGR 67 and ICAO Doc 9284 as in the library.
"""

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from calling import NOW, Kitlog

from kitlog.app import App
from kitlog.kit.item import Item

WARM = {"name": "flight", "way": "flight", "likely_h": 4, "air_c": 25}
SINKS = ("USB-C", "micro-USB", "barrel")

Things = Sequence[dict[str, Any]]


def device(
    name: str, kind: str, wh: float = 10, watts: float = 1, socket: str = "USB-C", **more: Any
) -> dict[str, Any]:
    ways = [{"name": "on", "power_w": watts, "basis": "measured"}]
    cell = {"wh": wh, "charge_max_w": 5, "connector": socket, "offset_k": 0, "cutoff_pct": 0, "ways": ways}
    battery = cell | more.pop("battery", {})
    return {"id": name, "name": name, "kind": kind, "mass_g": 200, "battery": battery, **more}


def bank(ports: int = 2, connector: str = "USB-C", **more: Any) -> dict[str, Any]:
    figures = {"ports": ports, "quiescent_w": 0, **more.pop("bank", {})}
    battery = {"wh": 40, "connector": connector, "fixed_c": 20, **more.pop("battery", {})}
    return {
        "id": "bank",
        "name": "bank",
        "kind": "power bank",
        "mass_g": 200,
        "battery": battery,
        "bank": figures,
        **more,
    }


def cable(ends: str = "USB-C to USB-C", n: int = 2) -> dict[str, Any]:
    battery = {"connector": ends}
    return {"id": "cable", "name": "cable", "kind": "cable", "mass_g": 30, "quantity": n, "battery": battery}


PHONE = device("phone", "phone")
VARIO = device("vario", "instrument", wh=1, watts=0.15)


class Packing:
    """Enters things into a data file and asks `kitlog pack` about a day with them."""

    def __init__(self, kitlog: Kitlog, folder: Path) -> None:
        self._kitlog, self._folder = kitlog, folder

    def __call__(
        self, things: Things, plugged: Sequence[str] = (), phase: dict[str, Any] = WARM, **outing: Any
    ) -> dict[tuple[str, str], dict[str, Any]]:
        """The findings by code and first item."""
        path = self._folder / "kit.kitlog"
        bench = App(clock=lambda: NOW).bench(path, create=True)
        for thing in things:
            bench.add_item(Item.model_validate(thing))
        bench.close()
        plan = {
            "name": "day",
            "flight_types": ["ridge"],
            "first_day": "2026-05-09",
            "phases": [phase],
            "pinned": [thing["name"] for thing in things],
            "plugs": [{"phase": phase["name"], "device": name, "bank": "bank"} for name in plugged],
            **outing,
        }
        file = self._folder / "outing.json"
        file.write_text(json.dumps(plan), encoding="utf-8")
        said = self._kitlog("--data", path, "pack", file, "--json")
        assert said.code == 0, said
        findings = said.json["findings"]
        assert all(finding["sentence"] for finding in findings)
        return {(f["code"], (f["items"] or [""])[0]): f for f in findings}


@pytest.fixture
def pack(kitlog: Kitlog, tmp_path: Path) -> Packing:
    return Packing(kitlog, tmp_path)


def test_a_bank_falls_asleep_under_the_vario_alone(pack: Packing) -> None:
    sleepy = bank(bank={"min_w": 0.25, "off_s": 32})
    found = pack([VARIO, sleepy, cable()], ["vario"])["power.bank_sleeps", "bank"]
    assert found["state"] == "look"
    assert found["remedies"]


def test_with_the_phone_on_it_too_it_stays_awake(pack: Packing) -> None:
    sleepy = bank(bank={"min_w": 0.25, "off_s": 32})
    assert ("power.bank_sleeps", "bank") not in pack([VARIO, PHONE, sleepy, cable()], ["vario", "phone"])


@pytest.mark.parametrize(("air_c", "code"), [(-0.5, "power.charge_cold"), (45.5, "power.charge_hot")])
def test_charging_in_the_cold_and_in_the_heat(pack: Packing, air_c: float, code: str) -> None:
    found = pack([PHONE, bank(), cable()], ["phone"], {**WARM, "air_c": air_c})
    assert found[code, "phone"]["state"] == "look"


@pytest.mark.parametrize("air_c", [0.0, 25.0, 45.0])
def test_charging_within_the_band(pack: Packing, air_c: float) -> None:
    found = pack([PHONE, bank(), cable()], ["phone"], {**WARM, "air_c": air_c})
    assert not {code for code, _ in found} & {"power.charge_cold", "power.charge_hot"}


@pytest.mark.parametrize(("air_c", "told"), [(-20.5, True), (-20.0, False)])
def test_a_cell_outside_its_range(pack: Packing, air_c: float, told: bool) -> None:  # a table of cases
    found = pack([PHONE], phase={**WARM, "air_c": air_c})
    assert (("power.cell_range", "phone") in found) is told


@pytest.mark.parametrize(("health", "told"), [(79, True), (80, False)])
def test_health_under_80(pack: Packing, health: float, told: bool) -> None:  # a table of cases
    found = pack([device("phone", "phone", battery={"health_pct": health})])
    assert (("power.worn", "phone") in found) is told


def test_no_reserve_with_a_radio(pack: Packing) -> None:
    radio = device("radio", "radio", wh=10, watts=2.3)  # 9.2 of 10 Wh in four hours
    assert pack([radio])["power.no_reserve", "radio"]["figure"] == pytest.approx(8, abs=1e-6)


def test_no_reserve_below_zero(pack: Packing) -> None:
    """At -0.5 deg C the usual table gives 84.5 % of the energy; 7.6 of 10 Wh are used: 8.5 % can still be used."""
    found = pack([device("vario", "instrument", watts=1.9)], phase={**WARM, "air_c": -0.5})
    assert found["power.no_reserve", "vario"]["figure"] == pytest.approx(8.5, abs=1e-6)


def test_warm_and_without_a_radio_the_likely_day_may_end_low(pack: Packing) -> None:
    assert ("power.no_reserve", "vario") not in pack([device("vario", "instrument", watts=2.3)])


def test_swollen_is_a_stop_where_an_essential_need_hangs_on_it(pack: Packing) -> None:
    found = pack([device("phone", "phone", battery={"swollen_on": "2026-05-08"})])["power.swollen", "phone"]
    assert found["state"] == "stop"
    assert any("collection point" in remedy for remedy in found["remedies"])


def test_an_old_battery(pack: Packing) -> None:
    found = pack([device("phone", "phone", made_on="2021-05-09")])["power.old", "phone"]
    assert (found["state"], found["figure"]) == ("look", 60)


@pytest.mark.parametrize("socket", SINKS)
def test_a_cable_is_missing(pack: Packing, socket: str) -> None:
    thing = device("phone", "phone", socket=socket)
    found = pack([thing, bank(connector="USB-A"), cable("USB-C to mini-USB")], ["phone"])
    assert found["power.cable_missing", "phone"]["state"] == "look"


@pytest.mark.parametrize("socket", SINKS)
def test_a_cable_is_there(pack: Packing, socket: str) -> None:
    thing = device("phone", "phone", socket=socket)
    found = pack([thing, bank(connector="USB-A"), cable(f"USB-A to {socket}")], ["phone"])
    assert not {code for code, _ in found} & {"power.cable_missing", "power.cables_short", "power.cable_not_known"}


def test_more_devices_than_ports(pack: Packing) -> None:
    found = pack([PHONE, device("radio", "radio"), bank(ports=1), cable()], ["phone", "radio"])
    assert found["power.ports_short", "bank"]["items"] == ["bank", "radio"]


def test_more_devices_than_cables(pack: Packing) -> None:
    found = pack([PHONE, device("radio", "radio"), bank(), cable(n=1)], ["phone", "radio"])
    assert {code for code, _ in found} & {"power.cables_short"}


def test_by_air(pack: Packing) -> None:
    big = bank(battery={"wh": 120}, quantity=3)
    found = pack([PHONE, big], conditions={"by air": True})
    assert found["power.air_approval", "bank"]["state"] == "look"
    assert found["power.air_too_many", "bank"]["figure"] == 3
    cabin = found["power.air_cabin", "bank"]["sentence"]
    assert "67th edition (2026)" in cabin
    assert "27\u00a0Mar\u00a02026" in cabin


def test_without_the_journey_nothing_is_said_of_it(pack: Packing) -> None:
    found = pack([PHONE, bank(battery={"wh": 120}, quantity=3)])
    assert not [code for code, _ in found if code.startswith("power.air")]
