"""The changes that would help an outing's power, run from the real kit; hours by hand where the cell is at 25 deg C."""

from typing import Any

import pytest
from scenario import LIBRARY, judged
from small_kit import NEW, but, item, outing

from kitlog.budget.power.changes.weigh import Weighed
from kitlog.kit.item import Item
from kitlog.packing.assessment import Assessment
from kitlog.packing.kit import Kit
from kitlog.packing.power_changes import change_odds, power_targets, weighed_changes

FLIGHT = {"name": "flight", "way": "flight", "low_h": 2, "likely_h": 4, "high_h": 5, "air_c": 25}
RIDE = {"name": "ride", "way": "ride home", "low_h": 1, "likely_h": 2, "high_h": 3, "air_c": 25}


def phone(watts: float = 2.0, **battery: Any) -> Item:
    """10 Wh that are all used; the screen is on, and can be off at half the draw."""
    ways = [
        {
            "name": "screen on",
            "power_w": watts,
            "shares": [{"during": "flight", "share": 1}, {"during": "ride home", "share": 1}],
        },
        {"name": "screen off", "power_w": watts / 2},
    ]
    cell = {"wh": 10, "cutoff_pct": 0, "charge_max_w": 5, "connector": "USB-C", "offset_k": 0, "ways": ways, **battery}
    return item("phone", "phone", 200, battery=cell)


def bank(name: str, wh: float, mass_g: int | None) -> Item:
    cell = {"wh": wh, "fixed_c": 25, "cutoff_pct": 0, "connector": "USB-C"}
    return item(name, "power bank", mass_g, battery=cell, bank={"efficiency_pct": 100, "quiescent_w": 0, "ports": 1})


CABLE = item("cable", "cable", 20, battery={"connector": "USB-C to USB-C"})


def assessed(*items: Item, along: tuple[str, ...] = (), **plan: Any) -> tuple[Assessment, Kit]:
    kit = but("phone", "radio", instead=items)
    return judged(outing(**{"phases": [FLIGHT, RIDE], "pinned": along, "plugs": [], **plan}), kit, NEW), kit


def changes(*items: Item, **plan: Any) -> dict[tuple[str, ...], Weighed]:
    assessment, kit = assessed(*items, **plan)
    found = weighed_changes(assessment, kit.items, LIBRARY)
    return {(one.candidate.code, *one.candidate.ids[1:]): one for one in found}


def test_nothing_is_tried_where_all_lasts() -> None:
    assert changes(phone(0.5), bank("big", 20, 200)) == {}


def test_the_charge_to_keep_is_asked_for() -> None:
    """1.2 W over 8 h of a high day leave 4 %; 10 % are to be kept."""
    assessment, kit = assessed(phone(1.2))
    assert assessment.power.planned is not None
    (target,) = power_targets(kit.items, assessment.power.planned)
    assert (target.device, target.min_soc) == ("phone", 0.1)
    assert changes(phone(1.2), bank("big", 20, 200)) != {}


def test_a_bank_along_by_hand() -> None:
    """2 W: 5 h of 6 likely, of 8 high. Ten Wh more are enough."""
    found = changes(phone(), bank("big", 20, 200), CABLE)
    one = found["add_bank", "big"]
    assert one.devices["phone"].likely.lasts
    assert one.cut_h == pytest.approx(1)
    assert one.cut_high_h == pytest.approx(3)


@pytest.mark.parametrize(
    ("cables", "along", "mass_g"), [((), (), None), ((CABLE,), (), 220), ((CABLE,), ("cable",), 200)]
)
def test_its_mass_with_that_of_the_cable(cables: tuple[Item, ...], along: tuple[str, ...], mass_g: int | None) -> None:
    assert changes(phone(), bank("big", 20, 200), *cables, along=along)["add_bank", "big"].candidate.mass_g == mass_g


def test_each_bank_has_the_mass_of_its_own_cable() -> None:
    odd = bank("odd", 20, 300)
    odd = Item.model_validate({**odd.model_dump(), "battery": {**odd.battery.model_dump(), "connector": "barrel"}})  # type: ignore[union-attr]
    found = changes(phone(), bank("big", 20, 200), odd, CABLE)
    assert found["add_bank", "big"].candidate.mass_g == 220
    assert found["add_bank", "odd"].candidate.mass_g is None


def test_another_bank_instead() -> None:
    plugs = [{"phase": "ride", "device": "phone", "bank": "small"}]
    found = changes(phone(), bank("small", 1, 60), bank("big", 20, 200), CABLE, along=("small", "cable"), plugs=plugs)
    one = found["bank_instead", "big"]
    assert one.candidate.ids == ("small", "big")
    assert one.candidate.mass_g == 140
    assert one.devices["phone"].likely.lasts


def test_less_light_says_which_ways() -> None:
    one = changes(phone())[("use_less",)]
    facts = {"use": "screen off", "instead": "screen on", "share": 0.1, "phases": ("flight", "ride")}
    assert dict(one.candidate.facts) == facts
    assert one.devices["phone"].likely.hours_more == pytest.approx((10 - 6 * 1.1) / 1.1)


def test_start_full() -> None:
    starts = [{"item": "phone", "low_pct": 30, "likely_pct": 40, "high_pct": 50}]
    one = changes(phone(1.0), starts=starts)[("start_full",)]
    assert one.cut_h == pytest.approx(2)


def test_all_changes_are_weighed_in_both_cases() -> None:
    for one in changes(phone(), bank("big", 20, 200)).values():
        assert one.all_last_high is not None
        assert one.devices["phone"].gain_high_h is not None


class TestOdds:
    def test_one_after_the_other_on_the_same_days(self) -> None:
        """2 W: 5 h; hours of flight 2, 4, 5 and of ride 1, 2, 3. With 20 Wh more no day is too long."""
        assessment, kit = assessed(phone(), bank("big", 20, 200), CABLE)
        found = [
            one
            for one in weighed_changes(assessment, kit.items, LIBRARY)
            if one.candidate.code in {"add_bank", "use_less"}
        ]
        gains = list(change_odds(assessment, LIBRARY, found, days=200))
        assert [gain.candidate for gain in gains] == [one.candidate for one in found]
        assert len({gain.before for gain in gains}) == 1
        for gain in gains:
            assert gain.after.probability == 1
            assert gain.gain == pytest.approx(1 - gain.before.probability)
            assert gain.gain_error == pytest.approx(gain.before.standard_error)
        assert gains[0] == next(change_odds(assessment, LIBRARY, found, days=200))

    def test_of_some_devices_alone(self) -> None:
        vario = item("vario", "instrument", 50, battery={"wh": 1, "ways": [{"name": "on", "power_w": 1}]})
        assessment, kit = assessed(phone(), vario, along=("vario",))
        found = [o for o in weighed_changes(assessment, kit.items, LIBRARY) if o.candidate.code == "use_less"]
        (all_of_them,) = change_odds(assessment, LIBRARY, found, days=100)
        (phone_alone,) = change_odds(assessment, LIBRARY, found, devices=("phone",), days=100)
        assert all_of_them.gain == 0
        assert phone_alone.gain > 0

    def test_nothing_of_a_day_that_was_not_simulated(self) -> None:
        assessment, kit = assessed(phone(), phases=[])
        assert weighed_changes(assessment, kit.items, LIBRARY) == ()
        assert not list(change_odds(assessment, LIBRARY, ()))
