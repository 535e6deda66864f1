"""When a thing is full: by hand, against a general solver, and against the single-day simulation."""

import sys
from itertools import pairwise
from math import inf, log
from pathlib import Path

import pytest
from hypothesis import given, settings
from scipy.integrate import solve_ivp

from kitlog.budget.charging.bench import Bench, Stay
from kitlog.budget.charging.check_evening import check_evening
from kitlog.budget.charging.evening import FULL, Evening
from kitlog.budget.charging.tonight import charge_tonight
from kitlog.budget.power.day import Day
from kitlog.budget.power.simulate import simulate

sys.path.insert(0, str(Path(__file__).parent))  # importmode=importlib finds no neighbours
from evenings import evenings, planned, raw_evening, raw_thing


def test_a_phone_by_hand():
    """17.3 Wh from 37 % at 10 W, efficiency .9, knee .8: 9 W up to 80 %, then 1 - s falls with 9 / (.2 x 17.3) per h."""
    phone = raw_thing(cell_Wh=17.3, start=0.37, charge_max_W=10)
    straight_h = (0.80 - 0.37) * 17.3 / 9.0  # 0.8266
    tapering_h = log(0.2 / 0.005) * 0.2 * 17.3 / 9.0  # 1.4182
    result = planned(raw_evening([phone], 10))
    assert result.things[0].full_h == pytest.approx(19 + straight_h + tapering_h, abs=1e-9)
    assert straight_h + tapering_h == pytest.approx(2.2447, abs=1e-4)


def test_a_phone_on_a_weak_port_by_hand():
    """5 W: straight to the charge at which the phone itself takes no more than 5 W, 1 - 5 x .2 / 10 = 90 %."""
    phone = raw_thing(cell_Wh=17.3, start=0.37, charge_max_W=10)
    expected_h = (0.90 - 0.37) * 17.3 / 4.5 + log(0.1 / 0.005) * 0.2 * 17.3 / 9.0
    assert planned(raw_evening([phone], 5)).things[0].full_h == pytest.approx(19 + expected_h, abs=1e-9)


def solved(evening, result):
    """Charge at leaving by a general solver, from the published flow rules alone (power model, section 3)."""
    things = {thing.id: thing for thing in evening.things}
    limit_w = {(charger.id, port.id): port.limit_W or inf for charger in evening.chargers for port in charger.ports}
    total_w = {charger.id: inf if charger.total_W is None else charger.total_W for charger in evening.chargers}
    names = list(things)
    edges = sorted({edge for stay in result.stays for edge in (stay.from_h, stay.to_h)})

    def wanted(name, soc):
        thing = things[name]
        if soc >= 1:
            return 0.0
        taper = 1.0 if soc < thing.knee else (1 - soc) / (1 - thing.knee) if thing.knee < 1 else 1.0
        return thing.charge_max_W * taper

    def flow(_, socs, stays):
        rates = [0.0] * len(names)
        for charger, most_w in total_w.items():
            here = [stay for stay in stays if stay.charger == charger]
            asks = {s.thing: min(wanted(s.thing, socs[names.index(s.thing)]), limit_w[charger, s.port]) for s in here}
            for name, power_w in filled(asks, most_w).items():
                rates[names.index(name)] = (
                    power_w * things[name].charge_eff / (things[name].cell_Wh * things[name].health)
                )
        return rates

    socs = [thing.start for thing in evening.things]
    for low, high in pairwise(edges):
        stays = [stay for stay in result.stays if stay.from_h <= low < stay.to_h]
        solution = solve_ivp(flow, (low, high), socs, args=(stays,), rtol=1e-9, atol=1e-11, max_step=0.02)
        socs = list(solution.y[:, -1])
    return dict(zip(names, socs, strict=True))


def filled(asks, most_w):
    """Water-filling by halving the interval of the level."""
    if sum(asks.values()) <= most_w:
        return asks
    low, high = 0.0, most_w
    for _ in range(60):
        level = (low + high) / 2
        low, high = (level, high) if sum(min(ask, level) for ask in asks.values()) < most_w else (low, level)
    return {name: min(ask, low) for name, ask in asks.items()}


@settings(max_examples=25, deadline=None)
@given(evenings(most_things=4, most_ports=3).filter(lambda raw: all(thing["knee"] < 1 for thing in raw["things"])))
def test_every_charge_is_what_a_general_solver_finds(raw):
    evening = Evening.model_validate(raw)
    result = charge_tonight(evening)
    expected = solved(evening, result)
    for thing in result.things:
        assert thing.soc_at_leaving == pytest.approx(expected[thing.thing], abs=1e-6)


@settings(max_examples=100, deadline=None)
@given(evenings(most_things=1, most_ports=1))
def test_one_thing_on_one_port_is_a_day_on_a_wall_socket(raw):
    evening = Evening.model_validate(raw)
    thing, charger = evening.things[0], evening.chargers[0]
    hours = evening.leave_h - evening.from_h
    day = Day.model_validate({
        "phases": [{"id": "night", "hours": hours, "ambient_C": 20}],
        "devices": [thing.model_dump(exclude={"connector", "swollen", "age_months"})],
        "banks": [{"id": "wall", "cell_Wh": None, "eff": 1, "port_limit_W": charger.ports[0].limit_W, "total_limit_W": charger.total_W}],
        "plugs": [{"phase": "night", "device": thing.id, "bank": "wall"}],
    })  # fmt: skip
    bench = Bench(evening, check_evening(evening))
    stays = (Stay(0, 0, evening.from_h, evening.leave_h),) if hours else ()
    soc = simulate(day).devices[thing.id].soc_end
    assert bench.ending(stays, 0).soc == pytest.approx(soc, abs=1e-9)
    # the plan itself may take a full thing off the port; then the little above 99.5 % is missing
    assert min(charge_tonight(evening).things[0].soc_at_leaving, FULL) == pytest.approx(min(soc, FULL), abs=1e-9)


def test_when_it_is_full_is_when_its_course_crosses():
    evening = Evening.model_validate(raw_evening([raw_thing(), raw_thing("radio", start=0.1)], 10, 10, total_w=9))
    bench = Bench(evening, check_evening(evening))
    stays = (Stay(0, 0, 19.0, 31.0), Stay(1, 1, 19.5, 30.0))
    for thing in (0, 1):
        full_h = bench.ending(stays, thing).full_h
        until = tuple(stay._replace(to_h=min(stay.to_h, full_h)) for stay in stays)
        assert bench.ending(until, thing).soc == pytest.approx(FULL, abs=1e-9)
