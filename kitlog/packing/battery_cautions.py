"""Cautions about batteries themselves, whatever the day: seen swollen, or old.

A swollen battery is neither charged nor taken; what has one is not chosen (`kitlog.packing.fitness`), and where the
pilot takes it all the same, it is a stop if an essential need hangs on it.
"""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date

from kitlog.budget.charging.cautions import OLD_MONTHS, PRACTICE
from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.needs import Need, Strength
from kitlog.packing.assessment import Asked, ListLine
from kitlog.packing.evening_asked import months_old
from kitlog.packing.fitness import Fitness
from kitlog.packing.suited import Suited


def battery_cautions(
    lines: Iterable[ListLine], asked: Iterable[Asked], fitness: Mapping[str, Fitness], suited: Suited, on: date
) -> list[Finding]:
    """Swollen batteries on the list, and those that stay for it though they were of the right sort; old ones.

    Args:
        lines: the list.
        asked: the needs of the outing, strongest first.
        fitness: of the whole kit.
        suited: which item is of the right sort for a need.
        on: the day that governs.
    """
    there = {line.item.id: line for line in lines}
    needs = [one.need for one in asked if one.need.wants_item]
    swollen = [fit.item for fit in fitness.values() if fit.swollen and fit.item.usable]
    return [
        *(_taken(there[item.id], needs, there, fitness, suited) for item in swollen if item.id in there),
        *(_stays(item) for item in swollen if item.id not in there and _wanted(item, needs, suited)),
        *_old([line.item for line in there.values() if not line.in_car and line.item not in swollen], on),
    ]


def _wanted(item: Item, needs: Iterable[Need], suited: Suited) -> bool:
    return any(item.id in suited.to(need) for need in needs)


def _taken(
    line: ListLine,
    needs: Iterable[Need],
    there: Mapping[str, ListLine],
    fitness: Mapping[str, Fitness],
    suited: Suited,
) -> Finding:
    essential = line.strength is Strength.ESSENTIAL and not line.in_car
    met = [need for need in needs if need.id in line.needs]
    instead = next(_instead(met, there, fitness, suited), None)
    swap = () if instead is None else (Remedy("swap", (line.item.id, instead.id)),)
    return _swollen(line.item, State.STOP if essential else State.LOOK, (*swap, Remedy("recycle", (line.item.id,))))


def _instead(
    needs: Iterable[Need], there: Mapping[str, ListLine], fitness: Mapping[str, Fitness], suited: Suited
) -> Iterator[Item]:
    """Items that can go and are of the right sort for all that it meets, the lightest first."""
    wanted = [suited.to(need) for need in needs]
    if not wanted:
        return
    able = [
        item
        for name, item in wanted[0].items()
        if name not in there and fitness[name].can_go and all(name in found for found in wanted)
    ]
    yield from sorted(able, key=lambda item: (item.mass_g is None, item.mass_g or 0))


def _stays(item: Item) -> Finding:
    return _swollen(item, State.LOOK, (Remedy("recycle", (item.id,)),))


def _swollen(item: Item, state: State, remedies: tuple[Remedy, ...]) -> Finding:
    return Finding(
        code="power.swollen",
        topic=Topic.POWER,
        state=state,
        subject=item.id,
        sure=Sure.ON_RECORD,
        items=(item.id,),
        source=PRACTICE,
        facts={"seen_on": item.battery.swollen_on if item.battery else None},
        remedies=remedies,
    )


def _old(items: Iterable[Item], on: date) -> Iterator[Finding]:
    """Batteries of five years and more; a beacon's has a printed date, which is service."""
    for item in items:
        months = months_old(item, on)
        if item.battery is None or item.kind is Kind.BEACON or months is None or months < OLD_MONTHS:
            continue
        yield Finding(
            code="power.old",
            topic=Topic.POWER,
            state=State.LOOK,
            subject=item.id,
            figure=float(months),
            unit="months",
            margin=float(OLD_MONTHS - months),
            sure=Sure.ON_RECORD,
            items=(item.id,),
            source=PRACTICE,
            facts={"most_months": OLD_MONTHS, "made": item.made_on is not None},
            remedies=(Remedy("test_capacity", (item.id,)),),
        )
