"""The outing's electronics as days to simulate: items and phases in, low, likely and high case out."""

from collections.abc import Iterable, Mapping, Sequence

from kitlog.budget.power.day import Bank as BankIn
from kitlog.budget.power.day import Day, Device, Plug
from kitlog.budget.power.day import Phase as PhaseIn
from kitlog.budget.power.describe import DrawRange
from kitlog.budget.power.result import DayResult
from kitlog.budget.power.simulate import simulate
from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase, PlugPlan
from kitlog.packing.assessment import ListLine, PowerDay
from kitlog.packing.capacity import NO_CELL, energy_wh, has_cell, is_bank, is_swollen
from kitlog.packing.draws import phase_draw
from kitlog.packing.power_cells import bank_cell, device_cell

UNKNOWN_AIR_C = 0.0
"""Air temperature where the plan gives none: on the cautious side, and said."""

NO_PHASES = "no phases"
"""Why nothing was simulated: the plan has no durations."""

NO_DEVICES = "no devices"
"""Why nothing was simulated: nothing that goes along and can be reckoned with has a battery with its figures."""

ALWAYS_POWERED = frozenset({Kind.PHONE, Kind.RADIO, Kind.INSTRUMENT, Kind.TRACKER})
"""Kinds that run on a battery whether or not it has been described."""


_AFTER_FLIGHT = frozenset({PhaseWay.PACK_UP, PhaseWay.WALK_OUT, PhaseWay.RIDE_HOME, PhaseWay.NIGHT})


def power_day(outing: Outing, lines: Iterable[ListLine], library: Library) -> PowerDay:
    """Simulate the outing's day three times, low, likely and high in hours; what cannot be simulated is named.

    What has a swollen battery is not to be taken, so nothing is reckoned of it, nor of what is plugged into it.
    A device begins the day full unless the outing says otherwise: what is on hand now is asked on the evening before.

    Raises:
        InputFault: ``id.unknown`` or ``plug.twice``: the outing's plugs contradict themselves;
            ``draw.shares``: its shares of the ways of use do not add up.
    """
    along = [line.item for line in lines if not line.in_car]
    swollen = tuple(item.id for item in along if is_swollen(item))
    items = [item for item in along if item.id not in swollen]
    draws = {item.id: _draws(item, outing, library) for item in items if _has_draws(item)}
    unknown = tuple(item.id for item in items if _lacks_figures(item, draws))
    if not any(phase.likely_h > 0 for phase in outing.phases):
        return PowerDay(reason=NO_PHASES, unknown=unknown, swollen=swollen)
    known: dict[str, dict[str, DrawRange]] = {
        item.id: {phase: draw for phase, draw in draws[item.id].items() if draw is not None}
        for item in items
        if item.id in draws and item.id not in unknown and _takes_part(item, draws[item.id], outing)
    }
    devices = tuple(device_cell(item, known[item.id], outing, library) for item in items if item.id in known)
    banks = tuple(bank_cell(item, outing, library) for item in items if is_bank(item) and energy_wh(item) is not None)
    if not devices:
        return PowerDay(reason=NO_DEVICES, unknown=unknown, swollen=swollen)
    plugs, unplugged = within_ports(_plugs(outing, items, banks, devices), banks)
    low, likely, high = (
        Day(phases=_phases(outing.phases, case), devices=devices, banks=banks, plugs=plugs)
        for case in ("low_h", "likely_h", "high_h")
    )
    return PowerDay(
        low=_simulated(low, items),
        likely=_simulated(likely, items),
        high=_simulated(high, items),
        unknown=unknown,
        planned=likely,
        longest=high,
        draws=known,
        unplugged=unplugged,
        swollen=swollen,
    )


def _simulated(day: Day, items: Iterable[Item]) -> DayResult:
    """The day played through; what is refused of it is told with the names of the items."""
    try:
        return simulate(day)
    except InputFault as fault:
        names = {item.id: item.name for item in items}
        facts = {
            key: names.get(value, value) if isinstance(value, str) else value for key, value in fault.facts.items()
        }
        raise InputFault(fault.code, **facts) from None


def _phases(phases: Sequence[Phase], case: str) -> tuple[PhaseIn, ...]:
    return tuple(
        PhaseIn(
            id=phase.name,
            hours=getattr(phase, case),
            ambient_C=UNKNOWN_AIR_C if phase.air_c is None else phase.air_c,
        )
        for phase in phases
    )


Draws = Mapping[str, DrawRange | None]
"""Mean draw of one item by phase name; None: not known."""


def _has_port(item: Item) -> bool:
    return item.bank is None or item.bank.ports != 0


def _has_draws(item: Item) -> bool:
    return has_cell(item) and not is_bank(item) and item.battery is not None and bool(item.battery.ways)


def _draws(item: Item, outing: Outing, library: Library) -> Draws:
    return {phase.name: phase_draw(item, phase, outing, library) for phase in outing.phases}


def _lacks_figures(item: Item, draws: Mapping[str, Draws]) -> bool:
    """Whether a powered item cannot be reckoned with: no energy, no way of use, or one that is not known."""
    if item.kind in NO_CELL:
        return False
    if is_bank(item):
        return energy_wh(item) is None
    if item.battery is None:
        return item.kind in ALWAYS_POWERED
    return energy_wh(item) is None or item.id not in draws or None in draws[item.id].values()


def _takes_part(item: Item, draws: Draws, outing: Outing) -> bool:
    """Whether a device takes part in the day: it draws in some phase, or is plugged in."""
    plugged = any(plug.device == item.id for plug in outing.plugs or ())
    return plugged or any(draw is not None and draw.high_w > 0 for draw in draws.values())


def _plugs(
    outing: Outing, items: Sequence[Item], banks: Sequence[BankIn], devices: Sequence[Device]
) -> tuple[Plug, ...]:
    there = {device.id for device in devices}
    offered = {bank.id for bank in banks}
    plans = outing.plugs if outing.plugs is not None else default_plugs(outing, items)
    return tuple(
        Plug(
            phase=plug.phase,
            device=plug.device,
            bank=plug.bank,
            connect_below=None if plug.connect_below_pct is None else plug.connect_below_pct / 100,
            charge_to=plug.charge_to_pct / 100,
        )
        for plug in plans
        if plug.device in there and plug.bank in offered
    )


def within_ports(plugs: Iterable[Plug], banks: Iterable[BankIn]) -> tuple[tuple[Plug, ...], tuple[Plug, ...]]:
    """The plugs that find a port on their bank, in the order of the plan, and those that find none.

    A bank whose ports are not known has one.
    """
    ports = {bank.id: bank.ports for bank in banks}
    taken: dict[tuple[str, str], set[str]] = {}
    kept: list[Plug] = []
    over: list[Plug] = []
    for plug in plugs:
        there = taken.setdefault((plug.bank, plug.phase), set())
        fits = plug.device in there or len(there) < ports[plug.bank]
        (kept if fits else over).append(plug)
        if fits:
            there.add(plug.device)
    return tuple(kept), tuple(over)


def default_plugs(outing: Outing, items: Sequence[Item]) -> tuple[PlugPlan, ...]:
    """The phone on the first bank on the ground after the last flight; in flight only if the pilot says so.

    A bank serves the phone on the ground first; in flight only if the plug survives gloves (common practice).
    """
    sound = [item for item in items if not is_swollen(item)]
    bank = next((item for item in sound if is_bank(item) and energy_wh(item) is not None and _has_port(item)), None)
    phone = next((i for i in sound if i.kind is Kind.PHONE and i.battery and i.battery.charge_max_w), None)
    last = max((i for i, phase in enumerate(outing.phases) if phase.way is PhaseWay.FLIGHT), default=-1)
    if bank is None or phone is None:
        return ()
    return tuple(
        PlugPlan(phase=phase.name, device=phone.id, bank=bank.id)
        for phase in outing.phases[last + 1 :]
        if phase.way in _AFTER_FLIGHT
    )
