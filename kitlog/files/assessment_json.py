"""An assessment as JSON: the figures of the models with their units, and the sentences beside them."""

from collections.abc import Mapping
from typing import Any

from kitlog.budget.power.result import BankResult, DayResult, DeviceResult
from kitlog.budget.result import Finding
from kitlog.budget.weight import position_pct
from kitlog.kit.kinds import Kind, Zone
from kitlog.packing.assessment import Assessment, ListLine, Missing, PassedOver, Question
from kitlog.packing.power_grounds import grounds
from kitlog.wording.findings import Names, say
from kitlog.wording.lines import needs_by_id, question_text, why_text
from kitlog.wording.remedies import remedy_text

CASES = ("low", "likely", "high")


def assessment_json(assessment: Assessment, names: Names) -> dict[str, Any]:
    """Everything one outing has to say.

    Args:
        assessment: of one outing.
        names: names of all items of the kit by id.

    Returns:
        plain JSON values: masses in whole g, shares in per cent, durations in h, what is not known as None.
    """
    outing = assessment.outing
    return {
        "outing": outing.name,
        "first_day": str(outing.first_day),
        "last_day": str(outing.last_day),
        "flight_types": list(outing.flight_types),
        "assessed_at": assessment.now.isoformat(),
        "judged_on": str(assessment.judged_on),
        "counts": _counts(assessment),
        "findings": [_finding(finding, names) for finding in assessment.findings],
        "questions": [_question(question) for question in assessment.questions],
        "conditions": {truth.condition.value: truth.answer.value for truth in assessment.truths},
        "set": {kind.value: item.name for kind, item in assessment.chosen.items()},
        "lines": [_line(line, assessment, names) for line in assessment.lines],
        "own_lines": [own.model_dump(mode="json") for own in outing.own_lines],
        "missing": [_missing(missing, names) for missing in assessment.missing],
        "passed_over": [_passed_over(passed) for passed in assessment.passed_over],
        "stays_home": [names.get(item, item) for item in assessment.stays_home],
        "mass": _mass(assessment, names),
        "power": _power(assessment, names),
    }


def _counts(assessment: Assessment) -> dict[str, int]:
    counts = assessment.counts
    return {
        "stop": counts.stop,
        "look": counts.look,
        "not_known": counts.not_known,
        "open_questions": counts.open_questions,
    }


def _finding(finding: Finding, names: Names) -> dict[str, Any]:
    said = say(finding, names)
    return {
        "code": finding.code,
        "key": finding.key,
        "topic": finding.topic.value,
        "state": finding.state.value,
        "figure": finding.figure,
        "unit": finding.unit,
        "margin": finding.margin,
        "sure": finding.sure.value,
        "items": [names.get(item, item) for item in finding.items],
        "item_ids": list(finding.items),
        "phase": finding.phase,
        "source": finding.source,
        "title": said.title,
        "sentence": said.sentence,
        "remedies": [remedy_text(remedy, names) for remedy in finding.remedies],
        "override": finding.override,
    }


def _question(question: Question) -> dict[str, Any]:
    return {
        "id": question.id,
        "label": question.label,
        "kind": question.kind,
        "question": question_text(question),
        "answered": question.answered,
        "value": question.value,
        "at": None if question.at is None else question.at.isoformat(),
        "expired": question.expired,
    }


def _line(line: ListLine, assessment: Assessment, names: Names) -> dict[str, Any]:
    """A line of the list; `mass_g` is one piece's, as everywhere, `line_mass_g` that of all pieces and the content."""
    return {
        "item": line.item.name,
        "item_id": line.item.id,
        "n": line.n,
        "mass_g": line.item.mass_g,
        "mass_source": line.item.mass_source.value,
        "content_ml": line.content_ml,
        "line_mass_g": line.mass_g,
        "zone": line.zone.value,
        "zone_on_foot": line.zone_on_foot.value,
        "needs": list(line.needs),
        "strength": None if line.strength is None else line.strength.value,
        "why": why_text(line, needs_by_id(assessment), names),
        "pinned": line.pinned,
        "guessed": line.guessed,
    }


def _missing(missing: Missing, names: Names) -> dict[str, Any]:
    need = missing.asked.need
    return {
        "need": need.id,
        "label": need.label,
        "strength": missing.asked.strength.value,
        "state": missing.state.value,
        "why": need.why,
        "reason": missing.reason,
        "have": missing.have,
        "amount": need.amount,
        "instead": [names.get(item, item) for item in missing.instead],
    }


def _passed_over(passed: PassedOver) -> dict[str, Any]:
    return {
        "item": passed.item.name,
        "item_id": passed.item.id,
        "need": passed.need,
        "reason": passed.reason,
        "taken": passed.taken,
    }


def _mass(assessment: Assessment, names: Names) -> dict[str, Any]:
    mass, chosen = assessment.mass, assessment.chosen.get(Kind.WING)
    wing = chosen.wing if chosen else None
    return {
        "take_off_g": mass.take_off_g,
        "landing_g": mass.landing_g,
        "known_g": mass.known_g,
        "tolerance_g": mass.tolerance_g,
        "tolerance_sum_g": mass.tolerance_sum_g,
        "position_pct": position_pct(mass.take_off_g, wing),
        "landing_position_pct": position_pct(mass.landing_g, wing),
        "pilot_g": mass.pilot_g,
        "pack_g": mass.pack_g,
        "by_zone": {zone.value: mass.by_zone[zone] for zone in Zone if zone in mass.by_zone},
        "unknown": [names.get(load, load) for load in mass.unknown],
    }


def _power(assessment: Assessment, names: Names) -> dict[str, Any]:
    power = assessment.power
    days = {case: day for case in CASES if (day := getattr(power, case)) is not None}
    first: DayResult | None = next(iter(days.values()), None)
    return {
        "reason": power.reason,
        "unknown": [names.get(item, item) for item in power.unknown],
        "swollen": [names.get(item, item) for item in power.swollen],
        "devices": [
            {
                "item": names.get(i, i),
                "item_id": i,
                "start_assumed": grounds([i], assessment.outing, power).start_assumed,
            }
            | {case: _device(day.devices[i]) for case, day in days.items()}
            for i in (first.devices if first else ())
        ],
        "banks": [
            {"item": names.get(i, i), "item_id": i} | {case: _bank(day.banks[i]) for case, day in days.items()}
            for i in (first.banks if first else ())
        ],
    }


def _device(device: DeviceResult) -> Mapping[str, object]:
    return {
        "first_off_h": device.first_off_h,
        "off_h": device.off_h,
        "on_at_end": device.on_at_end,
        "end_pct": _pct(device.soc_end),
        "margin_wh": device.margin_wh,
        "hours_more": device.hours_more,
    }


def _bank(bank: BankResult) -> Mapping[str, object]:
    return {
        "auto_off_h": bank.auto_off_h,
        "empty_h": bank.empty_h,
        "state_end": bank.state_end,
        "end_pct": _pct(bank.soc_end),
        "delivered_wh": bank.delivered_wh,
        "in_hand_wh": bank.in_hand_wh,
    }


def _pct(share: float | None) -> float | None:
    return None if share is None else 100 * share
