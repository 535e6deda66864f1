"""Findings about the kit: needs unmet, checks not answered, pins that are not at hand."""

from collections.abc import Iterable, Mapping
from datetime import datetime

from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.outing.library import Library
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing
from kitlog.packing.answers import check_answer, refuses
from kitlog.packing.assessment import Asked, ListLine, Missing, Truth
from kitlog.packing.choice import missing_state
from kitlog.packing.fitness import Fitness
from kitlog.packing.serving import meets
from kitlog.packing.why_not import OPEN_CHOICE


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
        code="need.not_chosen" if one.reason in OPEN_CHOICE else "need.missing",
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
        case "waits for the set" | "heavier":
            return ()
        case "left out" | "left in the car" | "not of the set":
            return (Remedy("take_along", one.instead[:1]),)
        case "stop open" | "overdue":
            return (Remedy("close_service", one.instead[:1]),)
        case "no water planned":
            return (Remedy("carry_water", (), {"more_ml": one.asked.need.water_ml or 0}),)
        case "answered no":
            return (Remedy("answer", (), {"check": one.asked.need.check}),)
        case "lent" | "away":
            return (Remedy("fetch", one.instead[:1], {"reason": one.reason}),)
        case _:
            return (Remedy("borrow_or_buy", (), {"label": one.asked.need.label}),)


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
        answer = check_answer(one, outing, now, library)
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


def pinned_away_findings(outing: Outing, fitness: Mapping[str, Fitness]) -> list[Finding]:
    """Pinned items that are not at hand."""
    pinned = (fitness[name].item for name in dict.fromkeys(pin.item for pin in outing.pinned))
    return [_away(item) for item in pinned if not item.usable]


def _away(item: Item) -> Finding:
    reason = "used up" if item.quantity == 0 else item.state.value
    back = Remedy("fetch", (item.id,), {"reason": reason})
    gone = Remedy("borrow_or_buy", (), {"label": item.name})
    return Finding(
        code="pin.not_at_hand",
        topic=Topic.KIT,
        state=State.LOOK,
        subject=item.id,
        items=(item.id,),
        source="kit",
        facts={"reason": reason, "state": item.state.value, "quantity": item.quantity},
        remedies=(back if item.state in {ItemState.AWAY, ItemState.LENT} and item.quantity else gone,),
    )
