"""Findings about the kit: needs unmet, and the service of what goes."""

from collections.abc import Iterable, Mapping
from datetime import datetime

from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.due import Due, DueState
from kitlog.kit.item import Item
from kitlog.kit.kinds import SET_KINDS, Kind
from kitlog.outing.library import Library
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing
from kitlog.packing.answers import check_answer, refuses
from kitlog.packing.assessment import Asked, ListLine, Missing, Truth
from kitlog.packing.choice import missing_state
from kitlog.packing.fitness import Fitness, open_state
from kitlog.packing.serving import meets


def missing_findings(missing: Iterable[Missing], truths: Iterable[Truth]) -> list[Finding]:
    """One finding for each unmet need that is more than comfort; an open condition that counts as yes is named."""
    still_open = frozenset(truth.condition.value for truth in truths if truth.counts_as_yes)
    return [_missing(one, still_open) for one in missing if one.state is not State.FINE]


def _missing(one: Missing, still_open: frozenset[str]) -> Finding:
    need = one.asked.need
    causes = (one.asked.raised_by.value if one.asked.raised_by else "", *one.asked.by)
    facts = {
        "need": need.id,
        "label": need.label,
        "strength": one.asked.strength.value,
        "why": need.why,
        "reason": one.reason,
        "have": one.have,
        "amount": need.amount,
        "by": one.asked.by,
        "open": next((cause for cause in causes if cause in still_open), ""),
    }
    return Finding(
        code="need.not_chosen" if one.state is State.NOT_KNOWN else "need.missing",
        topic=Topic.KIT,
        state=one.state,
        subject=need.id,
        figure=float(one.have),
        unit="pieces",
        margin=float(one.have - need.amount),
        items=one.instead,
        source="flight type",
        facts=facts,
        remedies=_missing_remedies(one),
    )


def _missing_remedies(one: Missing) -> tuple[Remedy, ...]:
    match one.reason:
        case "not chosen":
            return (Remedy("choose", one.instead),)
        case "left out":
            return (Remedy("take_along", one.instead[:1]),)
        case "stop open" | "overdue":
            return (Remedy("close_service", one.instead[:1]),)
        case "none owned":
            return (Remedy("borrow_or_buy", (), {"label": one.asked.need.label}),)
        case _:
            return (Remedy("fetch", one.instead[:1], {"reason": one.reason}),)


def check_findings(
    asked: Iterable[Asked], lines: Iterable[ListLine], outing: Outing, now: datetime, library: Library
) -> tuple[list[Finding], list[Missing]]:
    """Checks that needs ask for: unanswered is not known, answered with no is missing."""
    findings: list[Finding] = []
    missing: list[Missing] = []
    on_list = tuple(lines)
    for one in asked:
        if not one.need.check or _met_by_item(one, on_list, library):
            continue
        answer = check_answer(one, outing, now)
        if answer is None and one.strength is not Strength.COMFORT:
            findings.append(_unanswered(one))
        elif answer is not None and refuses(answer):
            missing.append(Missing(one, missing_state(one.strength), reason="answered no"))
    return findings, missing


def _met_by_item(asked: Asked, lines: Iterable[ListLine], library: Library) -> bool:
    need = asked.need
    return need.wants_item and any(meets(line.item, need, library) and not line.in_car for line in lines)


def _unanswered(asked: Asked) -> Finding:
    need = asked.need
    return Finding(
        code="check.not_answered",
        topic=Topic.KIT,
        state=State.NOT_KNOWN,
        subject=need.id,
        sure=Sure.NOT_KNOWN,
        source="flight type",
        facts={"label": need.label, "why": need.why, "check": need.check, "strength": asked.strength.value},
        remedies=(Remedy("answer", (), {"check": need.check}),),
    )


def service_findings(
    lines: Iterable[ListLine], outing: Outing, fitness: Mapping[str, Fitness], library: Library, asked: Iterable[Asked]
) -> list[Finding]:
    """What is open, recommended or not known about the service of what goes, one finding an item and rule."""
    needs = tuple(asked)
    return [
        _service(due, line, outing, _service_remedies(due, line, outing, fitness, needs, library))
        for line in lines
        for due in _dues(fitness[line.item.id])
        if not line.in_car and open_state(due, outing) is not State.FINE
    ]


def _dues(fit: Fitness) -> list[Due]:
    """The rules of the last day, and a stop of an earlier day that a record ends in between."""
    dues = list(fit.dues)
    if fit.open_stop is not None and fit.open_stop.rule_id not in {d.rule_id for d in dues if d.open}:
        dues.append(fit.open_stop)
    return dues


def _service(due: Due, line: ListLine, outing: Outing, remedies: tuple[Remedy, ...]) -> Finding:
    return Finding(
        code=_SERVICE_CODES[due.state],
        topic=Topic.KIT,
        state=open_state(due, outing),
        subject=f"{line.item.id}:{due.rule}",
        figure=None if due.days_left is None else float(due.days_left),
        unit="d",
        margin=None if due.days_left is None else float(due.days_left),
        sure=Sure.NOT_KNOWN if due.state is DueState.NO_RECORD else Sure.ON_RECORD,
        items=(line.item.id,),
        source=due.rule,
        facts={"rule": due.rule, "due": due, "grounds": due.grounds.value},
        remedies=remedies,
    )


_SERVICE_CODES = {
    DueState.OVERDUE: "service.overdue",
    DueState.RECOMMENDED_PASSED: "service.recommended_passed",
    DueState.NO_RECORD: "service.no_record",
}


def _service_remedies(
    due: Due,
    line: ListLine,
    outing: Outing,
    fitness: Mapping[str, Fitness],
    asked: tuple[Asked, ...],
    library: Library,
) -> tuple[Remedy, ...]:
    """Swap for the next best, leave it at home where nothing needs it, else record what was done."""
    remedies: list[Remedy] = []
    if due.open:
        spare = _spare(line, fitness, asked, library)
        if spare is not None and (line.item.kind not in SET_KINDS or open_state(due, outing) is State.STOP):
            remedies.append(Remedy("swap", (line.item.id, spare.id)))
        if line.strength in {None, Strength.COMFORT} and line.item.kind not in SET_KINDS and not line.fitted:
            remedies.append(Remedy("leave_at_home", (line.item.id,)))
    remedies.append(Remedy("record_service", (line.item.id,), {"rule": due.rule}))
    return tuple(remedies)


def _spare(line: ListLine, fitness: Mapping[str, Fitness], asked: tuple[Asked, ...], library: Library) -> Item | None:
    """An item that can go and meets all that the line meets; a reserve only if it is fitted to the same harness."""
    needs = [one.need for one in asked if one.need.id in line.needs]
    able = [
        fit.item
        for fit in fitness.values()
        if fit.can_go
        and not fit.overdue
        and fit.item.kind is line.item.kind
        and fit.item.id != line.item.id
        and all(meets(fit.item, need, library) for need in needs)
        and (line.item.kind is not Kind.RESERVE or fit.item.fitted_to == line.item.fitted_to)
    ]
    return min(able, key=lambda item: item.mass_g or 0, default=None)


def pinned_away_findings(outing: Outing, fitness: Mapping[str, Fitness]) -> list[Finding]:
    """Pinned items that are not at hand."""
    return [
        Finding(
            code="pin.not_at_hand",
            topic=Topic.KIT,
            state=State.LOOK,
            subject=pin.item,
            items=(pin.item,),
            source="kit",
            facts={"state": fitness[pin.item].item.state.value, "quantity": fitness[pin.item].item.quantity},
            remedies=(Remedy("fetch", (pin.item,), {"reason": fitness[pin.item].item.state.value}),),
        )
        for pin in outing.pinned
        if not fitness[pin.item].item.usable
    ]
