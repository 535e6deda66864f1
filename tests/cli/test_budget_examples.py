"""Worked examples through the command line; the source stands beside each."""

import json
from math import exp
from typing import Any

import pytest
from calling import Kitlog


def day(device: dict[str, Any], hours: float, bank: dict[str, Any] | None = None) -> dict[str, Any]:
    plugged = {"phase": "day", "device": "it", "bank": "bank"}
    return {
        "phases": [{"id": "day", "hours": hours, "ambient_C": 25}],
        "devices": [{"id": "it", **device}],
        "banks": [] if bank is None else [{"id": "bank", **bank}],
        "plugs": [] if bank is None else [plugged],
    }


def told(kitlog: Kitlog, asked: dict[str, Any], **beside: Any) -> Any:
    said = kitlog("budget", "power", "-", "--json", stdin=json.dumps({"day": asked, **beside}).encode())
    assert said.code == 0
    return said.json


@pytest.mark.parametrize(
    "bank",
    [
        # by hand: 10,000 mAh x 3.7 V x .85 = 31.45 Wh
        {"cell_mAh": 10_000, "nominal_V": 3.7, "eff": 0.85},
        # by hand: the same bank with 6,290 mAh rated at the 5 V of its ports
        {"rated_mAh": 6_290, "eff": 0.85},
    ],
)
def test_what_leaves_the_ports(kitlog: Kitlog, bank: dict[str, Any]) -> None:
    lamp = {"cell_Wh": 0, "draw_W": {"day": 2}}
    assert told(kitlog, day(lamp, 24, bank), sample_h=[])["banks"]["bank"]["delivered_Wh"] == pytest.approx(31.45)


def test_a_radio_at_5_5_90(kitlog: Kitlog) -> None:
    """Shares: hytera-europe.com, wildtalk.com. Currents: ailunce.com, 1,500 mAh, 1.4 A / 140 mA / 40 mA. By hand: 113 mA,
    at 7.4 V .8362 W; 13.27 h."""
    modes = [
        {"mA": current_ma, "V": 7.4, "share": share} for current_ma, share in ((1400, 0.05), (140, 0.05), (40, 0.9))
    ]
    radio = {"cell_mAh": 1500, "nominal_V": 7.4, "draw_W": {"day": {"modes": modes}}}
    (found,) = told(kitlog, day(radio, 10), sample_h=[])["devices"].values()
    assert (1 - found["soc_end"]) * 11.1 / 10 == pytest.approx(0.8362)
    (found,) = told(kitlog, day(radio, 24), sample_h=[])["devices"].values()
    assert found["first_off_h"] == pytest.approx(13.27, abs=0.005)


def test_a_radio_as_published(kitlog: Kitlog) -> None:
    """ailunce.com, battery usage time: transmit 1 min, receive 6 min, standby 53 min of the hour; printed 20.6 h."""
    minutes = ((1400, 1), (140, 6), (40, 53))
    modes = [{"mA": current_ma, "V": 7.4, "share": each / 60} for current_ma, each in minutes]
    radio = {"cell_mAh": 1500, "nominal_V": 7.4, "draw_W": {"day": {"modes": modes}}}
    (found,) = told(kitlog, day(radio, 24), sample_h=[])["devices"].values()
    assert found["first_off_h"] == pytest.approx(20.64, abs=0.005)


def test_charging_above_the_knee(kitlog: Kitlog) -> None:
    """By hand: 12 Wh from 50 %, 6 W, efficiency .9, knee .8: the knee at 2/3 h, then 1 - .2 exp(-2.25 t)."""
    camera = {"cell_Wh": 12, "start": 0.5, "charge_max_W": 6}
    (found,) = told(kitlog, day(camera, 2, {"cell_Wh": None}), sample_h=[2 / 3, 1])["devices"].values()
    assert found["samples_soc"] == pytest.approx([0.8, 1 - 0.2 * exp(-0.75)])
    assert found["soc_end"] == pytest.approx(1 - 0.2 * exp(-3))


def test_the_chance_of_a_triangle(kitlog: Kitlog) -> None:
    """By hand: enough for 6 h, (3, 5, 8): 1 - (8 - 6)^2 / ((8 - 3)(8 - 5)) = .7333; error of 10,000 days .0044."""
    vario = {"cell_Wh": 6, "draw_W": {"day": 1}}
    answer = told(kitlog, day(vario, 5), query={"hours": {"day": [3, 5, 8]}})["answer"]
    assert answer["it"] == pytest.approx(0.7333, abs=4 * 0.0044)
