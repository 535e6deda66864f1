"""When a port is free for a thing, and whether plug and cable fit."""

from itertools import pairwise
from math import ceil
from typing import NamedTuple

from kitlog.budget.charging.bench import Slot, Stays
from kitlog.budget.charging.evening import Cable, Evening

Span = tuple[float, float]


class Fit(NamedTuple):
    """Whether a thing can hang on a port. limit: how many may at once on this kind of cable (None: no limit)."""

    fits: bool
    pair: frozenset[str] | None = None
    limit: int | None = None


def fit(slot: Slot, connector: str | None, cables: tuple[Cable, ...] | None) -> Fit:
    """A fixed cable wants the same connector; else a cable with both ends must be there. Not known is taken to fit."""
    if slot.connector is None or connector is None:
        return Fit(fits=True)
    if slot.fixed_cable:
        return Fit(fits=slot.connector == connector)
    if cables is None:
        return Fit(fits=True)
    pair = frozenset({slot.connector, connector})
    count = sum(cable.count for cable in cables if frozenset(cable.connectors) == pair)
    return Fit(fits=count > 0, pair=pair, limit=count)


def without(spans: list[Span], taken: Span) -> list[Span]:
    """What is left of some spans."""
    left = []
    for from_h, to_h in spans:
        if taken[1] <= from_h or taken[0] >= to_h:
            left.append((from_h, to_h))
            continue
        left += [part for part in ((from_h, taken[0]), (taken[1], to_h)) if part[0] < part[1]]
    return left


def crowded(stays: Stays, limit: int) -> list[Span]:
    """When `limit` or more of these stays go on at once."""
    edges = sorted({edge for stay in stays for edge in (stay.from_h, stay.to_h)})
    return [
        (low, high) for low, high in pairwise(edges) if sum(stay.from_h <= low < stay.to_h for stay in stays) >= limit
    ]


def next_swap_h(evening: Evening, at_h: float) -> float:
    """The first moment from at_h on at which hands may swap: a whole step, bedtime, or leaving."""
    step_h = evening.swap_step_min / 60.0
    if at_h <= evening.bed_h:
        return min(evening.bed_h, _on_step(evening.from_h, step_h, at_h))
    return min(evening.leave_h, max(evening.up_h, _on_step(evening.up_h, step_h, at_h)))


def _on_step(zero_h: float, step_h: float, at_h: float) -> float:
    # a hair over a step is still that step
    return zero_h + max(0, ceil((at_h - zero_h) / step_h - 1e-6)) * step_h


def swaps_between(evening: Evening, from_h: float, to_h: float) -> list[float]:
    """The moments of the evening at which a thing may be put on, from from_h to to_h or bedtime."""
    step_h = evening.swap_step_min / 60.0
    last_h = min(to_h, evening.bed_h)
    count = int((last_h - from_h) / step_h + 1e-6)
    moments = [next_swap_h(evening, from_h + index * step_h) for index in range(count + 1)]
    if evening.bed_h <= to_h:
        moments.append(evening.bed_h)
    return sorted({moment for moment in moments if from_h <= moment <= last_h})
