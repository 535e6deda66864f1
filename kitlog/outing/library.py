"""The library: flight types, needs, what serves, kinds, places, starters and check lists; the pilot's edits on top."""

from functools import cached_property
from typing import Annotated

from pydantic import Field, field_validator

from kitlog.kit.facets import Share
from kitlog.kit.incidents import Incident
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, PhaseWay, Place, Zone
from kitlog.kit.service import CountsFrom, Grounds
from kitlog.outing.air_rules import AirRules
from kitlog.outing.conditions import Condition
from kitlog.outing.needs import FlightType, Need
from kitlog.outing.words import plain, says
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note


class Served(Frozen):
    """Something an item can do, and how it is guessed: from kinds, or from words in the name (any language shipped).

    Attributes:
        words: kept as `kitlog.outing.words.plain` gives them.
    """

    name: Name
    label: Name
    kinds: tuple[Kind, ...] = ()
    words: tuple[Name, ...] = ()

    @field_validator("words")
    @classmethod
    def _plain(cls, words: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(plain(word) for word in words)

    def guessed_from(self, kind: Kind, name: str) -> bool:
        """Whether kind or name suggest it; `name` as `plain` gives it."""
        return kind in self.kinds or any(says(name, word) for word in self.words)


class KindFacts(Frozen):
    """What is usual for a kind: plausible mass of one piece in g (outside it is asked about), zones, phases in use.

    Attributes:
        wh_band_g: for banks: plausible grams per Wh instead of a plain band.
        used_in: ways of moving in which a device of the kind draws, where nothing else is said.
        last_resort: never "unused", never left for mass.
        gone_at_landing: food: not there any more at the landing.
    """

    kind: Kind
    label: Name
    least_g: Annotated[int, Field(ge=0)]
    most_g: Annotated[int, Field(ge=0)]
    wh_band_g: tuple[float, float] | None = None
    zone: Zone
    zone_on_foot: Zone
    used_in: tuple[PhaseWay, ...] = ()
    place: Place | None = None
    last_resort: bool = False
    gone_at_landing: bool = False


class PlaceFacts(Frozen):
    """How much warmer than the air a device lies there, in K, on the cautious side; never above `most_c`."""

    place: Place
    label: Name
    offset_k: float
    most_c: float | None = None
    source: Line = ""


class StarterRule(Frozen):
    """A service rule offered for a kind, never applied behind the pilot's back.

    One without any limit (months, hours, launches, typed date, event) is only offered: the pilot types the limit.

    Attributes:
        name: ``wing.full``; months to grounds: as in a service rule.
        kinds, serves: items of one of these kinds, or that serve one of these things.
        typed: a date that the pilot types (printed expiry, paid to).
        source: where the figure comes from, with its grade.
    """

    name: Name
    label: Name
    kinds: tuple[Kind, ...] = ()
    serves: tuple[Name, ...] = ()
    months: int | None = None
    recommended_months: int | None = None
    hours: float | None = None
    launches: int | None = None
    typed: bool = False
    events: tuple[Name, ...] = ()
    event_days: Annotated[int, Field(ge=0, le=3_650)] = 0
    counts_from: CountsFrom = CountsFrom.RECORD
    ground_handling: bool = False
    lead_days: int = 0
    grounds: Grounds
    source: Name
    spread: Line = ""


class StarterUse(Frozen):
    """A starter way of use of a kind of device: W low, likely, high; always shown as not measured.

    Attributes:
        device: what sort of device, several ways of one kind and device belong together.
        shares: share of the time by way of moving; those of one kind and device add up to 1 in each way of moving.
            A way without shares is offered beside the usual ones.
    """

    kind: Kind
    device: Name
    name: Name
    low_w: Annotated[float, Field(ge=0)]
    likely_w: Annotated[float, Field(ge=0)]
    high_w: Annotated[float, Field(ge=0)]
    shares: tuple[Share, ...] = ()
    source: Name


class Check(Frozen):
    """One line of a check list.

    Attributes:
        id: ``empty.pockets``; moment: empty, charge, morning, launch, in flight, landing, afterwards; or plan, which
            is asked only where a need of the outing names the check.
        text: what to do, a short sentence; critical: needs an explicit answer each time.
        critical_when: critical only under one of these conditions; again: starts again after any interruption.
        only_when: asked only under one of these conditions; empty = always.
        label: short name where the check stands in a band of questions.
        question: a question to the pilot that stands above the tiles (weather, pilot, notices).
        zone: for the emptying: the pocket it is about.
    """

    id: Name
    moment: Name
    text: Note
    critical: bool = False
    critical_when: tuple[Condition, ...] = ()
    only_when: tuple[Condition, ...] = ()
    again: bool = False
    question: bool = False
    label: Line = ""
    zone: Zone | None = None


class Library(Frozen):
    """Everything that is data and not the pilot's kit.

    Attributes:
        base: needs of every flight; overlays: needs that a condition brings, whatever the type (`only_when`).
        air_travel: rules for batteries on a journey by air; None = nothing is said of it.
    """

    flight_types: tuple[FlightType, ...] = ()
    base: tuple[Need, ...] = ()
    overlays: tuple[Need, ...] = ()
    served: tuple[Served, ...] = ()
    kinds: tuple[KindFacts, ...] = ()
    places: tuple[PlaceFacts, ...] = ()
    starter_rules: tuple[StarterRule, ...] = ()
    starter_uses: tuple[StarterUse, ...] = ()
    incidents: tuple[Incident, ...] = ()
    checks: tuple[Check, ...] = ()
    air_travel: AirRules | None = None

    def flight_type(self, name: str) -> FlightType | None:
        """The flight type of that name, None if the library has none."""
        return next((t for t in self.flight_types if t.name == name), None)

    def facts(self, kind: Kind) -> KindFacts:
        """What is usual for a kind; every kind has its facts."""
        return next(f for f in self.kinds if f.kind is kind)

    def incident(self, name: str) -> Incident | None:
        """What can happen by that name, without regard to capitals; None if the library has none."""
        return next((one for one in self.incidents if one.name.casefold() == name.casefold()), None)

    def starter(self, name: str) -> StarterRule:
        """The starter rule of that name, which the library itself has named."""
        return next(starter for starter in self.starter_rules if starter.name == name)

    def served_by_name(self) -> dict[str, Served]:
        """The closed list of what items can do."""
        return {served.name: served for served in self.served}

    def guessed(self, item: Item) -> frozenset[str]:
        """What kind, name and model of an item suggest that it can do; only a guess."""
        served, known = self._guesses
        key = (item.kind, f"{item.name} {item.model}")
        if served is not self.served:  # a copy with other things served shares the notes of the first
            return self._guess(*key)
        if key not in known:
            known[key] = self._guess(*key)
        return known[key]

    def _guess(self, kind: Kind, name: str) -> frozenset[str]:
        text = plain(name)
        return frozenset(served.name for served in self.served if served.guessed_from(kind, text))

    @cached_property
    def _guesses(self) -> tuple[tuple[Served, ...], dict[tuple[Kind, str], frozenset[str]]]:
        """Guesses made so far: each need asks again for each item."""
        return self.served, {}

    def place(self, place: Place) -> PlaceFacts:
        """How warm a place is."""
        return next(p for p in self.places if p.place is place)
