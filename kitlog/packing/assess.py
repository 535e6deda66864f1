"""The one function that window, command line and sheets show: they can never disagree."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime

from kitlog.budget.result import Finding, worst_first
from kitlog.budget.weight import Load as MassLoad
from kitlog.budget.weight import mass_of, weigh
from kitlog.fault import InputFault
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.outing.conditions import Condition
from kitlog.outing.library import Library
from kitlog.outing.needs import FlightType
from kitlog.outing.outing import Outing, Override
from kitlog.packing.air_travel import air_findings, flying_items
from kitlog.packing.answers import questions
from kitlog.packing.asked import asked
from kitlog.packing.assessment import Assessment, ListLine, Truth
from kitlog.packing.battery_cautions import battery_cautions
from kitlog.packing.cable_cautions import port_cautions
from kitlog.packing.checked_remedies import with_checked_remedies
from kitlog.packing.choice import choose
from kitlog.packing.chosen_set import choose_set
from kitlog.packing.computed_remedies import settled, with_power_changes
from kitlog.packing.conditions import AIRFLOW_KMH, truths
from kitlog.packing.fitness import Fitness, fitness_of, grounded, next_due
from kitlog.packing.kit import History, Kit
from kitlog.packing.kit_findings import check_findings, missing_findings, pinned_away_findings
from kitlog.packing.loads import PASSENGER, absent_loads, body_load, loads_of, pilot_load
from kitlog.packing.naming import with_ids
from kitlog.packing.pairs import pair_findings
from kitlog.packing.people import people_findings
from kitlog.packing.plug_findings import idle_plug_findings
from kitlog.packing.power_day import power_day
from kitlog.packing.power_findings import PowerCase, power_findings
from kitlog.packing.service_findings import ServiceCase, service_findings
from kitlog.packing.suited import Suited
from kitlog.packing.water import water_findings
from kitlog.packing.weight_findings import WeightCase, weight_findings


@dataclass(frozen=True, slots=True)
class _Case:
    """What stays the same in one assessment: a remedy on trial changes what goes along, never the days or the kit."""

    kit: Kit
    library: Library
    history: History
    now: datetime
    suited: Suited
    fitness: Mapping[str, Fitness]


def assess(outing: Outing, kit: Kit, library: Library, history: History, now: datetime) -> Assessment:
    """All that an outing has to say.

    Args:
        outing: items named by id or unique name.
        kit: what the pilot has.
        library: the starters with the pilot's edits on top.
        history: what has been.
        now: an aware time, for answers that expire.

    Raises:
        InputFault: an unknown or ambiguous item, flight type or phase is named.
    """
    plan = with_ids(outing, kit.items)
    case = _case(plan, kit, library, history, now)
    judged = _judge(plan, case)
    items = {item.id: item for item in kit.items}
    judged = replace(judged, findings=with_power_changes(judged, kit.items, library))
    checked = with_checked_remedies(judged, lambda other: _judge(other, case), items, library)
    return replace(judged, findings=settled(checked))


def judge_of(
    outing: Outing, kit: Kit, library: Library, history: History, now: datetime
) -> Callable[[Outing], Assessment]:
    """Assesses other plans of an outing, which name items by id: all but the computed remedies, which take the time."""
    case = _case(outing, kit, library, history, now)
    return lambda other: _judge(other, case)


def _case(plan: Outing, kit: Kit, library: Library, history: History, now: datetime) -> _Case:
    return _Case(kit, library, history, now, Suited(kit.items, library), fitness_of(plan, kit, history, now.date()))


def _judge(plan: Outing, case: _Case) -> Assessment:
    kit, library, fitness = case.kit, case.library, case.fitness
    types = flight_types(plan, library)
    chosen = choose_set(plan, fitness, case.history.outings)
    conditions = truths(plan, types, _airflow_kmh(chosen.chosen))
    needs = asked(library, types, conditions)
    choice = choose(plan, needs, chosen, fitness, case.suited, library)
    lines = tuple(choice.load.lines.values())
    loads = _loads(plan, lines, kit, library, conditions)
    mass = weigh([*loads, *absent_loads(lines, chosen.open)])
    checked, refused = check_findings(needs, lines, plan, case.now, library)
    missing = (*choice.missing, *refused)
    power = power_day(plan, lines, library)
    findings = [
        *missing_findings(missing, conditions),
        *checked,
        *pinned_away_findings(plan, fitness),
        *pair_findings(lines, fitness),
        *service_findings(ServiceCase(plan, lines, needs, fitness, library)),
        *power_findings(PowerCase(plan, power, _along(lines), library, case.now, grounded(fitness)), needs),
        *port_cautions(power, _along(lines)),
        *battery_cautions(lines, needs, fitness, case.suited, plan.last_day),
        *_by_air(plan, lines, library, conditions),
        *weight_findings(
            WeightCase(mass, chosen.chosen, lines, needs, _holding(conditions), library, mass_of(loads, PASSENGER))
        ),
        *water_findings(lines, plan, needs),
        *people_findings(plan, needs, {truth.condition: truth for truth in conditions}),
    ]
    judged = Assessment(
        outing=plan,
        now=case.now,
        judged_on=plan.last_day,
        truths=conditions,
        asked=needs,
        lines=lines,
        missing=missing,
        passed_over=tuple(choice.passed_over),
        stays_home=_stays_home(kit, lines),
        chosen=chosen.chosen,
        findings=(),
        questions=questions(plan, library, conditions, chosen, case.now),
        mass=mass,
        power=power,
        grounded=grounded(fitness),
        next_due=next_due([due for item in _along(lines) for due in fitness[item.id].dues]),
    )
    findings += idle_plug_findings(judged, kit.items)
    return replace(judged, findings=worst_first(_with_overrides(findings, plan)))


def flight_types(outing: Outing, library: Library) -> tuple[FlightType, ...]:
    """The flight types of an outing.

    Raises:
        InputFault: ``outing.unknown_flight_type`` with ``name`` and the ``known`` ones.
    """
    found = []
    for name in outing.flight_types:
        flight_type = library.flight_type(name)
        if flight_type is None:
            known = tuple(t.name for t in library.flight_types)
            raise InputFault("outing.unknown_flight_type", name=name, known=known, field="flight_types")
        found.append(flight_type)
    return tuple(found)


def _by_air(
    plan: Outing, lines: tuple[ListLine, ...], library: Library, conditions: tuple[Truth, ...]
) -> list[Finding]:
    """What the rules of the day on which the outing begins say of its batteries."""
    if library.air_travel is None or Condition.BY_AIR not in _holding(conditions):
        return []
    return air_findings(flying_items(lines), library.air_travel, plan.first_day)


def _airflow_kmh(chosen: Mapping[Kind, Item]) -> float:
    item = chosen.get(Kind.WING)
    wing = item.wing if item else None
    return wing.trim_kmh if wing is not None and wing.trim_kmh else AIRFLOW_KMH


def _holding(conditions: tuple[Truth, ...]) -> frozenset[Condition]:
    return frozenset(truth.condition for truth in conditions if truth.holds)


def _loads(
    outing: Outing, lines: tuple[ListLine, ...], kit: Kit, library: Library, conditions: tuple[Truth, ...]
) -> list[MassLoad]:
    bodies: list[MassLoad] = [pilot_load(kit.pilot, outing.first_day)]
    if Condition.PASSENGER in _holding(conditions):
        bodies.append(body_load(PASSENGER, kit.passenger, outing.first_day))
    return loads_of(lines, outing.own_lines, bodies, library)


def _along(lines: tuple[ListLine, ...]) -> tuple[Item, ...]:
    return tuple(line.item for line in lines if not line.in_car)


def _stays_home(kit: Kit, lines: tuple[ListLine, ...]) -> tuple[str, ...]:
    going = {line.item.id for line in lines}
    return tuple(item.id for item in kit.items if item.usable and item.id not in going)


def _stands(override: Override) -> bool:
    """Whether it is on record with a reason and not struck."""
    return override.struck_at is None and bool(override.reason.strip())


def _with_overrides(findings: list[Finding], outing: Outing) -> list[Finding]:
    reasons = {o.finding: o.reason for o in sorted(outing.overrides, key=lambda o: o.at) if _stands(o)}
    return [replace(f, override=reasons[f.key]) if f.key in reasons else f for f in findings]
