"""What goes where: against trying everything, and what holds for every evening (hypothesis)."""

import copy
import sys
from itertools import pairwise
from math import log
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kitlog.budget.charging.evening import FULL
from kitlog.budget.charging.search import MOST_STAYS

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from evenings import (
    behind,
    by_trying_everything,
    evenings,
    hours,
    later,
    levels,
    planned,
    raw_evening,
    raw_thing,
    soonest_of_everything,
)

quick = settings(max_examples=60, deadline=None)


@quick
@given(evenings(most_things=3))
def test_no_plan_on_the_grid_of_swaps_is_better_on_equal_ports(raw):
    like_each_other(raw)
    assert not behind(levels(planned(raw)), by_trying_everything(raw))


@quick
@given(evenings(most_things=3))
def test_no_plan_on_the_grid_of_swaps_is_better_for_the_first_in_order(raw):
    """Unequal ports: not all moves of half-charged things are compared; see test_moved."""
    assert not behind(levels(planned(raw))[:1], by_trying_everything(raw)[:1])


@quick
@given(evenings(most_things=3))
def test_no_plan_on_the_grid_of_swaps_is_full_sooner_in_order_of_priority(raw):
    like_each_other(raw)
    result = planned(raw)
    socs, full_h = soonest_of_everything(raw)
    if result.complete and not behind(socs, levels(result)):
        assert not later(hours(result, raw), full_h)


@quick
@given(evenings(most_things=5, most_ports=3, step_min=30, shared=False))
def test_no_port_holds_what_is_full_while_something_waits(raw):
    assert_no_port_waits(raw, planned(raw))


def assert_no_port_waits(raw, result):
    """Between two moments with hands: a thing that ends short and hangs nowhere finds no port that gives nothing."""
    ports = sum(len(charger["ports"]) for charger in raw["chargers"])
    full_h = dict(zip((thing.thing for thing in result.things), hours(result, raw), strict=True))
    short = {thing.thing for thing in result.things if not thing.full}
    short -= {name for name in short if sum(stay.thing == name for stay in result.stays) == MOST_STAYS}
    for low, high in pairwise(moments(raw)):
        busy = [stay for stay in result.stays if stay.from_h < high and stay.to_h > low and full_h[stay.thing] > low]
        assert len(busy) >= ports or short <= {stay.thing for stay in busy}


def moments(raw):
    """All moments with hands, from the beginning to leaving."""
    step_h = raw["swap_step_min"] / 60
    evening = [raw["from_h"] + n * step_h for n in range(round((raw["bed_h"] - raw["from_h"]) / step_h) + 1)]
    morning = [raw["up_h"] + n * step_h for n in range(round((raw["leave_h"] - raw["up_h"]) / step_h) + 1)]
    return sorted({*evening, *morning})


def test_twelve_things_on_two_ports_leave_no_port_idle():
    """Not every plan can be compared; what is full gives its port to what lacks all the same."""
    sizes = [(f"t{n}", 3 + n, (0.0, 0.1, 0.2, 0.3, 0.4)[n % 5]) for n in range(12)]
    things = [raw_thing(name, cell_Wh=cell_wh, start=start, charge_max_W=5) for name, cell_wh, start in sizes]
    raw = raw_evening(things, None, None, swap_step_min=5, from_h=20.0, bed_h=23.0)
    result = planned(raw)
    assert not result.complete
    assert not result.all_full
    assert_no_port_waits(raw, result)


class TestMoreThanCompared:
    """Past twelve things that lack charge the rest gets what is left, by priority, and that is said."""

    def things(self, count):
        return [raw_thing(f"t{n:02}", cell_Wh=2, start=0.5) for n in range(count)]

    def test_with_room_all_are_full(self):
        result = planned(raw_evening(self.things(20), 10, 10, 10))
        assert (result.all_full, result.complete) == (True, False)
        assert result.by_turns == tuple(f"t{n:02}" for n in range(12, 20))
        assert not planned(raw_evening(self.things(12), 10, 10, 10)).by_turns

    def test_where_it_is_short_the_last_in_order_wait(self):
        things = [raw_thing(f"t{n:02}", cell_Wh=12, start=0) for n in range(16)]
        raw = raw_evening(things, 10, 10, priority=[f"t{n:02}" for n in reversed(range(16))], swap_step_min=30)
        result = planned(raw)
        twelve = planned(raw | {"things": things[4:], "priority": raw["priority"][:12]})
        assert levels(result)[:12] == pytest.approx(levels(twelve), abs=1e-6)
        assert sum(level > 0 for level in levels(result)[12:]) == 0
        assert_no_port_waits(raw, result)

    def test_what_is_full_already_is_not_counted(self):
        full = [raw_thing(f"full{n}", start=1) for n in range(4)]
        result = planned(raw_evening([*full, *self.things(12)], 10, 10, 10))
        assert (result.all_full, result.by_turns) == (True, ())


class TestSoonest:
    """What matters most is full first, where that costs nothing of what is full at leaving."""

    def test_the_radio_does_not_wait_for_the_morning(self):
        """By hand: 9.99 Wh from 70 %, 4.5 W into the cell: 1.02 Wh / 4.5 to the knee, then 2.02 / 4.5 x ln 40."""
        things = [
            raw_thing("phone", cell_Wh=17.3, health=0.9, start=0.4, charge_max_W=18),
            raw_thing("bank", cell_Wh=38.5, health=0.9, start=0.55, charge_max_W=15, charge_eff=0.85),
            raw_thing("radio", cell_Wh=11.1, health=0.9, start=0.7, charge_max_W=5),
            raw_thing("gloves", cell_Wh=16.2, health=0.9, start=0.3, charge_max_W=8),
            raw_thing("computer", cell_Wh=11.1, health=0.95, start=0.8, charge_max_W=5),
        ]
        times = {"from_h": 20.0, "bed_h": 23.0, "up_h": 30.0, "leave_h": 32.0}
        result = planned(raw_evening(things, 10, 10, priority=["phone", "radio"], **times))
        assert (result.all_full, result.complete) == (True, True)
        full_h = {thing.thing: thing.full_h for thing in result.things}
        assert full_h["radio"] == pytest.approx(20 + 0.1 * 9.99 / 4.5 + 0.2 * 9.99 / 4.5 * log(40), abs=1e-6)
        assert full_h["phone"] < 21.5

    def test_on_one_port_the_first_goes_first(self):
        things = [raw_thing("bank", cell_Wh=10), raw_thing()]
        for priority in (["phone"], ["bank"]):
            first, second = planned(raw_evening(things, 10, priority=priority)).things
            assert first.thing == priority[0]
            assert first.full_h < second.full_h

    def test_but_not_where_the_second_would_end_short(self):
        """The bank at once would be full first, but then the hour of the morning is too short for the phone."""
        things = [raw_thing("bank", cell_Wh=40, start=0.1, charge_max_W=10), raw_thing(cell_Wh=10, start=0)]
        raw = raw_evening(things, 10)
        result = planned(raw)
        assert result.all_full
        assert min(stay.from_h for stay in result.stays if stay.thing == "phone") == 19.0
        assert planned(raw | {"things": things[:1]}).things[0].full_h < result.things[0].full_h


def like_each_other(raw):
    """All ports as strong as the first."""
    for port in raw["chargers"][0]["ports"]:
        port["limit_W"] = raw["chargers"][0]["ports"][0]["limit_W"]


@quick
@given(evenings(most_things=4, most_ports=3, step_min=30), st.integers(2, 20))
def test_one_more_port_takes_nothing_from_a_higher_priority(raw, limit_w):
    more = copy.deepcopy(raw)
    more["chargers"][0]["ports"].append({"id": "more", "limit_W": limit_w})
    one, other = planned(raw), planned(more)
    if other.complete:
        assert not behind(levels(other), levels(one))


@quick
@given(evenings(most_things=4, most_ports=3, step_min=30), st.integers(1, 3))
def test_a_later_bedtime_takes_nothing_from_a_higher_priority(raw, steps):
    like_each_other(raw)
    later = raw | {"bed_h": min(raw["bed_h"] + steps * 0.5, raw["up_h"])}
    one, other = planned(raw), planned(later)
    if other.complete:
        assert not behind(levels(other), levels(one))


@quick
@given(evenings(most_things=4, most_ports=3, step_min=30))
def test_a_port_has_one_thing_and_hands_only_while_awake(raw):
    result = planned(raw)
    for stay in result.stays:
        assert stay.from_h < stay.to_h
        for at_h in (stay.from_h, stay.to_h):
            assert at_h <= raw["bed_h"] or at_h >= raw["up_h"]
    for key in (lambda stay: (stay.charger, stay.port), lambda stay: stay.thing):
        for name in {key(stay) for stay in result.stays}:
            line = sorted((stay.from_h, stay.to_h) for stay in result.stays if key(stay) == name)
            assert all(before[1] <= after[0] for before, after in pairwise(line))


@quick
@given(evenings(most_things=4, most_ports=3, step_min=30))
def test_the_steps_by_hand_lead_through_the_stays(raw):
    result = planned(raw)
    hung, stays = {}, set()
    for step in result.steps:
        port = (step.charger, step.port)
        before = hung.pop(port, None)
        assert step.take_off == (before and before[0])
        if before:
            stays.add((*before, step.at_h))
        if step.put_on:
            hung[port] = (step.put_on, step.at_h)
    stays |= {(*line, raw["leave_h"]) for line in hung.values()}
    assert stays == {(stay.thing, stay.from_h, stay.to_h) for stay in result.stays}


def test_the_worked_evening():
    """Worked example of the reference (trade, 10.7): two 10 W ports, 45.74 Wh from the wall, at least 2.29 h."""
    things = [
        raw_thing("phone", cell_Wh=17.3, start=0.40, charge_max_W=7),
        raw_thing("bank", cell_Wh=34.64, start=0.55, charge_max_W=10, charge_eff=0.85),
        raw_thing("radio", cell_Wh=9.99, start=0.70, charge_max_W=5),
        raw_thing("gloves", cell_Wh=14.58, start=0.30, charge_max_W=5),
        raw_thing("computer", cell_Wh=10.545, start=0.80, charge_max_W=5),
    ]
    needed_wh = sum((1 - t["start"]) * t["cell_Wh"] / t.get("charge_eff", 0.9) for t in things)
    # the phone's 15.57 Wh are 17.3 at health .9; the bank's 18.34 Wh belong to 34.64 Wh
    things[0]["health"] = 0.9
    needed_wh -= 0.6 * (17.3 - 15.57) / 0.9
    assert needed_wh == pytest.approx(45.74, abs=0.02)
    night = planned(raw_evening(things, 10, 10))
    assert night.all_full
    assert night.complete
    no_night = raw_evening(things, 10, 10, bed_h=19.0 + needed_wh / 20, up_h=19.0 + needed_wh / 20)
    short = planned(no_night | {"leave_h": no_night["up_h"]})
    assert not short.all_full
    for night_h, full in ((7.0, False), (8.0, True)):
        end_h = 19.0 + night_h
        assert planned(no_night | {"bed_h": end_h, "up_h": end_h, "leave_h": end_h}).all_full is full


class TestOnePort:
    def test_the_night_is_for_what_needs_it_and_the_evening_for_the_rest(self):
        result = planned(raw_evening([raw_thing(), raw_thing("bank", cell_Wh=40, start=0.1)], 10))
        assert [(stay.thing, stay.overnight) for stay in result.stays] == [("phone", False), ("bank", True)]
        assert result.things[0].missing_wh == 0

    def test_the_first_in_order_is_served_when_there_is_not_enough(self):
        things = [raw_thing("radio", start=0), raw_thing("phone", start=0)]
        times = {"bed_h": 20.0, "up_h": 20.0, "leave_h": 20.0}
        result = planned(raw_evening(things, 10, priority=["phone"], **times))
        assert [thing.thing for thing in result.things] == ["phone", "radio"]
        # 7 W x .9 x 1 h
        assert result.things[0].missing_wh == pytest.approx(15 * FULL - 6.3)
        assert result.things[1].missing_wh == pytest.approx(15 * FULL)
        assert result.things[1].left_out is None


class TestSharedTotal:
    def test_two_ports_of_one_charger_share_by_water_filling(self):
        """6 W for two that take 7 each: 3 W each, 2.7 into the cell, for an hour."""
        things = [raw_thing("radio", start=0), raw_thing("phone", start=0)]
        times = {"bed_h": 20.0, "up_h": 21.0, "leave_h": 21.0}
        result = planned(raw_evening(things, 10, 10, total_w=6, **times))
        # both cannot be full: the first gets the charger alone
        assert result.things[0].soc_at_leaving == pytest.approx(6 * 0.9 * 2 / 15)
        assert result.things[1].soc_at_leaving == 0

    def test_where_the_night_is_long_the_first_has_the_total_for_itself_until_it_is_nearly_full(self):
        """6 W x .9 into 15 Wh: at the knee, 12 Wh, after 12 / 5.4 h; from there 6.3 W fading, capped at 5.4."""
        things = [raw_thing("radio", start=0), raw_thing("phone", start=0)]
        result = planned(raw_evening(things, 10, 10, total_w=6))
        assert result.all_full
        capped_until = 1 - 0.2 * 5.4 / 6.3
        alone_h = 15 * capped_until / 5.4 + log((1 - capped_until) / (1 - FULL)) * 0.2 * 15 / 6.3
        assert result.things[0].full_h == pytest.approx(19 + alone_h, abs=1e-6)
        assert len(result.steps) == 2

    def test_where_the_total_is_enough_nobody_waits(self):
        things = [raw_thing("radio", start=0), raw_thing("phone", start=0)]
        result = planned(raw_evening(things, 10, 10, total_w=14))
        assert {stay.from_h for stay in result.stays} == {19.0}


def test_without_things_or_chargers():
    assert planned(raw_evening([], 10)).all_full
    result = planned(raw_evening([raw_thing()]))
    assert (result.stays, result.steps, result.things[0].left_out) == ((), (), "no_port")
    assert result.cautions == ()  # with no port there is no plug to ask about


def test_full_already_and_nothing_to_do():
    result = planned(raw_evening([raw_thing(start=0.997)], 10))
    assert (result.stays, result.things[0].full_h) == ((), 19.0)
    assert "charged_full_already" in {caution.code for caution in result.cautions}


class TestSocketsAndPlugs:
    def test_with_one_socket_the_better_charger_is_in_the_wall(self):
        chargers = [{"id": name, "ports": [{"id": "p", "limit_W": w}]} for name, w in (("small", 5), ("large", 20))]
        things = [raw_thing(start=0, cell_Wh=60, charge_max_W=20)]
        assert planned(raw_evening(things, chargers=chargers, sockets=1)).chargers == ("large",)

    def test_without_a_free_socket_nothing_is_charged_and_each_thing_says_why(self):
        result = planned(raw_evening([raw_thing(), raw_thing("old", swollen=True)], 10, sockets=0))
        assert (result.chargers, result.stays, result.all_full) == ((), (), False)
        assert [thing.left_out for thing in result.things] == ["no_socket", "swollen"]
        assert result.things[0].missing_wh == pytest.approx(15 * (FULL - 0.4))

    def test_a_cable_must_have_both_ends(self):
        ports = [{"id": "p", "connector": "USB-A"}]
        things = [raw_thing(connector="USB-C"), raw_thing("vario", connector="micro-USB")]
        raw = raw_evening(things, chargers=[{"id": "wall", "ports": ports}])
        assert planned(raw).all_full
        result = planned(raw | {"cables": [{"connectors": ["USB-C", "USB-A"]}]})
        assert [thing.left_out for thing in result.things] == [None, "no_cable"]

    def test_one_cable_serves_one_thing_at_a_time(self):
        ports = [{"id": name, "connector": "USB-A", "limit_W": 10} for name in "ab"]
        things = [raw_thing(name, connector="USB-C", start=0) for name in ("phone", "radio")]
        raw = raw_evening(things, chargers=[{"id": "wall", "ports": ports}])
        one = planned(raw | {"cables": [{"connectors": ["USB-A", "USB-C"], "count": 1}]})
        assert one.all_full
        assert all(
            before.to_h <= after.from_h for before, after in pairwise(sorted(one.stays, key=lambda stay: stay.from_h))
        )
        two = planned(raw | {"cables": [{"connectors": ["USB-A", "USB-C"], "count": 2}]})
        assert {stay.from_h for stay in two.stays} == {19.0}

    def test_a_fixed_cable_fits_its_own_plug_only(self):
        ports = [{"id": "p", "connector": "barrel", "fixed_cable": True}]
        things = [raw_thing("gloves", connector="barrel"), raw_thing(connector="USB-C")]
        result = planned(raw_evening(things, chargers=[{"id": "wall", "ports": ports}]))
        assert [thing.left_out for thing in result.things] == [None, "no_port"]


@pytest.mark.parametrize(
    ("keys", "place_c", "left_out", "codes"),
    [
        ({"swollen": True}, 20, "swollen", {"swollen"}),
        ({}, -1, "too_cold", {"too_cold_C"}),
        ({}, 0, None, {"cold_rate_W"}),
        ({}, 46, "too_warm", {"too_warm_C"}),
        ({"charge_max_W": 3}, 10, None, set()),
        ({"charge_max_W": 7}, 10, None, {"cold_rate_W"}),
        ({"health": 0.79}, 20, None, {"health"}),
        ({"health": 0.80}, 20, None, set()),
        ({"age_months": 60}, 20, None, {"age_months"}),
        ({"age_months": 59}, 20, None, set()),
        ({"charge_max_W": 0}, 20, "takes_no_charge", set()),
        ({"cell_Wh": 0}, 20, "no_cell", set()),
        ({}, None, None, {"place_not_known_C"}),
        ({"connector": None}, 20, None, {"connector_not_known"}),
    ],
)  # fmt: skip
def test_cautions(keys, place_c, left_out, codes):
    chargers = [{"id": "wall", "ports": [{"id": "p", "connector": "USB-C"}]}]
    thing = raw_thing(**{"connector": "USB-C", **keys})
    result = planned(raw_evening([thing], chargers=chargers) | {"place_C": place_c})
    assert result.things[0].left_out == left_out
    assert bool(result.stays) is (left_out is None)
    assert {caution.code for caution in result.cautions} == codes
    assert all(caution.source for caution in result.cautions)


@pytest.mark.parametrize(
    "keys",
    [{"swollen": True}, {"health": 0}, {"charge_max_W": 0}, {"charge_min_C": 21}, {"charge_max_C": 19}, {"connector": "x"}],
)  # fmt: skip
def test_what_is_left_out_is_not_full(keys):
    ports = [{"id": "p", "connector": "USB-C"}]
    chargers, cables = [{"id": "wall", "ports": ports}], [{"connectors": ["USB-C", "USB-C"]}]
    things = [raw_thing(connector="USB-C"), raw_thing("odd", **{"connector": "USB-C", **keys})]
    result = planned(raw_evening(things, chargers=chargers, cables=cables))
    assert result.things[1].left_out is not None
    assert not result.all_full
    assert result.all_chargeable_full


def test_what_is_full_needs_no_port_but_a_swollen_one_is_left_out_all_the_same():
    full = planned(raw_evening([raw_thing(start=1)]))
    assert (full.all_full, full.things[0].left_out) == (True, None)
    swollen = planned(raw_evening([raw_thing(start=1, swollen=True)], 10))
    assert (swollen.all_full, swollen.things[0].left_out) == (False, "swollen")
