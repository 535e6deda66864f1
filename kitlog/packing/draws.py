"""What an item draws in a phase: its ways of use, the shares of the time, and what the figures rest on."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from kitlog.budget.power.checks import SHARES_TOLERANCE
from kitlog.budget.power.describe import (
    Basis,
    DrawRange,
    draw_from_current,
    draw_from_drop,
    draw_from_runtime,
    mean_draw,
)
from kitlog.fault import InputFault
from kitlog.kit.facets import Battery, WayOfUse
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase
from kitlog.packing.capacity import energy_wh

NOTHING = DrawRange(0.0, 0.0, 0.0, Basis.MEASURED)
"""Off: sure to draw nothing."""

OFF_WAY = "off"
"""What an outing may name besides an item's own ways of use: the share of a phase in which the item is off."""

Part = tuple[DrawRange, float]
WayShare = tuple[WayOfUse, float]

_BASES = {"measured": Basis.MEASURED, "maker": Basis.STATED}


def way_draw(way: WayOfUse, item: Item) -> DrawRange | None:
    """The draw of one way of use; None: hours or a drop were given, but the energy of the cell is not known.

    Raises:
        InputFault: ``draw.drop_too_small`` and the like: what was given cannot be a draw.
    """
    battery, cell_wh = item.battery or Battery(), energy_wh(item)
    health = 1.0 if battery.health_pct is None else battery.health_pct / 100
    described = way.described
    if described == "current":
        draw = draw_from_current(way.current_ma or 0.0, way.at_v or 1.0)
        return replace(draw, basis=Basis.MEASURED) if way.basis == "measured" else draw
    if described == "watts":
        return _stated(way)
    if not cell_wh or not health:
        return None
    if described == "hours":
        cutoff = (battery.cutoff_pct or 0.0) / 100
        return draw_from_runtime(way.lasts_h or 1.0, cell_wh, health=health, cutoff=cutoff)
    return draw_from_drop(way.from_pct or 0.0, way.to_pct or 0.0, way.over_h or 1.0, cell_wh, health=health)


def _stated(way: WayOfUse) -> DrawRange:
    likely_w = way.power_w or 0.0
    low_w = likely_w if way.low_w is None else way.low_w
    high_w = likely_w if way.high_w is None else way.high_w
    return DrawRange(low_w, likely_w, high_w, _BASES.get(way.basis, Basis.GUESSED))


def way_shares(item: Item, phase: Phase, outing: Outing, library: Library) -> tuple[list[WayShare], float] | None:
    """Ways of use in a phase with their shares of the time, and the share in which the item is off.

    By the outing's own shares, else the item's, else as usual for its kind. None: the outing names a way that the item
    has not, the item's own shares are more than all the time, or nobody said what it does (`left_open`). The outing's
    shares add up to 1, that of `OFF_WAY` included, or are all 0: off throughout. The item's own may leave a rest in
    which it is off. An item without shares is in its first way of use in the phases usual for its kind.
    """
    ways = item.battery.ways if item.battery else ()
    planned = [(use.way, use.share) for use in outing.uses if use.item == item.id and use.phase == phase.name]
    if planned:
        by_name = {way.name: way for way in ways}
        if not {name for name, _ in planned} <= by_name.keys() | {OFF_WAY}:
            return None
        off = sum(share for name, share in planned if name not in by_name)
        off = off if any(share for _, share in planned) else 1.0
        return [(by_name[name], share) for name, share in planned if name in by_name], off
    if left_open(item, phase, outing, library):
        return None
    if any(way.shares for way in ways):
        parts = [*_own_shares(ways, phase.way)]
        rest = 1.0 - sum(share for _, share in parts)
        return None if rest < -SHARES_TOLERANCE else (parts, max(rest, 0.0))
    used = bool(ways) and phase.way in library.facts(item.kind).used_in
    return ([(ways[0], 1.0)], 0.0) if used else ([], 1.0)


def left_open(item: Item, phase: Phase, outing: Outing, library: Library) -> bool:
    """Whether nobody said what an item with ways of use does in a phase in which things of its kind are in use.

    Off is said by a share: one of 0, or of `OFF_WAY` in the outing. A kind without usual phases is asked about flights;
    a beacon sleeps until it is needed.
    """
    ways = item.battery.ways if item.battery else ()
    if not ways or item.kind is Kind.BEACON or any((u.item, u.phase) == (item.id, phase.name) for u in outing.uses):
        return False
    used_in = library.facts(item.kind).used_in
    told = {share.during for way in ways for share in way.shares}
    return phase.way in (used_in or (PhaseWay.FLIGHT,)) and phase.way not in told and bool(told or not used_in)


def phase_draw(item: Item, phase: Phase, outing: Outing, library: Library) -> DrawRange | None:
    """Mean draw in a phase over the shares of `way_shares`; None: not known.

    Raises:
        InputFault: ``draw.shares`` with the names of item and phase.
    """
    shares = way_shares(item, phase, outing, library)
    return None if shares is None else _mean(shares[0], item, phase, shares[1])


def known_draw(way: WayOfUse, item: Item) -> DrawRange | None:
    """A description that cannot be a draw is refused where it is entered; in a day it is not known."""
    try:
        return way_draw(way, item)
    except InputFault:
        return None


def _own_shares(ways: Iterable[WayOfUse], moving: PhaseWay) -> Iterator[WayShare]:
    for way in ways:
        for share in way.shares:
            if share.during is moving:
                yield way, share.share


def _mean(parts: Iterable[WayShare], item: Item, phase: Phase, off: float) -> DrawRange | None:
    drawn: list[Part] = [(NOTHING, off)] if off > SHARES_TOLERANCE else []
    for way, share in parts:
        draw = known_draw(way, item)
        if draw is None:
            return None
        drawn.append((draw, share))
    try:
        return mean_draw(drawn, device=item.name, phase=phase.name)
    except InputFault as fault:
        raise InputFault(fault.code, **{**fault.facts, "item": item.id}) from None
