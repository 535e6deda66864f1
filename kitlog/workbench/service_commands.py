"""What can be done about service: rules, records, events."""

from collections.abc import Iterable

from kitlog.fault import InputFault
from kitlog.kit.service import Event, ServiceRecord, ServiceRule
from kitlog.outing.library import StarterRule
from kitlog.workbench.flight_commands import FlightCommands


class ServiceCommands(FlightCommands):
    """Writes to the service book."""

    def save_rule(self, rule: ServiceRule) -> str:
        """Add or change a service rule."""
        self._write("rule.edit", lambda w: w.put(rule), {"rule": rule.rule})
        return rule.id

    def delete_rule(self, rule_id: str) -> None:
        """Delete a rule that no record satisfies yet; one with records can be marked as not applying.

        Raises:
            InputFault: ``rule.has_records`` with ``rule``; ``rule.unknown``.
        """
        rule = next((r for r in self.rules() if r.id == rule_id), None)
        if rule is None:
            raise InputFault("rule.unknown", rule=rule_id)
        if any(rule_id in record.rules for record in self.records()):
            raise InputFault("rule.has_records", rule=rule.rule)
        self._write("rule.delete", lambda w: w.remove(ServiceRule, rule_id, now=self.now()), {"rule": rule.rule})

    def take_starters(self, item_id: str, names: Iterable[str]) -> None:
        """Put starter rules that were offered onto an item; those with a typed date get theirs by `save_rule`.

        Raises:
            InputFault: ``rule.wants_a_date`` with ``rule``: a starter that is nothing but a date printed on the item.
        """
        wanted = frozenset(names)
        rules = [
            rule_from(starter, item_id, self.new_id())
            for starter in self.starters_for(item_id)
            if starter.name in wanted
        ]
        self._put("rule.take", rules, {"count": len(rules)})

    def add_record(self, record: ServiceRecord) -> str:
        """Record that a service was done.

        Raises:
            InputFault: ``record.in_future`` with ``day``; ``rule.unknown``: it is no rule of that item.
        """
        if record.done_on > self.now().date():
            raise InputFault("record.in_future", day=record.done_on)
        of_item = {rule.id for rule in self.rules() if rule.item_id == record.item_id}
        for rule_id in record.rules:
            if rule_id not in of_item:
                raise InputFault("rule.unknown", rule=rule_id)
        self._write("record.add", lambda w: w.put(record), {"item_id": record.item_id})
        return record.id

    def strike_record(self, record_id: str) -> None:
        """Strike a record through; it stays on record."""
        record = next((r for r in self.records() if r.id == record_id), None)
        if record is None:
            raise InputFault("record.unknown", name=record_id)
        struck = record.model_copy(update={"struck_at": self.now()})
        self._write("record.strike", lambda w: w.put(struck), {"item_id": record.item_id})

    def log_event(self, event: Event) -> str:
        """Log that something happened to an item; rules that answer to it are open from that day.

        Raises:
            InputFault: ``event.in_future`` with ``day``.
        """
        if event.on > self.now().date():
            raise InputFault("event.in_future", day=event.on)
        self._write("event.log", lambda w: w.put(event), {"item_id": event.item_id, "kind": event.kind})
        return event.id


def rule_from(starter: StarterRule, item_id: str, rule_id: str) -> ServiceRule:
    """A starter rule as a rule of one item; its source says that it is a starter.

    Raises:
        InputFault: ``rule.wants_a_date`` with ``rule``: it is nothing but a date that the pilot has to type.
    """
    limits = (starter.months, starter.recommended_months, starter.hours, starter.launches)
    if not starter.events and all(limit is None for limit in limits):
        raise InputFault("rule.wants_a_date", rule=starter.label)
    return ServiceRule(
        id=rule_id,
        item_id=item_id,
        rule=starter.name,
        months=starter.months,
        recommended_months=starter.recommended_months,
        hours=starter.hours,
        launches=starter.launches,
        events=starter.events,
        counts_from=starter.counts_from,
        ground_handling=starter.ground_handling,
        lead_days=starter.lead_days,
        grounds=starter.grounds,
        source=starter.source[:200],
    )
