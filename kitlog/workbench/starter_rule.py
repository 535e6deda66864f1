"""A starter rule made into a rule of one item."""

from kitlog.fault import InputFault
from kitlog.kit.service import ServiceRule
from kitlog.outing.library import StarterRule


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
        event_days=starter.event_days,
        counts_from=starter.counts_from,
        ground_handling=starter.ground_handling,
        lead_days=starter.lead_days,
        grounds=starter.grounds,
        source=starter.source[:200],
    )
