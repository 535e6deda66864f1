"""What the pilot has to hand for changes to an outing's power: from the kit, the plan and the library."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from kitlog.budget.power.changes.given import OtherUse, SpareBank, ToHand, WarmerPlace
from kitlog.budget.power.day import Day, Draw
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay, Place
from kitlog.outing.library import Library
from kitlog.outing.needs import Need, Strength
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Asked, Assessment, ListLine
from kitlog.packing.capacity import is_bank
from kitlog.packing.draws import phase_draw
from kitlog.packing.other_uses import OtherWay, other_ways
from kitlog.packing.own_banks import carried, spare_banks
from kitlog.packing.power_cells import bank_cell, offset_k
from kitlog.packing.power_findings import CALLS
from kitlog.packing.serving import last_resort, serving
from kitlog.packing.spare_cables import cable_need

WARMER_PLACES: Mapping[Kind, tuple[Place, ...]] = {
    Kind.PHONE: (Place.CLOSED_POCKET, Place.UNDER_SHELL),
    Kind.POWER_BANK: (Place.CLOSED_POCKET, Place.UNDER_SHELL),
    Kind.RADIO: (Place.CLOSED_POCKET,),
}
"""Where things of a kind could lie warmer and still do what they are for: an instrument has to be seen, a messenger has
to see the sky, a glove is where it is (common practice, no source)."""

WORN_KINDS = frozenset({Kind.GLOVES, Kind.GARMENT, Kind.FOOTWEAR})
"""Kinds that do more than their battery."""


def to_hand(assessment: Assessment, items: Iterable[Item], library: Library) -> ToHand:
    """Everything that could be changed about the power of an outing.

    Spare banks: usable, without an open stop, not swollen, of known energy. A screen is lit for a tenth of the time
    instead; flight mode where the device has such a way of use; a lower step instead of a higher one. In flight
    something is plugged in only where a plug is planned already, or the device or the bank lies closed or warm (common
    practice, no source: a plug pulled by a glove is the usual failure). Off may be what neither an essential nor an
    advised need asks for, never a device that can call for help nor one of last resort.

    Args:
        assessment: the outing with its simulated day.
        items: the whole kit.
        library: places and kinds.
    """
    day = assessment.power.planned
    if day is None:
        return ToHand()
    kit, outing = tuple(items), assessment.outing
    along = [item for item in carried(assessment) if item.id in _ids(day)]
    spare = spare_banks(assessment, kit)
    return ToHand(
        spare_banks=tuple(
            SpareBank(bank=bank_cell(item, outing, library), mass_g=_grams(item.all_mass_g)) for item in spare
        ),
        other_uses=tuple(
            use
            for item in along
            for way in other_ways(item, outing, library)
            if (use := _other_use(way, item, outing, library)) is not None
        ),
        warmer_places=tuple(place for item in along for place in _warmer_places(item, library)),
        mass_g=_bank_masses(assessment.lines),
        cable_g=_cable_masses(along, [*filter(is_bank, along), *spare], assessment, kit),
        may_be_off=tuple(
            line.item.id
            for line in assessment.lines
            if line.item in along and _may_be_off(line, assessment.asked, library)
        ),
        plug_phases=_plug_phases(outing, day),
        also_plugged=_also_plugged(outing, [*along, *spare], library),
    )


def _ids(day: Day) -> frozenset[str]:
    return frozenset(cell.id for cell in (*day.devices, *day.banks))


def _grams(mass_g: int | None) -> float | None:
    return None if mass_g is None else float(mass_g)


def use_key(way: OtherWay) -> str:
    """The name under which an other way of use goes through the calculation: unique for its item."""
    return f"{way.way} / {way.instead}"[:200]


def _other_use(way: OtherWay, item: Item, outing: Outing, library: Library) -> OtherUse | None:
    """None where the draw is not known in a phase."""
    changed = with_uses(outing, way)
    draws = {
        phase.name: phase_draw(item, phase, changed, library) for phase in outing.phases if phase.name in way.phases
    }
    known: dict[str, Draw] = {phase: draw.likely_w for phase, draw in draws.items() if draw is not None}
    if len(known) < len(draws):
        return None
    return OtherUse(device=item.id, code=way.code, name=use_key(way), draw_W=known)


def with_uses(outing: Outing, way: OtherWay) -> Outing:
    """The outing with a device in another way of use."""
    kept = (use for use in outing.uses if use.item != way.item or use.phase not in way.phases)
    return outing.model_copy(update={"uses": (*kept, *way.uses)})


def _warmer_places(item: Item, library: Library) -> Iterator[WarmerPlace]:
    if item.battery is not None and item.battery.fixed_c is not None:
        return
    kind = Kind.POWER_BANK if is_bank(item) else item.kind
    for place in WARMER_PLACES.get(kind, ()):
        facts = library.place(place)
        if facts.offset_k > offset_k(item, library):
            yield WarmerPlace(id=item.id, place=place.value, temp_offset_C=facts.offset_k)


def _bank_masses(lines: Iterable[ListLine]) -> dict[str, float]:
    return {line.item.id: float(line.mass_g) for line in lines if is_bank(line.item) and line.mass_g is not None}


def _cable_masses(
    devices: Sequence[Item], banks: Sequence[Item], assessment: Assessment, kit: Sequence[Item]
) -> dict[str, float]:
    """What a device's cable adds, where it is the same for every bank."""
    masses: dict[str, float] = {}
    for device in devices:
        if not is_bank(device):
            asked = {cable_need(device, bank, assessment, kit).mass_g for bank in banks}
            if len(asked) == 1 and (mass_g := asked.pop()) is not None:
                masses[device.id] = float(mass_g)
    return masses


def _may_be_off(line: ListLine, asked: Iterable[Asked], library: Library) -> bool:
    wanted = any(
        one.need.id in line.needs and one.strength is not Strength.COMFORT and _needs_power(line.item, one.need)
        for one in asked
    )
    calls = CALLS in serving(line.item, library).names
    return not (wanted or calls or is_bank(line.item) or last_resort(line.item, library))


def _needs_power(item: Item, need: Need) -> bool:
    """Whether an item that is off no longer meets a need: what is worn is still worn, but not warm."""
    return item.kind not in WORN_KINDS or "warm" in need.serves


def _plug_phases(outing: Outing, day: Day) -> tuple[str, ...]:
    planned = {plug.phase for plug in day.plugs}
    return tuple(p.name for p in outing.phases if p.way is not PhaseWay.FLIGHT or p.name in planned)


def _also_plugged(outing: Outing, items: Iterable[Item], library: Library) -> dict[str, tuple[str, ...]]:
    flights = tuple(phase.name for phase in outing.phases if phase.way is PhaseWay.FLIGHT)
    return {item.id: flights for item in items if flights and lies_closed(item, library)}


def lies_closed(item: Item, library: Library) -> bool:
    """Whether it lies closed or warm: as warm as a closed pocket, or at a temperature of its own."""
    if item.battery is not None and item.battery.fixed_c is not None:
        return True
    return offset_k(item, library) >= library.place(Place.CLOSED_POCKET).offset_k
