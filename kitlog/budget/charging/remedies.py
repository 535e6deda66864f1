"""What would help tonight, computed by planning the night anew, never guessed."""

from collections.abc import Iterator
from math import inf

from kitlog.budget.charging.bench import NEARLY
from kitlog.budget.charging.evening import FULL, MOST_PORTS, Charger, Evening, Port
from kitlog.budget.charging.plugs import Change, new_charger_name, new_name, one_more_charger, plugs, sockets_wanted
from kitlog.budget.charging.result import EveningResult, Remedy, ThingResult
from kitlog.budget.charging.tonight import charge_tonight

MOST_EARLIER_H = 6.0
EARLIER_STEP_H = 0.25


def remedies(evening: Evening, planned: EveningResult | None = None) -> tuple[Remedy, ...]:
    """Changes that leave things fuller, best first; none if all is full already.

    One more port on a charger, no limit on its total, one more such charger, sockets for chargers that find none, a
    start so much earlier that all is full (quarters of an hour, up to six hours; the latest such start), and what
    `plugs` names: a cable or a charger with the connector that is missing. One more charger is no help where those on
    hand find no socket.

    Raises:
        InputFault: as `tonight.charge_tonight`.
    """
    planned = planned or charge_tonight(evening, soonest=False)
    tried = [
        _remedy(planned, charge_tonight(change.evening, soonest=False), change) for change in plugs(evening, planned)
    ]
    if not planned.all_chargeable_full or any(thing.left_out == "no_socket" for thing in planned.things):
        tried += [
            _remedy(planned, charge_tonight(change.evening, soonest=False), change) for change in _changes(evening)
        ]
        tried += [_start_earlier(evening, planned)]
    helpful = [remedy for remedy in tried if remedy.first_gain is not None]
    rank = {thing.thing: place for place, thing in enumerate(planned.things)}
    return tuple(sorted(helpful, key=lambda each: _order(each, rank)))


def bottleneck(found: tuple[Remedy, ...]) -> str | None:
    """The charger of which more would help most; None if sockets would, or no charger's ports or watts are short."""
    first = next((remedy for remedy in found if remedy.charger is not None or remedy.kind == "more_sockets"), None)
    return None if first is None else first.charger


def _order(remedy: Remedy, rank: dict[str, int]) -> tuple[bool, bool, float, float, int, str]:
    first = inf if remedy.first_gain is None else rank[remedy.first_gain]
    fuller = first, -remedy.gained_wh
    return not remedy.all_full, not remedy.all_chargeable_full, *fuller, remedy.sockets, remedy.kind


def _changes(evening: Evening) -> Iterator[Change]:
    yield from _sockets(evening)
    ports = sum(len(charger.ports) for charger in evening.chargers)
    for index, charger in enumerate(evening.chargers):
        if ports < MOST_PORTS:
            yield Change("one_more_port", charger.id, _with(evening, index, _one_more_port(charger)))
        if charger.total_W is not None:
            unlimited = charger.model_copy(update={"total_W": None})
            yield Change("no_total_limit", charger.id, _with(evening, index, unlimited))
        if ports + len(charger.ports) <= MOST_PORTS and not _without_socket(evening):
            like_it = charger.model_copy(update={"id": new_charger_name(evening, charger.id)})
            changed, wanted = one_more_charger(evening, like_it), sockets_wanted(evening)
            yield Change("one_more_charger", charger.id, changed, sockets=wanted)


def _without_socket(evening: Evening) -> int:
    """How many chargers find no socket."""
    return 0 if evening.sockets is None else max(0, len(evening.chargers) - evening.sockets)


def _sockets(evening: Evening) -> Iterator[Change]:
    """One more, and as many as there are chargers."""
    for count in sorted({min(1, _without_socket(evening)), _without_socket(evening)} - {0}):
        more = evening.model_copy(update={"sockets": (evening.sockets or 0) + count})
        yield Change("more_sockets", None, more, sockets=count)


def _with(evening: Evening, index: int, charger: Charger) -> Evening:
    chargers = (*evening.chargers[:index], charger, *evening.chargers[index + 1 :])
    return evening.model_copy(update={"chargers": chargers})


def _one_more_port(charger: Charger) -> Charger:
    strongest = max(charger.ports, key=lambda port: inf if port.limit_W is None else port.limit_W)
    name = new_name("port", {port.id for port in charger.ports})
    port: Port = strongest.model_copy(update={"id": name})
    return charger.model_copy(update={"ports": (*charger.ports, port)})


def _start_earlier(evening: Evening, planned: EveningResult) -> Remedy:
    """By bisection over the quarters of an hour."""
    low, high = 0, int(min(MOST_EARLIER_H, evening.from_h) / EARLIER_STEP_H)
    best = _from(evening, high)
    if best[1].all_chargeable_full:
        while high - low > 1:
            middle = (low + high) // 2
            tried = _from(evening, middle)
            if tried[1].all_chargeable_full:
                high, best = middle, tried
            else:
                low = middle
    return _remedy(planned, best[1], Change("start_earlier", None, best[0]))


def _from(evening: Evening, quarters: int) -> tuple[Evening, EveningResult]:
    earlier = evening.model_copy(update={"from_h": evening.from_h - quarters * EARLIER_STEP_H})
    return earlier, charge_tonight(earlier, soonest=False)


def _remedy(planned: EveningResult, changed: EveningResult, change: Change) -> Remedy:
    pairs = [
        (before, after)
        for before, after in zip(planned.things, changed.things, strict=True)
        if before.left_out is None or after.left_out is None
    ]
    first = next((after for before, after in pairs if _level(after) > _level(before) + NEARLY), None)
    loss = next((after for before, after in pairs if _level(after) < _level(before) - NEARLY), None)
    lost_first = loss is not None and (first is None or changed.things.index(loss) < changed.things.index(first))
    return Remedy(
        kind=change.kind,
        charger=change.charger,
        from_h=change.evening.from_h if change.kind == "start_earlier" else None,
        full=sum(after.full for after in changed.things),
        gained_wh=sum(before.missing_wh - after.missing_wh for before, after in pairs),
        first_gain=None if first is None or lost_first else first.thing,
        all_full=changed.all_full,
        all_chargeable_full=changed.all_chargeable_full,
        connectors=change.connectors,
        power_w=change.power_w,
        sockets=change.sockets,
    )


def _level(thing: ThingResult) -> float:
    return min(thing.soc_at_leaving, FULL)
