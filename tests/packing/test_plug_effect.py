"""Plugs without effect: the plan names each that the simulated day is played through without, with the reason."""

from typing import Any

import pytest
from scenario import judged
from small_kit import NEW, but, item, other, outing

from kitlog.kit.item import Item
from kitlog.outing.outing import PlugPlan
from kitlog.packing.assessment import Assessment
from kitlog.packing.plug_effect import idle_plugs

FLIGHT = {"name": "flight", "way": "flight", "low_h": 3, "likely_h": 4, "high_h": 5, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 2, "likely_h": 2, "high_h": 2, "air_c": 25}
ON = {"name": "on", "power_w": 1, "shares": [{"during": way, "share": 1.0} for way in ("flight", "ride home")]}
PHONE = item("phone", "phone", battery={"wh": 17, "charge_max_w": 7, "connector": "USB-C", "ways": [ON]})
BANK = item("bank", "power bank", battery={"wh": 38, "connector": "USB-C"}, bank={"ports": 1})
SPARE = item("spare", "power bank", battery={"wh": 20, "connector": "USB-C"}, bank={"ports": 1})
PLUGS = (
    PlugPlan(phase="flight", device="phone", bank="bank"),
    PlugPlan(phase="ride", device="phone", bank="spare"),
)


def looked_at(phone: Item, bank: Item, **plan: Any) -> tuple[Assessment, dict[tuple[str, str], tuple[str, str]]]:
    """The outing assessed, and its plugs without effect: thing and reason by phase and bank."""
    kit = but("phone", "radio", instead=[phone, bank, SPARE])
    at_hand = [one.id for one in (bank, SPARE) if one.usable]
    fields = {"phases": [FLIGHT, RIDE], "pinned": at_hand, "plugs": PLUGS, **plan}
    assessment = judged(outing(**fields), kit, NEW)
    idle = idle_plugs(PLUGS, assessment, {one.id: one for one in (phone, bank, SPARE)})
    return assessment, {(one.plug.phase, one.plug.bank): (one.thing, one.reason) for one in idle}


def simulated(assessment: Assessment) -> set[tuple[str, str]]:
    planned = assessment.power.planned
    assert planned is not None
    return {(plug.phase, plug.bank) for plug in (*planned.plugs, *assessment.power.unplugged)}


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ({}, ""),
        ({"state": "borrowed"}, ""),
        ({"state": "retired"}, "retired"),
        ({"state": "lent"}, "lent"),
        ({"state": "away"}, "away"),
        ({"state": "lost"}, "lost"),
        ({"quantity": 0}, "none left"),
        ({"battery": {"wh": 38, "swollen_on": "2026-05-01"}}, "swollen"),
        ({"battery": {"mah": 10_000}}, "not known"),
        ({"battery": {"mah": 10_000, "v": 5}}, "not known"),
    ],
)
def test_what_is_not_in_the_day_is_named_with_its_reason_and_nothing_else(fields: dict[str, Any], reason: str) -> None:
    assessment, idle = looked_at(PHONE, other(BANK, **fields))
    assert idle == ({("flight", "bank"): ("bank", reason)} if reason else {})
    assert simulated(assessment) == {(plug.phase, plug.bank) for plug in PLUGS} - idle.keys()


def test_a_bank_that_stays_at_home() -> None:
    assessment, idle = looked_at(PHONE, BANK, pinned=["spare"], left_out=["bank"])
    assert idle == {("flight", "bank"): ("bank", "not on the list")}
    assert simulated(assessment) == {("ride", "spare")}


def test_a_device_that_cannot_be_reckoned_with() -> None:
    radio = item("radio", "radio", battery={"wh": 10, "ways": [ON]})
    kit = but("phone", "radio", instead=[other(PHONE, battery={"mah": 4_000, "ways": [ON]}), radio, BANK, SPARE])
    plan = {"phases": [FLIGHT, RIDE], "pinned": ["bank", "spare", "radio", "phone"], "plugs": PLUGS}
    assessment = judged(outing(**plan), kit, NEW)
    idle = list(idle_plugs(PLUGS, assessment, {one.id: one for one in (PHONE, BANK, SPARE)}))
    assert [(one.thing, one.reason) for one in idle] == [("phone", "not known")] * 2
    assert simulated(assessment) == set()


def test_what_is_no_longer_in_the_kit() -> None:
    assessment, _idle = looked_at(PHONE, BANK)
    gone = PlugPlan(phase="flight", device="phone", bank="sold")
    (one,) = idle_plugs((gone,), assessment, {"phone": PHONE})
    assert (one.thing, one.reason) == ("sold", "gone")
