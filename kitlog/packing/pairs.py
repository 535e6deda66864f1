"""Pairs: what is fitted to what moves as one."""

from collections.abc import Iterable, Mapping

from kitlog.budget.result import Finding, State, Topic
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS
from kitlog.packing.assessment import ListLine
from kitlog.packing.fitness import Fitness


def in_pair(line: ListLine, lines: Iterable[ListLine]) -> bool:
    """Whether a line is half of a pair that goes along whole."""
    there = {other.item.id: other.item for other in lines if not other.in_car}
    return line.item.fitted_to in there or any(item.fitted_to == line.item.id for item in there.values())


def pair_findings(lines: Iterable[ListLine], fitness: Mapping[str, Fitness]) -> list[Finding]:
    """What goes along though the wing, harness, reserve or helmet that it is fitted to stays at home."""
    along = tuple(line for line in lines if not line.in_car)
    there = {line.item.id for line in along}
    return [_apart(line.item, host) for line in along if (host := _host(line.item, fitness)) and host.id not in there]


def _host(item: Item, fitness: Mapping[str, Fitness]) -> Item | None:
    fit = fitness.get(item.fitted_to) if item.fitted_to else None
    return fit.item if fit is not None and fit.item.kind in SET_KINDS else None


def _apart(item: Item, host: Item) -> Finding:
    return Finding(
        code="pair.apart",
        topic=Topic.KIT,
        state=State.LOOK,
        subject=item.id,
        items=(item.id, host.id),
        source="kit",
    )
