"""What one field of an evening cannot show alone: refused before anything is computed.

Codes and facts, beside those of the form and of cells in `kitlog.budget.power.checks` (cell.missing, cell.two_figures,
cell.half, charge_band.reversed, id.repeated with part device, charger, port or priority, id.unknown with part device):
    evening.hours_reversed: field, value, other, limit.  from_h, bed_h, up_h, leave_h do not rise.
    evening.too_many_ports: value, limit.
"""

from collections import Counter
from collections.abc import Iterable
from itertools import pairwise

from kitlog.budget.charging.evening import MOST_PORTS, Evening, Thing
from kitlog.budget.power.checks import check_day, refuse_unknown
from kitlog.budget.power.day import Day, Device, Phase
from kitlog.fault import InputFault

PLACE_NOT_KNOWN_C = 20.0
"""A place of unknown temperature is taken for a heated room, and a caution says so."""


def check_evening(evening: Evening) -> Day:
    """Refuse an evening that contradicts itself.

    Returns:
        The same things as devices of a day of the power budget.

    Raises:
        InputFault: the codes of this module's docstring.
    """
    day = as_day(evening)
    check_day(day)
    _check_repeats("charger", (charger.id for charger in evening.chargers))
    for charger in evening.chargers:
        _check_repeats("port", (port.id for port in charger.ports), within=charger.id)
    _check_repeats("priority", evening.priority)
    known = {thing.id for thing in evening.things}
    for name in evening.priority:
        if name not in known:
            refuse_unknown(name, "device", "priority")
    ports = sum(len(charger.ports) for charger in evening.chargers)
    if ports > MOST_PORTS:
        raise InputFault("evening.too_many_ports", value=ports, limit=MOST_PORTS)
    _check_hours(evening)
    return day


def as_day(evening: Evening) -> Day:
    """The things of an evening, in their place, as devices that draw nothing."""
    place_c = PLACE_NOT_KNOWN_C if evening.place_C is None else evening.place_C
    return Day(
        phases=(Phase(id="night", hours=evening.leave_h, ambient_C=place_c),),
        devices=tuple(_device(thing) for thing in evening.things),
    )


def _device(thing: Thing) -> Device:
    shared = thing.model_dump(exclude={"connector", "swollen", "age_months"})
    return Device(**shared)


def _check_repeats(part: str, names: Iterable[str], **where: str) -> None:
    for name, count in Counter(names).items():
        if count > 1:
            raise InputFault("id.repeated", id=name, part=part, **where)


def _check_hours(evening: Evening) -> None:
    fields = ("from_h", "bed_h", "up_h", "leave_h")
    for before, after in pairwise(fields):
        if getattr(evening, after) < getattr(evening, before):
            value, limit = getattr(evening, after), getattr(evening, before)
            raise InputFault("evening.hours_reversed", field=after, value=value, other=before, limit=limit)
