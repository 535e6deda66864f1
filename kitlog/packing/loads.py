"""Everything that leaves the ground on an outing, as loads with tolerances."""

from collections.abc import Iterable
from datetime import date

from kitlog.budget.weight import PILOT, Load
from kitlog.kit.kinds import Kind, Zone
from kitlog.kit.mass import BODY_G, WATER_BY_MARK_G, line_tolerance_g, suited_scale, tolerance_g
from kitlog.outing.library import Library
from kitlog.outing.outing import OwnLine
from kitlog.outing.pilot import Pilot
from kitlog.packing.assessment import ListLine

PASSENGER = "passenger"


def loads_of(
    lines: Iterable[ListLine], own_lines: Iterable[OwnLine], bodies: Iterable[Load], library: Library
) -> list[Load]:
    """Bodies, lines, their water and the pilot's own lines; nothing that is left in the car."""
    loads = list(bodies)
    for line in lines:
        if not line.in_car:
            loads += _line(line, library)
    loads += [_own(own) for own in own_lines if own.zone is not Zone.LEFT_IN_CAR and own.mass_g is not None]
    return loads


def absent_loads(lines: Iterable[ListLine], open_kinds: Iterable[Kind]) -> list[Load]:
    """Of the set, what leaves the ground and is not on the list: without it the sum is no take-off mass.

    A wing and a harness always; a reserve or helmet where several could go and none is chosen.
    """
    there = {line.item.kind for line in lines if not line.in_car}
    wanted = (Kind.WING, Kind.HARNESS, *open_kinds)
    return [Load(kind.value, None) for kind in dict.fromkeys(wanted) if kind not in there]


def body_load(id_: str, person: Pilot | None, on: date) -> Load:
    """A body on a day: tolerance by the age of its mass."""
    mass = person.mass_on(on) if person else None
    if mass is None:
        return Load(id_, None)
    tolerance = mass.tolerance_g(on)
    return Load(id_, mass.mass_g, tolerance, min(tolerance, BODY_G))


def pilot_load(pilot: Pilot | None, on: date) -> Load:
    """The pilot's own body."""
    return body_load(PILOT, pilot, on)


def _line(line: ListLine, library: Library) -> list[Load]:
    item, facts = line.item, library.facts(line.item.kind)
    mass = None if item.mass_g is None else item.mass_g * line.n
    solid = Load(
        id=item.id,
        mass_g=mass,
        tolerance_g=line_tolerance_g(item, line.n) or 0.0,
        weighed_g=0.0 if mass is None else tolerance_g(mass, suited_scale(mass), item.kind),
        zone=line.zone,
        gone_g=(mass or 0) if facts.gone_at_landing else 0,
        on_foot=line.zone_on_foot,
    )
    return [solid, _water(line)] if line.content_ml else [solid]


def _water(line: ListLine) -> Load:
    water = line.content_ml
    return Load(
        id=f"{line.item.id}:water",
        mass_g=water,
        tolerance_g=WATER_BY_MARK_G,
        weighed_g=WATER_BY_MARK_G,
        zone=line.zone,
        gone_g=water,
        on_foot=line.zone_on_foot,
    )


def _own(own: OwnLine) -> Load:
    mass = own.mass_g or 0
    return Load(own.text, mass, 0.25 * mass, 0.25 * mass, own.zone, 0, own.zone_on_foot)
