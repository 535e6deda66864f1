"""The chance that matters: that the phone can still call at the end of the retrieve, as a finding.

It takes 10,000 days, so it is no part of an assessment: whoever has a forecast asks for it.
"""

from collections.abc import Iterable, Mapping, Sequence

from kitlog.budget.power.chance import GOOD, Odds
from kitlog.budget.power.forecast import Forecast, OffHours
from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.packing.assessment import Assessment
from kitlog.packing.own_banks import carried
from kitlog.packing.power_findings import SURE_OF

BAD = 0.80
"""From `GOOD` on the finding is fine, under `BAD` the wording is the worst. A choice, no source: one failed call in
five long days is a matter of the next flight."""

_RETRIEVE = frozenset({PhaseWay.PACK_UP, PhaseWay.WALK_OUT, PhaseWay.RIDE_HOME})


def chance_findings(assessment: Assessment, forecast: Forecast) -> tuple[Finding, ...]:
    """One a phone, and one for any device that can call, where there are several.

    The lower of the two bounds that hold 95 times of 100 decides over the state (`chance.Odds.within`), so that a first
    estimate is never more hopeful than the final one: fine from 95 %, else a look. It is never a stop: whether
    something that can call is alive is judged in the likely case (`power_findings`). The standard error is that of so
    many days drawn; how good the figures are that went in says `sure`, the weakest of them. Facts: odds, final, grade
    (good, thin, bad), off_by_5_pct_h, off_by_50_pct_h; not_measured: phases whose draw is not measured; fixed: phases
    without a range of hours; start_assumed: taken as full; air_assumed; retrieve: whether the day ends on the way home.
    """
    phones = [item for item in carried(assessment) if item.kind is Kind.PHONE]
    found = [_phone(item, assessment, forecast) for item in phones if item.id in forecast.devices]
    unknown = [_not_known(item) for item in phones if item.id in assessment.power.unknown]
    callers = _callers(assessment, forecast)
    if forecast.caller_alive is not None and len(callers) > 1:
        found.append(_any_caller(forecast.caller_alive, callers, assessment, forecast))
    return (*found, *unknown)


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
    rests = _rests_on(items, assessment)
    return Finding(
        code=code,
        topic=Topic.POWER,
        state=State.FINE if grade == "good" else State.LOOK,
        subject=subject,
        figure=100 * odds.probability,
        unit="%",
        margin=100 * (low - GOOD),
        sure=_sure(items, assessment, rests),
        items=items,
        source="simulated days",
        facts={
            "odds": odds,
            "final": forecast.is_final,
            "grade": grade,
            "off_by_5_pct_h": off.by_5_pct_h,
            "off_by_50_pct_h": off.by_50_pct_h,
            **rests,
        },
    )


def how_sure(items: Iterable[str], assessment: Assessment) -> Sure:
    """How sure figures of devices are: as the weakest of draws, starts, hours and air temperatures they rest on."""
    names = tuple(items)
    return _sure(names, assessment, _rests_on(names, assessment))


def _rests_on(items: Iterable[str], assessment: Assessment) -> dict[str, object]:
    outing, draws = assessment.outing, assessment.power.draws
    phases = [phase for phase in outing.phases if phase.high_h > 0]
    started = {start.item for start in outing.starts}
    unmeasured = {
        name for item in items for name, draw in draws.get(item, {}).items() if SURE_OF[draw.basis] is not Sure.MEASURED
    }
    return {
        "not_measured": tuple(phase.name for phase in phases if phase.name in unmeasured),
        "fixed": tuple(phase.name for phase in phases if phase.low_h == phase.high_h),
        "start_assumed": any(item not in started for item in items),
        "air_assumed": any(phase.air_c is None for phase in phases),
        "retrieve": bool(phases) and phases[-1].way in _RETRIEVE,
    }


def _sure(items: Iterable[str], assessment: Assessment, rests: Mapping[str, object]) -> Sure:
    """As sure as the weakest of what it rests on: what was not told is an estimate, an air temperature a guess."""
    draws = (draw for item in items for draw in assessment.power.draws.get(item, {}).values())
    bases = [SURE_OF[draw.basis] for draw in draws]
    told = Sure.GUESS if rests["air_assumed"] or not bases else Sure.MEASURED
    estimated = Sure.ESTIMATE if rests["start_assumed"] or rests["fixed"] else Sure.MEASURED
    return max((*bases, told, estimated), key=[*Sure].index)


def _callers(assessment: Assessment, forecast: Forecast) -> list[str]:
    """Simulated devices that can call for help, as the finding about them names them."""
    named = next((finding.items for finding in assessment.findings if finding.code == "power.caller"), ())
    return [name for name in named if name in forecast.devices and name not in assessment.grounded]


def _not_known(item: Item) -> Finding:
    return Finding(
        code="power.phone_can_call",
        topic=Topic.POWER,
        state=State.NOT_KNOWN,
        subject=item.id,
        sure=Sure.NOT_KNOWN,
        items=(item.id,),
        source="kit",
        remedies=(Remedy("enter_battery", (item.id,), {"given": item.battery.given if item.battery else ""}),),
    )
