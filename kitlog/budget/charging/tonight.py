"""One evening in, its plan out."""

from typing import NamedTuple

from kitlog.budget.charging.bench import NEARLY, Bench
from kitlog.budget.charging.bench import Stay as Placed
from kitlog.budget.charging.bench import Stays as AllPlaced
from kitlog.budget.charging.cautions import cautions, left_out
from kitlog.budget.charging.check_evening import check_evening
from kitlog.budget.charging.evening import FULL, MOST_COMPARED, Evening
from kitlog.budget.charging.fill import filled
from kitlog.budget.charging.moved import Moves
from kitlog.budget.charging.places import Places
from kitlog.budget.charging.result import EveningResult, Stay, Step, ThingResult
from kitlog.budget.charging.search import HOUR_ALIKE, Found, Option, ahead, capped, in_the_wall, search
from kitlog.budget.charging.sooner import Sooner
from kitlog.budget.charging.tidy import tidied

MOST_TIDIED = 12
MOST_ROUNDS = 2
"""Hours are sought again where freed ports have left things fuller than the search did: only if it is not complete."""


def charge_tonight(evening: Evening, *, soonest: bool = True) -> EveningResult:
    """What goes on which port from when to when.

    Nothing of a higher priority ends less full for something lower; among plans that are alike in that, the one in
    which things are full sooner, in order of priority; then the one with fewest swaps. Of more than `MOST_COMPARED`
    things that lack charge, those of lowest priority get what the others leave, one after the other.

    Args:
        evening: one night.
        soonest: False leaves the hours as the search finds them: for comparing charges at leaving only.

    Raises:
        InputFault: the evening contradicts itself (`check_evening`).
    """
    day = check_evening(evening)
    bench = Bench(evening, day)
    order = in_order(evening)
    places = Places(bench)
    barred = {thing: left_out(bench, places, thing) for thing in order}
    lacking = [t for t in order if barred[t] is None and evening.things[t].start < FULL - NEARLY]
    best = _best(bench, lacking, soonest=soonest)
    stays = best.stays
    things = tuple(_thing(bench, stays, thing, barred[thing]) for thing in order)
    return EveningResult(
        chargers=_in_the_wall(bench, stays),
        stays=tuple(_stay(bench, stay) for stay in sorted(stays, key=lambda each: (each.port, each.from_h))),
        steps=_steps(bench, stays),
        things=things,
        cautions=cautions(bench),
        all_full=all(thing.full for thing in things),
        all_chargeable_full=all(thing.full for thing in things if thing.left_out is None),
        complete=best.complete,
        moves_compared=best.moves_compared,
        by_turns=tuple(evening.things[thing].id for thing in lacking[MOST_COMPARED:]),
    )


def in_order(evening: Evening) -> list[int]:
    """Things by index: those that `priority` names, then the rest as given."""
    rank = {name: place for place, name in enumerate(evening.priority)}
    indices = range(len(evening.things))
    return sorted(indices, key=lambda index: (rank.get(evening.things[index].id, len(rank)), index))


class Best(NamedTuple):
    """The plan, and how it was found; fields as in `EveningResult`."""

    stays: AllPlaced
    complete: bool
    moves_compared: bool


def _best(bench: Bench, lacking: list[int], *, soonest: bool) -> Best:
    """Searched for the first in order, then with moves, then what is left for the rest."""
    first, rest = lacking[:MOST_COMPARED], lacking[MOST_COMPARED:]
    found = _planned(bench, first, soonest=soonest)
    moves = Moves(bench, first)
    best = _handiest(bench, [moves.made(found.options[0])], first)
    at_best = moves.all_at_their_best(best)
    moves_compared = at_best or not moves.could_matter()
    # where things share a total, the search has been beaten by a hair on a grid
    complete = at_best or (found.complete and moves_compared and not bench.shares_any)
    everything = _handiest(bench, [best], lacking) if rest else best
    return Best(everything.stays, complete and not rest, moves_compared)


def _planned(bench: Bench, order: list[int], *, soonest: bool) -> Found:
    """One plan: as full as can be, then as soon as can be, then by few hands."""
    found = search(bench, order)
    best = _handiest(bench, found.options, order)
    complete = found.complete
    for _ in range(MOST_ROUNDS if soonest else 0):
        levels = _levels(bench, best.stays, order)
        timed = Sooner(bench, order, levels, best, piecemeal=found.piecemeal).run(in_the_wall(bench))
        best = _handiest(bench, timed.options, order)
        complete &= timed.complete
        if not ahead(_levels(bench, best.stays, order), levels):
            break
    return Found([best], found.levels, complete)


def _handiest(bench: Bench, options: list[Option], order: list[int]) -> Option:
    """No port idle, tidied, and the best of them."""
    fuller = [filled(bench, option, order) for option in options[:MOST_TIDIED]]
    tidy = [Option(option.chargers, tidied(bench, option.stays, order)) for option in fuller]
    fullest = tidy[0]
    for option in tidy[1:]:
        if ahead(_levels(bench, option.stays, order), _levels(bench, fullest.stays, order)):
            fullest = option
    alike = [option for option in tidy if not _behind(bench, option, fullest, order)]
    return min(
        alike, key=lambda option: (_full_hours(bench, option.stays, order), _hands(bench, option.stays), option.stays)
    )


def _behind(bench: Bench, option: Option, fullest: Option, order: list[int]) -> bool:
    return ahead(_levels(bench, fullest.stays, order), _levels(bench, option.stays, order))


def _levels(bench: Bench, stays: AllPlaced, order: list[int]) -> list[float]:
    return [capped(bench.ending(stays, thing).soc) for thing in order]


def _hands(bench: Bench, stays: AllPlaced) -> tuple[int, int]:
    """How often somebody must come to the ports, and how many stays there are."""
    moments = {edge for stay in stays for edge in (stay.from_h, stay.to_h)} - {bench.evening.leave_h}
    return len(moments), len(stays)


def _full_hours(bench: Bench, stays: AllPlaced, order: list[int]) -> list[int]:
    """In steps of `HOUR_ALIKE`."""
    ends = [bench.ending(stays, thing).full_h for thing in order]
    return [round((bench.evening.leave_h if full_h is None else full_h) / HOUR_ALIKE) for full_h in ends]


def _thing(bench: Bench, stays: AllPlaced, index: int, barred: str | None) -> ThingResult:
    thing, cell = bench.evening.things[index], bench.cells[index]
    soc, full_h = bench.ending(stays, index)
    missing = FULL - soc
    return ThingResult(
        thing=thing.id,
        start=thing.start,
        soc_at_leaving=soc,
        full_h=full_h,
        missing_wh=missing * cell.energy_wh if missing > NEARLY else 0.0,
        left_out=barred,
    )


def _in_the_wall(bench: Bench, stays: AllPlaced) -> tuple[str, ...]:
    used = sorted({bench.slots[stay.port].charger for stay in stays})
    return tuple(bench.evening.chargers[charger].id for charger in used)


def _names(bench: Bench, port: int) -> tuple[str, str]:
    slot = bench.slots[port]
    return bench.evening.chargers[slot.charger].id, slot.name


def _overnight(evening: Evening, stay: Placed) -> bool:
    return stay.from_h <= evening.bed_h < evening.up_h <= stay.to_h


def _stay(bench: Bench, stay: Placed) -> Stay:
    evening = bench.evening
    name = evening.things[stay.thing].id
    return Stay(name, *_names(bench, stay.port), stay.from_h, stay.to_h, _overnight(evening, stay))


def _steps(bench: Bench, stays: AllPlaced) -> tuple[Step, ...]:
    """Every moment at which a port changes what hangs on it; nothing needs taking off at leaving."""
    moments = {(stay.from_h, stay.port) for stay in stays} | {(stay.to_h, stay.port) for stay in stays}
    evening = bench.evening
    return tuple(_step(bench, stays, at_h, port) for at_h, port in sorted(moments) if at_h < evening.leave_h)


def _step(bench: Bench, stays: AllPlaced, at_h: float, port: int) -> Step:
    off = next((stay for stay in stays if stay.port == port and stay.to_h == at_h), None)
    on = next((stay for stay in stays if stay.port == port and stay.from_h == at_h), None)
    things, evening = bench.evening.things, bench.evening
    return Step(
        at_h,
        *_names(bench, port),
        take_off=None if off is None else things[off.thing].id,
        put_on=None if on is None else things[on.thing].id,
        overnight=on is not None and _overnight(evening, on),
    )
