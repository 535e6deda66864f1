"""Findings about weight: the loads of an outing against wing, harness, reserve and the limits a flight type sets."""

from dataclasses import dataclass

from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.budget.weight import (
    PILOT,
    Fit,
    MassBalance,
    fit,
    harness_fit,
    least_fit,
    position_pct,
    reserve_fit,
)
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, MassSource
from kitlog.outing.conditions import Condition
from kitlog.outing.library import Library
from kitlog.outing.needs import Strength
from kitlog.packing.assessment import Asked, ListLine
from kitlog.packing.pairs import in_pair
from kitlog.packing.serving import last_resort

_LOOKS = frozenset({Fit.REACHES_OVER, Fit.REACHES_IN})


@dataclass(frozen=True, slots=True)
class WeightCase:
    """What the weight findings are made from; `passenger_g` is the passenger's body mass."""

    mass: MassBalance
    chosen: dict[Kind, Item]
    lines: tuple[ListLine, ...]
    asked: tuple[Asked, ...]
    holding: frozenset[Condition]
    library: Library
    passenger_g: int | None = None

    @property
    def sure(self) -> Sure:
        """How sure the sum is: as sure as its least sure mass."""
        sources = {line.item.mass_source for line in self.lines if not line.in_car and line.item.mass_g}
        if self.mass.unknown:
            return Sure.NOT_KNOWN
        if MassSource.GUESS in sources:
            return Sure.GUESS
        return Sure.MAKER if MassSource.MAKERS_FIGURE in sources else Sure.MEASURED

    def limit(self, name: str) -> Asked | None:
        """A limit that the flight type asks for."""
        return next((one for one in self.asked if one.need.limit == name), None)


def weight_findings(case: WeightCase) -> list[Finding]:
    """Range at take-off and landing, harness, reserve, and the limits that the flight type asks for."""
    findings = [
        _range("weight.takeoff_range", case.mass.take_off_g, case.mass.known_g, case),
        _range("weight.landing_range", case.mass.landing_g, case.mass.known_landing_g, case),
    ]
    if Kind.HARNESS in case.chosen:
        findings.append(_harness(case))
    if Kind.RESERVE in case.chosen:
        findings.append(_reserve(case))
    findings += [f for f in (_mid_range(case), _pack_share(case), _no_ballast(case)) if f is not None]
    return findings


def _range(code: str, mass_g: int | None, known_g: int, case: WeightCase) -> Finding:
    item = case.chosen.get(Kind.WING)
    wing = item.wing if item else None
    low, high = (wing.min_g, wing.max_g) if wing else (None, None)
    stands = fit(mass_g, low, high, case.mass.tolerance_g)
    if mass_g is None:
        stands = least_fit(known_g, high, case.mass.tolerance_g)
    margin = None if mass_g is None or low is None or high is None else min(mass_g - low, high - mass_g)
    facts = {
        "fit": stands.value,
        "low_g": low,
        "high_g": high,
        "known_g": known_g,
        "tolerance_g": case.mass.tolerance_g,
        "position_pct": position_pct(mass_g, wing),
        "unknown": case.mass.unknown,
    }
    return Finding(
        code=code,
        topic=Topic.WEIGHT,
        state=_state(stands, State.STOP),
        figure=None if mass_g is None else float(mass_g),
        unit="g",
        margin=None if margin is None else float(margin),
        sure=case.sure,
        items=(item.id,) if item else (),
        source="certified range",
        facts=facts,
        remedies=_range_remedies(stands, mass_g, low, high, case),
    )


def _state(stands: Fit, outside: State) -> State:
    if stands is Fit.OUTSIDE:
        return outside
    if stands in _LOOKS:
        return State.LOOK
    return State.NOT_KNOWN if stands is Fit.NOT_KNOWN else State.FINE


def _range_remedies(
    stands: Fit, mass_g: int | None, low: int | None, high: int | None, case: WeightCase
) -> tuple[Remedy, ...]:
    if stands is Fit.INSIDE:
        return ()
    if mass_g is None or low is None or high is None:
        return _figures_wanted(case, low, high)
    remedies = list(_sharper(case))
    if mass_g < low + case.mass.tolerance_g and Condition.WATER not in case.holding and not case.limit("no_ballast"):
        remedies.append(Remedy("ballast", (), {"mass_g": round(low + case.mass.tolerance_g - mass_g)}))
    if mass_g > high - case.mass.tolerance_g:
        remedies += _lighter(case)
    return tuple(remedies)


def _figures_wanted(case: WeightCase, low: int | None, high: int | None) -> tuple[Remedy, ...]:
    remedies = [Remedy("weigh_body")] if PILOT in case.mass.unknown else []
    there = {line.item.id for line in case.lines}
    items = tuple(name for name in case.mass.unknown if name in there)
    if items:
        remedies.append(Remedy("weigh", items))
    if Kind.WING in case.chosen and (low is None or high is None):
        remedies.append(Remedy("enter_range", (case.chosen[Kind.WING].id,)))
    return tuple(remedies)


def _sharper(case: WeightCase) -> tuple[Remedy, ...]:
    sharpen = case.mass.sharpen
    if sharpen is None:
        return ()
    if sharpen.id == PILOT:
        return (Remedy("weigh_body", (), {"by_g": sharpen.by_g}),)
    return (Remedy("weigh", (sharpen.id,), {"by_g": sharpen.by_g}),)


def _lighter(case: WeightCase) -> list[Remedy]:
    """The heaviest things that nothing essential or advised needs; last resort and pairs are not offered."""
    spare = [
        line
        for line in case.lines
        if line.strength in {None, Strength.COMFORT} and not line.in_car and line.mass_g
        if not last_resort(line.item, case.library) and not in_pair(line, case.lines)
    ]
    heaviest = sorted(spare, key=lambda line: -(line.mass_g or 0))[:2]
    return [Remedy("leave_at_home", (line.item.id,), {"mass_g": line.mass_g}) for line in heaviest]


def _harness(case: WeightCase) -> Finding:
    """What hangs in the pilot's harness: all but the wing, and a passenger, who hangs in another."""
    item = case.chosen[Kind.HARNESS]
    passenger_g = case.passenger_g or 0
    hanging, known = _less(_hanging(case), passenger_g), _known_hanging(case) - passenger_g
    high = item.harness.max_g if item.harness else None
    stands = harness_fit(hanging, item.harness, case.mass.tolerance_g)
    if hanging is None:
        stands = least_fit(known, high, case.mass.tolerance_g)
    return Finding(
        code="weight.harness",
        topic=Topic.WEIGHT,
        state=_state(stands, State.STOP),
        figure=None if hanging is None else float(hanging),
        unit="g",
        margin=None if hanging is None or high is None else float(high - hanging),
        sure=case.sure,
        items=(item.id,),
        source="maker's figure",
        facts={
            "fit": stands.value,
            "high_g": high,
            "known_g": known,
            "without_harness_g": _less(hanging, item.mass_g),
        },
        remedies=() if high is not None else (Remedy("enter_harness_limit", (item.id,)),),
    )


def _hanging(case: WeightCase) -> int | None:
    """Take-off mass less the wing, None where either is not known."""
    wing = case.chosen.get(Kind.WING)
    return case.mass.without(wing.mass_g if wing else None)


def _known_hanging(case: WeightCase) -> int:
    """What is known of the take-off mass less the wing."""
    wing = next((line for line in case.lines if line.item.kind is Kind.WING and not line.in_car), None)
    return case.mass.known_g - ((wing.mass_g or 0) if wing else 0)


def _less(mass_g: int | None, other_g: int | None) -> int | None:
    return None if mass_g is None or other_g is None else mass_g - other_g


def _reserve(case: WeightCase) -> Finding:
    item, without = case.chosen[Kind.RESERVE], _hanging(case)
    load = reserve_fit(case.mass.take_off_g, without, item.reserve, case.mass.tolerance_g)
    high = item.reserve.max_g if item.reserve else None
    state = _state(load.without_wing, State.STOP)
    if without is None:
        state = _state(least_fit(_known_hanging(case), high, case.mass.tolerance_g), State.STOP)
    if state is State.FINE and (load.with_wing is not Fit.INSIDE or load.below_min):
        state = State.LOOK
    return Finding(
        code="weight.reserve",
        topic=Topic.WEIGHT,
        state=state,
        figure=None if without is None else float(without),
        unit="g",
        margin=None if without is None or high is None else float(high - without),
        sure=case.sure,
        items=(item.id,),
        source="printed load",
        facts={
            "with_wing_g": load.with_wing_g,
            "without_wing_g": without,
            "known_g": _known_hanging(case),
            "high_g": high,
            "low_g": item.reserve.min_g if item.reserve else None,
            "with_wing": load.with_wing.value,
            "without_wing": load.without_wing.value,
            "below_min": load.below_min,
        },
        remedies=() if high is not None else (Remedy("enter_reserve_limit", (item.id,)),),
    )


def _mid_range(case: WeightCase) -> Finding | None:
    limit, item = case.limit("mid_range"), case.chosen.get(Kind.WING)
    position = position_pct(case.mass.take_off_g, item.wing if item else None)
    if limit is None or limit.need.limit_low is None or limit.need.limit_high is None:
        return None
    low, high = limit.need.limit_low, limit.need.limit_high
    inside = position is not None and low <= position <= high
    return Finding(
        code="weight.mid_range",
        topic=Topic.WEIGHT,
        state=State.NOT_KNOWN if position is None else State.FINE if inside else State.LOOK,
        figure=position,
        unit="%",
        margin=None if position is None else min(position - low, high - position),
        sure=case.sure,
        items=(item.id,) if item else (),
        source="flight type",
        facts={"low_pct": low, "high_pct": high, "why": limit.need.why},
    )


def _pack_share(case: WeightCase) -> Finding | None:
    limit = case.limit("pack_share")
    if limit is None or limit.need.limit_high is None:
        return None
    body = case.mass.pilot_g
    share = None if not body or case.mass.unknown else 100 * case.mass.pack_g / body
    high = limit.need.limit_high
    return Finding(
        code="weight.pack_share",
        topic=Topic.WEIGHT,
        state=State.NOT_KNOWN if share is None else State.FINE if share <= high else State.LOOK,
        figure=share,
        unit="%",
        margin=None if share is None else high - share,
        sure=case.sure,
        source="common practice",
        facts={"high_pct": high, "pack_g": case.mass.pack_g, "why": limit.need.why},
        remedies=tuple(_lighter(case)) if share is not None and share > high else (),
    )


def _no_ballast(case: WeightCase) -> Finding | None:
    limit = case.limit("no_ballast")
    ballast = [line for line in case.lines if line.item.kind is Kind.BALLAST and not line.in_car]
    if limit is None or not ballast:
        return None
    ids = tuple(line.item.id for line in ballast)
    return Finding(
        code="weight.no_ballast",
        topic=Topic.WEIGHT,
        state=State.LOOK,
        items=ids,
        source="flight type",
        facts={"why": limit.need.why},
        remedies=(Remedy("leave_at_home", ids[:1]),),
    )
