"""What a rule may name as an event, from the library and the rules on record."""

from collections.abc import Iterable

from kitlog.kit.event_words import EventWords
from kitlog.kit.service import Limits
from kitlog.outing.library import Library


def event_words(library: Library, rules: Iterable[Limits]) -> EventWords:
    """What can be logged, and what starters and rules on record answer to already."""
    named = [events for one in (*library.starter_rules, *rules) for events in one.events]
    return EventWords(library.incidents, tuple(dict.fromkeys(named)))
