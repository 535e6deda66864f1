"""A computed change taken into the plan gives the very day that was run for it: what is promised is what is planned."""

from collections.abc import Mapping
from typing import Any

import pytest
from scenario import LIBRARY, judged
from small_kit import NEW, but, item, outing

from kitlog.budget.power.changes.weigh import Weighed
from kitlog.budget.result import Remedy
from kitlog.kit.kinds import Place
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import Kit
from kitlog.packing.power_changes import weighed_changes
from kitlog.packing.power_remedies import power_remedy
from kitlog.packing.power_replanned import warmer_item
from kitlog.packing.remedied import remedied

PHASES = [
    {"name": "wait", "way": "wait at launch", "low_h": 1, "likely_h": 1, "high_h": 2, "air_c": 10},
    {"name": "flight", "way": "flight", "low_h": 2, "likely_h": 4, "high_h": 6, "air_c": -5},
    {"name": "ride", "way": "ride home", "low_h": 1, "likely_h": 2, "high_h": 4, "air_c": 12},
]


def shares(*moving: str) -> list[dict[str, Any]]:
    return [{"during": way, "share": 1.0} for way in moving]


def powered(name: str, kind: str, wh: float, ways: list[dict[str, Any]], **more: Any) -> Any:
    cell = {"wh": wh, "charge_max_w": 6, "connector": "USB-C", "ways": ways, **more.pop("battery", {})}
    return item(name, kind, 100, battery=cell, **more)


PHONE = powered(
    "phone",
    "phone",
    12,
    [
        {"name": "on", "power_w": 0.8, "shares": shares("wait at launch", "ride home")},
        {"name": "map, screen on", "power_w": 2.4, "shares": shares("flight")},
        {"name": "tracking, screen off", "power_w": 0.9},
        {"name": "flight mode", "power_w": 0.2},
    ],
    battery={"place": "cockpit"},
)
RADIO = powered(
    "radio", "radio", 6, [{"name": "5/5/90", "power_w": 0.9, "shares": shares("wait at launch", "flight", "ride home")}]
)
LAMP = powered(
    "gloves hot",
    "gloves",
    8,
    [{"name": "high", "power_w": 3, "shares": shares("flight")}, {"name": "low", "power_w": 1.5}],
)
CAMERA = powered("camera", "camera", 6, [{"name": "on", "power_w": 1.5, "shares": shares("flight")}])


def bank(name: str, wh: float, **fields: Any) -> Any:
    how = {"ports": 2, "min_w": 0.25, "off_s": 30}
    return item(
        name, "power bank", fields.pop("mass_g", 200), battery={"wh": wh, "connector": "USB-C", **fields}, bank=how
    )


KIT = but(
    "phone",
    "radio",
    "gloves",
    instead=(
        PHONE,
        RADIO,
        LAMP,
        CAMERA,
        bank("small", 8, place="under the shell"),
        bank("large", 40, place="back pocket", mass_g=420),
        item("cable", "cable", 20, battery={"connector": "USB-C to USB-C"}),
        item("second cable", "cable", 25, battery={"connector": "USB-C to USB-C"}),
    ),
)
BASE = {
    "phases": PHASES,
    "pinned": ["camera", "small", "cable"],
    "left_out": ["large", "second cable"],
    "starts": [{"item": "radio", "low_pct": 60, "likely_pct": 70, "high_pct": 80}],
}
PLANS: Mapping[str, dict[str, Any]] = {
    "usual plugs": BASE,
    "no plugs": {**BASE, "plugs": []},
    "camera in flight": {**BASE, "plugs": [{"phase": "flight", "device": "camera", "bank": "small"}]},
}


def standing(name: str) -> Assessment:
    return judged(outing(**PLANS[name]), KIT, NEW)


def changes(assessment: Assessment) -> list[Weighed]:
    return list(weighed_changes(assessment, KIT.items, LIBRARY))


def taken(assessment: Assessment, remedy: Remedy) -> Assessment:
    """The outing judged anew with the remedy taken, in the plan or in the kit."""
    items = {one.id: one for one in KIT.items}
    moved = warmer_item(remedy, items)
    if moved is not None:
        kit = Kit(KIT.pilot, tuple(moved if one.id == moved.id else one for one in KIT.items))
        return judged(assessment.outing, kit, NEW)
    plan = remedied(assessment, remedy, items, LIBRARY)
    assert plan is not None
    assert plan != assessment.outing
    return judged(plan, KIT, NEW)


@pytest.mark.parametrize("name", PLANS)
def test_what_was_run_is_what_is_planned(name: str) -> None:
    before = standing(name)
    tried = changes(before)
    assert len(tried) > 8
    for one in tried:
        after = taken(before, power_remedy(one)).power
        for case, day in (("likely", after.likely), ("high", after.high)):
            assert day is not None
            for device, gain in one.devices.items():
                fare, found = getattr(gain, case), day.devices[device]
                assert found.first_off_h == pytest.approx(fare.first_off_h), one.candidate
                assert found.soc_end == pytest.approx(fare.soc_end), one.candidate
        for device in one.candidate.gives_up:
            assert not any(draw.high_w for draw in after.draws.get(device, {}).values())


def test_every_sort_of_change_is_among_them() -> None:
    codes = {one.candidate.code for name in PLANS for one in changes(standing(name))}
    assert codes == {
        "add_bank",
        "bank_instead",
        "plug_too",
        "plug_below",
        "use_less",
        "flight_mode",
        "carry_warmer",
        "start_full",
        "leave_off",
    }


def test_mass_is_that_of_the_plan() -> None:
    """Where the mass of a change is known, the list weighs that much more with it."""
    seen = set()
    for name in PLANS:
        before = standing(name)
        for one in changes(before):
            if one.candidate.mass_g is not None:
                seen.add((one.candidate.code, one.candidate.mass_g))
                after = taken(before, power_remedy(one))
                assert weight(after) - weight(before) == one.candidate.mass_g, one.candidate
    assert seen >= {("add_bank", 420), ("add_bank", 445), ("bank_instead", 220), ("plug_too", 25), ("plug_too", 0)}


def weight(assessment: Assessment) -> int:
    return sum(line.mass_g or 0 for line in assessment.lines)


def test_a_place_is_a_matter_of_the_item() -> None:
    before = standing("no plugs")
    items = {one.id: one for one in KIT.items}
    warmer = Remedy("carry_warmer", ("phone",), {"place": "under the shell"})
    assert remedied(before, warmer, items, LIBRARY) is None
    moved = warmer_item(warmer, items)
    assert moved is not None
    assert moved.battery is not None
    assert moved.battery.place is Place.UNDER_SHELL
    assert warmer_item(Remedy("carry_warmer", ("phone",)), items) is None
    assert warmer_item(Remedy("start_full", ("phone",)), items) is None


def test_a_way_of_use_that_is_gone_changes_nothing() -> None:
    before = standing("no plugs")
    gone = Remedy("use_less", ("phone",), {"use": "asleep", "instead": "map, screen on"})
    assert remedied(before, gone, {one.id: one for one in KIT.items}, LIBRARY) == before.outing


def test_a_plug_of_the_plan_on_a_bank_that_stays_is_not_woken_by_taking_it() -> None:
    """The plan says that the camera hangs on the large bank, which stays at home; now it comes for the phone."""
    plug = {"phase": "ride", "device": "camera", "bank": "large"}
    before = judged(outing(**{**BASE, "plugs": [plug]}), KIT, NEW)
    one = next(one for one in changes(before) if one.candidate.ids == ("phone", "large"))
    plan = remedied(before, power_remedy(one), {item.id: item for item in KIT.items}, LIBRARY)
    assert plan is not None
    assert {planned.device for planned in plan.plugs or ()} == {"phone"}
