"""What is wrong with single plugs of a plan: said of each device and phase, where the pilot enters them."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from kitlog.kit.item import Item
from kitlog.outing.outing import PlugPlan
from kitlog.packing.cable_cautions import cable_ends, item_connectors
from kitlog.packing.cables import Ends, Fit, Wanted, fits


class PlugTrouble(StrEnum):
    """What is wrong with a plug; the first two cannot be so, the others are worth a look."""

    PORTS = "more plugs than ports"
    ENDS_FIRST = "ends before it begins"
    PORTS_NOT_KNOWN = "ports not known"
    CABLE_MISSING = "no cable fits"
    CABLES_SHORT = "cables taken"
    CABLE_NOT_KNOWN = "cable not known"
    NOT_CHARGED = "not charged"


REFUSED = frozenset({PlugTrouble.PORTS, PlugTrouble.ENDS_FIRST})

_FITS = {
    Fit.MISSING: PlugTrouble.CABLE_MISSING,
    Fit.TAKEN: PlugTrouble.CABLES_SHORT,
    Fit.NOT_KNOWN: PlugTrouble.CABLE_NOT_KNOWN,
}


@dataclass(frozen=True, slots=True)
class PlugCheck:
    """One trouble of one plug; plugs, ports: how many there are on its bank in its phase, and how many it has."""

    plug: PlugPlan
    trouble: PlugTrouble
    plugs: int = 1
    ports: int | None = None


def plug_checks(plugs: Iterable[PlugPlan], along: Sequence[Item]) -> tuple[PlugCheck, ...]:
    """What is wrong with plugs between things that go along; the worst of each plug first.

    Plugs of what does not go along say nothing: they are not reckoned with.

    Args:
        plugs: of all phases.
        along: what goes along, cables too.
    """
    items = {item.id: item for item in along}
    there = [plug for plug in plugs if plug.device in items and plug.bank in items]
    phases: defaultdict[str, list[PlugPlan]] = defaultdict(list)
    for plug in there:
        phases[plug.phase].append(plug)
    cables = [*cable_ends(along)]
    found = [check for at_once in phases.values() for check in _of_phase(at_once, items, cables)]
    found += [PlugCheck(plug, trouble) for plug in there for trouble in _of_plug(plug, items[plug.device])]
    return tuple(sorted(found, key=lambda check: list(PlugTrouble).index(check.trouble)))


def _of_phase(
    plugs: Sequence[PlugPlan], items: Mapping[str, Item], cables: Sequence[Ends | None]
) -> Iterator[PlugCheck]:
    on_bank: defaultdict[str, set[str]] = defaultdict(set)
    for plug in plugs:
        on_bank[plug.bank].add(plug.device)
    wanted = {plug.device: _wanted(plug, items) for plug in plugs}
    fit = fits([*wanted.values()], cables)
    for plug in plugs:
        bank, count = items[plug.bank].bank, len(on_bank[plug.bank])
        ports = bank.ports if bank else None
        if ports is not None and count > ports:
            yield PlugCheck(plug, PlugTrouble.PORTS, count, ports)
        elif ports is None and count > 1:
            yield PlugCheck(plug, PlugTrouble.PORTS_NOT_KNOWN, count)
        if (trouble := _FITS.get(fit[plug.device])) is not None:
            yield PlugCheck(plug, trouble)


def _of_plug(plug: PlugPlan, device: Item) -> Iterator[PlugTrouble]:
    if plug.connect_below_pct is not None and plug.connect_below_pct >= plug.charge_to_pct:
        yield PlugTrouble.ENDS_FIRST
    if device.battery is None or not device.battery.charge_max_w:
        yield PlugTrouble.NOT_CHARGED


def _wanted(plug: PlugPlan, items: Mapping[str, Item]) -> Wanted:
    ports, sockets = (item_connectors(items[name]) for name in (plug.bank, plug.device))
    return Wanted(plug.device, plug.bank, ports, sockets)
