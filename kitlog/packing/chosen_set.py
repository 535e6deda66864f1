"""The set: wing, harness, reserve and helmet that the pilot flies in. Never picked by mass."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Kind
from kitlog.outing.outing import Outing
from kitlog.packing.fitness import Fitness


@dataclass(frozen=True, slots=True)
class SetChoice:
    """The chosen items by kind, and the kinds that are an open question (some could go, none is chosen)."""

    chosen: dict[Kind, Item]
    open: tuple[Kind, ...]


def choose_set(outing: Outing, fitness: Mapping[str, Fitness], earlier: Iterable[Outing]) -> SetChoice:
    """The set of an outing.

    For each kind, the first that holds: chosen for this outing; the only one pinned; fitted to the chosen harness;
    that of the last outing with a flight type in common; the only one that can go and is fitted to no other harness.
    Else it is an open question, and so is a choice that cannot stand (left out, or of another kind): nothing is put in
    its place unasked.
    """
    last = _last_alike(outing, earlier)
    chosen: dict[Kind, Item] = {}
    open_kinds: list[Kind] = []
    for kind in SET_KINDS:
        candidates = [f for f in fitness.values() if f.item.kind is kind and f.item.id not in outing.left_out]
        item = _first(kind, outing, candidates, chosen, last)
        if item is not None:
            chosen[kind] = item
        elif any(f.can_go and not _fitted_elsewhere(f.item, chosen) for f in candidates):
            open_kinds.append(kind)
    return SetChoice(chosen, tuple(open_kinds))


def _first(
    kind: Kind, outing: Outing, candidates: list[Fitness], chosen: dict[Kind, Item], last: Outing | None
) -> Item | None:
    said = getattr(outing.set, kind.value)
    if said is not None:
        return next((f.item for f in candidates if f.item.id == said), None)
    able = [f for f in candidates if f.can_go and not _fitted_elsewhere(f.item, chosen)]
    ways: tuple[Callable[[], list[Fitness]], ...] = (
        lambda: [f for f in candidates if any(pin.item == f.item.id for pin in outing.pinned)],
        lambda: [f for f in able if _fitted_to_chosen(f.item, chosen)],
        lambda: [f for f in able if last is not None and _was_in(f.item, last)],
        lambda: able,
    )
    for way in ways:
        found = way()
        if len(found) == 1:
            return found[0].item
    return None


def _fitted_to_chosen(item: Item, chosen: dict[Kind, Item]) -> bool:
    harness = chosen.get(Kind.HARNESS)
    return harness is not None and item.fitted_to == harness.id


def _fitted_elsewhere(item: Item, chosen: dict[Kind, Item]) -> bool:
    """Whether it is fitted to another harness than the chosen one; a new pairing is the pilot's to make."""
    harness = chosen.get(Kind.HARNESS)
    return item.fitted_to is not None and harness is not None and item.fitted_to != harness.id


def _last_alike(outing: Outing, earlier: Iterable[Outing]) -> Outing | None:
    alike = [
        other
        for other in earlier
        if other.id != outing.id
        and other.last_day <= outing.first_day
        and not set(other.flight_types).isdisjoint(outing.flight_types)
    ]
    return max(alike, key=lambda other: other.last_day, default=None)


def _was_in(item: Item, outing: Outing) -> bool:
    chosen = getattr(outing.set, item.kind.value)
    return bool(chosen == item.id) if chosen else any(pin.item == item.id for pin in outing.pinned)
