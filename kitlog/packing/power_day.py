"""The outing's electronics as days to simulate: items and phases in, low, likely and high case out."""

from collections.abc import Iterable, Sequence

from kitlog.budget.power.day import Bank as BankIn
from kitlog.budget.power.day import Day, Device, Plug
from kitlog.budget.power.day import Phase as PhaseIn
from kitlog.budget.power.result import DayResult
from kitlog.budget.power.simulate import simulate
from kitlog.fault import InputFault
from kitlog.kit.facets import Battery
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase, PlugPlan
from kitlog.packing.assessment import ListLine, PowerDay

DEVICE_CUTOFF_PCT = 5.0
"""Charge at which a device switches itself off where its own is not known (common practice, no source)."""

BANK_QUIESCENT_W = 0.05
"""What a bank that is on uses itself where its own figure is not known (common practice, no source)."""

UNKNOWN_AIR_C = 0.0
"""Air temperature where the plan gives none: on the cautious side, and said."""

NO_PHASES = "no phases"
"""Why nothing was simulated: the plan has no durations."""

ALWAYS_POWERED = frozenset({Kind.PHONE, Kind.RADIO, Kind.INSTRUMENT, Kind.TRACKER})
"""Kinds that run on a battery whether or not it has been described."""

_AFTER_FLIGHT = frozenset({PhaseWay.PACK_UP, PhaseWay.WALK_OUT, PhaseWay.RIDE_HOME, PhaseWay.NIGHT})


def power_day(outing: Outing, lines: Iterable[ListLine], library: Library) -> PowerDay:
    """Simulate the outing's day three times; what cannot be simulated is named.

    Every device starts full: what is on hand now is asked on the evening before, not here.

    Raises:
        InputFault: ``id.unknown``, ``plug.ports`` or ``plug.twice``: the outing's plugs contradict themselves.
    """
    items = [line.item for line in lines if not line.in_car]
    unknown = tuple(item.id for item in items if _lacks_figures(item, outing))
    if not any(phase.likely_h > 0 for phase in outing.phases):
        return PowerDay(reason=NO_PHASES, unknown=unknown)
    devices = tuple(_device(item, outing, library) for item in items if _draws(item, outing, library))
    banks = tuple(_bank(item, library) for item in items if _is_bank(item) and _energy(item) is not None)
    if not devices:
        return PowerDay(reason="no devices", unknown=unknown)
    plugs = _plugs(outing, items, banks, devices)
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


def _is_bank(item: Item) -> bool:
    return item.kind is Kind.POWER_BANK or item.bank is not None


def _has_port(item: Item) -> bool:
    return item.bank is None or item.bank.ports != 0


def _energy(item: Item) -> float | None:
    return item.battery.energy_wh if item.battery else None


def _lacks_figures(item: Item, outing: Outing) -> bool:
    """Whether a powered item cannot be reckoned with: no energy, no way of use, or one that it does not have."""
    if _is_bank(item):
        return _energy(item) is None
    if item.battery is None:
        return item.kind in ALWAYS_POWERED
    ways = {way.name for way in item.battery.ways}
    asked = {use.way for use in outing.uses if use.item == item.id}
    return item.battery.energy_wh is None or not ways or not asked <= ways


def _draws(item: Item, outing: Outing, library: Library) -> bool:
    """Whether a device takes part in the day: it draws in some phase, or is plugged in."""
    plugged = any(plug.device == item.id for plug in outing.plugs or ())
    if _is_bank(item) or item.battery is None or _lacks_figures(item, outing):
        return False
    return plugged or any(draw_w(item, phase, outing, library) > 0 for phase in outing.phases)


def _device(item: Item, outing: Outing, library: Library) -> Device:
    battery = item.battery or Battery()
    cutoff = DEVICE_CUTOFF_PCT if battery.cutoff_pct is None else battery.cutoff_pct
    return Device(
        id=item.id,
        cell_Wh=battery.energy_wh,
        health=_health(battery),
        cutoff=cutoff / 100,
        temp_offset_C=_offset_k(item, battery, library),
        temp_fixed_C=battery.fixed_c,
        draw_W={phase.name: draw_w(item, phase, outing, library) for phase in outing.phases},
        charge_max_W=battery.charge_max_w or 0.0,
    )


def _health(battery: Battery) -> float:
    return 1.0 if battery.health_pct is None else battery.health_pct / 100


def _offset_k(item: Item, battery: Battery, library: Library) -> float:
    """What a device is warmer than the air by: its own figure, its place, its kind's usual place, else nothing."""
    if battery.offset_k is not None:
        return battery.offset_k
    place = battery.place or library.facts(item.kind).place
    return library.place(place).offset_k if place else 0.0


def draw_w(item: Item, phase: Phase, outing: Outing, library: Library) -> float:
    """Mean draw in W of an item in a phase: by the outing's own shares, else the item's, else as usual for its kind.

    An item with one way of use and no shares draws in the phases usual for its kind.
    """
    ways = item.battery.ways if item.battery else ()
    own = [use for use in outing.uses if use.item == item.id and use.phase == phase.name]
    if own:
        watts = {way.name: way.power_w for way in ways}
        return sum(watts.get(use.way, 0.0) * use.share for use in own)
    if any(way.shares for way in ways):
        return sum(way.power_w * share.share for way in ways for share in way.shares if share.during is phase.way)
    return ways[0].power_w if ways and phase.way in library.facts(item.kind).used_in else 0.0


def _bank(item: Item, library: Library) -> BankIn:
    battery, bank = item.battery or Battery(), item.bank
    return BankIn(
        id=item.id,
        cell_Wh=battery.energy_wh,
        health=_health(battery),
        cutoff=(battery.cutoff_pct or 0.0) / 100,
        temp_offset_C=_offset_k(item, battery, library),
        temp_fixed_C=battery.fixed_c,
        eff=bank.efficiency_pct / 100 if bank and bank.efficiency_pct else 0.85,
        ports=bank.ports if bank and bank.ports is not None else 1,
        port_limit_W=bank.port_w if bank else None,
        total_limit_W=bank.total_w if bank else None,
        quiescent_W=bank.quiescent_w if bank and bank.quiescent_w is not None else BANK_QUIESCENT_W,
        min_out_W=bank.min_w if bank and bank.min_w is not None else 0.0,
        auto_off_s=bank.off_s if bank and bank.off_s is not None else 30.0,
    )


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


def default_plugs(outing: Outing, items: Sequence[Item]) -> tuple[PlugPlan, ...]:
    """The phone on the first bank on the ground after the last flight; in flight only if the pilot says so.

    A bank serves the phone on the ground first; in flight only if the plug survives gloves (common practice).
    """
    bank = next((item for item in items if _is_bank(item) and _energy(item) is not None and _has_port(item)), None)
    phone = next((i for i in items if i.kind is Kind.PHONE and i.battery and i.battery.charge_max_w), None)
    last = max((i for i, phase in enumerate(outing.phases) if phase.way is PhaseWay.FLIGHT), default=-1)
    if bank is None or phone is None:
        return ()
    return tuple(
        PlugPlan(phase=phase.name, device=phone.id, bank=bank.id)
        for phase in outing.phases[last + 1 :]
        if phase.way in _AFTER_FLIGHT
    )
