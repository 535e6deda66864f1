"""What happened to the kit: logged for several items at once, with the follow-ups that it opens."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from kitlog.fault import InputFault
from kitlog.kit.incidents import FollowUp, Incident, answers, follow_ups
from kitlog.kit.item import Item
from kitlog.kit.service import Event
from kitlog.workbench.incident_rows import incident_rows
from kitlog.workbench.service_commands import ServiceCommands

OTHER = "other"
"""The event that says nothing without its note."""


@dataclass(frozen=True, slots=True)
class Logged:
    """What was written of an incident."""

    incident: Incident
    events: tuple[Event, ...]
    follow_ups: tuple[FollowUp, ...]


class IncidentCommands(ServiceCommands):
    """Reads and writes about incidents; each write is one transaction and one undo step."""

    def incidents(self) -> tuple[Incident, ...]:
        """What can be logged: the library's, then events that only a rule of the pilot's own answers to."""
        known = {incident.name.casefold() for incident in self.library.incidents}
        known |= {incident.event.casefold() for incident in self.library.incidents}
        known |= {strike.event.casefold() for incident in self.library.incidents for strike in incident.strikes}
        known |= {event.casefold() for starter in self.library.starter_rules for event in starter.events}
        own = {event.casefold(): event for rule in self.rules() for event in rule.events}
        more = sorted(event for name, event in own.items() if name not in known)
        return (*self.library.incidents, *(_own(event) for event in more))

    def incident(self, name: str) -> Incident:
        """The incident of that name; events that a rule answers to can be named too.

        Raises:
            InputFault: ``incident.unknown`` with ``name`` and ``known``.
        """
        found = next((one for one in self.incidents() if one.name.casefold() == name.casefold()), None)
        if found is not None:
            return found
        event = next((e for rule in self.rules() for e in rule.events if e.casefold() == name.casefold()), None)
        if event is None:
            raise InputFault("incident.unknown", name=name, known=", ".join(one.name for one in self.incidents()))
        return _own(event)

    def can_strike(self, incident: Incident) -> tuple[Item, ...]:
        """The items that something like that can happen to, retired and lost ones left out.

        Those of a kind that it names, or with a rule that answers; all, where it names none.
        """
        kept = [item for item in self.items() if item.state not in {"retired", "lost"}]
        answering = {rule.item_id for rule in self.rules() if answers(rule, incident.event)}
        if not incident.strikes and not answering:
            return tuple(kept)
        return tuple(item for item in kept if incident.strike(item.kind) is not None or item.id in answering)

    def flown_then(self, on: date) -> tuple[str, ...]:
        """Ids of what was flown on a day, else on the last flight before it, and of what is fitted to that."""
        flights = [flight for flight in self.flights() if flight.until is None and flight.on <= on]
        last = max((flight.on for flight in flights), default=None)
        flown = [item_id for flight in flights if flight.on == last for item_id in flight.flown]
        fitted = [item.id for item in self.items() if item.fitted_to in flown]
        return tuple(dict.fromkeys((*flown, *fitted)))

    def fitted_too(self, incident: Incident, item_ids: Iterable[str], on: date) -> tuple[tuple[Item, Item], ...]:
        """What is fitted to some struck things and may have been struck too, each with what it is fitted to.

        Left out is what is among them, what such a thing cannot happen to, and what has the same event on that day.
        """
        if incident.event == OTHER:
            return ()
        struck = {item_id: self._known(item_id) for item_id in item_ids}
        told = {event.item_id for event in self.events() if event.on == on and _is_of(event, incident)}
        return tuple(
            (item, struck[item.fitted_to])
            for item in self.can_strike(incident)
            if item.fitted_to in struck and item.id not in struck and item.id not in told
        )

    def incident_follow_ups(self, incident: Incident, item_ids: Iterable[str], on: date) -> tuple[FollowUp, ...]:
        """What an incident of a day would open, without writing anything.

        Raises:
            InputFault: ``item.unknown``.
        """
        return follow_ups(incident, [self._known(item_id) for item_id in item_ids], self.rules(), self.records(), on)

    def log_incident(self, incident: Incident, item_ids: Sequence[str], on: date, note: str = "") -> Logged:
        """Log that something happened to some items, and open what follows from it.

        An item without the rule that the incident opens takes it from the starters, and one whose rule does not name
        such an event gets it added: both are told in the answer. Nothing else is put on.

        Raises:
            InputFault: ``event.in_future`` with ``day``; ``event.before_made`` with ``name``, ``day`` and ``made``;
                ``event.no_items``; ``event.no_note``: something else, and nobody knows what; ``item.unknown``.
        """
        if not item_ids:
            raise InputFault("event.no_items")
        if incident.event == OTHER and not note.strip():
            raise InputFault("event.no_note")
        if on > self.now().date():
            raise InputFault("event.in_future", day=on)
        for item in map(self._known, item_ids):
            if item.made_on is not None and on < item.made_on:
                raise InputFault("event.before_made", name=item.name, day=on, made=item.made_on)
        found = self.incident_follow_ups(incident, item_ids, on)
        rows = incident_rows(incident, found, self.library, on, note, self.new_id)
        facts = {"incident": incident.name, "item_id": item_ids[0], "count": len(found)}
        self._put("incident.log", rows, facts)
        return Logged(incident, tuple(row for row in rows if isinstance(row, Event)), found)

    def strike_event(self, event_id: str) -> None:
        """Strike an event through that was logged by mistake; it stays on record and opens nothing any more.

        Raises:
            InputFault: ``event.unknown``.
        """
        event = next((e for e in self.events() if e.id == event_id), None)
        if event is None:
            raise InputFault("event.unknown")
        struck = event.model_copy(update={"struck_at": event.struck_at or self.now()})
        self._write("event.strike", lambda w: w.put(struck), {"item_id": event.item_id, "kind": event.kind})


def _is_of(event: Event, incident: Incident) -> bool:
    """Whether an event that stands may be of such an incident."""
    kinds = {incident.event, *(strike.event for strike in incident.strikes)}
    return event.struck_at is None and event.kind in kinds


def _own(event: str) -> Incident:
    """An event that only rules on record know: it opens what answers to it."""
    return Incident(name=event, label=event, event=event, source="rules on record")
