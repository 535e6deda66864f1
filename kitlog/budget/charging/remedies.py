"""What would help tonight, computed by planning the night anew, never guessed."""

from collections.abc import Iterator
from math import inf

from kitlog.budget.charging.bench import NEARLY
from kitlog.budget.charging.evening import FULL, MOST_PORTS, Charger, Evening, Port
from kitlog.budget.charging.result import EveningResult, Remedy, ThingResult
from kitlog.budget.charging.tonight import charge_tonight

MOST_EARLIER_H = 6.0
EARLIER_STEP_H = 0.25


def remedies(evening: Evening, planned: EveningResult | None = None) -> tuple[Remedy, ...]:
    """Changes that leave things fuller, best first; none if all is full already.

    One more port on a charger, no limit on its total, one more such charger in one more socket, and a start so much
    earlier that all is full (quarters of an hour, up to six hours; the latest such start).

    Raises:
        InputFault: as `tonight.charge_tonight`.
    """
    planned = planned or charge_tonight(evening)
    if planned.all_full:
        return ()
    tried = [_remedy(planned, charge_tonight(changed), kind, charger) for kind, charger, changed in _changes(evening)]
    earlier = _start_earlier(evening, planned)
    helpful = [remedy for remedy in (*tried, earlier) if remedy is not None and remedy.first_gain is not None]
    rank = {thing.thing: place for place, thing in enumerate(planned.things)}
    return tuple(sorted(helpful, key=lambda each: (not each.all_full, _rank(each, rank), -each.gained_wh, each.kind)))


def bottleneck(found: tuple[Remedy, ...]) -> str | None:
    """The charger of which more would help most; None if no charger's ports or watts are what is short."""
    return next((remedy.charger for remedy in found if remedy.charger is not None), None)


def _rank(remedy: Remedy, rank: dict[str, int]) -> float:
    return inf if remedy.first_gain is None else rank[remedy.first_gain]


def _changes(evening: Evening) -> Iterator[tuple[str, str, Evening]]:
    ports = sum(len(charger.ports) for charger in evening.chargers)
    for index, charger in enumerate(evening.chargers):
        if ports < MOST_PORTS:
            yield "one_more_port", charger.id, _with(evening, index, _one_more_port(charger))
        if charger.total_W is not None:
            yield "no_total_limit", charger.id, _with(evening, index, charger.model_copy(update={"total_W": None}))
        if ports + len(charger.ports) <= MOST_PORTS:
            yield "one_more_charger", charger.id, _one_more_charger(evening, charger)


def _with(evening: Evening, index: int, charger: Charger) -> Evening:
    chargers = (*evening.chargers[:index], charger, *evening.chargers[index + 1 :])
    return evening.model_copy(update={"chargers": chargers})


def _one_more_port(charger: Charger) -> Charger:
    strongest = max(charger.ports, key=lambda port: inf if port.limit_W is None else port.limit_W)
    name = _new_name("port", {port.id for port in charger.ports})
    port: Port = strongest.model_copy(update={"id": name})
    return charger.model_copy(update={"ports": (*charger.ports, port)})


def _one_more_charger(evening: Evening, charger: Charger) -> Evening:
    name = _new_name(charger.id[:190], {each.id for each in evening.chargers})
    sockets = None if evening.sockets is None else evening.sockets + 1
    chargers = (*evening.chargers, charger.model_copy(update={"id": name}))
    return evening.model_copy(update={"chargers": chargers, "sockets": sockets})


def _new_name(stem: str, taken: set[str]) -> str:
    return next(name for name in (f"{stem} {number}" for number in range(2, len(taken) + 3)) if name not in taken)


def _start_earlier(evening: Evening, planned: EveningResult) -> Remedy | None:
    """By bisection over the quarters of an hour."""
    low, high = 0, int(min(MOST_EARLIER_H, evening.from_h) / EARLIER_STEP_H)
    best = _from(evening, high)
    if not best[1].all_full:
        return _remedy(planned, best[1], "start_earlier", None, best[0].from_h) if high else None
    while high - low > 1:
        middle = (low + high) // 2
        tried = _from(evening, middle)
        if tried[1].all_full:
            high, best = middle, tried
        else:
            low = middle
    return _remedy(planned, best[1], "start_earlier", None, best[0].from_h)


def _from(evening: Evening, quarters: int) -> tuple[Evening, EveningResult]:
    earlier = evening.model_copy(update={"from_h": evening.from_h - quarters * EARLIER_STEP_H})
    return earlier, charge_tonight(earlier)


def _remedy(
    planned: EveningResult, changed: EveningResult, kind: str, charger: str | None, from_h: float | None = None
) -> Remedy:
    pairs = [
        (before, after) for before, after in zip(planned.things, changed.things, strict=True) if before.left_out is None
    ]
    first = next((after for before, after in pairs if _level(after) > _level(before) + NEARLY), None)
    loss = next((after for before, after in pairs if _level(after) < _level(before) - NEARLY), None)
    lost_first = loss is not None and (first is None or changed.things.index(loss) < changed.things.index(first))
    return Remedy(
        kind=kind,
        charger=charger,
        from_h=from_h,
        full=sum(after.missing_wh == 0.0 for _, after in pairs),
        gained_wh=sum(before.missing_wh - after.missing_wh for before, after in pairs),
        first_gain=None if first is None or lost_first else first.thing,
        all_full=changed.all_full,
    )


def _level(thing: ThingResult) -> float:
    return min(thing.soc_at_leaving, FULL)
