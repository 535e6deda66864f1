"""The sensible candidates of a day: those that can reach a device in trouble at all.

Cheap ones first: what costs no grams and no device, then what weighs, then what is given up.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from functools import partial
from itertools import takewhile

from kitlog.budget.power.changes import edits
from kitlog.budget.power.changes.candidate import Candidate
from kitlog.budget.power.changes.given import SpareBank, ToHand
from kitlog.budget.power.cold import cell_temp_c, usable_share
from kitlog.budget.power.day import Bank, Cell, Day, Device, Modes

MOST_CANDIDATES = 29
"""No more are made: with the day as planned, and each in two cases, 60 runs are never passed."""


def candidates(
    day: Day, to_hand: ToHand, trouble: Collection[str] | None = None, sleepy: Collection[str] = ()
) -> tuple[Candidate, ...]:
    """The changes worth trying on a checked day, at most `MOST_CANDIDATES`.

    Args:
        day: the day as planned.
        to_hand: what could be changed.
        trouble: devices that are to be helped; None: all.
        sleepy: banks that do not stay awake: anything that can be charged may be put on them.
    """
    helped = [device for device in day.devices if trouble is None or device.id in trouble]
    near = _near(day, {device.id for device in helped})
    made = (
        *_started_full(day, near),
        *_used_otherwise(to_hand, near),
        *_warmer(day, to_hand, near),
        *_plugged_below(day, to_hand, near),
        *_plugged(day, to_hand, {device.id for device in helped}, sleepy),
        *_bank_instead(day, to_hand, near),
        *_bank_added(day, to_hand, helped),
        *_left_off(day, to_hand, near),
    )
    return made[:MOST_CANDIDATES]


def _near(day: Day, helped: Collection[str]) -> frozenset[str]:
    """Devices in trouble, the banks they hang on, and the devices that share these banks."""
    banks = {plug.bank for plug in day.plugs if plug.device in helped}
    sharing = {plug.device for plug in day.plugs if plug.bank in banks}
    return frozenset({*helped, *banks, *sharing})


def _cells(day: Day) -> tuple[Cell, ...]:
    return (*day.devices, *day.banks)


def _started_full(day: Day, near: Collection[str]) -> Iterator[Candidate]:
    for cell in _cells(day):
        if cell.id in near and cell.start < 1.0 and cell.label_wh:
            facts = {"start": cell.start}
            yield Candidate("start_full", (cell.id,), partial(edits.started_full, name=cell.id), facts)


def _used_otherwise(to_hand: ToHand, near: Collection[str]) -> Iterator[Candidate]:
    for use in to_hand.other_uses:
        if use.device in near:
            make = partial(edits.used_otherwise, device=use.device, draw_w=use.draw_W)
            yield Candidate(use.code, (use.device,), make, {"use": use.name, "phases": tuple(use.draw_W)})


def _warmer(day: Day, to_hand: ToHand, near: Collection[str]) -> Iterator[Candidate]:
    cells = {cell.id: cell for cell in _cells(day)}
    for place in to_hand.warmer_places:
        cell = cells.get(place.id)
        if cell is not None and place.id in near and _gains_by_warmth(cell, place.temp_offset_C, day):
            make = partial(edits.warmer, name=place.id, offset_c=place.temp_offset_C)
            facts = {"place": place.place, "by_k": place.temp_offset_C - cell.temp_offset_C}
            yield Candidate("carry_warmer", (place.id,), make, facts)


def _gains_by_warmth(cell: Cell, offset_c: float, day: Day) -> bool:
    """Whether warmth frees energy or lets a cell charge in some phase."""
    if cell.temp_fixed_C is not None or offset_c <= cell.temp_offset_C:
        return False
    table = cell.temp_table or day.temp_table
    coldest_c = min((cell_temp_c(cell, phase.ambient_C) for phase in day.phases if phase.hours > 0), default=0.0)
    frees = usable_share(table, coldest_c) < usable_share(table, coldest_c + offset_c - cell.temp_offset_C)
    return frees or (isinstance(cell, Device) and coldest_c < cell.charge_min_C)


def _plugged_below(day: Day, to_hand: ToHand, near: Collection[str]) -> Iterator[Candidate]:
    at_once = {plug.device for plug in day.plugs if plug.connect_below is None}
    for device in day.devices:
        if to_hand.plug_below is not None and device.id in near and device.id in at_once:
            make = partial(edits.plugged_below, device=device.id, below=to_hand.plug_below)
            yield Candidate("plug_below", (device.id,), make, {"below": to_hand.plug_below})


def _plugged(day: Day, to_hand: ToHand, helped: Collection[str], sleepy: Collection[str]) -> Iterator[Candidate]:
    for device in day.devices:
        for bank in day.banks:
            wanted = device.id in helped or bank.id in sleepy
            phases = _free_phases(day, to_hand, device, bank) if wanted else ()
            if device.charge_max_W > 0 and phases:
                make = partial(edits.plugged, device=device.id, bank=bank.id, phases=phases)
                facts = {"phases": phases}
                yield Candidate("plug_too", (device.id, bank.id), make, facts, to_hand.cable_g.get(device.id))


def _free_phases(day: Day, to_hand: ToHand, device: Device, bank: Bank) -> tuple[str, ...]:
    """Phases with a duration in which the bank has a free port, the device hangs on none, and plugging can be done.

    Not those before the first use of a device that starts full: it would let the bank fall asleep.
    """
    idle = _idle_before_use(day, device)
    used = Counter(plug.phase for plug in day.plugs if plug.bank == bank.id)
    taken = {plug.phase for plug in day.plugs if plug.device == device.id}
    return tuple(
        phase.id
        for phase in day.phases
        if phase.hours > 0
        and used[phase.id] < bank.ports
        and phase.id not in taken
        and phase.id not in idle
        and _can_be_plugged(phase.id, to_hand, device.id, bank.id)
    )


def _idle_before_use(day: Day, device: Device) -> frozenset[str]:
    if device.start < 1.0:
        return frozenset()
    idle = takewhile(lambda phase: not _load_w(device, phase.id), day.phases)
    return frozenset(phase.id for phase in idle)


def _load_w(device: Device, phase: str) -> float:
    draw = device.draw_W.get(phase, 0.0)
    return draw.mean_w if isinstance(draw, Modes) else draw


def _can_be_plugged(phase: str, to_hand: ToHand, *ids: str) -> bool:
    reached = (phase in to_hand.also_plugged.get(name, ()) for name in ids)
    return to_hand.plug_phases is None or phase in to_hand.plug_phases or any(reached)


def _spare(day: Day, to_hand: ToHand) -> list[SpareBank]:
    there = {cell.id for cell in _cells(day)}
    return [spare for spare in to_hand.spare_banks if spare.bank.id not in there]


def _bank_instead(day: Day, to_hand: ToHand, near: Collection[str]) -> Iterator[Candidate]:
    for old in day.banks:
        most = max(Counter(plug.phase for plug in day.plugs if plug.bank == old.id).values(), default=0)
        for spare in _spare(day, to_hand):
            if old.id in near and spare.bank.ports >= most:
                old_g = to_hand.mass_g.get(old.id)
                mass_g = None if spare.mass_g is None or old_g is None else spare.mass_g - old_g
                make = partial(edits.bank_instead, old=old.id, bank=spare.bank)
                yield Candidate("bank_instead", (old.id, spare.bank.id), make, {}, mass_g)


def _bank_added(day: Day, to_hand: ToHand, helped: Iterable[Device]) -> Iterator[Candidate]:
    """A bank alone does nothing: one device in trouble hangs on it wherever it hangs on none yet."""
    for device in helped:
        for spare in _spare(day, to_hand):
            phases = _free_phases(day, to_hand, device, spare.bank)
            if device.charge_max_W > 0 and phases:
                cable_g = to_hand.cable_g.get(device.id)
                mass_g = None if spare.mass_g is None or cable_g is None else spare.mass_g + cable_g
                make = partial(_with_bank, bank=spare.bank, device=device.id, phases=phases)
                yield Candidate("add_bank", (device.id, spare.bank.id), make, {"phases": phases}, mass_g)


def _with_bank(day: Day, bank: Bank, device: str, phases: Collection[str]) -> Day:
    return edits.plugged(edits.bank_added(day, bank), device, bank.id, phases)


def _left_off(day: Day, to_hand: ToHand, near: Collection[str]) -> Iterator[Candidate]:
    for device in day.devices:
        if device.id in to_hand.may_be_off and device.id in near and device.draw_W:
            make = partial(edits.left_off, device=device.id)
            yield Candidate("leave_off", (device.id,), make, gives_up=frozenset({device.id}))
