"""The words of events: those that a rule may name, and what the pilot entered when one was logged."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from kitlog.kit.incidents import Incident
from kitlog.kit.kinds import Kind
from kitlog.kit.service import Event

ANYTHING = "other"
"""The event that says nothing without its note; no rule can answer to it."""

_ENTERED = re.compile(r"\[([^\[\]\n]+)\]\s*")
"""How the note of an event begins where the pilot entered something else than the event that it is to this thing."""


def noted(incident: Incident, event: str, note: str) -> str:
    """The note of an event, with what was entered before it where the event alone would not tell: a tree landing."""
    if incident.name.casefold() == event.casefold():
        return note
    return f"[{incident.label}] {note}".rstrip()


def entered(event: Event) -> tuple[str, str]:
    """What the pilot entered (the label of an incident, else the event), and the note without it."""
    found = _ENTERED.match(event.note)
    return (event.kind, event.note) if found is None else (found[1], event.note[found.end() :])


@dataclass(frozen=True, slots=True)
class EventWords:
    """What is known as an event.

    Attributes:
        incidents: what can be logged.
        events: further events that rules on record or starters answer to.
    """

    incidents: tuple[Incident, ...]
    events: tuple[str, ...]

    def event(self, word: str, kind: Kind) -> str:
        """The event that a word means for a thing of some kind; empty where nobody would ever log it.

        The name or label of an incident stands for the event that it logs of such a thing: a tree landing is an
        impact to a harness.
        """
        wanted = " ".join(word.split()).casefold()
        for incident in self.incidents:
            if wanted in {incident.name.casefold(), incident.label.casefold()} and incident.event != ANYTHING:
                strike = incident.strike(kind)
                return strike.event if strike else incident.event
        return next((event for event in self._events() if event.casefold() == wanted), "")

    def known(self, kind: Kind) -> tuple[str, ...]:
        """The events that can be logged of a thing of some kind, and those that rules name, each once, by name."""
        strikes = (incident.strike(kind) for incident in self.incidents)
        logged = {strike.event for strike in strikes if strike}
        return tuple(sorted(logged or set(self._events())))

    def _events(self) -> Iterable[str]:
        for incident in self.incidents:
            if incident.event != ANYTHING:
                yield incident.event
                yield from (strike.event for strike in incident.strikes)
        yield from self.events
