"""Findings about the service of what goes along."""

from collections.abc import Mapping
from dataclasses import dataclass

from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.due import Due, DueState
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Kind
from kitlog.outing.library import Library
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing
from kitlog.packing.assessment import Asked, ListLine
from kitlog.packing.fitness import CHECKED_KINDS, Fitness, open_state
from kitlog.packing.pairs import in_pair
from kitlog.packing.serving import last_resort, meets


@dataclass(frozen=True, slots=True)
class ServiceCase:
    """What the service findings are made from."""

    outing: Outing
    lines: tuple[ListLine, ...]
    asked: tuple[Asked, ...]
    fitness: Mapping[str, Fitness]
    library: Library


def service_findings(case: ServiceCase) -> list[Finding]:
    """What is open, recommended or not known about the service of what goes, one finding an item and rule.

    Of wing, harness and reserve without any rule nothing is known: they are named together.
    """
    judged = [
        _service(due, line, case)
        for line in case.lines
        for due in _dues(case.fitness[line.item.id])
        if not line.in_car and open_state(due, case.outing) is not State.FINE
    ]
    return [*_no_rules(case), *judged]


def _no_rules(case: ServiceCase) -> list[Finding]:
    items = tuple(
        line.item.id
        for line in case.lines
        if line.item.kind in CHECKED_KINDS and not case.fitness[line.item.id].dues and not line.in_car
    )
    if not items:
        return []
    return [
        Finding(
            code="service.no_rules",
            topic=Topic.KIT,
            state=State.NOT_KNOWN,
            sure=Sure.NOT_KNOWN,
            items=items,
            source="kit",
            remedies=(Remedy("take_rules", items[:1]),),
        )
    ]


def _dues(fit: Fitness) -> list[Due]:
    """The rules of the last day, and a stop of an earlier day that a record ends in between."""
    dues = list(fit.dues)
    if fit.open_stop is not None and fit.open_stop.rule_id not in {d.rule_id for d in dues if d.open}:
        dues.append(fit.open_stop)
    return dues


def _service(due: Due, line: ListLine, case: ServiceCase) -> Finding:
    return Finding(
        code=_CODES[due.state],
        topic=Topic.KIT,
        state=open_state(due, case.outing),
        subject=f"{line.item.id}:{due.rule}",
        figure=None if due.days_left is None else float(due.days_left),
        unit="d",
        margin=None if due.days_left is None else float(due.days_left),
        sure=Sure.NOT_KNOWN if due.state is DueState.NO_RECORD else Sure.ON_RECORD,
        items=(line.item.id,),
        source=due.rule,
        facts={"rule": due.rule, "due": due, "grounds": due.grounds.value},
        remedies=_remedies(due, line, case),
    )


_CODES = {
    DueState.OVERDUE: "service.overdue",
    DueState.DUE_SOON: "service.recommended_passed",
    DueState.RECOMMENDED_PASSED: "service.recommended_passed",
    DueState.NO_RECORD: "service.no_record",
}


def _remedies(due: Due, line: ListLine, case: ServiceCase) -> tuple[Remedy, ...]:
    """Swap for the next best, leave it at home where nothing needs it, else record what was done."""
    remedies: list[Remedy] = []
    if due.open:
        spare = _spare(line, case)
        if spare is not None and (line.item.kind not in SET_KINDS or open_state(due, case.outing) is State.STOP):
            remedies.append(Remedy("swap", (line.item.id, spare.id)))
        if _could_stay(line, case):
            remedies.append(Remedy("leave_at_home", (line.item.id,)))
    remedies.append(Remedy("record_service", (line.item.id,), {"rule": due.rule}))
    return tuple(remedies)


def _could_stay(line: ListLine, case: ServiceCase) -> bool:
    """Whether nothing needs it; what is of the set, of last resort or half of a pair is never offered."""
    needless = line.strength in {None, Strength.COMFORT} and line.item.kind not in SET_KINDS
    return needless and not last_resort(line.item, case.library) and not in_pair(line, case.lines)


def _spare(line: ListLine, case: ServiceCase) -> Item | None:
    """An item that can go, meets all that the line meets, and is fitted where the line's item is.

    A reserve must be fitted to the same harness; anything else may be fitted to nothing.
    """
    needs = [one.need for one in case.asked if one.need.id in line.needs]
    pieces = max((need.amount for need in needs), default=1)
    homes = {line.item.fitted_to} if line.item.kind is Kind.RESERVE else {None, line.item.fitted_to}
    on_list = {other.item.id for other in case.lines if not other.in_car}
    able = [
        fit.item
        for fit in case.fitness.values()
        if fit.can_go
        and not fit.overdue
        and fit.item.kind is line.item.kind
        and fit.item.id not in on_list
        and fit.item.quantity >= min(pieces, line.n)
        and fit.item.fitted_to in homes
        and all(meets(fit.item, need, case.library) for need in needs)
    ]
    return min(able, key=lambda item: item.mass_g or 0, default=None)
