"""Kits and outings of any sort, small: what a pilot could have typed, also where it makes no sense."""

from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from hypothesis import strategies as st
from scenario import LIBRARY

from kitlog.kit.facets import Bank, Battery, Garment, Harness, Reserve, Share, Vessel, WayOfUse, Wing
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind, Layer, MassSource, PhaseWay, Place, Zone
from kitlog.kit.service import CountsFrom, Event, Grounds, ServiceRecord, ServiceRule
from kitlog.outing.conditions import Condition, Demand
from kitlog.outing.outing import Outing, Role
from kitlog.outing.pilot import BodyMass, BodyRole, Pilot
from kitlog.packing.kit import History, Kit

NOW = datetime(2026, 5, 8, 18, 30, tzinfo=UTC)
FIRST = date(2026, 5, 9)

SERVED = [served.name for served in LIBRARY.served]
WORDS = [word for served in LIBRARY.served for word in served.words[:1]]
CHECKS = [check.id for check in LIBRARY.checks]
TYPES = [flight_type.name for flight_type in LIBRARY.flight_types]

maybe = st.none()
days = st.dates(date(2020, 1, 1), date(2027, 12, 31))
moments = st.timedeltas(timedelta(days=-3), timedelta(days=1)).map(lambda ago: NOW + ago)
loads = st.integers(0, 150_000)
percents = st.floats(0, 100)
watts = st.floats(0, 30)


def _pair(low: str, high: str) -> st.SearchStrategy[dict[str, int | None]]:
    both = st.tuples(loads, loads).map(lambda two: {low: min(two), high: max(two)})
    return both | st.fixed_dictionaries({low: maybe | loads}) | st.fixed_dictionaries({high: maybe | loads})


def wings() -> st.SearchStrategy[Wing]:
    return st.builds(
        lambda limits, trim: Wing(**limits, trim_kmh=trim), _pair("min_g", "max_g"), maybe | st.floats(20, 70)
    )


def batteries() -> st.SearchStrategy[Battery]:
    return st.builds(
        Battery,
        wh=maybe | st.floats(0, 100),
        mah=maybe,
        v=maybe,
        health_pct=maybe | percents,
        cutoff_pct=maybe | st.floats(0, 99),
        charge_max_w=maybe | watts,
        place=maybe | st.sampled_from(Place),
        offset_k=maybe | st.floats(-10, 30),
        fixed_c=maybe | st.floats(-20, 40),
        ways=st.lists(
            st.builds(
                WayOfUse,
                name=st.sampled_from(["on", "off", "low"]),
                power_w=watts,
                basis=st.sampled_from(["measured", "maker", "starter", "guess"]),
                shares=st.lists(st.builds(Share, during=st.sampled_from(PhaseWay), share=st.floats(0, 1)), max_size=2),
            ),
            max_size=2,
        ),
    )


FACETS: dict[str, st.SearchStrategy[Any]] = {
    "wing": wings(),
    "harness": st.builds(Harness, max_g=maybe | loads),
    "reserve": st.builds(lambda limits: Reserve(**limits), _pair("min_g", "max_g")),
    "battery": batteries(),
    "bank": st.builds(
        Bank,
        efficiency_pct=maybe | st.floats(1, 100),
        ports=maybe | st.integers(0, 3),
        port_w=maybe | watts,
        total_w=maybe | watts,
        min_w=maybe | st.floats(0, 1),
        off_s=maybe | st.floats(0, 120),
        quiescent_w=maybe | st.floats(0, 1),
    ),
    "garment": st.builds(
        Garment,
        clo=maybe | st.floats(0, 2),
        layer=maybe | st.sampled_from(Layer),
        part=st.sampled_from(["", "top", "legs", "hands", "feet"]),
    ),
    "vessel": st.builds(Vessel, capacity_ml=maybe | st.integers(0, 3_000)),
}


@st.composite
def items(draw: st.DrawFn, id_: str, others: tuple[str, ...] = ()) -> Item:
    """An item of that id, perhaps fitted to one of some others."""
    facets = draw(st.lists(st.sampled_from(sorted(FACETS)), max_size=2, unique=True))
    return Item(
        id=id_,
        name=draw(st.sampled_from(WORDS)) + f" {id_}",
        kind=draw(st.sampled_from(Kind)),
        quantity=draw(st.sampled_from([1, 1, 1, 0, 2, 6])),
        mass_g=draw(maybe | st.integers(0, 8_000)),
        mass_source=draw(st.sampled_from(MassSource)),
        zone=draw(maybe | st.sampled_from(Zone)),
        zone_on_foot=draw(maybe | st.sampled_from(Zone)),
        fitted_to=draw(maybe | st.sampled_from(others)) if others else None,
        serves=tuple(draw(st.lists(st.sampled_from(SERVED), max_size=2, unique=True))),
        state=draw(st.sampled_from([ItemState.IN_SERVICE] * 3 + list(ItemState))),
        first_used_on=draw(maybe | days),
        opening_h=draw(maybe | st.floats(0, 500)),
        opening_launches=draw(maybe | st.integers(0, 500)),
        **{name: draw(FACETS[name]) for name in facets},
    )


@st.composite
def rules(draw: st.DrawFn, id_: str, item_id: str) -> ServiceRule:
    months = draw(maybe | st.integers(1, 36))
    return ServiceRule(
        id=id_,
        item_id=item_id,
        rule=draw(st.sampled_from(["wing.full", "reserve.repack", "my own"])),
        months=months,
        recommended_months=draw(st.integers(1, months)) if months and draw(st.booleans()) else None,
        hours=draw(maybe | st.floats(1, 200)),
        launches=draw(maybe | st.integers(1, 300)),
        due_on=draw(maybe | days),
        events=("blow",),
        counts_from=draw(st.sampled_from(CountsFrom)),
        ground_handling=draw(st.booleans()),
        grounds=draw(st.sampled_from(Grounds)),
        applies=draw(st.sampled_from([True, True, False])),
    )


@st.composite
def seasons(draw: st.DrawFn, most: int = 12) -> tuple[Kit, History]:
    """A kit with its service book and log."""
    ids = tuple(f"i{n}" for n in range(draw(st.integers(0, most))))
    kit = tuple(draw(items(id_, ids[:n])) for n, id_ in enumerate(ids))
    book = tuple(draw(rules(f"r{id_}", id_)) for id_ in ids if draw(st.integers(0, 3)) == 0)
    records = tuple(
        ServiceRecord(id=f"d{rule.id}", item_id=rule.item_id, rules=(rule.id,), done_on=draw(days))
        for rule in book
        if draw(st.booleans())
    )
    events = tuple(
        Event(id=f"e{id_}", item_id=id_, on=draw(days), kind="blow") for id_ in ids if draw(st.integers(0, 5)) == 0
    )
    flights = tuple(
        Flight(id=f"f{id_}", on=draw(days), airtime_min=draw(st.floats(0, 600)), flown=(id_,))
        for id_ in ids
        if draw(st.integers(0, 4)) == 0
    )
    bodies = st.builds(BodyMass, taken_on=days, mass_g=st.integers(40_000, 120_000))
    pilot = st.builds(Pilot, id=st.just("p"), name=st.just("Ines"), masses=st.lists(bodies, max_size=2))
    passenger = pilot.map(lambda one: one.model_copy(update={"id": "q", "role": BodyRole.PASSENGER}))
    return (
        Kit(draw(maybe | pilot), kit, book, draw(maybe | passenger)),
        History(records, events, flights),
    )


@st.composite
def phases(draw: st.DrawFn) -> list[dict[str, Any]]:
    every = []
    for number in range(draw(st.integers(0, 4))):
        hours = sorted(draw(st.lists(st.sampled_from([0.0, 0.25, 1.0, 3.5, 8.0]), min_size=3, max_size=3)))
        every.append(
            {
                "name": f"phase {number}",
                "way": draw(st.sampled_from(PhaseWay)),
                **dict(zip(("low_h", "likely_h", "high_h"), hours, strict=True)),
                "air_c": draw(maybe | st.floats(-20, 35)),
            }
        )
    return every


@st.composite
def outings(draw: st.DrawFn, kit: Kit) -> Outing:
    """An outing with items of that kit."""
    ids = [item.id for item in kit.items]
    some = st.lists(st.sampled_from(ids), max_size=3, unique=True) if ids else st.just([])
    ways = draw(phases())
    banks = [item.id for item in kit.items if item.bank is not None]
    return Outing.model_validate(
        {
            "id": "o",
            "name": "somewhere",
            "flight_types": draw(st.lists(st.sampled_from(TYPES), min_size=1, max_size=3, unique=True)),
            "first_day": FIRST,
            "last_day": FIRST + timedelta(days=draw(st.sampled_from([0, 0, 1, 5]))),
            "starts_at": draw(maybe | st.times(time(5), time(20))),
            "time_zone": draw(maybe | st.sampled_from(["Europe/Rome", "Australia/Melbourne", "Atlantic/Reykjavik"])),
            "site": draw(st.sampled_from([{}, {"lat_deg": 47.0, "lon_deg": 12.0}, {"lat_deg": 80.0, "lon_deg": 0.0}])),
            "top_m": draw(maybe | st.floats(0, 5_000)),
            "phases": ways,
            "people": [
                {"name": f"person {role}", "role": role, "told_at": draw(maybe | moments)}
                for role in draw(st.lists(st.sampled_from(Role), max_size=3, unique=True))
            ],
            "conditions": draw(
                st.dictionaries(st.sampled_from([c.value for c in Condition]), st.booleans(), max_size=5)
            ),
            "demanded": draw(st.lists(st.sampled_from(Demand), max_size=2, unique=True)),
            "set": draw(
                st.fixed_dictionaries({}, optional={"wing": st.sampled_from(ids), "reserve": st.sampled_from(ids)})
            )
            if ids
            else {},
            "pinned": [
                {"item": name, "zone": draw(maybe | st.sampled_from(Zone)), "n": draw(maybe | st.integers(1, 3))}
                for name in draw(some)
            ],
            "left_out": draw(some),
            "own_lines": draw(st.sampled_from([[], ["a note"], [{"text": "lunch", "mass_g": 400}]])),
            "water_ml": draw(maybe | st.integers(0, 4_000)),
            "plugs": [
                {"phase": ways[0]["name"], "device": name, "bank": banks[0]}
                for name in draw(some)[:1]
                if ways and banks and draw(st.booleans())
            ]
            if draw(st.booleans())
            else None,
            "uses": [
                {"item": name, "phase": phase["name"], "way": draw(st.sampled_from(["on", "none"])), "share": 1.0}
                for name in draw(some)[:1]
                for phase in ways[:1]
            ],
            "answers": [
                {"check": check, "value": draw(st.sampled_from(["yes", "no", ""])), "at": draw(moments)}
                for check in draw(st.lists(st.sampled_from(CHECKS), max_size=3, unique=True))
            ],
        }
    )


@st.composite
def plans(draw: st.DrawFn, most: int = 12) -> tuple[Outing, Kit, History]:
    """An outing, the kit it is planned with, and what has been."""
    kit, history = draw(seasons(most))
    return draw(outings(kit)), kit, history
