"""People: who knows, who flies along, who fetches. kitlog itself alarms nobody."""

from collections.abc import Iterable, Mapping

from kitlog.budget.result import Finding, Remedy, State, Sure, Topic
from kitlog.outing.conditions import Condition
from kitlog.outing.needs import Strength
from kitlog.outing.outing import Outing, Role
from kitlog.packing.assessment import Asked, Truth
from kitlog.packing.choice import missing_state


def people_findings(outing: Outing, asked: Iterable[Asked], truths: Mapping[Condition, Truth]) -> list[Finding]:
    """Persons that needs ask for, and whether the contact has been told."""
    findings = [_person(one, outing) for one in asked if one.need.roles]
    contacts = [person for person in outing.people if person.role is Role.CONTACT]
    if contacts:
        told = [person for person in contacts if person.told_at is not None]
        alone = truths[Condition.ALONE].holds
        untold = State.STOP if alone else State.LOOK
        findings.append(
            Finding(
                code="people.told" if told else "people.nobody_told",
                topic=Topic.PEOPLE,
                state=State.FINE if told else untold,
                figure=float(len(told)),
                unit="people",
                margin=float(len(told) - 1),
                source="outing",
                facts={"names": tuple(p.name for p in told or contacts), "alone": alone},
                remedies=() if told else (Remedy("tell_contact", (), {"name": contacts[0].name}),),
            )
        )
    return findings


def _person(asked: Asked, outing: Outing) -> Finding:
    need = asked.need
    there = [person for person in outing.people if person.role in need.roles]
    met = len(there) >= need.amount
    missing = State.FINE if asked.strength is Strength.COMFORT else missing_state(asked.strength)
    return Finding(
        code="people.there" if met else "people.missing",
        topic=Topic.PEOPLE,
        state=State.FINE if met else missing,
        subject=need.id,
        figure=float(len(there)),
        unit="people",
        margin=float(len(there) - need.amount),
        sure=Sure.ON_RECORD,
        source="flight type",
        facts={"label": need.label, "why": need.why, "names": tuple(p.name for p in there)},
        remedies=() if met else (Remedy("name_person", (), {"role": need.roles[0].value}),),
    )
