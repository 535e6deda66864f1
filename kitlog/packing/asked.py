"""What an outing asks of the kit: needs of every flight, of its types and conditions, merged; the strongest wins."""

from collections.abc import Iterable
from typing import TypeVar

from kitlog.outing.conditions import Condition
from kitlog.outing.library import Library
from kitlog.outing.needs import FlightType, Need
from kitlog.packing.assessment import Asked, Truth

T = TypeVar("T", int, float)

EVERY_FLIGHT = "every flight"


def asked(library: Library, types: Iterable[FlightType], truths: Iterable[Truth]) -> tuple[Asked, ...]:
    """All needs of the outing, strongest first, otherwise in the order of the library.

    A need that several ask for is one need: the strongest strength, the largest amounts, what meets it from the one
    that asks most strongly.
    """
    holding = frozenset(truth.condition for truth in truths if truth.holds)
    merged: dict[str, Asked] = {}
    for by, need in _every(library, types):
        one = _as_asked(need, by, holding)
        if one is not None:
            merged[need.id] = _stronger(merged[need.id], one) if need.id in merged else one
    return tuple(sorted(merged.values(), key=lambda a: a.strength.rank))


def _every(library: Library, types: Iterable[FlightType]) -> list[tuple[str, Need]]:
    base = [(EVERY_FLIGHT, need) for need in library.base]
    of_types = [(flight_type.name, need) for flight_type in types for need in flight_type.needs]
    return base + of_types + [("", need) for need in library.overlays]


def _as_asked(need: Need, by: str, holding: frozenset[Condition]) -> Asked | None:
    cause = next((condition for condition in need.only_when if condition in holding), None)
    if need.only_when and cause is None:
        return None
    strength, raised_by = need.strength, None
    for step in need.raised:
        condition = next((c for c in step.when if c in holding), None)
        if condition is not None and step.to.rank < strength.rank:
            strength, raised_by = step.to, condition
    names = tuple(name for name in (by, cause.value if cause else "") if name)
    return Asked(need, strength, names, raised_by or (cause if not by else None))


def _stronger(one: Asked, other: Asked) -> Asked:
    lead = other if other.strength.rank <= one.strength.rank else one
    need = lead.need.model_copy(
        update={
            "amount": max(one.need.amount, other.need.amount),
            "most": _largest(one.need.most, other.need.most),
            "water_ml": _largest(one.need.water_ml, other.need.water_ml),
            "charge_pct": _largest(one.need.charge_pct, other.need.charge_pct),
        }
    )
    by = tuple(dict.fromkeys(one.by + other.by))
    return Asked(need, lead.strength, by, lead.raised_by)


def _largest(one: T | None, other: T | None) -> T | None:
    return max((figure for figure in (one, other) if figure is not None), default=None)
