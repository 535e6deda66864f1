"""A journey by air: which batteries may fly, how many, and where.

Energies are those of the label, without health: the rules go by what is printed. Limits are inclusive.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.item import Item
from kitlog.outing.air_rules import AirRules
from kitlog.packing.assessment import ListLine
from kitlog.packing.capacity import energy_wh as label_wh
from kitlog.packing.capacity import has_cell, is_bank
from kitlog.packing.power_day import ALWAYS_POWERED


@dataclass(frozen=True, slots=True)
class _Sorted:
    """What flies, by what it is to the rules."""

    banks: tuple[Item, ...]
    spares: tuple[Item, ...]
    devices: tuple[Item, ...]


def flying_items(lines: Iterable[ListLine]) -> tuple[Item, ...]:
    """What goes along on a journey by air, in so many pieces as go; what waits in a car does not fly."""
    return tuple(line.item.model_copy(update={"quantity": line.n}) for line in lines if not line.in_car)


def air_findings(items: Iterable[Item], rules: AirRules, on: date) -> list[Finding]:
    """What the rules say of the batteries that go along on a journey by air on a day; nothing where there are none."""
    flying = _sorted(items)
    loose = (*flying.banks, *flying.spares)
    found = [
        finding
        for item in (*loose, *flying.devices)
        if (finding := _by_energy(item, rules, loose=item in loose)) is not None
    ]
    return [*found, *_counts(flying, rules, on), *_in_the_cabin(loose, rules, on)]


def _sorted(items: Iterable[Item]) -> _Sorted:
    powered = [item for item in items if item.quantity > 0 and _is_powered(item)]
    banks = tuple(item for item in powered if is_bank(item))
    spares = tuple(item for item in powered if not is_bank(item) and is_spare(item))
    known = {item.id for item in (*banks, *spares)}
    return _Sorted(banks, spares, tuple(item for item in powered if item.id not in known))


def _is_powered(item: Item) -> bool:
    return has_cell(item) or item.kind in ALWAYS_POWERED


def is_spare(item: Item) -> bool:
    """Whether it is a battery by itself: it has energy, and nothing in it draws any.

    A device whose draw is not on record looks the same; counting it as a spare is the stricter side.
    """
    battery = item.battery
    if battery is None or item.kind in ALWAYS_POWERED:
        return False
    return label_wh(item) is not None and all(way.described == "watts" and not way.power_w for way in battery.ways)


def _by_energy(item: Item, rules: AirRules, *, loose: bool) -> Finding | None:
    energy_wh = label_wh(item)
    if energy_wh is None:
        return _finding("power.air_not_known", item, rules, None, None, Remedy("enter_battery", (item.id,)))
    if energy_wh > rules.approval_wh:
        margin_wh = rules.approval_wh - energy_wh
        return _finding("power.air_forbidden", item, rules, energy_wh, margin_wh, Remedy("leave_at_home", (item.id,)))
    if energy_wh > rules.free_wh:
        margin_wh = rules.free_wh - energy_wh
        return _finding("power.air_approval", item, rules, energy_wh, margin_wh, Remedy("ask_airline", (item.id,)))
    if not loose:
        return None
    return _finding("power.air_allowed", item, rules, energy_wh, rules.free_wh - energy_wh)


_STATES = {"power.air_not_known": State.NOT_KNOWN, "power.air_allowed": State.FINE}


def _finding(
    code: str, item: Item, rules: AirRules, energy_wh: float | None, margin_wh: float | None, *remedies: Remedy
) -> Finding:
    return Finding(
        code=code,
        topic=Topic.POWER,
        state=_STATES.get(code, State.LOOK),
        subject=item.id,
        figure=energy_wh,
        unit="Wh",
        margin=margin_wh,
        sure=Sure.NOT_KNOWN if energy_wh is None else Sure.MAKER,
        items=(item.id,),
        source=rules.source,
        facts={"free_wh": rules.free_wh, "approval_wh": rules.approval_wh, "edition": rules.edition},
        remedies=remedies,
    )


def _counts(flying: _Sorted, rules: AirRules, on: date) -> list[Finding]:
    banks_apart = on >= rules.banks_from
    spares = flying.spares if banks_apart else (*flying.banks, *flying.spares)
    asking = [item for item in (*flying.banks, *flying.spares) if _needs_approval(item, rules)]
    rows = [
        ("spare", spares, rules.most_spares, rules.source),
        ("device", flying.devices, rules.most_devices, rules.source),
        ("with approval", tuple(asking), rules.most_with_approval, rules.source),
    ]
    if banks_apart:
        rows.append(("bank", flying.banks, rules.most_banks, rules.banks_source))
    return [
        _too_many(what, counted, most, source, rules) for what, counted, most, source in rows if _pieces(counted) > most
    ]


def _needs_approval(item: Item, rules: AirRules) -> bool:
    energy_wh = label_wh(item)
    return energy_wh is not None and rules.free_wh < energy_wh <= rules.approval_wh


def _pieces(items: Iterable[Item]) -> int:
    return sum(item.quantity for item in items)


def _too_many(what: str, counted: tuple[Item, ...], most: int, source: str, rules: AirRules) -> Finding:
    pieces = _pieces(counted)
    return Finding(
        code="power.air_too_many",
        topic=Topic.POWER,
        state=State.LOOK,
        subject=what,
        figure=float(pieces),
        margin=float(most - pieces),
        items=tuple(item.id for item in counted),
        source=source,
        facts={"what": what, "most": most, "edition": rules.edition, "banks_from": rules.banks_from},
        remedies=tuple(Remedy("leave_at_home", (item.id,)) for item in counted[-1:]),
    )


def _in_the_cabin(loose: tuple[Item, ...], rules: AirRules, on: date) -> list[Finding]:
    """Where banks and spares must travel, and all the limits: nobody has said where they are packed for the journey."""
    if not loose:
        return []
    facts = {
        **rules.model_dump(exclude={"source"}),
        "banks_apart": on >= rules.banks_from,
        "banks": any(is_bank(item) for item in loose),
    }
    return [
        Finding(
            code="power.air_cabin",
            topic=Topic.POWER,
            state=State.LOOK,
            items=tuple(item.id for item in loose),
            source=rules.source,
            facts=facts,
        )
    ]
