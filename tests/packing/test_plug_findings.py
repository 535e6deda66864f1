"""A plug that takes no part in the day is a finding of its device, with the reason, and not dropped in silence."""

from typing import Any

import pytest
from scenario import judged, of_code, the
from small_kit import NEW, but, item, other, outing

from kitlog.budget.result import State
from kitlog.kit.item import Item
from kitlog.packing.assessment import Assessment
from kitlog.wording.findings import say

FLIGHT = {"name": "flight", "way": "flight", "low_h": 3, "likely_h": 4, "high_h": 5, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 2, "likely_h": 2, "high_h": 2, "air_c": 25}
ON = {"name": "on", "power_w": 1, "shares": [{"during": way, "share": 1.0} for way in ("flight", "ride home")]}
PHONE = item("phone", "phone", battery={"wh": 17, "charge_max_w": 7, "connector": "USB-C", "ways": [ON]})
BANK = item("bank", "power bank", 300, battery={"wh": 38, "connector": "USB-C"}, bank={"ports": 1})
PLUGS = [{"phase": phase, "device": "phone", "bank": "bank"} for phase in ("flight", "ride")]
NAMES = {"phone": "Phone", "bank": "Old bank"}


def assessed(bank: Item, **plan: Any) -> Assessment:
    fields = {"phases": [FLIGHT, RIDE], "plugs": PLUGS, **plan}
    return judged(outing(**fields), but("phone", "radio", instead=[PHONE, bank]), NEW)


@pytest.mark.parametrize(
    ("bank", "plan", "reason"),
    [
        (other(BANK, state="retired"), {}, "retired"),
        (BANK, {"left_out": ["bank"]}, "not on the list"),
        (other(BANK, battery={"wh": 38, "swollen_on": "2026-05-01"}), {"pinned": ["bank"]}, "swollen"),
        (other(BANK, battery={"mah": 10_000}), {"pinned": ["bank"]}, "its energy or draw is not known"),
    ],
)
def test_a_plug_to_a_bank_that_takes_no_part_is_said(bank: Item, plan: dict[str, Any], reason: str) -> None:
    idle = the(assessed(bank, **plan), "power.plug_idle", "phone")
    assert idle.state is State.LOOK
    said = say(idle, NAMES)
    assert said.title == "Phone"
    assert said.sentence == f"its plug is without effect: Old bank, {reason} (flight, ride); reckoned without it"


def test_a_bank_at_home_can_be_taken_and_any_plug_planned_anew() -> None:
    at_home = the(assessed(BANK, left_out=["bank"]), "power.plug_idle")
    assert [(one.code, one.items) for one in at_home.remedies] == [
        ("take_along", ("bank",)),
        ("plan_plugs", ("phone",)),
    ]
    retired = the(assessed(other(BANK, state="retired")), "power.plug_idle")
    assert [one.code for one in retired.remedies] == ["plan_plugs"]


def test_nothing_is_said_of_plugs_that_work_nor_of_phases_without_hours() -> None:
    assert not of_code(assessed(BANK, pinned=["bank"]), "power.plug_idle")
    none = [{**phase, "low_h": 0, "likely_h": 0, "high_h": 0} for phase in (RIDE,)]
    plan = {"phases": [FLIGHT, *none], "plugs": PLUGS[1:], "left_out": ["bank"]}
    assert not of_code(assessed(BANK, **plan), "power.plug_idle")
