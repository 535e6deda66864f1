"""Reasons not to charge a thing, or to look at it first. Data, each with its source; the words are made elsewhere."""

from collections.abc import Iterator

from kitlog.budget.charging.bench import NEARLY, Bench
from kitlog.budget.charging.evening import FULL, Evening, Thing
from kitlog.budget.charging.places import Places
from kitlog.budget.charging.result import Caution
from kitlog.budget.power.plan import DevicePlan

LEAST_HEALTH = 0.80
OLD_MONTHS = 60
COLD_RATES = ((5.0, 0.1), (15.0, 0.2))
"""(under deg C, most W for each Wh of the cell): maker's page of a 2600 mAh pack, machineu.com."""

BAND = "charge 0 to 45 C: several cell specifications (ICR18650 among them)"
HEALTH = "80 % of the label after 800 cycles: EU 2023/1670, summary on EUR-Lex"
RATE = "0.1C at 0-5 C, 0.2C at 5-15 C: machineu.com, 2600 mAh pack"
PRACTICE = "common practice, no source"


def left_out(bench: Bench, places: Places, index: int) -> str | None:
    """Why a thing is not charged at all; None: it may be, or needs nothing because it is full."""
    thing, cell = bench.evening.things[index], bench.cells[index]
    if thing.swollen:
        return "swollen"
    if not cell.energy_wh:
        return "no_cell"
    return None if thing.start >= FULL - NEARLY else _barred(bench, places, index)


def _barred(bench: Bench, places: Places, index: int) -> str | None:
    thing, cell = bench.evening.things[index], bench.cells[index]
    reasons = (
        ("takes_no_charge", not thing.charge_max_W or not thing.charge_eff),
        ("too_cold", cell.temp_c[0] < thing.charge_min_C),
        ("too_warm", cell.temp_c[0] > thing.charge_max_C),
    )
    return next((reason for reason, holds in reasons if holds), None) or _without_port(bench, places, index)


def _without_port(bench: Bench, places: Places, index: int) -> str | None:
    ports = range(len(bench.slots))
    if any(places.fit(index, port).fits for port in ports):
        return "no_socket" if bench.evening.sockets == 0 else None
    lacks_cable = any(places.fit(index, port).pair is not None for port in ports)
    return "no_cable" if lacks_cable else "no_port"


def cautions(bench: Bench) -> tuple[Caution, ...]:
    """All of an evening, in the order of its things."""
    found = list(_of_place(bench.evening))
    for thing, cell in zip(bench.evening.things, bench.cells, strict=True):
        found += _of_cell(thing)
        found += _of_temperature(thing, cell, known=bench.evening.place_C is not None)
    return (*found, *_of_plugs(bench.evening))


def _of_place(evening: Evening) -> Iterator[Caution]:
    if evening.place_C is None:
        yield Caution("place_not_known_C", None, None, None, BAND)


def _of_cell(thing: Thing) -> Iterator[Caution]:
    if thing.swollen:
        yield Caution("swollen", thing.id, None, None, PRACTICE)
    if thing.health < LEAST_HEALTH:
        yield Caution("health", thing.id, thing.health, LEAST_HEALTH, HEALTH)
    if thing.age_months is not None and thing.age_months >= OLD_MONTHS:
        yield Caution("age_months", thing.id, thing.age_months, OLD_MONTHS, PRACTICE)
    if thing.start >= FULL:
        yield Caution("charged_full_already", thing.id, thing.start, FULL, PRACTICE)


def _of_temperature(thing: Thing, cell: DevicePlan, *, known: bool) -> Iterator[Caution]:
    temp_c = cell.temp_c[0]
    if temp_c < thing.charge_min_C:
        yield Caution("too_cold_C", thing.id, temp_c, thing.charge_min_C, BAND)
    elif temp_c > thing.charge_max_C:
        yield Caution("too_warm_C", thing.id, temp_c, thing.charge_max_C, BAND)
    elif known:
        share = next((share for under_c, share in COLD_RATES if temp_c < under_c), None)
        if share is not None and thing.charge_max_W * thing.charge_eff > share * cell.energy_wh:
            most_w = share * cell.energy_wh
            yield Caution("cold_rate_W", thing.id, thing.charge_max_W * thing.charge_eff, most_w, RATE)


def _of_plugs(evening: Evening) -> Iterator[Caution]:
    """A plug that is not known is taken to fit; where no plug at all is named, one caution says so."""
    ports = [port.connector for charger in evening.chargers for port in charger.ports]
    if not ports:
        return
    if not any(ports) and not any(thing.connector for thing in evening.things):
        yield Caution("connector_not_known", None, None, None, PRACTICE)
        return
    for thing in evening.things:
        if thing.connector is None or not any(ports):
            yield Caution("connector_not_known", thing.id, None, None, PRACTICE)
