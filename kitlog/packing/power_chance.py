"""The chance that matters: that the phone can still call at the end of the retrieve, as a finding.

It takes 10,000 days, so it is no part of an assessment: whoever has a forecast asks for it.
"""

from collections.abc import Iterable, Sequence

from kitlog.budget.power.chance import GOOD, Odds
from kitlog.budget.power.forecast import Forecast, OffHours
from kitlog.budget.result import Finding, State, Sure, Topic
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.packing.assessment import Assessment
from kitlog.packing.own_banks import carried
from kitlog.packing.power_findings import lacks_figures
from kitlog.packing.power_grounds import grounds

BAD = 0.80
"""From `GOOD` on the finding is fine, under `BAD` the wording is the worst. A choice, no source: one failed call in
five long days is a matter of the next flight."""

_RETRIEVE = frozenset({PhaseWay.PACK_UP, PhaseWay.WALK_OUT, PhaseWay.RIDE_HOME})


def chance_findings(assessment: Assessment, forecast: Forecast) -> tuple[Finding, ...]:
    """One a phone, and one for any device that can call, where there are several or a phone is not counted.

    The lower of the two bounds that hold 95 times of 100 decides over the state (`chance.Odds.within`), so that a first
    estimate is never more hopeful than the final one: fine from 95 %, else a look. It is never a stop: whether
    something that can call is alive is judged in the likely case (`power_findings`). The standard error is that of so
    many days drawn; how good the figures are that went in says `sure`, the weakest of them. Facts: odds, final, grade
    (good, thin, bad), off_by_5_pct_h, off_by_50_pct_h; not_measured: phases whose draw is not measured; fixed: phases
    without a range of hours; start_assumed: taken as full; air_assumed; ends: with what the plan ends.
    """
    phones = [item for item in carried(assessment) if item.kind is Kind.PHONE]
    stopped = [item for item in phones if item.id in assessment.grounded]
    reckoned = [item for item in phones if item.id in forecast.devices and item not in stopped]
    found = [_phone(item, assessment, forecast) for item in reckoned]
    unknown = [_not_counted(item, assessment) for item in stopped]
    lacking = [item for item in phones if item.id in assessment.power.unknown and item not in stopped]
    unknown += [lacks_figures("power.phone_can_call", item) for item in lacking]
    callers = _callers(assessment, forecast)
    if forecast.caller_alive is not None and (len(callers) > 1 or (callers and stopped)):
        found.append(_any_caller(forecast.caller_alive, callers, assessment, forecast))
    return (*found, *unknown)


def _not_counted(item: Item, assessment: Assessment) -> Finding:
    """A phone that is not to be taken can answer for nothing, whatever its charge."""
    return Finding(
        code="power.phone_can_call",
        topic=Topic.POWER,
        state=State.NOT_KNOWN,
        subject=item.id,
        sure=Sure.NOT_KNOWN,
        items=(item.id,),
        source="kit",
        facts={"not_counted": "swollen" if item.id in assessment.power.swollen else "stop open"},
    )


def _phone(item: Item, assessment: Assessment, forecast: Forecast) -> Finding:
    device = forecast.devices[item.id]
    return _finding("power.phone_can_call", item.id, device.alive_at_end, (item.id,), device.off, assessment, forecast)


def _any_caller(odds: Odds, callers: Sequence[str], assessment: Assessment, forecast: Forecast) -> Finding:
    never = OffHours(None, None, None)
    return _finding("power.any_can_call", "", odds, tuple(callers), never, assessment, forecast)


def _finding(
    code: str,
    subject: str,
    odds: Odds,
    items: tuple[str, ...],
    off: OffHours,
    assessment: Assessment,
    forecast: Forecast,
) -> Finding:
    low = odds.within[0]
    grade = "good" if low >= GOOD else "thin" if low >= BAD else "bad"
    rests = grounds(items, assessment.outing, assessment.power)
    return Finding(
        code=code,
        topic=Topic.POWER,
        state=State.FINE if grade == "good" else State.LOOK,
        subject=subject,
        figure=100 * odds.probability,
        unit="%",
        margin=100 * (low - GOOD),
        sure=rests.sure,
        items=items,
        source="simulated days",
        facts={
            "odds": odds,
            "final": forecast.is_final,
            "grade": grade,
            "off_by_5_pct_h": off.by_5_pct_h,
            "off_by_50_pct_h": off.by_50_pct_h,
            "not_measured": rests.not_measured,
            "fixed": rests.fixed,
            "start_assumed": rests.start_assumed,
            "air_assumed": rests.air_assumed,
            "ends": _ends(assessment),
        },
    )


def how_sure(items: Iterable[str], assessment: Assessment) -> Sure:
    """How sure figures of devices are: as the weakest of draws, starts, hours and air temperatures they rest on."""
    return grounds(items, assessment.outing, assessment.power).sure


def _ends(assessment: Assessment) -> str:
    """With what the plan ends: ``retrieve``, ``landing`` (no more is known of the way home then) or ``day``."""
    ways = [phase.way for phase in assessment.outing.phases if phase.high_h > 0]
    if ways and ways[-1] is PhaseWay.FLIGHT:
        return "landing"
    return "retrieve" if ways and ways[-1] in _RETRIEVE else "day"


def _callers(assessment: Assessment, forecast: Forecast) -> list[str]:
    """Simulated devices that can call for help, as the finding about them names them."""
    named = next((finding.items for finding in assessment.findings if finding.code == "power.caller"), ())
    return [name for name in named if name in forecast.devices and name not in assessment.grounded]
