"""Nights with the cable or the plug that is missing: one change for each connector, to be planned anew."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from kitlog.budget.charging.evening import MOST_PORTS, Cable, Charger, Evening, Port, Thing
from kitlog.budget.charging.result import EveningResult


@dataclass(frozen=True, slots=True)
class Change:
    """An evening that differs in one thing from the one asked about; fields as in `result.Remedy`."""

    kind: str
    charger: str | None
    evening: Evening
    connectors: tuple[str, ...] = ()
    power_w: float | None = None
    sockets: int = 0


def plugs(evening: Evening, planned: EveningResult) -> Iterator[Change]:
    """One more cable of each kind that things wait for; a charger for each connector that no port has."""
    things = {thing.id: thing for thing in evening.things}
    waits = {each.thing: each.left_out for each in planned.things if not each.full}
    yield from _cables(evening, [things[name] for name, reason in waits.items() if reason in {None, "no_cable"}])
    yield from _chargers(evening, [things[name] for name, reason in waits.items() if reason == "no_port"])


def _cables(evening: Evening, waiting: list[Thing]) -> Iterator[Change]:
    """Of a kind that is there more are tried only where it is short: more things than cables."""
    if evening.cables is None:
        return
    users = Counter(thing.connector for thing in evening.things)
    sockets = dict.fromkeys(thing.connector for thing in waiting if thing.connector is not None)
    for port, socket in product(_loose(evening), sockets):
        count = sum(cable.count for cable in evening.cables if {*cable.connectors} == {port, socket})
        if count < users[socket]:
            cable = Cable(connectors=(port, socket))
            changed = evening.model_copy(update={"cables": (*evening.cables, cable)})
            yield Change("one_more_cable", None, changed, (port, socket))


def _loose(evening: Evening) -> list[str]:
    """The connectors of ports that take a cable, each once."""
    ports = [port for charger in evening.chargers for port in charger.ports if not port.fixed_cable]
    return list(dict.fromkeys(port.connector for port in ports if port.connector is not None))


def _chargers(evening: Evening, waiting: list[Thing]) -> Iterator[Change]:
    """As strong as the strongest of those that wait for this plug can use."""
    if sum(len(charger.ports) for charger in evening.chargers) >= MOST_PORTS:
        return
    for connector in dict.fromkeys(thing.connector for thing in waiting):
        power_w = max(thing.charge_max_W for thing in waiting if thing.connector == connector)
        port = Port(id="plug", limit_W=power_w, connector=connector, fixed_cable=connector is not None)
        charger = Charger(id=new_charger_name(evening, "charger"), ports=(port,))
        connectors = () if connector is None else (connector,)
        wanted = sockets_wanted(evening)
        yield Change("charger_with_plug", None, one_more_charger(evening, charger), connectors, power_w, wanted)


def one_more_charger(evening: Evening, charger: Charger) -> Evening:
    """In a socket of its own."""
    sockets = None if evening.sockets is None else evening.sockets + sockets_wanted(evening)
    return evening.model_copy(update={"chargers": (*evening.chargers, charger), "sockets": sockets})


def sockets_wanted(evening: Evening) -> int:
    """How many more sockets one more charger wants: none where one is left."""
    return int(evening.sockets is not None and evening.sockets <= len(evening.chargers))


def new_charger_name(evening: Evening, stem: str) -> str:
    """An id that no charger has."""
    return new_name(stem[:190], {charger.id for charger in evening.chargers})


def new_name(stem: str, taken: set[str]) -> str:
    """The stem with the first free number from 2 on."""
    return next(name for name in (f"{stem} {number}" for number in range(2, len(taken) + 3)) if name not in taken)
