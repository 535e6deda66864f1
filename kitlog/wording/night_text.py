"""Tonight's charging and storage as lines: steps by the clock, when each thing is full, what would help."""

from collections.abc import Iterator

from kitlog.budget.charging.result import Caution, Remedy, Step, ThingResult
from kitlog.budget.charging.storage import StorageStep
from kitlog.budget.power_ask.answers import EveningFound, StorageFound
from kitlog.wording.charge_text import LEFT_OUT, cable_text, clock_of, plug_text, tried_texts, with_sockets
from kitlog.wording.columns import paragraph, table
from kitlog.wording.figures import number_text, percent_text, with_unit
from kitlog.wording.translate import N_, _


def evening_lines(found: EveningFound) -> Iterator[str]:
    """Steps, then how each thing ends, then cautions and remedies."""
    steps = [(clock_of(step.at_h), _step(step)) for step in found.planned.steps]
    yield from table(steps, (False, False)) if steps else paragraph(_("Nothing is to be plugged in."))
    yield from table([(thing.thing, _thing(thing)) for thing in found.planned.things], (False, False))
    planned = found.planned
    for text in tried_texts(
        complete=planned.complete,
        moves_compared=planned.moves_compared,
        full=planned.all_chargeable_full,
        by_turns=planned.by_turns,
    ):
        yield from paragraph(text)
    for caution in found.planned.cautions:
        yield from paragraph(_caution(caution))
    for remedy in found.remedies:
        yield from paragraph(_remedy(remedy))


def _step(step: Step) -> str:
    port = _("{charger}, {port}").format(charger=step.charger, port=step.port)
    if step.put_on is None:
        return _("take {thing} off {port}").format(thing=step.take_off, port=port)
    text = _("put {thing} on {port}") if step.take_off is None else _("put {thing} on {port} in the place of {other}")
    done = text.format(thing=step.put_on, port=port, other=step.take_off)
    return _("{done}; it stays there overnight").format(done=done) if step.overnight else done


def _thing(thing: ThingResult) -> str:
    start = percent_text(100 * thing.start)
    if thing.left_out is not None:
        return _("{start} now; {reason}").format(start=start, reason=_(LEFT_OUT[thing.left_out]))
    if thing.full_h is not None and thing.missing_wh == 0.0:
        return _("{start} now, full at {at}").format(start=start, at=clock_of(thing.full_h, up=True))
    text = _("{start} now, {end} at leaving, {missing} short of full")
    end, missing = percent_text(100 * thing.soc_at_leaving), with_unit(thing.missing_wh, "Wh", 1)
    return text.format(start=start, end=end, missing=missing)


_CAUTIONS = {
    "swollen": N_("{thing}: swollen; keep it off the charger"),
    "too_cold_C": N_("{thing}: at {value} °C its cell takes no charge, only from {limit} °C on"),
    "too_warm_C": N_("{thing}: at {value} °C its cell takes no charge, only up to {limit} °C"),
    "place_not_known_C": N_("The temperature of the place is not known; a heated room is taken"),
    "cold_rate_W": N_("{thing}: {value} W into its cell, at this cold no more than {limit} W should go"),
    "health": N_("{thing}: {value} % health left, under {limit} % it counts as worn"),
    "age_months": N_("{thing}: {value} months old, from {limit} on look at it before it is charged"),
    "connector_not_known": N_("{thing}: its connector is not on record; taken to fit"),
    "charged_full_already": N_("{thing}: full already"),
}


def _caution(caution: Caution) -> str:
    if caution.code == "connector_not_known" and caution.thing is None:
        return _("No connector is on record; all are taken to fit")
    scale = 100 if caution.code == "health" else 1
    value, limit = (number_text(scale * (figure or 0.0), 1) for figure in (caution.value, caution.limit))
    return _(_CAUTIONS[caution.code]).format(thing=caution.thing, value=value, limit=limit)


_REMEDIES = {
    "one_more_port": N_("One more port on {charger}"),
    "no_total_limit": N_("{charger} without a limit on its total"),
    "one_more_charger": N_("One more charger like {charger}"),
    "more_sockets": "",
    "start_earlier": N_("Start at {at}"),
    "one_more_cable": N_("One more cable {plugs}"),
}


def _remedy(remedy: Remedy) -> str:
    at = "" if remedy.from_h is None else clock_of(remedy.from_h)
    if remedy.kind == "charger_with_plug":
        what = plug_text(remedy.connectors, remedy.power_w)
    else:
        what = _(_REMEDIES[remedy.kind]).format(charger=remedy.charger, at=at, plugs=cable_text(remedy.connectors))
    what = with_sockets(what, remedy.sockets)
    gained = with_unit(remedy.gained_wh, "Wh", 1)
    if remedy.all_full:
        text = _("{what} – {gained} more, all full")
    elif remedy.all_chargeable_full:
        text = _("{what} – {gained} more, all that can be charged full")
    else:
        text = _("{what} – {gained} more, {n} full")
    return text.format(what=what, gained=gained, n=remedy.full)


def storage_lines(found: StorageFound) -> Iterator[str]:
    """What to do with each thing."""
    if not found.steps:
        yield _("Nothing is to be stored.")
    yield from table([(step.thing, _stored(step)) for step in found.steps], (False, False))


_ACTS = {
    "charge": N_("{start} now: charge it to {target}"),
    "use_down": N_("{start} now: use it down to {target}"),
    "leave": N_("{start} now: leave it"),
    "not_known": N_("look at it"),
    "dispose": N_("swollen: do not charge it; take it to the collection point"),
}

_WHY = {
    "season_over": N_("the season is over"),
    "unused": N_("unused for six weeks or more"),
    "in_use": N_("in use"),
    "in_band": N_("charged as for storage already"),
    "charge_not_known": N_("its charge is not known; for storage about half"),
    "use_not_known": N_("it is not known how long it has lain"),
}


def _stored(step: StorageStep) -> str:
    start = _("charge not known") if step.from_soc is None else percent_text(100 * step.from_soc)
    target = "" if step.to_soc is None else percent_text(100 * step.to_soc)
    done = _(_ACTS[step.act]).format(start=start, target=target)
    return f"{done} ({_(_WHY[step.why])})" if step.why in _WHY else done
