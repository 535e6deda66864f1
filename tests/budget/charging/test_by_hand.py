"""Charges and finish times by a reckoning of the test's own, from the rules of the power model (section 3) alone.

A port gives min(what the thing takes, its limit); the thing takes all it can up to its knee, from there
(1 - s) / (1 - knee) of it; `eff` of that reaches the cell. Tried is every thing on every port at every whole step.
"""

import sys
from itertools import permutations, product
from math import exp, log
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from evenings import planned, raw_evening, raw_thing

FULL = 0.995


def charged(thing, soc, port_w, hours):
    """Charge after so many hours on a port, and after how many of them it was full (None: not)."""
    eff, knee = thing.get("charge_eff", 0.9), thing.get("knee", 0.8)
    energy_wh = thing["cell_Wh"] * thing.get("health", 1.0)
    most_w = thing["charge_max_W"]
    given_w = min(most_w, port_w)
    bend = max(knee, 1 - given_w / most_w * (1 - knee))
    fade = eff * most_w / ((1 - knee) * energy_wh)
    straight_h = max(0.0, (bend - soc) * energy_wh / (eff * given_w))
    begin = max(soc, bend)
    full_h = 0.0 if soc >= FULL else straight_h + log((1 - begin) / (1 - FULL)) / fade
    if hours <= straight_h:
        end = soc + hours * eff * given_w / energy_wh
    else:
        end = 1 - (1 - begin) * exp(-fade * (hours - straight_h))
    return end, full_h if full_h <= hours else None


def ended(thing, spans, ports_w, hung):
    """Charge at the end and the hour at which it is full."""
    soc, full_at = thing["start"], None
    for (from_h, to_h), port in zip(spans, hung, strict=True):
        if port is not None:
            soc, full_h = charged(thing, soc, ports_w[port], to_h - from_h)
            full_at = from_h + full_h if full_at is None and full_h is not None else full_at
    return min(soc, FULL), full_at if full_at is not None else spans[-1][1]


def best_of_all(things, ports_w, spans):
    """Fullest first in order, then soonest in order."""
    places = [*range(len(ports_w)), *[None] * len(things)]
    at_once = sorted(set(permutations(places, len(things))), key=repr)
    found = []
    for night in product(at_once, repeat=len(spans)):
        ends = [ended(thing, spans, ports_w, [hung[n] for hung in night]) for n, thing in enumerate(things)]
        found.append((tuple(-round(soc, 9) for soc, _ in ends), tuple(full_h for _, full_h in ends)))
    levels, hours = min(found)
    return [-level for level in levels], list(hours)


PHONE = raw_thing("phone", cell_Wh=17.3, health=0.9, start=0.4)
BANK = raw_thing("bank", cell_Wh=34.64, start=0.55, charge_max_W=10, charge_eff=0.85)
CAMERA = raw_thing("camera", cell_Wh=9.0, start=0.1, charge_max_W=5, knee=0.93)
NIGHT = {"from_h": 20.0, "bed_h": 22.0, "up_h": 23.0, "leave_h": 24.0, "swap_step_min": 60}


@pytest.mark.parametrize(
    ("things", "ports_w"),
    [
        ((PHONE, CAMERA), (10,)),
        ((PHONE, BANK), (10,)),
        ((PHONE, BANK), (10, 10)),
        ((PHONE, BANK, CAMERA), (10, 10)),
        ((BANK, PHONE), (10, 5)),
        ((CAMERA, BANK), (6, 6)),
    ],
)
def test_no_plan_of_whole_hours_is_better_and_the_figures_are_those_reckoned_here(things, ports_w):
    spans = [(hour, hour + 1.0) for hour in (20.0, 21.0, 22.0, 23.0)]
    raw = raw_evening(list(things), *ports_w, **NIGHT)
    result = planned(raw)
    for thing, ended_so in zip(things, result.things, strict=True):
        soc, full_at = thing["start"], None
        stays = sorted((stay for stay in result.stays if stay.thing == thing["id"]), key=lambda stay: stay.from_h)
        for stay in stays:
            soc, full_h = charged(thing, soc, ports_w[int(stay.port[1:])], stay.to_h - stay.from_h)
            full_at = stay.from_h + full_h if full_at is None and full_h is not None else full_at
        assert ended_so.soc_at_leaving == pytest.approx(soc, abs=1e-9)
        assert ended_so.full_h == (None if full_at is None else pytest.approx(full_at, abs=1e-9))
    levels, hours = best_of_all(things, ports_w, spans)
    assert [min(one.soc_at_leaving, FULL) for one in result.things] == pytest.approx(levels, abs=1e-6)
    got = [24.0 if one.full_h is None else one.full_h for one in result.things]
    assert got == pytest.approx(hours, abs=1e-6)


def test_the_phone_that_calls_for_help_comes_before_the_camera():
    """Trade, 4.2: the phone at 100 % at leaving is a critical check. Either alone would be full, both are not."""
    times = {"from_h": 20.0, "bed_h": 23.0, "up_h": 23.0, "leave_h": 23.0}
    things = [raw_thing("camera", cell_Wh=12, start=0.1), PHONE]
    assert all(planned(raw_evening([thing], 10, **times)).all_full for thing in things)
    both = planned(raw_evening(things, 10, priority=["phone", "camera"], **times))
    assert [(one.thing, one.full) for one in both.things] == [("phone", True), ("camera", False)]


def test_the_evening_of_the_worked_example():
    """Trade, 10.7: two 10 W ports, 45.74 Wh from the wall: at least 2.29 h; with the taper about 3.5 h (a guess there).

    Each on a port of its own, by hand: phone 6.23 Wh / 6.3 W + .2 x 15.57 / 6.3 x ln 40 = 2.81 h and so on.
    """
    things = [
        PHONE,
        BANK,
        raw_thing("radio", cell_Wh=9.99, start=0.7, charge_max_W=5),
        raw_thing("gloves", cell_Wh=14.58, start=0.3, charge_max_W=5),
        raw_thing("computer", cell_Wh=10.545, start=0.8, charge_max_W=5),
    ]
    alone_h = [charged(thing, thing["start"], 10, 24)[1] for thing in things]
    assert alone_h[0] == pytest.approx(0.4 * 15.57 / 6.3 + 0.2 * 15.57 / 6.3 * log(40))
    result = planned(raw_evening(things, *[10] * 5))
    assert [one.full_h - 19 for one in result.things] == pytest.approx(alone_h, abs=1e-9)
    assert result.complete
    two = planned(raw_evening(things, 10, 10))
    assert two.all_full
    assert two.complete
    assert max(one.full_h for one in two.things) - 19 > 45.74 / 20
    assert two.things[0].full_h - 19 == pytest.approx(alone_h[0], abs=1e-9)
