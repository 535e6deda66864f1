"""A plan with other durations, as far as its power: what a picture shows while an edge is dragged."""

from dataclasses import replace

from kitlog.budget.result import Finding, worst_first
from kitlog.outing.library import Library
from kitlog.outing.outing import Outing, Phase
from kitlog.packing.assessment import Assessment
from kitlog.packing.power_day import power_day
from kitlog.packing.power_findings import PowerCase, power_findings

LONGEST_H = 240.0
"""No phase is longer (`outing.Hours`)."""


def with_likely(outing: Outing, number: int, likely_h: float) -> Outing:
    """The outing with another likely duration of one phase; low and high keep their distance, as far as they can.

    Args:
        outing: the plan.
        number: of the phase, from 0.
        likely_h: h; moved into 0 to 240 h less the distance of high.
    """
    phase = outing.phases[number]
    below_h, above_h = phase.likely_h - phase.low_h, phase.high_h - phase.likely_h
    likely_h = min(max(likely_h, 0.0), LONGEST_H - above_h)
    low_h, high_h = max(likely_h - below_h, 0.0), min(likely_h + above_h, LONGEST_H)
    moved = Phase.model_validate(phase.model_dump() | {"low_h": low_h, "likely_h": likely_h, "high_h": high_h})
    phases = (*outing.phases[:number], moved, *outing.phases[number + 1 :])
    return outing.model_copy(update={"phases": phases})


def redrawn(assessment: Assessment, outing: Outing, library: Library) -> Assessment:
    """An assessment with the days of a plan in which only durations are others, and the findings about its power.

    All else stands as it was: the list is not chosen anew, other findings are not judged anew, no changes are weighed.

    Raises:
        InputFault: the day contradicts itself (`power_day`).
    """
    tried = replace(assessment, outing=outing, power=power_day(outing, assessment.lines, library))
    before = {finding.key for finding in _of_power(assessment, library)}
    others = [finding for finding in assessment.findings if finding.key not in before]
    reasons = {finding.key: finding.override for finding in assessment.findings}
    fresh = [replace(finding, override=reasons.get(finding.key, "")) for finding in _of_power(tried, library)]
    return replace(tried, findings=worst_first([*others, *fresh]))


def _of_power(assessment: Assessment, library: Library) -> list[Finding]:
    """What its simulated days say; batteries, ports and the rules of airlines are the same whatever the hours."""
    along = tuple(line.item for line in assessment.lines if not line.in_car)
    case = PowerCase(assessment.outing, assessment.power, along, library, assessment.now, assessment.grounded)
    return power_findings(case, assessment.asked)
