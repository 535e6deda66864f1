"""The answers about the power of a plan as JSON: figures with their units, sentences beside them."""

from collections.abc import Mapping
from typing import Any

from kitlog.budget.power.chance import Odds
from kitlog.budget.power.changes.effect import Effect
from kitlog.budget.power.changes.outcome import Outcome
from kitlog.budget.result import Finding, State, Topic
from kitlog.packing.lightest import OwnBank
from kitlog.packing.power_answers import PowerAnswers
from kitlog.packing.power_chance import chance_findings, how_sure
from kitlog.packing.power_grounds import grounds
from kitlog.packing.power_inverse import Inverse
from kitlog.packing.power_limits import BothCases, PowerLimits
from kitlog.packing.power_mending import Mend, Mending
from kitlog.wording.chance_text import least_pct, most_pct
from kitlog.wording.findings import say
from kitlog.wording.power_asked_text import LimitWords, bank_words, retrieve_words, start_words
from kitlog.wording.power_changes_text import effect_text
from kitlog.wording.power_lightest_text import lightest_text, trial_texts
from kitlog.wording.power_mending_text import mend_words, planned_texts, verdict_text
from kitlog.wording.remedies import remedy_text

Names = Mapping[str, str]


def power_json(found: PowerAnswers, names: Names) -> dict[str, Any]:
    """Everything that was asked. Durations in h from the start of the day, charge and chances in %."""
    outing = found.assessment.outing
    limits = found.limits
    return {
        "outing": outing.name,
        "first_day": str(outing.first_day),
        "keep_pct": found.keep_pct,
        "days": found.days,
        "seed": found.seed,
        "stops": sum(finding.state is State.STOP for finding in found.assessment.of(Topic.POWER)),
        "why_not_simulated": found.assessment.power.reason,
        "swollen": [names.get(item, item) for item in found.assessment.power.swollen],
        "not_known": [names.get(item, item) for item in found.assessment.power.unknown],
        "devices": _devices(found, names),
        "all_last": None if found.forecast is None else odds_json(found.forecast.all_last),
        "can_call": _can_call(found, names),
        "changes": _changes(found.mending, names),
        "longest_retrieve": _limit(found.retrieve, retrieve_words(found.retrieve), "h", names),
        "lowest_start": [_limit(one, start_words(one, names), "pct", names) for one in limits.starts],
        "smallest_bank": [_limit(one, bank_words(one, names), "Wh", names) for one in limits.banks],
        "lightest_bank": _lightest(limits, names, simulated=found.assessment.power.planned is not None),
    }


def odds_json(odds: Odds) -> dict[str, Any]:
    """A chance with its standard error and the bounds that hold 95 times of 100.

    `chance_least_pct` and `chance_most_pct` are these bounds as the words have them; they hold where all days drawn
    agree and the standard error says nothing.
    """
    low, high = odds.within
    return {
        "chance_pct": 100 * odds.probability,
        "chance_least_pct": least_pct(odds),
        "chance_most_pct": most_pct(odds),
        "standard_error_pct": 100 * odds.standard_error,
        "within_95_pct": [100 * low, 100 * high],
        "days": odds.days,
    }


def _devices(found: PowerAnswers, names: Names) -> list[dict[str, Any]]:
    planned, forecast = found.mending.planned, found.forecast
    if planned is None or planned.high is None or forecast is None:
        return []
    made = []
    for name, device in forecast.devices.items():
        made.append(
            {
                "device": names.get(name, name),
                "device_id": name,
                "sure": how_sure([name], found.assessment).value,
                "start_assumed": grounds([name], found.assessment.outing, found.assessment.power).start_assumed,
                "likely": _fare(planned.likely, name),
                "high": _fare(planned.high, name),
                "lasts": odds_json(device.lasts),
                "on_at_end": odds_json(device.alive_at_end),
                "off_by_5_pct_of_days_h": device.off.by_5_pct_h,
                "off_by_50_pct_of_days_h": device.off.by_50_pct_h,
                "off_by_95_pct_of_days_h": device.off.by_95_pct_h,
            }
        )
    return made


def _fare(outcome: Outcome, name: str) -> dict[str, Any]:
    fare = outcome.fares[name]
    return {
        "lasts": fare.first_off_h is None,
        "keep_pct": 100 * fare.least_soc,
        "lasts_and_keeps": fare.lasts,
        "off_h": fare.first_off_h,
        "short_h": fare.short_h,
        "margin_h": outcome.spare_h(name),
        "margin_pct": fare.margin_pct,
        "end_pct": None if fare.soc_end is None else 100 * fare.soc_end,
    }


def _can_call(found: PowerAnswers, names: Names) -> list[dict[str, Any]]:
    if found.forecast is None:
        return []
    return [_chance(finding, names) for finding in chance_findings(found.assessment, found.forecast)]


def _chance(finding: Finding, names: Names) -> dict[str, Any]:
    said, odds = say(finding, names), finding.facts.get("odds")
    return {
        "code": finding.code,
        "items": [names.get(item, item) for item in finding.items],
        "state": finding.state.value,
        "sure": finding.sure.value,
        "chance": odds_json(odds) if isinstance(odds, Odds) else None,
        "title": said.title,
        "sentence": said.sentence,
    }


def _changes(mending: Mending, names: Names) -> dict[str, Any]:
    return {
        "nothing_to_mend": mending.nothing_to_mend,
        "verdict": verdict_text(mending),
        "as_planned": list(planned_texts(mending, names)),
        "all_last": None if mending.odds is None else odds_json(mending.odds.all_last),
        "found": [_mend(one, mending, names) for one in mending.mends],
    }


def _mend(one: Mend, mending: Mending, names: Names) -> dict[str, Any]:
    weighed, odds, said = one.weighed, one.odds, mend_words(one, mending, names)
    return {
        "code": one.remedy.code,
        "items": [names.get(item, item) for item in weighed.candidate.ids],
        "what": said.what,
        "sentence": f"{said.what}: {said.said}",
        "gains": one.gains,
        "offered": not one.brings,
        "all_last_and_keep_likely": weighed.all_last,
        "all_last_and_keep_high": weighed.all_last_high,
        "less_short_likely_h": weighed.cut_h,
        "less_short_high_h": weighed.cut_high_h,
        "devices": {
            names.get(name, name): {"gain_likely_h": gain.gain_h, "gain_high_h": gain.gain_high_h}
            for name, gain in weighed.devices.items()
        },
        "harms": [_harm(effect, names) for effect in weighed.harms],
        "gain_pct": None if odds is None else 100 * odds.gain,
        "gain_standard_error_pct": None if odds is None else 100 * odds.gain_error,
        "all_last_before": None if odds is None else odds_json(odds.before),
        "all_last_after": None if odds is None else odds_json(odds.after),
        "mass_g": weighed.candidate.mass_g,
        "brings": [finding.key for finding in one.brings],
        "as_remedy": remedy_text(one.remedy, names),
    }


def _harm(effect: Effect, names: Names) -> dict[str, Any]:
    return {
        "what": effect.code,
        "item": names.get(effect.id, effect.id),
        "case": effect.case,
        "at_h": effect.at_h,
        "sooner_h": effect.sooner_h,
        "longer_h": effect.longer_h,
        "said": effect_text(effect, names),
    }


def _limit(found: BothCases, said: LimitWords, unit: str, names: Names) -> dict[str, Any]:
    return {
        "subject": names.get(found.likely.subject, found.likely.subject),
        "phase": found.likely.phase,
        "sure": found.sure.value,
        "likely": _answer(found.likely, said.likely, unit),
        "high": _answer(found.high, said.high, unit),
        "sentence": said.spoken,
    }


def _answer(found: Inverse, said: str, unit: str) -> dict[str, Any]:
    return {"outcome": found.outcome.name.lower(), unit: found.figure, f"looked_to_{unit}": found.limit, "said": said}


def _lightest(limits: PowerLimits, names: Names, *, simulated: bool) -> dict[str, Any]:
    found, sentence = limits.lightest, lightest_text(limits, names, simulated=simulated)
    if found is None:
        return {"outcome": "not_asked", "sentence": sentence}
    return {
        "outcome": "never" if found.lightest is None else "found",
        "lightest": _own(found.lightest, names),
        "lightest_likely": _own(found.lightest_likely, names),
        "devices": [names.get(device, device) for device in found.devices],
        "tried": [_own(one, names) for one in found.tried],
        "not_tried": [{"bank": names.get(one.bank or "", ""), "why": one.why} for one in found.not_tried],
        "sentence": sentence,
        "sentences": [f"{name}: {why}" for name, _mass, why in trial_texts(found, names)],
    }


def _own(one: OwnBank | None, names: Names) -> dict[str, Any] | None:
    if one is None:
        return None
    return {
        "bank": None if one.bank is None else names.get(one.bank, one.bank),
        "mass_g": one.mass_g,
        "does_likely": one.meets,
        "does_high": one.meets_high,
        "why_not": one.why or None,
        "left_at_ports_high_Wh": one.in_hand_wh,
    }
