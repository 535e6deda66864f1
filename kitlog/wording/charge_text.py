"""Tonight's charging as words: what hangs where until when, how it ends, what to know, what would help."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from itertools import groupby
from math import ceil

from kitlog.budget.charging.evening import MOST_COMPARED
from kitlog.outing.outing import Evening
from kitlog.packing.evening_asked import Note, Piece
from kitlog.packing.evening_plan import ChargeLine, EveningHelp, EveningPlan, HandStep, Hang, OtherStart
from kitlog.packing.on_hand import LASTS, RECKONED_PCT, OnHand
from kitlog.wording.figures import clock_text, day_text, hours_text, number_text, percent_text, with_unit
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import first_upper

Names = Mapping[str, str]


def clock_of(hour: float, *, up: bool = False) -> str:
    """An hour of the evening's axis as a time of day; `up`: a moment within a minute counts at its end."""
    minutes = ceil(hour * 60 - 1e-6) if up else round(hour * 60)
    return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"


def piece_text(piece: Piece) -> str:
    """The name of a thing, with its number where there are several."""
    return f"{piece.item.name}, {piece.number}" if piece.number else piece.item.name


def port_text(charger: Piece, port: int) -> str:
    """A charger, and which of its ports."""
    name = piece_text(charger)
    return _("{charger}, port {port}").format(charger=name, port=port) if port else name


def times_text(times: Evening) -> str:
    """When hands are there."""
    return _("{start} to {bed}, {up} to {leave}").format(
        start=f"{times.from_at:%H:%M}",
        bed=f"{times.bed_at:%H:%M}",
        up=f"{times.up_at:%H:%M}",
        leave=f"{times.leave_at:%H:%M}",
    )


def place_text(times: Evening) -> str:
    """Sockets and temperature, as far as they were told."""
    parts = []
    if times.sockets is not None:
        parts.append(ngettext("{n} socket", "{n} sockets", times.sockets).format(n=times.sockets))
    parts.append(_("temperature not known") if times.place_c is None else with_unit(times.place_c, "°C"))
    return ", ".join(parts)


def on_hand_text(seen: OnHand, now: datetime) -> str:
    """The charge on hand and when it was seen; what is not known is said, with what it is reckoned from."""
    if seen.known and seen.seen_pct is not None and seen.seen_at is not None:
        return _("{charge} on hand, seen {when}").format(charge=percent_text(seen.seen_pct), when=seen_text(seen, now))
    text = _("charge on hand not known, reckoned from {charge}").format(charge=percent_text(RECKONED_PCT))
    if seen.seen_pct is None or seen.seen_at is None:
        return text
    last = _("; {charge} on {when}").format(charge=percent_text(seen.seen_pct), when=seen_text(seen, now))
    return text + last


def seen_text(seen: OnHand, now: datetime) -> str:
    """When a charge was seen: the time of day, or the day if it was another one."""
    assert seen.seen_at is not None  # noqa: S101  # asked for by the callers
    at = seen.seen_at.astimezone(now.tzinfo)
    return clock_text(at) if at.date() == now.date() else day_text(at.date(), year=at.year != now.year)


def hang_text(hang: Hang) -> str:
    """From when until when a thing hangs."""
    text = _("{start} to {end} overnight") if hang.overnight else _("{start} to {end}")
    return text.format(start=clock_of(hang.from_h), end=clock_of(hang.to_h))


def hangs_text(line: ChargeLine) -> str:
    """Where a thing hangs until when, each port once; empty if it hangs nowhere."""
    stays = groupby(line.hangs, key=lambda hang: port_text(hang.charger, hang.port))
    return "; ".join(", ".join([port, *map(hang_text, hangs)]) for port, hangs in stays)


def end_text(line: ChargeLine) -> str:
    """How a thing ends: full by when, or with how much, or why it is not charged."""
    if line.left_out:
        return _(LEFT_OUT[line.left_out])
    if line.full_already:
        return _("full already")
    if line.full_h is not None:
        return _("full {time}").format(time=clock_of(line.full_h, up=True))
    return _("{charge}, {energy} short").format(
        charge=percent_text(int(line.end_pct)), energy=with_unit(line.missing_wh, "Wh", 1)
    )


def other_starts_text(others: Sequence[OtherStart], names: Names) -> str:
    """With which charges the outing begins, where the plan now ends with other ones; empty where there are none."""
    if not others:
        return ""
    things = "; ".join(
        _("{thing} {begins} / {planned}").format(
            thing=names.get(one.item, one.item),
            begins=number_text(int(one.begins_pct)),
            planned=percent_text(int(one.planned_pct)),
        )
        for one in others
    )
    return _("The outing begins otherwise, reckoned / planned: {things}").format(things=things)


LEFT_OUT = {
    "swollen": N_("swollen: not charged"),
    "no_cell": N_("no energy: not charged"),
    "takes_no_charge": N_("takes no charge"),
    "too_cold": N_("too cold to charge"),
    "too_warm": N_("too warm to charge"),
    "no_charger": N_("no charger"),
    "no_port": N_("no port that fits"),
    "no_cable": N_("no cable that fits"),
    "no_socket": N_("no free socket"),
}
"""Why a thing is not charged."""


def summary_text(plan: EveningPlan) -> str:
    """What comes of the evening, in one sentence."""
    if plan.has("no_charger"):
        return _("No charger is on record, so nothing can be planned.")
    if plan.has("charger_not_described"):
        return _("The ports of the charger are not on record, so nothing can be planned.")
    if any(line.left_out == "no_socket" for line in plan.lines):
        return _("No socket is free. {short}").format(short=_short(plan))
    if plan.all_full and plan.full_by_h is not None:
        if all(line.full_already for line in plan.lines):
            return _("All is full already.")
        return _("All full by {time}.").format(time=clock_of(plan.full_by_h, up=True))
    return _short(plan)


def _short(plan: EveningPlan) -> str:
    short = [line for line in plan.lines if not line.full]
    parts = []
    if short:
        names = ", ".join(piece_text(line.thing) for line in short)
        parts.append(_("not full at leaving: {items}").format(items=names))
    elif plan.lines:
        last_h = max(line.full_h or 0.0 for line in plan.lines)
        parts.append(_("what is planned is full by {time}").format(time=clock_of(last_h, up=True)))
    if plan.not_planned:
        names = ", ".join(item.name for item in plan.not_planned)
        parts.append(_("not known: {items}").format(items=names))
    return first_upper("; ".join(parts)) + "." if parts else _("Nothing that goes along has a battery.")


def step_text(step: HandStep) -> str:
    """One thing to do by hand."""
    port = port_text(step.charger, step.port)
    if step.put_on is None:
        text = _("take {off} off {port}")
    elif step.take_off is None:
        text = _("plug {on} into {port}")
    else:
        text = _("{on} instead of {off} into {port}")
    if step.overnight:
        text = f"{text}{_(', overnight')}"
    return text.format(
        port=port,
        on="" if step.put_on is None else piece_text(step.put_on),
        off="" if step.take_off is None else piece_text(step.take_off),
    )


def note_text(note: Note, names: Names) -> str:
    """Something to know about the plan."""
    return _NOTES[note.code](note, ", ".join(names.get(item, item) for item in note.items))


Say = Callable[[Note, str], str]


def _plain(text: str) -> Say:
    return lambda note, items: _(text).format(
        items=items, most=number_text(note.limit or 0), charge=percent_text(RECKONED_PCT), hours=_lasts()
    )


def _lasts() -> str:
    return with_unit(LASTS.total_seconds() / 3600, "h")


def _unit(text: str, unit: str, decimals: int = 0) -> Say:
    return lambda note, items: _(text).format(
        items=items,
        value=with_unit(note.value or 0.0, unit, decimals),
        limit=with_unit(note.limit or 0.0, unit, decimals),
        source=_(note.source),
    )


def _health(note: Note, items: str) -> str:
    text = _("{items}: {value} of its health is left; under {limit} it counts as worn")
    return text.format(
        items=items, value=percent_text(100 * (note.value or 0)), limit=percent_text(100 * (note.limit or 0))
    )


def _age(note: Note, items: str) -> str:
    years = int(note.value or 0) // 12
    old = ngettext("{n} year", "{n} years", years).format(n=years)
    return _("{items}: {years} old, ask for a capacity test ({source})").format(
        items=items, years=old, source=_(note.source)
    )


def _late(note: Note, _items: str) -> str:
    return _("the plan began {hours} ago; set its begin to now if nothing hangs yet").format(
        hours=hours_text(note.value or 0)
    )


def _cables(_note: Note, items: str) -> str:
    if items:
        return _("both ends are not on record of: {items}; cables are taken to be enough").format(items=items)
    return _("no cable is on record; cables are taken to be enough")


def _connectors(_note: Note, items: str) -> str:
    if items:
        return _("connector not known: {items}; taken to fit").format(items=items)
    return _("no connector is on record; all are taken to fit")


_NOTES: Mapping[str, Say] = {
    "charge_not_known": _plain(
        N_("charge on hand not known or seen more than {hours} ago, reckoned as empty: {items}")
    ),
    "power_not_known": _plain(N_("charging power not known, so not planned: {items}")),
    "energy_not_known": _plain(N_("energy not known, so not planned: {items}")),
    "evening_assumed": _plain(N_("the hours of the evening are assumed: set your own")),
    "late_h": _late,
    "no_charger": _plain(N_("no charger in the kit: enter one, with its ports and watts")),
    "charger_not_described": _plain(N_("ports and watts are not on record of: {items}")),
    "port_power_not_known": _plain(N_("the watts of a port are not on record, taken as without limit: {items}")),
    "cables_not_known": _cables,
    "too_many_things": _plain(N_("more than {most} things: not planned are {items}")),
    "too_many_ports": _plain(N_("more than {most} ports: not used are {items}")),
    "swollen": _plain(N_("swollen, do not charge: {items}")),
    "too_cold_C": _unit(N_("{items}: {value} in its place, it takes no charge under {limit}"), "°C"),
    "too_warm_C": _unit(N_("{items}: {value} in its place, it takes no charge over {limit}"), "°C"),
    "place_not_known_C": _plain(N_("the temperature where it charges is not known, taken for a heated room")),
    "cold_rate_W": _unit(N_("{items}: {value} into a cold cell, {limit} would be kinder ({source})"), "W", 1),
    "health": _health,
    "age_months": _age,
    "connector_not_known": _connectors,
    "charged_full_already": _plain(N_("full already: {items}")),
}

CODES = frozenset(_NOTES)
"""Every note that has words."""


def help_text(found: EveningHelp) -> str:
    """A change and what it gives."""
    charger = "" if found.charger is None else piece_text(found.charger)
    start = "" if found.from_h is None else clock_of(found.from_h)
    if found.kind == "charger_with_plug":
        change = plug_text(found.connectors, found.power_w)
    else:
        change = _(_HELPS[found.kind]).format(charger=charger, time=start, plugs=cable_text(found.connectors))
    change = with_sockets(change, found.sockets)
    if found.all_full:
        return _("{change}: then all of it is full").format(change=change)
    if found.all_chargeable_full:
        return _("{change}: then all that can be charged is full").format(change=change)
    gain = "" if found.first_gain is None else piece_text(found.first_gain)
    energy = with_unit(found.gained_wh, "Wh", 1)
    return _("{change}: {energy} more, first for {item}").format(change=change, energy=energy, item=gain)


_HELPS = {
    "one_more_port": N_("One more port like the strongest of {charger}"),
    "no_total_limit": N_("A charger like {charger} whose ports give all they can at once"),
    "one_more_charger": N_("One more charger like {charger}"),
    "more_sockets": "",
    "start_earlier": N_("Begin at {time}"),
    "one_more_cable": N_("One more cable {plugs}"),
}


def with_sockets(change: str, sockets: int) -> str:
    """A change, with the sockets that it wants beside those that are free."""
    if not sockets:
        return change
    if not change:
        text = ngettext(
            "{n} more free socket, from a multi-socket perhaps",
            "{n} more free sockets, from a multi-socket perhaps",
            sockets,
        )
        return text.format(n=sockets)
    return _("{change}, and a free socket for it").format(change=change)


def cable_text(connectors: Sequence[str]) -> str:
    """The two ends of a cable."""
    return _("{one} to {other}").format(one=connectors[0], other=connectors[1]) if len(connectors) > 1 else ""


def plug_text(connectors: Sequence[str], power_w: float | None) -> str:
    """A charger that would have to be there, by its plug, if it must have a certain one."""
    figure = power_w or 0.0
    power = with_unit(figure, "W", 0 if figure.is_integer() else 1)
    if not connectors:
        return _("A charger of {power}").format(power=power)
    return _("A charger of {power} with a {plug} plug").format(power=power, plug=connectors[0])


def missing_remedies(plan: EveningPlan, names: Names) -> tuple[str, ...]:
    """What to enter where the plan lacks figures."""
    texts = []
    if plan.has("no_charger"):
        texts.append(_("Enter your charger in Kit: its ports, their watts and connectors"))
    texts += [
        _(_ENTER[note.code]).format(items=", ".join(names.get(item, item) for item in note.items))
        for note in plan.notes
        if note.code in _ENTER
    ]
    return tuple(texts)


_ENTER = {
    "charger_not_described": N_("Enter ports and watts of {items}"),
    "power_not_known": N_("Enter the greatest charging power of {items}"),
    "energy_not_known": N_("Enter the energy of {items}"),
    "charge_not_known": N_("Look at the charge of {items}, and type it"),
}


def tried_texts(*, complete: bool, moves_compared: bool, full: bool, by_turns: Sequence[str]) -> tuple[str, ...]:
    """Where a plan may not be the best; full: nothing could be fuller, only full sooner."""
    texts = []
    if by_turns:
        text = _(
            "More than {most} things to charge: these got what the others left, one after the other, with no plans "
            "compared: {items}."
        )
        texts.append(text.format(most=number_text(MOST_COMPARED), items=", ".join(by_turns)))
    if not moves_compared:
        texts.append(_(_MOVES_FULL) if full else _(_MOVES_SHORT))
    if not complete and not texts:
        texts.append(_("Not every plan was compared: this is the best of those tried."))
    return tuple(texts)


_MOVES_FULL = N_(
    "Moving half-charged things between weak and strong ports was tried, not compared in full: something might be full "
    "sooner."
)
_MOVES_SHORT = N_(
    "Moving half-charged things between weak and strong ports was tried, not compared in full: something might be "
    "fuller."
)


def plan_tried_texts(plan: EveningPlan) -> tuple[str, ...]:
    """The same of a plan with names."""
    by_turns = [piece_text(piece) for piece in plan.by_turns]
    return tried_texts(
        complete=plan.complete,
        moves_compared=plan.moves_compared,
        full=plan.all_chargeable_full,
        by_turns=by_turns,
    )
