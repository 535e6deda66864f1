"""From what goes along and the whole kit to one evening of charging: things, chargers, cables, hours, priority.

What is not known is named, never filled in: a thing without its charging power is not planned, a charge on hand that
nobody has looked at is reckoned as empty, connectors and cables that are not on record are taken to fit and said.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from math import ceil, floor
from zoneinfo import ZoneInfo

from kitlog.budget.charging.evening import MOST_PORTS, MOST_THINGS, Cable, Charger, Port, Thing
from kitlog.budget.charging.evening import Evening as EveningIn
from kitlog.kit.facets import Battery
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.library import Library
from kitlog.outing.outing import Evening
from kitlog.packing.assessment import Assessment
from kitlog.packing.cable_cautions import cable_ends
from kitlog.packing.cables import Connector, Ends, connectors
from kitlog.packing.capacity import energy_wh, is_bank
from kitlog.packing.charging import charges
from kitlog.packing.on_hand import LASTS, OnHand, on_hand
from kitlog.packing.power_cells import health
from kitlog.packing.serving import serving

USUAL = Evening(from_at=time(19), bed_at=time(22, 30), up_at=time(6, 30), leave_at=time(7, 30))
"""Hours of an evening that has not been told; shown as assumed (common practice, no source)."""

Hours = tuple[float, float, float, float]
"""The four times of an evening on one axis."""

CALLS = "call for help"

_FIRST = (Kind.PHONE, Kind.TRACKER, Kind.POWER_BANK, Kind.RADIO, Kind.INSTRUMENT)
"""Order of charging where the pilot names none; of trackers and banks only those that call for help or feed what does.

A camera comes last: nothing depends on it.
"""


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of an item; number 0 where there is only one."""

    item: Item
    number: int = 0


@dataclass(frozen=True, slots=True)
class Note:
    """Something to know about the plan: a code, the items it is about, and a figure with its limit and source.

    Codes beside those of `kitlog.budget.charging.result.Caution`:
        charge_not_known: on hand; reckoned as empty.    power_not_known, energy_not_known: not planned.
        evening_assumed: the hours are the usual ones.   late_h: they began so many h ago, in whole quarters.
        no_charger; charger_not_described: it has no ports on record.    port_power_not_known: taken as without limit.
        cables_not_known: no cable, or not both ends of each, is on record; taken to be enough.
        too_many_things, too_many_ports: what is left out of the plan.
    """

    code: str
    items: tuple[str, ...] = ()
    value: float | None = None
    limit: float | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class AskedEvening:
    """One evening before it is planned.

    Attributes:
        day: the day on which it begins; times: its hours; assumed: whether they are the usual ones.
        evening: for the calculation; things, chargers: its ids -> the pieces of the kit.
        on_hand: charge on hand by item.
        not_planned: items whose charging power or energy is not known, or that are too many.
    """

    day: date
    times: Evening
    assumed: bool
    evening: EveningIn
    things: Mapping[str, Piece]
    chargers: Mapping[str, Piece]
    on_hand: Mapping[str, OnHand]
    not_planned: tuple[Item, ...]
    notes: tuple[Note, ...]


def asked_evening(assessment: Assessment, kit: Iterable[Item], library: Library) -> AskedEvening:
    """The evening before an outing.

    Args:
        assessment: what goes along, and the moment at which it is asked.
        kit: all that the pilot has: chargers and cables stay at home.
        library: what serves as what.
    """
    usable = [item for item in kit if item.usable]
    outing, now = assessment.outing, _on_site(assessment.now, assessment.outing.time_zone)
    day = outing.first_day - timedelta(days=1)
    hours = hours_of(outing.evening or USUAL)
    if outing.evening is None:
        hours = _from_now(hours, _hour(now, day))
    times = outing.evening or _times(hours)
    items = _in_order(assessment, library)
    no_power = [item for item in items if item.battery is None or item.battery.charge_max_w is None]
    no_energy = [item for item in items if item not in no_power and energy_wh(item) is None]
    known = [item for item in items if item not in no_power and item not in no_energy]
    things = _pieces([(item, _count(assessment, item)) for item in known])
    kept = dict(list(things.items())[:MOST_THINGS])
    over = tuple(dict.fromkeys(piece.item for name, piece in things.items() if name not in kept))
    chargers = _chargers(usable)
    plugged = dict(_within_ports(chargers))
    seen = {piece.item.id: _seen(piece.item, now, day, hours) for piece in kept.values()}
    ends = [*cable_ends(usable)]
    from_h, bed_h, up_h, leave_h = hours
    evening = EveningIn(
        chargers=tuple(_charger(name, piece.item) for name, piece in plugged.items()),
        things=(),
        cables=_cables(ends),
        sockets=times.sockets,
        from_h=from_h,
        bed_h=bed_h,
        up_h=up_h,
        leave_h=leave_h,
        place_C=times.place_c,
    )
    planned = tuple(_thing(name, piece.item, seen[piece.item.id], evening, day) for name, piece in kept.items())
    notes = (
        *_named("charge_not_known", [piece.item for piece in kept.values() if not seen[piece.item.id].known]),
        *_named("power_not_known", no_power),
        *_named("energy_not_known", no_energy),
        *_of_chargers(usable, chargers, plugged),
        *([Note("cables_not_known", tuple(_unnamed(usable)))] if evening.cables is None and plugged else []),
        *([Note("evening_assumed")] if outing.evening is None else []),
        *_late(_hour(now, day), from_h, bed_h),
        *_named("too_many_things", over, MOST_THINGS),
    )
    return AskedEvening(
        day=day,
        times=times,
        assumed=outing.evening is None,
        evening=evening.model_copy(update={"things": planned}),
        things=kept,
        chargers=plugged,
        on_hand=seen,
        not_planned=(*no_power, *no_energy, *over),
        notes=notes,
    )


def hours_of(times: Evening) -> Hours:
    """The four times on one axis through the night: what is not later than the time before is of the next day."""
    hours: list[float] = []
    for at in (times.from_at, times.bed_at, times.up_at, times.leave_at):
        hour = at.hour + at.minute / 60 + at.second / 3600
        while hours and hour < hours[-1]:
            hour += 24
        hours.append(hour)
    return hours[0], hours[1], hours[2], hours[3]


def months_old(item: Item, on: date) -> int | None:
    """Whole months since a thing was made, else bought; None: neither is on record, or it lies ahead."""
    since = item.made_on or item.bought_on
    if since is None or since > on:
        return None
    return (on.year - since.year) * 12 + on.month - since.month - (on.day < since.day)


def _in_order(assessment: Assessment, library: Library) -> list[Item]:
    """What goes along and has a battery, the pilot's own order first, then the usual one."""
    items = [charge.item for charge in charges(assessment)]
    first = assessment.outing.evening.priority if assessment.outing.evening else ()
    rank = {name: place for place, name in enumerate(first)}
    calling = frozenset(item.id for item in items if CALLS in serving(item, library).names)
    early = calling | _banks_of_callers(assessment, items, calling)
    return sorted(items, key=lambda item: (rank.get(item.id, len(rank)), _usual_rank(item, early)))


def _usual_rank(item: Item, early: frozenset[str]) -> int:
    kind = Kind.POWER_BANK if is_bank(item) else item.kind
    if kind is Kind.CAMERA:
        return len(_FIRST) + 1
    if kind not in _FIRST or (kind in {Kind.TRACKER, Kind.POWER_BANK} and item.id not in early):
        return len(_FIRST)
    return _FIRST.index(kind)


def _banks_of_callers(assessment: Assessment, items: Iterable[Item], calling: frozenset[str]) -> frozenset[str]:
    """Banks on which something hangs that can call for help; all banks where no day was simulated."""
    if assessment.power.planned is None:
        return frozenset(item.id for item in items if is_bank(item))
    return frozenset(plug.bank for plug in assessment.power.planned.plugs if plug.device in calling)


def _count(assessment: Assessment, item: Item) -> int:
    line = assessment.line(item.id)
    return line.n if line else 1


def _pieces(counted: Iterable[tuple[Item, int]]) -> dict[str, Piece]:
    """Pieces by an id of their own: that of the item, and for more than one a number behind it."""
    found: dict[str, Piece] = {}
    for item, count in counted:
        for number in range(1, count + 1):
            found[item.id if number == 1 else f"{item.id} {number}"] = Piece(item, number if count > 1 else 0)
    return found


def _chargers(items: Iterable[Item]) -> dict[str, Piece]:
    """Chargers with ports, the strongest first."""
    found = [item for item in items if item.charger and item.charger.ports]
    return _pieces((item, item.quantity) for item in sorted(found, key=lambda item: -_watts(item)))


def _watts(item: Item) -> float:
    ports = item.charger.ports if item.charger else ()
    total = sum(port.power_w or 0.0 for port in ports)
    return min(total, item.charger.total_w) if item.charger and item.charger.total_w is not None else total


def _within_ports(chargers: Mapping[str, Piece]) -> Iterator[tuple[str, Piece]]:
    """So many chargers as have no more ports together than can be planned."""
    used = 0
    for name, piece in chargers.items():
        ports = len(piece.item.charger.ports) if piece.item.charger else 0
        if used + ports <= MOST_PORTS:
            used += ports
            yield name, piece


def _charger(name: str, item: Item) -> Charger:
    assert item.charger is not None  # noqa: S101  # only those that have one come here
    ports = tuple(
        Port(
            id=str(number),
            limit_W=port.power_w,
            connector=next((one.value for one in connectors(port.connector)), None),
            fixed_cable=port.fixed_cable,
        )
        for number, port in enumerate(item.charger.ports, start=1)
    )
    return Charger(id=name, ports=ports, total_W=item.charger.total_w)


def _of_chargers(items: Iterable[Item], chargers: Mapping[str, Piece], plugged: Mapping[str, Piece]) -> Iterator[Note]:
    bare = [i for i in items if (i.kind is Kind.CHARGER or i.charger) and not (i.charger and i.charger.ports)]
    if not chargers:
        yield Note("charger_not_described", tuple(i.id for i in bare)) if bare else Note("no_charger")
    yield from _named("port_power_not_known", [piece.item for piece in plugged.values() if _power_is_open(piece.item)])
    yield from _named("too_many_ports", [p.item for name, p in chargers.items() if name not in plugged], MOST_PORTS)


def _power_is_open(item: Item) -> bool:
    charger = item.charger
    return charger is not None and charger.total_w is None and any(port.power_w is None for port in charger.ports)


def _cables(ends: Iterable[Ends | None]) -> tuple[Cable, ...] | None:
    """The cables of the kit; None where there is none, or one whose ends are not both known: taken to be enough."""
    found = list(ends)
    known = [cable for cable in found if cable is not None]
    if not found or len(known) < len(found):
        return None
    return tuple(Cable(connectors=(one.value, other.value)) for one, other in known)


def _unnamed(items: Iterable[Item]) -> Iterator[str]:
    return (i.id for i in items if i.kind is Kind.CABLE and None in (*cable_ends((i,)),))


def _thing(name: str, item: Item, seen: OnHand, evening: EveningIn, day: date) -> Thing:
    battery = item.battery or Battery()
    return Thing(
        id=name,
        cell_Wh=energy_wh(item),
        health=health(battery),
        start=seen.reckoned_pct / 100,
        charge_max_W=battery.charge_max_w or 0.0,
        connector=_socket(battery, evening),
        swollen=battery.swollen_on is not None,
        age_months=months_old(item, day),
    )


def _socket(battery: Battery, evening: EveningIn) -> str | None:
    """The socket through which it is charged: never USB-A, which gives only; of several, one that a port can reach."""
    found = [one.value for one in connectors(battery.connector) if one is not Connector.USB_A]
    ports = [port for charger in evening.chargers for port in charger.ports]
    fixed = {port.connector for port in ports if port.fixed_cable}
    pairs = {frozenset(cable.connectors) for cable in evening.cables or ()}
    reached = (one for one in found if one in fixed or any(frozenset({one, port.connector}) in pairs for port in ports))
    return next(reached, found[0] if found else None)


def _named(code: str, items: Iterable[Item], limit: float | None = None) -> Iterator[Note]:
    ids = tuple(dict.fromkeys(item.id for item in items))
    if ids:
        yield Note(code, ids, limit=limit)


def _on_site(now: datetime, zone: str | None) -> datetime:
    return now if zone is None else now.astimezone(ZoneInfo(zone))


def _hour(now: datetime, day: date) -> float:
    """A moment on the axis of the evening of that day."""
    return 24.0 * (now.date() - day).days + now.hour + now.minute / 60


def _from_now(hours: Hours, now_h: float) -> Hours:
    """Usual hours of which some are past begin at the next five minutes; those of another day stay as they are."""
    from_h, bed_h, up_h, leave_h = hours
    begin_h = ceil(12 * now_h - 1e-6) / 12
    if not from_h < begin_h < leave_h:
        return hours
    return begin_h, max(bed_h, begin_h), max(up_h, begin_h), leave_h


def _times(hours: Hours) -> Evening:
    at = [time(minutes // 60 % 24, minutes % 60) for minutes in (round(60 * hour) for hour in hours)]
    return Evening(from_at=at[0], bed_at=at[1], up_at=at[2], leave_at=at[3])


def _seen(item: Item, now: datetime, day: date, hours: Hours) -> OnHand:
    """The charge on hand; for an evening that is over, also what was seen in the day before it or while it ran."""
    seen = on_hand(item, now)
    if seen.known or seen.seen_at is None or _hour(now, day) <= hours[-1]:
        return seen
    seen_h = _hour(seen.seen_at.astimezone(now.tzinfo), day)
    return replace(seen, known=hours[0] - LASTS.total_seconds() / 3600 <= seen_h <= hours[-1])


def _late(now_h: float, from_h: float, bed_h: float) -> Iterator[Note]:
    """Where the plan begins before the present moment of the same evening."""
    since_h = floor(4 * (now_h - from_h)) / 4  # a plan does not change with each minute
    if 0 < since_h <= bed_h - from_h:
        yield Note("late_h", value=since_h)
