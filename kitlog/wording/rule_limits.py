"""Words of service rules: limits, what an open one means."""

from collections.abc import Iterator

from kitlog.kit.service import Grounds, Limits
from kitlog.outing.library import StarterRule
from kitlog.wording.figures import day_text, number_text, with_unit
from kitlog.wording.translate import N_, _, ngettext
from kitlog.wording.words import word

WHILE_OPEN = {
    Grounds.YES: N_("stop until done"),
    Grounds.BY_LAW: N_("stop where law asks"),
    Grounds.NO: N_("look"),
}


def limits_of(rule: Limits | StarterRule) -> Iterator[str]:
    """Each limit of a rule in words."""
    if rule.recommended_months:
        yield _("advised {months}").format(months=_months(rule.recommended_months))
    if rule.months:
        yield _months(rule.months)
    if rule.hours is not None:
        yield with_unit(rule.hours, "h", 0 if rule.hours == int(rule.hours) else 1)
    if rule.launches is not None:
        yield ngettext("{n} launch", "{n} launches", rule.launches).format(n=number_text(rule.launches))
    if isinstance(rule, Limits) and rule.due_on:
        yield _("by {day}").format(day=day_text(rule.due_on))
    if rule.events:
        yield _after(", ".join(word(event) for event in rule.events), rule.event_days)


def _after(events: str, days: int) -> str:
    if not days:
        return _("after {events}").format(events=events)
    text = ngettext("within {n} day after {events}", "within {n} days after {events}", days)
    return text.format(n=days, events=events)


def _months(months: int) -> str:
    return ngettext("{n} month", "{n} months", months).format(n=months)
