"""The question and its answer in JSON: what is to hand goes in, what each change comes to goes out."""

from collections.abc import Collection, Iterable, Mapping
from typing import Any

from kitlog.budget.power.chance import Odds
from kitlog.budget.power.changes.effect import Effect
from kitlog.budget.power.changes.given import ChangesQuery
from kitlog.budget.power.changes.odds import OddsGain
from kitlog.budget.power.changes.outcome import Fare
from kitlog.budget.power.changes.weigh import DeviceGain, Planned, Weighed, plan, remedies
from kitlog.budget.power.checks import refuse_unknown
from kitlog.budget.power.day import Day
from kitlog.fault import InputFault


def answer_changes(day: Day, query: ChangesQuery) -> list[dict[str, Any]]:
    """The changes that help, best first; empty where all lasts.

    Raises:
        InputFault: the day contradicts itself (`checks`); `id.unknown`, `id.repeated` for what the question names.
    """
    return changes_json(weighed_changes(day, query)[1])


def weighed_changes(day: Day, query: ChangesQuery, seldom: Collection[str] = ()) -> tuple[Planned, tuple[Weighed, ...]]:
    """The day as planned, and the changes that help, best first; at most 60 runs of the single day.

    Args:
        day: the day as planned.
        query: what is to hand, and what must last.
        seldom: devices to be helped even if they last, as they do too seldom by chance.

    Raises:
        InputFault: as `answer_changes`.
    """
    check_changes(day, query)
    high = _with_hours(day, query.high_hours) if query.high_hours else None
    planned = plan(day, high, query.targets)
    return planned, remedies(planned, query, seldom)


def _with_hours(day: Day, hours: Mapping[str, float]) -> Day:
    phases = tuple(
        phase.model_copy(update={"hours": hours[phase.id]}) if phase.id in hours else phase for phase in day.phases
    )
    return day.model_copy(update={"phases": phases})


def check_changes(day: Day, query: ChangesQuery) -> None:
    """Refuse names that nothing in the day has, and spare banks that it has: neither may look like nothing to be done.

    Raises:
        InputFault: `id.unknown`; `id.repeated` for a spare bank.
    """
    phases = {phase.id for phase in day.phases}
    devices, banks = {device.id for device in day.devices}, {bank.id for bank in day.banks}
    _each_in(phases, query.high_hours, "phase", "query.high_hours")
    _each_in(phases, query.plug_phases or (), "phase", "query.plug_phases")
    _each_in(devices | banks, query.also_plugged, "device", "query.also_plugged")
    for also in query.also_plugged.values():
        _each_in(phases, also, "phase", "query.also_plugged")
    _each_in(devices, (use.device for use in query.other_uses), "device", "query.other_uses")
    for use in query.other_uses:
        _each_in(phases, use.draw_W, "phase", "query.other_uses.draw_W")
    _each_in(devices | banks, (place.id for place in query.warmer_places), "device", "query.warmer_places")
    _each_in(devices, query.may_be_off, "device", "query.may_be_off")
    _each_in(devices, query.cable_g, "device", "query.cable_g")
    _each_in(banks, query.mass_g, "bank", "query.mass_g")
    _check_spares(query, {**dict.fromkeys(banks, "bank"), **dict.fromkeys(devices, "device")})


def _check_spares(query: ChangesQuery, known: dict[str, str]) -> None:
    """Refuse a spare bank that could not be told from another bank, or from a device (`known`: id -> part)."""
    for spare in query.spare_banks:
        name = spare.bank.id
        if name in known:
            raise InputFault("id.repeated", id=name, part=known[name], field="query.spare_banks")
        known[name] = "bank"


def _each_in(known: set[str], named: Iterable[str], part: str, field: str) -> None:
    for name in named:
        if name not in known:
            refuse_unknown(name, part, field)


def changes_json(weighed: Iterable[Weighed], gains: Iterable[OddsGain] = ()) -> list[dict[str, Any]]:
    """Weighed changes with the keys of the JSON; with the gain in probability where it was asked for."""
    asked = {(gain.candidate.code, gain.candidate.ids, str(gain.candidate.facts)): gain for gain in gains}
    return [
        _weighed_json(one, asked.get((one.candidate.code, one.candidate.ids, str(one.candidate.facts))))
        for one in weighed
    ]


def _weighed_json(one: Weighed, gain: OddsGain | None) -> dict[str, Any]:
    candidate = one.candidate
    plain = {
        "change": candidate.code,
        "ids": list(candidate.ids),
        **{name: list(value) if isinstance(value, tuple) else value for name, value in candidate.facts.items()},
        "mass_g": candidate.mass_g,
        "gives_up": sorted(candidate.gives_up),
        "all_last": one.all_last,
        "all_last_high": one.all_last_high,
        "short_less_h": one.cut_h,
        "short_less_high_h": one.cut_high_h,
        "devices": {name: _gain_json(device) for name, device in one.devices.items()},
        "harms": [_effect_json(effect) for effect in one.harms],
        "mends": [_effect_json(effect) for effect in one.mends],
    }
    return plain if gain is None else {**plain, "chance": _odds_json(gain)}


def _gain_json(gain: DeviceGain) -> dict[str, Any]:
    return {
        "gain_h": gain.gain_h,
        "gain_high_h": gain.gain_high_h,
        "likely": _fare_json(gain.likely),
        "high": None if gain.high is None else _fare_json(gain.high),
    }


def _fare_json(fare: Fare) -> dict[str, Any]:
    return {
        "first_off_h": fare.first_off_h,
        "off_h": fare.off_h,
        "on_at_end": fare.on_at_end,
        "short_h": fare.short_h,
        "hours_more": fare.hours_more,
        "hours_more_at_W": fare.load_w,
        "soc_end": fare.soc_end,
        "margin_pct": fare.margin_pct,
        "lasts": fare.lasts,
    }


def _effect_json(effect: Effect) -> dict[str, Any]:
    return {
        "what": effect.code,
        "id": effect.id,
        "case": effect.case,
        "at_h": effect.at_h,
        "sooner_h": effect.sooner_h,
        "longer_h": effect.longer_h,
    }


def _odds_json(gain: OddsGain) -> dict[str, Any]:
    def plain(odds: Odds) -> dict[str, Any]:
        return {
            "probability": odds.probability,
            "standard_error": odds.standard_error,
            "within_95_pct": list(odds.within),
        }

    return {
        "before": plain(gain.before),
        "after": plain(gain.after),
        "gain": gain.gain,
        "gain_error": gain.gain_error,
        "devices": {name: {"before": plain(was), "after": plain(now)} for name, (was, now) in gain.devices.items()},
    }
