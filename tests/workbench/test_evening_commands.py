"""Charges on hand, swollen batteries and the evening, each one step to undo."""

from datetime import time, timedelta

import pytest
from pydantic import ValidationError
from scenario import EVENING

from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.outing.outing import Evening
from kitlog.workbench.workbench import Workbench

TIMES = Evening(from_at=time(20), bed_at=time(23), up_at=time(6), leave_at=time(7), sockets=1, place_c=18.0)


def of(bench: Workbench, name: str) -> Item:
    return next(item for item in bench.items() if item.name == name)


def pct(bench: Workbench, name: str) -> float | None:
    battery = of(bench, name).battery
    return battery.on_hand_pct if battery else None


def charge_all(bench: Workbench) -> None:
    """Give the demo what it may lack: a charger, and the charging power of all that has a battery."""
    block = {"id": "block", "name": "block", "kind": "charger"}
    ports = [{"power_w": 20.0, "connector": "USB-C"}]
    bench.add_item(Item.model_validate({**block, "charger": {"ports": ports}}))
    bench.edit_items(
        [
            item.model_copy(update={"battery": item.battery.model_copy(update={"charge_max_w": 5.0})})
            for item in bench.items()
            if item.battery is not None
        ]
    )


class TestOnHand:
    def test_is_noted_with_the_moment_and_undone_in_one_step(self, bench: Workbench) -> None:
        before = pct(bench, "Phone"), pct(bench, "Handheld radio")
        bench.note_on_hand({of(bench, "Phone").id: 63, of(bench, "Handheld radio").id: 40})
        battery = of(bench, "Phone").battery
        assert battery is not None
        assert (battery.on_hand_pct, battery.on_hand_at) == (63, EVENING)
        assert pct(bench, "Handheld radio") == 40
        bench.undo()
        assert (pct(bench, "Phone"), pct(bench, "Handheld radio")) == before

    def test_emptied_it_is_not_known(self, bench: Workbench) -> None:
        bench.note_on_hand({of(bench, "Phone").id: 63})
        bench.note_on_hand({of(bench, "Phone").id: None})
        battery = of(bench, "Phone").battery
        assert battery is not None
        assert (battery.on_hand_pct, battery.on_hand_at) == (None, None)

    def test_what_has_no_battery_is_refused(self, bench: Workbench) -> None:
        with pytest.raises(InputFault) as refused:
            bench.note_on_hand({of(bench, "Helmet A").id: 50})
        assert (refused.value.code, refused.value.facts["name"]) == ("item.no_battery", "Helmet A")

    @pytest.mark.parametrize("wrong", [-1, 100.5])
    def test_outside_the_scale_it_is_refused(self, bench: Workbench, wrong: float) -> None:
        with pytest.raises(ValidationError):
            bench.note_on_hand({of(bench, "Phone").id: wrong})


def test_swollen_is_noted_with_the_day_and_undone(bench: Workbench) -> None:
    bench.note_swollen(of(bench, "Power bank").id)
    battery = of(bench, "Power bank").battery
    assert battery is not None
    assert battery.swollen_on == EVENING.date()
    found = bench.assess(bench.outings()[0]).findings
    assert [f.items for f in found if f.code == "power.swollen"] == [(of(bench, "Power bank").id,)]
    bench.note_swollen(of(bench, "Power bank").id, swollen=False)
    bench.undo()
    bench.undo()
    battery = of(bench, "Power bank").battery
    assert battery is not None
    assert battery.swollen_on is None


class TestEvening:
    def test_hours_are_set_and_undone(self, bench: Workbench) -> None:
        outing = bench.outings()[0]
        bench.set_evening(outing.id, TIMES)
        changed = bench.outing(outing.id)
        assert changed is not None
        assert changed.evening == TIMES
        assert not bench.evening_plan(changed).assumed
        bench.undo()
        assert bench.outing(outing.id) == outing

    def test_the_planned_end_is_tomorrows_start(self, bench: Workbench) -> None:
        charge_all(bench)
        outing = bench.outings()[0]
        bench.set_evening(outing.id, TIMES)
        outing = bench.outings()[0]
        plan = bench.evening_plan(outing)
        short = {line.thing.item.id: line.end_pct for line in plan.lines if line.missing_wh > 0}
        assert short
        bench.start_as_planned(outing.id, plan)
        starts = {start.item: start.likely_pct for start in bench.outings()[0].starts}
        assert starts.keys() == short.keys()
        assert all(short[name] - 0.1 < pct <= short[name] for name, pct in starts.items())
        bench.undo()
        assert bench.outings()[0].starts == outing.starts


def test_a_deleted_item_leaves_the_evening(bench: Workbench) -> None:
    bench.add_item(Item(id="spare", name="spare"))
    outing = bench.outings()[0]
    bench.set_evening(outing.id, TIMES.model_copy(update={"priority": ("spare",)}))
    bench.delete_items(["spare"])
    evening = bench.outings()[0].evening
    assert evening is not None
    assert evening.priority == ()


def test_what_lies_is_listed_on_the_day_of_the_clock(bench: Workbench, clock) -> None:
    listed = {line.item.name for line in bench.storage_due(season_over=True)}
    assert {"Phone", "Power bank", "Heated gloves"} <= listed
    assert "Locator beacon" not in listed
    clock.at = EVENING + timedelta(days=3650)
    assert {line.act for line in bench.storage_due()} <= {"not_known", "charge", "use_down", "leave"}
