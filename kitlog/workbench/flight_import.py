"""Flights from recordings: what files hold, what was flown, and what the pilot makes of it; nothing counts before that.

source = bench.flight_source()
proposals = list(read_flights(source, paths))        # on any thread; nothing is written
bench.import_flights([Confirmed(p) for p in proposals if p.is_plain], proposals)   # one undo step
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from math import cos, hypot, radians
from pathlib import Path
from typing import TYPE_CHECKING

from pydantic import ValidationError

from kitlog.fault import InputFault
from kitlog.kit.flight_questions import in_totals, span_of
from kitlog.kit.flight_times import clock_of
from kitlog.kit.flights import DAY_MIN, Flight
from kitlog.kit.recordings.found import FlightFound
from kitlog.kit.recordings.outcome import Outcome, Reason, Status
from kitlog.kit.recordings.sieve import Logged
from kitlog.kit.recordings.track import M_PER_DEG
from kitlog.outing.outing import Site
from kitlog.packing.flown_set import NOTHING, ChosenBy, FlownSet, FlownSets
from kitlog.units.refused import refused
from kitlog.workbench.flight_commands import FlightCommands

if TYPE_CHECKING:
    from kitlog.files.recordings.read_batch import Progress

SITE_M = 2_000.0
"""A take-off this near to a site of an outing is there (common practice, no source)."""
LOWEST_M, HIGHEST_M = -1_000, 50_000
SECOND = frozenset({"recording.same_flight", "recording.same_flight_longer"})
"""Why a recording is a second one of a flight, not the very same."""


@dataclass(frozen=True, slots=True)
class FlightSource:
    """What recordings are held against, as it is now; it may be used on another thread.

    Attributes:
        logged: the log as recordings see it; by_hand: its flights without both times; sets: proposes what was flown.
        sites: those of the outings; now: the present moment; wings: ids of the items that are wings.
    """

    logged: tuple[Logged, ...]
    by_hand: tuple[Flight, ...]
    sets: FlownSets
    sites: tuple[Site, ...]
    now: datetime
    wings: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Proposal:
    """One file: what became of it, and for a flight what it would be booked on.

    Attributes:
        outcome: of the file; booked: what was flown; site: name of where, empty if not known.
        notes: what should be known besides, as codes.
    """

    outcome: Outcome
    booked: FlownSet = NOTHING
    site: str = ""
    notes: tuple[Reason, ...] = ()

    @property
    def flight(self) -> FlightFound | None:
        """The flight that waits for the pilot's yes, None where there is none."""
        return self.outcome.flight if self.outcome.status is Status.PROPOSED else None

    @property
    def is_plain(self) -> bool:
        """Whether nothing is asked about it."""
        return self.flight is not None and not self.outcome.is_asked

    def declined(self, *reasons: Reason) -> "Proposal":
        """The same after the pilot's no, or for other reasons."""
        outcome = self.outcome.declined()
        return replace(self, outcome=replace(outcome, reasons=reasons) if reasons else outcome)


@dataclass(frozen=True, slots=True)
class Confirmed:
    """A proposal and the pilot's yes.

    Attributes:
        proposal: as it was read.
        airtime_min, launches: corrected; None = as found.
        booked: what was flown and carried, None = as proposed; site: None = as proposed.
        on_ground: it was ground handling: booked apart, without airtime and launches.
    """

    proposal: Proposal
    airtime_min: float | None = None
    launches: int | None = None
    booked: FlownSet | None = None
    site: str | None = None
    on_ground: bool = False


def read_flights(
    source: FlightSource,
    paths: Iterable[Path],
    *,
    flown: tuple[str, ...] | None = None,
    local_day: date | None = None,
    progress: "Progress | None" = None,
    cancelled: Callable[[], bool] = lambda: False,
) -> Iterator[Proposal]:
    """Read recordings, one proposal a file, as they are asked for; a file that is refused does not stop the others.

    Args:
        source: what they are held against.
        paths: files, and folders that are searched.
        flown: ids of what was flown, None = proposed for each.
        local_day: for files without a date.
        progress: told how many files are done, and of how many.
        cancelled: asked before each file; what was yielded stays good.
    """
    from kitlog.files.recordings.read_batch import read_batch

    batch = read_batch(paths, logged=source.logged, local_day=local_day, progress=progress, cancelled=cancelled)
    for outcome in batch:
        yield _proposal(source, outcome, flown)


def settled(decided: Sequence[Proposal]) -> list[Proposal]:
    """What becomes of further recordings once the pilot has decided: those of a flight that is not entered are refused.

    Args:
        decided: all that was read; a proposal in it has the pilot's yes.
    """
    entered = {one.outcome.file for one in decided if one.flight is not None}
    return [_settled(one, entered) for one in decided]


def _settled(one: Proposal, entered: set[str]) -> Proposal:
    outcome = one.outcome
    if outcome.status is not Status.DUPLICATE or outcome.in_log or outcome.same_as in entered:
        return one
    return replace(one, outcome=outcome.left_alone())


def _proposal(source: FlightSource, outcome: Outcome, flown: tuple[str, ...] | None) -> Proposal:
    flight, day = outcome.flight, outcome.local_day
    if outcome.status is not Status.PROPOSED or flight is None or day is None:
        return Proposal(outcome)
    if flight.takeoff_at > source.now:
        reason = Reason("flight.in_future", {"day": day})
        return Proposal(replace(outcome, status=Status.REFUSED, reasons=(reason,)))
    booked = source.sets.on(day, flight.takeoff_at)
    if flown is not None:
        carried = tuple(item_id for item_id in (*booked.flown, *booked.carried) if item_id not in flown)
        booked = FlownSet(ChosenBy.NAMED, flown, carried if booked.by is ChosenBy.OUTING else ())
    asked = (*outcome.reasons, *_entered_by_hand(source, flight, day), *_booked_oddly(source, flight, day, booked))
    notes = tuple(_too_new(source, day, booked))
    return Proposal(replace(outcome, reasons=asked), booked, _site(source, flight, day), notes)


def _entered_by_hand(source: FlightSource, found: FlightFound, day: date) -> Iterator[Reason]:
    """An entry of the same day without both times may be the same flight, unless its take-off tells them apart."""
    same = [one for one in source.by_hand if one.until is None and one.on == day and _may_be(one, found)]
    if same:
        minutes = round(sum(flight.airtime_min for flight in same))
        yield Reason("flight.entered_by_hand", {"day": day, "minutes": minutes})


def _may_be(entry: Flight, found: FlightFound) -> bool:
    span = span_of(entry)
    if not entry.airtime_min or span is None:
        return bool(entry.airtime_min)
    return span[0] < found.landing_at and found.takeoff_at < span[1]


def _booked_oddly(source: FlightSource, found: FlightFound, day: date, booked: FlownSet) -> Iterator[Reason]:
    """A typed total that may hold the flight already, and two wings that would both get its hours."""
    minutes = min(found.airtime_min, DAY_MIN)
    yield from in_totals(Flight(id="-", on=day, airtime_min=minutes, flown=booked.flown), source.by_hand, source.wings)
    count = len(source.wings.intersection(booked.flown))
    if count > 1:
        yield Reason("flight.two_wings", {"count": count})


def _too_new(source: FlightSource, day: date, booked: FlownSet) -> Iterator[Reason]:
    """What was flown was bought later: its hours would count a flight on another one."""
    newer = source.sets.newer_than(day, booked)
    if newer is not None:
        yield Reason("flight.before_bought", {"name": newer[0], "day": newer[1]})


def _site(source: FlightSource, flight: FlightFound, day: date) -> str:
    """The nearest known site within `SITE_M`; else the one of that day's outing, if it has no place."""
    near = [(_away_m(site, flight), site.name) for site in source.sites if site.name and _has_place(site)]
    least = min(near, default=(SITE_M, ""))
    if least[0] < SITE_M:
        return least[1]
    outing = source.sets.outing_on(day)
    return outing.site.name if outing is not None and not _has_place(outing.site) else ""


def _has_place(site: Site) -> bool:
    return site.lat_deg is not None and site.lon_deg is not None


def _away_m(site: Site, flight: FlightFound) -> float:
    lat, lon = site.lat_deg or 0.0, site.lon_deg or 0.0
    east = (lon - flight.takeoff_lon_deg + 180.0) % 360.0 - 180.0
    return hypot(lat - flight.takeoff_lat_deg, east * cos(radians(lat))) * M_PER_DEG


class FlightImport(FlightCommands):
    """Reads and the one write of an import of recordings."""

    def flight_source(self) -> FlightSource:
        """What recordings are held against, as it is now."""
        flights, outings = self.flights(), self.outings()
        working_on = self.current_outing()
        return FlightSource(
            logged=tuple(_as_logged(flight) for flight in flights),
            by_hand=tuple(one for one in flights if not (one.takeoff_at and one.landing_at and one.until is None)),
            sets=FlownSets(self.kit(), self.library, self.history(), working_on.id if working_on else ""),
            sites=tuple(outing.site for outing in outings),
            now=self.now(),
            wings=self._wings(),
        )

    def import_flights(self, confirmed: Sequence[Confirmed], batch: Iterable[Proposal] = ()) -> tuple[Flight, ...]:
        """Write what the pilot confirmed: one transaction, one undo step, after a copy of the data file if it is much.

        A second recording of a flight that is in the log then is remembered with it. What came into the log since it
        was read, by another window, does not come in twice.

        Args:
            confirmed: with the pilot's yes.
            batch: all that was read with them, for the second recordings.

        Raises:
            InputFault: ``item.unknown``; ``flight.flown_and_carried`` with ``name``; ``flight.longer_than_a_day`` with
                ``file`` and ``minutes``.
        """
        known = {content for flight in self.flights() for content in flight.recordings}
        fresh = [one for one in confirmed if one.proposal.outcome.content not in known]
        flights = {one.proposal.outcome.file: self._flight_of(one) for one in fresh}
        for flight in {(flight.flown, flight.carried): flight for flight in flights.values()}.values():
            self._refuse_both(flight)
        written = self._with_seconds(flights, batch)
        if len(flights) > 1:
            self._data.copy_beside("before import", self.now())
        if written:
            self._put("flights.import", written, {"count": len(flights) or len(written)})
        return tuple(flight for flight in written if flight.id in {new.id for new in flights.values()})

    def _flight_of(self, one: Confirmed) -> Flight:
        outcome, booked = one.proposal.outcome, one.booked or one.proposal.booked
        found = outcome.flight
        if found is None or outcome.local_day is None:
            raise InputFault("recording.not_confirmed", file=outcome.file)
        minutes = found.airtime_min if one.airtime_min is None else one.airtime_min
        try:
            return Flight(
                id=self.new_id(),
                on=outcome.local_day,
                takeoff_at=found.takeoff_at,
                landing_at=found.landing_at,
                airtime_min=0.0 if one.on_ground else minutes,
                ground_handling_min=minutes if one.on_ground else 0.0,
                launches=0 if one.on_ground else found.launches if one.launches is None else one.launches,
                site=one.proposal.site if one.site is None else one.site,
                flown=booked.flown,
                carried=booked.carried,
                time_zone=outcome.zone,
                max_gnss_m=_plausible(found.gnss_max_m),
                max_pressure_m=_plausible(found.pressure_max_m),
                found_airtime_min=found.airtime_min if found.airtime_min <= DAY_MIN else None,
                recordings=(outcome.content,),
            )
        except ValidationError as error:
            fault = refused(error)
            raise InputFault(fault.code, **{**fault.facts, "file": outcome.file, "field": None}) from None

    def _with_seconds(self, flights: dict[str, Flight], batch: Iterable[Proposal]) -> list[Flight]:
        """The new flights, and those of the log that get a second recording."""
        changed = {flight.id: flight for flight in flights.values()}
        log = {flight.id: flight for flight in self.flights()}
        for outcome in (proposal.outcome for proposal in batch):
            if outcome.status is not Status.DUPLICATE or outcome.reasons[0].code not in SECOND:
                continue
            flight_id = outcome.same_as if outcome.in_log else _id_of(flights, outcome.same_as)
            flight = changed.get(flight_id) or log.get(flight_id)
            if flight is not None and outcome.content not in flight.recordings:
                recordings = (*flight.recordings, outcome.content)
                changed[flight_id] = flight.model_copy(update={"recordings": recordings})
        return list(changed.values())


def _id_of(flights: dict[str, Flight], file: str) -> str:
    return flights[file].id if file in flights else ""


def _plausible(height_m: int | None) -> int | None:
    """A height that the log can hold; a recorder that writes 99,999 has none."""
    return height_m if height_m is not None and LOWEST_M <= height_m <= HIGHEST_M else None


def _as_logged(flight: Flight) -> Logged:
    """A flight as recordings see it; without times only its own recordings can tell that it is the same."""
    times = flight.takeoff_at, flight.landing_at
    flown = ((times[0], times[1]),) if times[0] and times[1] and flight.until is None else ()
    top_m = flight.max_pressure_m if flight.max_gnss_m is None else flight.max_gnss_m
    return Logged(flight.id, _name_of(flight), flight.recordings, flown, top_m)


def _name_of(flight: Flight) -> str:
    """How a flight of the log is called in what is said: its day, its take-off where it is known, its site."""
    clock = clock_of(flight.takeoff_at, flight.time_zone)
    at = f"{flight.on.isoformat()} {clock:%H:%M}" if clock else flight.on.isoformat()
    return f"{at}, {flight.site}" if flight.site else at
