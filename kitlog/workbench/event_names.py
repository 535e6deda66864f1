"""What a rule may name as an event, from the library and the rules on record."""

from collections.abc import Iterable

from kitlog.kit.event_words import EventWords
from kitlog.kit.service import Limits
from kitlog.outing.library import Library


def event_words(library: Library, rules: Iterable[Limits]) -> EventWords:
    """What can be logged, and what starters and rules on record answer to already."""
    named = [event for starter in library.starter_rules for event in starter.events]
    named += [event for rule in rules for event in rule.events]
    return EventWords(library.incidents, tuple(dict.fromkeys(named)))
