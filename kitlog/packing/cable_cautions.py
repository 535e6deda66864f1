"""Cautions about what joins banks and devices: a cable for each plug, a port for each cable."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from kitlog.budget.power.day import Plug
from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.assessment import PowerDay
from kitlog.packing.cables import Connector, Ends, Fit, Wanted, connectors, ends, fits
from kitlog.packing.caution_case import CautionCase, look_at


def cable_cautions(case: CautionCase) -> list[Finding]:
    """Whether there is a cable for each plug: missing, too few at a time, or not known; each device once."""
    items = {item.id: item for item in case.items}
    cables = [*cable_ends(case.items)]
    worst: dict[str, tuple[Fit, Plug]] = {}
    for _, plugs in case.phases():
        fit = fits([_wanted(plug, items) for plug in plugs], cables)
        for plug in plugs:
            held = worst.get(plug.device)
            if held is None or _BAD.index(fit[plug.device]) < _BAD.index(held[0]):
                worst[plug.device] = (fit[plug.device], plug)
    unknown = [device for device, (fit, _) in worst.items() if fit is Fit.NOT_KNOWN]
    bad = [_no_cable(fit, plug) for fit, plug in worst.values() if fit in {Fit.MISSING, Fit.TAKEN}]
    return [*bad, *_cables_not_known(unknown, items)]


_BAD = (Fit.MISSING, Fit.TAKEN, Fit.NOT_KNOWN, Fit.FITS)
"""Worst first."""


def cable_ends(items: Iterable[Item]) -> Iterator[Ends | None]:
    """The ends of each cable, piece by piece, read from its connector text or its name; None: not known."""
    for item in items:
        if item.kind is Kind.CABLE:
            text = item.battery.connector if item.battery else ""
            yield from (ends(text) or ends(item.name),) * item.quantity


def _wanted(plug: Plug, items: Mapping[str, Item]) -> Wanted:
    return Wanted(plug.device, plug.bank, _connectors(plug.bank, items), _connectors(plug.device, items))


def _connectors(name: str, items: Mapping[str, Item]) -> frozenset[Connector]:
    return item_connectors(items[name]) if name in items else frozenset()


def item_connectors(item: Item) -> frozenset[Connector]:
    """Ports of a bank or sockets of a device; empty: not known."""
    return frozenset(connectors(item.battery.connector)) if item.battery else frozenset()


def _no_cable(fit: Fit, plug: Plug) -> Finding:
    return look_at(
        code="power.cable_missing" if fit is Fit.MISSING else "power.cables_short",
        subject=plug.device,
        items=(plug.device, plug.bank),
        remedies=(Remedy("take_cable", (plug.device, plug.bank)),),
        phase=plug.phase,
        sure=Sure.ON_RECORD,
        source="kit",
    )


def _cables_not_known(devices: Sequence[str], items: Mapping[str, Item]) -> list[Finding]:
    if not devices:
        return []
    unnamed = tuple(i.id for i in items.values() if i.kind is Kind.CABLE and not any(cable_ends((i,))))
    return [
        Finding(
            code="power.cable_not_known",
            topic=Topic.POWER,
            state=State.NOT_KNOWN,
            sure=Sure.NOT_KNOWN,
            items=tuple(devices),
            source="kit",
            remedies=(Remedy("name_cable", unnamed) if unnamed else Remedy("enter_connector", (devices[0],)),),
        )
    ]


def port_cautions(power: PowerDay, items: Iterable[Item]) -> list[Finding]:
    """Banks on which more is to hang at a time than they have ports; one each, in the first phase in which it is so."""
    ports = {item.id: item.bank.ports if item.bank else None for item in items}
    hours = {phase.id: phase.hours for phase in power.planned.phases} if power.planned else {}
    found: dict[str, Finding] = {}
    for over in power.unplugged:
        if hours.get(over.phase, 0) > 0 and over.bank not in found:
            found[over.bank] = _too_few_ports(over, power, ports[over.bank])
    return list(found.values())


def _too_few_ports(over: Plug, power: PowerDay, ports: int | None) -> Finding:
    alike = [plug for plug in power.unplugged if (plug.bank, plug.phase) == (over.bank, over.phase)]
    kept = [p for p in (power.planned.plugs if power.planned else ()) if (p.bank, p.phase) == (over.bank, over.phase)]
    left_off = tuple(dict.fromkeys(plug.device for plug in alike))
    return look_at(
        code="power.ports_short",
        subject=over.bank,
        items=(over.bank, *left_off),
        facts={"ports": ports, "plugs": len(kept) + len(left_off)},
        remedies=() if ports is not None else (Remedy("enter_ports", (over.bank,)),),
        phase=over.phase,
        source="kit",
    )
