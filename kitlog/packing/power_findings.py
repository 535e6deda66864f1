"""Findings about power: what lasts, whether the phone lives at the landing, whether something can call for help.

Margins to keep (common practice, no source): phone at the landing 30 % in the likely and 20 % in the high case; at the
end of the day 10 %; radio 20 % at the end.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from kitlog.budget.power.result import DayResult
from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay
from kitlog.outing.library import Library
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Asked, PowerDay
from kitlog.packing.capacity import energy_wh
from kitlog.packing.draws import left_open
from kitlog.packing.landing_charge import landing_pct, last_flight
from kitlog.packing.power_cautions import cautions_of
from kitlog.packing.power_day import NO_PHASES
from kitlog.packing.power_grounds import Grounds, grounds, seen_lower
from kitlog.packing.serving import serving

CALLS = "call for help"
KEEP_AT_END_PCT = {Kind.PHONE: 10.0, Kind.RADIO: 20.0}
HIGH_CASE_PCT = 20.0

SOON_H = 0.02
"""A bank that sleeps this soon after its time-out never had enough load, in h."""


@dataclass(frozen=True, slots=True)
class PowerCase:
    """What the power findings are made from; `grounded` are ids of items with an open stop or a swollen battery."""

    outing: Outing
    power: PowerDay
    items: tuple[Item, ...]
    library: Library
    now: datetime
    grounded: frozenset[str] = frozenset()

    @property
    def air_assumed(self) -> bool:
        """Whether the plan gives no air temperature for a stretch that is played through."""
        return any(phase.air_c is None and phase.high_h > 0 for phase in self.outing.phases)

    def end_of_use_h(self, item: Item, case: str) -> float:
        """When the last phase in which the item draws ends, in h from the start."""
        end = clock = 0.0
        for phase in self.outing.phases:
            clock += getattr(phase, case)
            draw = self.power.draws.get(item.id, {}).get(phase.name)
            if getattr(phase, case) > 0 and draw is not None and draw.likely_w > 0:
                end = clock
        return end


def power_findings(case: PowerCase, asked: Iterable[Asked]) -> list[Finding]:
    """One a device, one for the phone at the landing, one for the callers, one a bank that falls asleep; cautions."""
    power = case.power
    findings = [_not_known(item, case) for item in case.items if item.id in power.unknown]
    findings += _callers(case)
    findings += [*_no_way_home(case), *_no_flight(case)]
    assumed = frozenset(phase.name for phase in case.outing.phases if phase.air_c is None)
    findings += cautions_of(power.planned, power.likely, case.items, assumed)
    if power.likely is None or power.high is None:
        reason = [_nothing_simulated(power)] if power.reason == NO_PHASES else []
        return [*reason, *findings]
    findings += [_device(item, case) for item in case.items if item.id in power.likely.devices]
    findings += _phone_at_landing(case, asked)
    findings += [_sleeps(item, power.likely) for item in case.items if _fell_asleep(item, power.likely)]
    return findings


def _no_way_home(case: PowerCase) -> list[Finding]:
    """A plan that ends with the flight says nothing of the charge on the way home."""
    phases = [phase for phase in case.outing.phases if phase.high_h > 0]
    if not phases or phases[-1].way is not PhaseWay.FLIGHT:
        return []
    return [
        Finding(
            code="power.no_way_home",
            topic=Topic.POWER,
            state=State.NOT_KNOWN,
            sure=Sure.NOT_KNOWN,
            phase=phases[-1].name,
            source="outing",
            remedies=(Remedy("enter_phases"),),
        )
    ]


def _no_flight(case: PowerCase) -> list[Finding]:
    """Flights without a duration say nothing of the charge at the landing."""
    flights = [phase for phase in case.outing.phases if phase.way is PhaseWay.FLIGHT]
    if not flights or case.power.reason == NO_PHASES or any(phase.likely_h > 0 for phase in flights):
        return []
    return [
        Finding(
            code="power.no_flight",
            topic=Topic.POWER,
            state=State.NOT_KNOWN,
            sure=Sure.NOT_KNOWN,
            phase=flights[-1].name,
            source="outing",
            remedies=(Remedy("enter_phases"),),
        )
    ]


def _nothing_simulated(power: PowerDay) -> Finding:
    return Finding(
        code="power.no_phases",
        topic=Topic.POWER,
        state=State.NOT_KNOWN,
        sure=Sure.NOT_KNOWN,
        source="outing",
        facts={"reason": power.reason},
        remedies=(Remedy("enter_phases"),),
    )


def lacks_figures(code: str, item: Item) -> Finding:
    """A finding that is not known, as an item's energy or its draw is not on record; the remedy is to enter it."""
    battery = item.battery
    given = battery.given if battery else ""
    return Finding(
        code=code,
        topic=Topic.POWER,
        state=State.NOT_KNOWN,
        subject=item.id,
        sure=Sure.NOT_KNOWN,
        items=(item.id,),
        source="kit",
        facts={"given": given, "energy_wh": energy_wh(item)},
        remedies=(Remedy("enter_battery", (item.id,), {"given": given}),),
    )


def _not_known(item: Item, case: PowerCase) -> Finding:
    """Figures that are lacking; or phases of which nobody said what the item does in them, if that is all."""
    lacking = lacks_figures("power.not_known", item)
    phases = [phase for phase in case.outing.phases if left_open(item, phase, case.outing, case.library)]
    if lacking.facts["energy_wh"] is None or not phases:
        return lacking
    named = tuple(phase.name for phase in phases)
    facts = {**lacking.facts, "left_open": named}
    return replace(lacking, facts=facts, remedies=(Remedy("enter_use", (item.id,), {"left_open": named}),))


def _device(item: Item, case: PowerCase) -> Finding:
    likely, high = case.power.likely, case.power.high
    assert likely is not None  # noqa: S101  # checked by the caller, told to the type checker
    assert high is not None  # noqa: S101
    now, late = likely.devices[item.id], high.devices[item.id]
    keep = KEEP_AT_END_PCT.get(item.kind, 0.0)
    end_pct, end_high_pct = _percent(now.soc_end), _percent(late.soc_end)
    lasts = now.first_off_h is None and late.first_off_h is None
    fine = lasts and all(end is None or end >= keep for end in (end_pct, end_high_pct))
    short_likely = _short_h(item, now.first_off_h, "likely_h", case)
    short_high = _short_h(item, late.first_off_h, "high_h", case)
    short = short_likely or short_high
    rests = grounds((item.id,), case.outing, case.power)
    return Finding(
        code="power.device",
        topic=Topic.POWER,
        state=State.FINE if fine else State.LOOK,
        subject=item.id,
        figure=end_pct,
        unit="%",
        margin=-short if short else now.hours_more,
        sure=rests.sure,
        items=(item.id,),
        phase=_phase_at(now.first_off_h, "likely_h", case) or _phase_at(late.first_off_h, "high_h", case),
        source="simulated day",
        facts={
            "off_h_likely": now.first_off_h,
            "off_h_high": late.first_off_h,
            "short_h_likely": short_likely,
            "short_h_high": short_high,
            "end_pct_likely": end_pct,
            "end_pct_high": end_high_pct,
            "keep_pct": keep,
            "air_assumed": case.air_assumed,
            **_starts(rests, case),
        },
        remedies=() if fine else (Remedy("draw_less", (item.id,)),),
    )


def _starts(rests: Grounds, case: PowerCase) -> dict[str, object]:
    """Facts about charges at the start that are taken as full; `seen`: what was seen with less within a day."""
    return {
        "start_assumed": rests.start_assumed,
        "begin_full": rests.begin_full,
        "seen": seen_lower(rests.begin_full, case.items, case.now),
        "charging_planned": case.outing.evening is not None,
    }


def _percent(share: float | None) -> float | None:
    return None if share is None else 100 * share


def _short_h(item: Item, off_h: float | None, durations: str, case: PowerCase) -> float:
    """Hours from the first switch-off to the end of the last use, 0 if it lasts."""
    return 0.0 if off_h is None else max(0.0, case.end_of_use_h(item, durations) - off_h)


def _phase_at(hours: float | None, durations: str, case: PowerCase) -> str:
    if hours is None:
        return ""
    clock = 0.0
    for phase in case.outing.phases:
        clock += getattr(phase, durations)
        if hours < clock:
            return phase.name
    return case.outing.phases[-1].name


def _phone_at_landing(case: PowerCase, asked: Iterable[Asked]) -> list[Finding]:
    """The essential need that a phone shows enough charge at the landing."""
    wanted = next((one for one in asked if one.need.charge_pct is not None), None)
    landing = last_flight(case.outing.phases)
    uncounted = {*case.power.unknown, *case.grounded}
    phones = [item for item in case.items if item.kind is Kind.PHONE and item.id not in uncounted]
    if wanted is None or landing is None or not phones or _no_flight(case):
        return []
    names = [phone.id for phone in phones]
    rests = grounds(names, case.outing, case.power)
    likely = landing_pct(names, case.power.likely, case.outing.phases, "likely_h")
    high = landing_pct(names, case.power.high, case.outing.phases, "high_h")
    least = wanted.need.charge_pct or 0.0
    failing = State.STOP if wanted.strength is Strength.ESSENTIAL else State.LOOK
    state = failing if likely < least else State.LOOK if high < HIGH_CASE_PCT else State.FINE
    return [
        Finding(
            code="power.phone_at_landing",
            topic=Topic.POWER,
            state=state,
            figure=likely,
            unit="%",
            margin=likely - least,
            sure=rests.sure,
            items=tuple(phone.id for phone in phones),
            phase=case.outing.phases[landing].name,
            source="simulated day",
            facts={
                "least_pct": least,
                "least_high_pct": HIGH_CASE_PCT,
                "high_pct": high,
                "air_assumed": case.air_assumed,
                **_starts(rests, case),
            },
            remedies=() if state is State.FINE else (Remedy("draw_less", (phones[0].id,)),),
        )
    ]


def _callers(case: PowerCase) -> list[Finding]:
    """Whether something that can call for help is alive to the end; what is grounded or swollen does not count."""
    callers = [item for item in case.items if CALLS in serving(item, case.library).names]
    counting = [item for item in callers if item.id not in case.grounded]
    likely = [item.id for item in counting if _alive(item, case, case.power.likely)]
    high = [item.id for item in counting if _alive(item, case, case.power.high)]
    unknown = [item.id for item in counting if _alive_unknown(item, case)]
    state = _caller_state(likely, high, unknown)
    return [
        Finding(
            code="power.caller",
            topic=Topic.POWER,
            state=state,
            figure=float(len(likely)),
            unit="devices",
            margin=float(len(likely) - 1),
            sure=Sure.NOT_KNOWN if state is State.NOT_KNOWN else Sure.ESTIMATE,
            items=tuple(item.id for item in callers),
            source="simulated day",
            facts={
                "likely": tuple(likely),
                "high": tuple(high),
                "unknown": tuple(unknown),
                "swollen": tuple(item.id for item in callers if item.id in case.power.swollen),
                "stopped": tuple(i.id for i in callers if i.id in case.grounded and i.id not in case.power.swollen),
                "reason": case.power.reason,
            },
            remedies=_caller_remedies(state, unknown, case),
        )
    ]


def _caller_state(likely: Sequence[str], high: Sequence[str], unknown: Sequence[str]) -> State:
    if high:
        return State.FINE
    if likely:
        return State.LOOK
    return State.NOT_KNOWN if unknown else State.STOP


def _caller_remedies(state: State, unknown: Sequence[str], case: PowerCase) -> tuple[Remedy, ...]:
    if state is State.FINE:
        return ()
    if state is not State.NOT_KNOWN:
        return (Remedy("take_caller"),)
    lacking = [name for name in unknown if name in case.power.unknown and case.power.reason != NO_PHASES]
    return (Remedy("enter_battery", (lacking[0],)),) if lacking else (Remedy("enter_phases"),)


def _alive(item: Item, case: PowerCase, day: DayResult | None) -> bool:
    """Whether a caller lives at the end: a beacon sleeps until it is used, and what draws nothing stays as it is."""
    if _alive_unknown(item, case):
        return False
    return item.kind is Kind.BEACON or day is None or item.id not in day.devices or day.devices[item.id].on_at_end


def _alive_unknown(item: Item, case: PowerCase) -> bool:
    """Whether nothing can be said: it lacks figures, or the plan has no durations, so no end."""
    lacks = item.kind is not Kind.BEACON and item.id in case.power.unknown
    return lacks or case.power.reason == NO_PHASES


def _fell_asleep(item: Item, day: DayResult) -> bool:
    """Whether a bank will not stay awake: it falls asleep as soon as something is plugged in, or that goes off later.

    A bank that goes to sleep because all on it is full is no trouble.
    """
    asleep_h = day.banks[item.id].auto_off_h if item.id in day.banks else None
    if asleep_h is None:
        return False
    soon = ((item.bank.off_s if item.bank else None) or 30.0) / 3600 + SOON_H
    for device, course in day.device_courses.items():
        on_it = [span for span in course.plugged if span.what == item.id and span.from_h <= asleep_h <= span.to_h]
        off_h = day.devices[device].first_off_h
        if any(asleep_h - span.from_h <= soon for span in on_it) or (on_it and off_h is not None and off_h > asleep_h):
            return True
    return False


def _sleeps(item: Item, day: DayResult) -> Finding:
    return Finding(
        code="power.bank_sleeps",
        topic=Topic.POWER,
        state=State.LOOK,
        subject=item.id,
        figure=day.banks[item.id].auto_off_h,
        unit="h",
        sure=Sure.ESTIMATE,
        items=(item.id,),
        source="simulated day",
        facts={"min_w": item.bank.min_w if item.bank else None, "off_s": item.bank.off_s if item.bank else None},
        remedies=(Remedy("load_bank", (item.id,)),),
    )
