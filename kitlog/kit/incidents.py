"""Incidents: what can happen to the kit on a day out, and what each opens on each thing that it struck.

An incident is logged as one event an item. Rules that answer to that event are open from its day; where the item has no
such rule, it takes the one that the incident names, so that nothing that happened stays without a follow-up.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Protocol

from pydantic import Field

from kitlog.kit.kinds import Kind
from kitlog.kit.service import ServiceRecord, ServiceRule
from kitlog.units.model import Frozen
from kitlog.units.text import Name


class Strike(Frozen):
    """What an incident is to things of some kinds.

    Attributes:
        event: the event that is logged.
        rules: names of the starter rules that it opens.
        usual: whether such a thing is nearly always struck; else the pilot says so.
    """

    kinds: tuple[Kind, ...] = Field(min_length=1)
    event: Name
    rules: tuple[Name, ...] = ()
    usual: bool = True


class Incident(Frozen):
    """Something that can happen.

    Attributes:
        name: what it is called on the command line; label: what a person reads.
        event: the event logged of things that no strike names: it opens only what their own rules answer.
        source: where the follow-ups come from, with the grade.
    """

    name: Name
    label: Name
    event: Name
    strikes: tuple[Strike, ...] = ()
    source: Name

    def strike(self, kind: Kind) -> Strike | None:
        """What it is to things of a kind, None if nothing is said of them."""
        return next((strike for strike in self.strikes if kind in strike.kinds), None)


class Struck(Protocol):
    """A thing that was struck."""

    @property
    def id(self) -> str:
        """Its stable name inside the data file."""

    @property
    def kind(self) -> Kind:
        """What it is."""


@dataclass(frozen=True, slots=True)
class FollowUp:
    """What an incident opens on one item.

    Attributes:
        event: the event that is logged.
        opens: rules on record that answer to it.
        widens: rules on record that the incident is meant to open and that do not name its event yet.
        takes: names of the starter rules that the item has not.
        silent: rules that would answer, and of which the pilot said that they do not apply.
        answered: rules that answer to it, and the record of a later day that has answered it already.
    """

    item_id: str
    event: str
    opens: tuple[ServiceRule, ...] = ()
    widens: tuple[ServiceRule, ...] = ()
    takes: tuple[str, ...] = ()
    silent: tuple[ServiceRule, ...] = ()
    answered: tuple[tuple[ServiceRule, ServiceRecord], ...] = ()

    @property
    def nothing(self) -> bool:
        """Whether it stays in the history and opens nothing."""
        return not (self.opens or self.widens or self.takes or self.answered)


def follow_ups(
    incident: Incident,
    items: Iterable[Struck],
    rules: Sequence[ServiceRule],
    records: Iterable[ServiceRecord] = (),
    on: date | None = None,
) -> tuple[FollowUp, ...]:
    """What an incident opens on each of some items.

    Args:
        incident: what happened.
        items: what it happened to, each once.
        rules: the rules on record, of any item.
        records: the service records, of any item.
        on: the day on which it happened, None for a day that no record is later than.
    """
    once = {item.id: item for item in items}
    own: dict[str, list[ServiceRule]] = {}
    for rule in rules:
        if rule.item_id in once:
            own.setdefault(rule.item_id, []).append(rule)
    later = _later(records, on)
    return tuple(_follow_up(incident, item, own.get(item.id, []), later) for item in once.values())


def _later(records: Iterable[ServiceRecord], on: date | None) -> dict[str, ServiceRecord]:
    """By the ids of rules, a record that answers what happened on a day: passed, and of a later day."""
    if on is None:
        return {}
    good = [record for record in records if record.done_on > on and not record.failed and record.struck_at is None]
    return {rule_id: record for record in good for rule_id in record.rules}


def widened(rule: ServiceRule, event: str) -> ServiceRule:
    """The rule with one event more; it is the item's own then, no longer that of its model."""
    return rule.model_copy(update={"events": (*rule.events, event), "of_model": None})


def answers(rule: ServiceRule, event: str) -> bool:
    """Whether a rule answers to an event, without regard to capitals."""
    return event.casefold() in {kind.casefold() for kind in rule.events}


def _follow_up(
    incident: Incident, item: Struck, rules: Sequence[ServiceRule], later: Mapping[str, ServiceRecord]
) -> FollowUp:
    strike = incident.strike(item.kind)
    event = strike.event if strike else incident.event
    meant = strike.rules if strike else ()
    named = {event, incident.name}  # a rule of a harness may name the tree landing that is an impact to it
    concerned = [rule for rule in rules if rule.rule in meant or any(answers(rule, name) for name in named)]
    live = [rule for rule in concerned if rule.applies]
    answering = [rule for rule in live if answers(rule, event)]
    held = {rule.rule for rule in rules}
    return FollowUp(
        item_id=item.id,
        event=event,
        opens=tuple(rule for rule in answering if rule.id not in later),
        widens=tuple(rule for rule in live if not answers(rule, event)),
        takes=tuple(name for name in meant if name not in held),
        silent=tuple(rule for rule in concerned if not rule.applies),
        answered=tuple((rule, later[rule.id]) for rule in answering if rule.id in later),
    )
