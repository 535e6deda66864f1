"""From a plan that leaves hands as free as can be to one that a person would follow: at once, and no idle port."""

from kitlog.budget.charging.bench import NEARLY, Bench, Ending, Stay, Stays
from kitlog.budget.charging.places import Places
from kitlog.budget.charging.search import HOUR_ALIKE, capped


def tidied(bench: Bench, stays: Stays, order: list[int]) -> Stays:
    """Stays begin as early as their port allows and last until the next one, where nothing loses by it."""
    places = Places(bench)
    for thing in order:
        for stay in sorted((stay for stay in stays if stay.thing == thing), key=lambda each: each.from_h):
            stays = _kept_if_no_worse(bench, stays, stay, _earlier(bench, places, stays, stay))
    for stay in sorted(stays, key=lambda each: each.from_h):
        if stay in stays:
            stays = _kept_if_no_worse(bench, stays, stay, _longer(bench, places, stays, stay))
    return joined(stays)


def _room(places: Places, stays: Stays, stay: Stay) -> tuple[float, float]:
    """The free time around a stay."""
    others = tuple(each for each in stays if each != stay)
    spans = places.gaps(others, stay.thing, stay.port)
    return next(span for span in spans if span[0] <= stay.from_h and stay.to_h <= span[1])


def _earlier(bench: Bench, places: Places, stays: Stays, stay: Stay) -> Stay:
    low = _room(places, stays, stay)[0]
    evening = bench.evening
    # what begins in the morning may not begin at night, and need not begin the evening before
    first_h = evening.up_h if stay.from_h >= evening.up_h > evening.bed_h else evening.from_h
    return stay._replace(from_h=max(low, first_h))


def _longer(bench: Bench, places: Places, stays: Stays, stay: Stay) -> Stay:
    high = _room(places, stays, stay)[1]
    evening = bench.evening
    next_h = min((each.from_h for each in stays if each.port == stay.port and each.from_h >= stay.to_h), default=high)
    to_h = min(high, next_h)
    return stay._replace(to_h=to_h if to_h <= evening.bed_h or to_h >= evening.up_h else stay.to_h)


def _kept_if_no_worse(bench: Bench, stays: Stays, old: Stay, new: Stay) -> Stays:
    if new == old:
        return stays
    changed = tuple(sorted((*(stay for stay in stays if stay != old), new)))
    things = {stay.thing for stay in stays}
    no_worse = all(_no_worse(bench.ending(changed, thing), bench.ending(stays, thing)) for thing in things)
    return changed if no_worse else stays


def _no_worse(new: Ending, old: Ending) -> bool:
    """As full, and as soon."""
    late = old.full_h is not None and (new.full_h is None or new.full_h > old.full_h + HOUR_ALIKE)
    return not late and capped(new.soc) >= capped(old.soc) - NEARLY


def joined(stays: Stays) -> Stays:
    """A thing that stays where it is has not been swapped."""
    joined: list[Stay] = []
    for stay in sorted(stays, key=lambda each: (each.port, each.from_h)):
        before = joined[-1] if joined else None
        if before and before.port == stay.port and before.thing == stay.thing and before.to_h == stay.from_h:
            joined[-1] = before._replace(to_h=stay.to_h)
        else:
            joined.append(stay)
    return tuple(joined)
