"""No port holds what is full while something lacks: ports are freed, and given to the next that can use them."""

from kitlog.budget.charging.bench import NEARLY, Bench, Stay, Stays
from kitlog.budget.charging.evening import FULL
from kitlog.budget.charging.gaps import next_swap_h
from kitlog.budget.charging.places import Places
from kitlog.budget.charging.search import MOST_STAYS, Option, capped


def filled(bench: Bench, option: Option, order: list[int]) -> Option:
    """The same plan with ports freed from full things and given to what lacks; nothing loses by it.

    An open end of the search: one that followed every plan leaves nothing to do here.
    """
    stays = freed(bench, option.stays)
    for thing in order:
        for _ in range(MOST_STAYS - sum(stay.thing == thing for stay in stays)):
            if _level(bench, stays, thing) >= FULL - NEARLY:
                break
            stays = _with_one_more(bench, Option(option.chargers, stays), thing)
    return Option(option.chargers, freed(bench, stays))


def freed(bench: Bench, stays: Stays) -> Stays:
    """Each thing off its port at the first swap after it is full."""
    return tuple(sorted(cut for stay in stays if (cut := _cut(bench, stays, stay)) is not None))


def _cut(bench: Bench, stays: Stays, stay: Stay) -> Stay | None:
    full_h = bench.ending(stays, stay.thing).full_h
    if full_h is None or full_h >= stay.to_h:
        return stay
    if full_h <= stay.from_h:
        return None
    return stay._replace(to_h=min(stay.to_h, next_swap_h(bench.evening, full_h)))


def _with_one_more(bench: Bench, option: Option, thing: int) -> Stays:
    """The stay from which the thing gains most."""
    before = option.stays
    others = {stay.thing for stay in before}

    def spares_others(stays: Stays) -> bool:
        return all(_level(bench, stays, other) >= _level(bench, before, other) - NEARLY for other in others)

    tried = Places(bench).more(before, thing, option.chargers, spares_others)
    best = max(tried, key=lambda stays: _level(bench, stays, thing), default=before)
    return best if _level(bench, best, thing) > _level(bench, before, thing) + NEARLY else before


def _level(bench: Bench, stays: Stays, thing: int) -> float:
    return capped(bench.ending(stays, thing).soc)
