"""From recordings to outcomes, one after the other: what is a flight, what is there already, what is asked.

In this order, the first that holds governs:

1. its very fixes are in the log, or in a recording before it in the batch, whatever the file is called: a duplicate;
2. no flight in it: refused;
3. half of the shorter of two flights lies in the other (`overlap`): a second instrument, a duplicate. The first stays:
   the log before the batch, the batch in its order. If the second holds `LONGER_S` more of the flight, that is said.
   Not so if their take-offs are too far apart, or if the first overlaps in part with what does not touch the second;
4. else it is proposed. The pilot is asked first if all of it looks like a cable car, a car ride or ground handling
   (`likeness`), if it lasts longer than a day, if it overlaps with another flight in part, or if it is the track of
   another by a clock of another time zone (`shifted`).
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import UTC, timedelta
from zoneinfo import ZoneInfo

from kitlog.kit.recordings.fix import Recording
from kitlog.kit.recordings.found import FlightFound, NoFlight
from kitlog.kit.recordings.judge import judge
from kitlog.kit.recordings.outcome import Outcome, Reason, Status
from kitlog.kit.recordings.overlap import Flown, Overlap, Place, Places, both_s, flown_s, overlap
from kitlog.kit.recordings.shifted import Trace, shift_min, trace_of
from kitlog.sky.zone import zone_of

LONGER_S = 300
"""A second recording of a flight that has this much more of it is told of (common practice, no source)."""
LONGEST = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Logged:
    """A flight in the log, as far as recordings are held against it.

    Attributes:
        id: of the flight; name: how it is called in what is said.
        recordings: contents of the recordings of it; flown: its times in the air, empty where they are not known;
        top_m: its greatest height, None if not recorded.
    """

    id: str
    name: str
    recordings: tuple[str, ...] = ()
    flown: Flown = ()
    top_m: int | None = None

    @property
    def trace(self) -> Trace | None:
        """Without the track, which the log does not keep."""
        if not self.flown:
            return None
        return Trace(self.flown[0][0].timestamp(), self.flown[-1][1].timestamp(), self.top_m)


class Sieve:
    """Judges recordings against the log and against those before them; keeps what it needs for that, no fixes."""

    def __init__(self, logged: Iterable[Logged] = ()) -> None:
        self._log: dict[str, Logged] = {}
        self._batch: dict[str, Outcome] = {}
        self._places = Places()
        for flight in logged:
            self._log |= dict.fromkeys(flight.recordings, flight)
            self._places.add(Place(flight.id, flight.name, flight.flown, in_log=True, trace=flight.trace))

    def outcome(self, recording: Recording) -> Outcome:
        """What becomes of a recording."""
        before = self._batch.get(recording.content)
        if before is not None:
            return _repeated(before, recording.file)
        found = self._batch[recording.content] = self._judged(recording)
        return found

    def _judged(self, recording: Recording) -> Outcome:
        flight = judge(recording.fixes)
        plain = _plain(recording, flight)
        logged = self._log.get(recording.content)
        if logged is not None:
            return _duplicate(plain, "recording.same_content", logged.name, logged.id, in_log=True)
        if isinstance(flight, NoFlight):
            reason = Reason("recording.no_flight", {"valid": flight.valid})
            return replace(plain, status=Status.REFUSED, reasons=(reason,))
        return self._placed(plain, flight, trace_of(recording.fixes, flight))

    def _placed(self, plain: Outcome, flight: FlightFound, trace: Trace) -> Outcome:
        """A flight held against those that have their place already."""
        place = Place(plain.file, plain.file, _flown(flight), in_log=False, doubtful=bool(flight.doubts), trace=trace)
        near = [(other, _overlap(place, other)) for other in self._places.near(place.flown)]
        touched = frozenset(other.key for other, how in near if how is not Overlap.APART)
        same = (other for other, how in near if how is Overlap.SAME)
        first = next((other for other in same if other.partly <= touched), None)
        if first is not None:
            more_s = flown_s(place.flown) - sum(both_s(place.flown, other.flown) for other, _ in near)
            return _second(plain, first, more_s)
        self._places.add(replace(place, partly=touched))
        partly = (_partly(place, other) for other, how in near if how is not Overlap.APART)
        shifted = (_shifted(trace, other) for other, how in near if how is Overlap.APART)
        return replace(plain, reasons=(*_asked(flight), *partly, *(reason for reason in shifted if reason)))


def _flown(flight: FlightFound) -> Flown:
    return tuple((leg.takeoff_at, leg.landing_at) for leg in flight.legs)


def _overlap(place: Place, other: Place) -> Overlap:
    """How they lie; a flight is never swallowed by what may be none, or by one of another part of the world."""
    how = overlap(place.flown, other.flown)
    is_other = (other.doubtful and not place.doubtful) or place.is_far_from(other)
    return Overlap.PARTLY if how is Overlap.SAME and is_other else how


def _second(plain: Outcome, first: Place, more_s: float) -> Outcome:
    """A second recording of a flight, which may hold more of it."""
    if more_s < LONGER_S:
        return _duplicate(plain, "recording.same_flight", first.name, first.key, in_log=first.in_log)
    code, minutes = "recording.same_flight_longer", round(more_s / 60)
    return _duplicate(plain, code, first.name, first.key, in_log=first.in_log, minutes=minutes)


def _partly(place: Place, other: Place) -> Reason:
    minutes = round(both_s(place.flown, other.flown) / 60)
    return Reason("recording.overlaps", {"of": other.name, "minutes": minutes})


def _shifted(trace: Trace, other: Place) -> Reason | None:
    minutes = shift_min(trace, other.trace) if other.trace else 0
    return Reason("recording.same_track", {"of": other.name, "minutes": minutes}) if minutes else None


def _plain(recording: Recording, flight: FlightFound | NoFlight) -> Outcome:
    """A proposal without any question yet."""
    plain = Outcome(
        file=recording.file,
        status=Status.PROPOSED,
        content=recording.content,
        day_given=recording.day_given,
        pilot=recording.pilot,
        glider=recording.glider,
        broken=recording.broken,
        out_of_order=recording.out_of_order,
    )
    if isinstance(flight, NoFlight):
        return plain
    zone = zone_of(flight.takeoff_lat_deg, flight.takeoff_lon_deg)
    day = flight.takeoff_at.astimezone(ZoneInfo(zone) if zone else UTC).date()
    return replace(plain, flight=flight, local_day=day, zone=zone or "")


def _repeated(before: Outcome, file: str) -> Outcome:
    """The same fixes under another name; of what holds no flight, or is in the log, there is nothing more to say."""
    again = replace(before, file=file)
    if before.status is Status.REFUSED or before.in_log:
        return again
    return _duplicate(again, "recording.same_content", before.file, before.same_as or before.file)


def _duplicate(plain: Outcome, code: str, of: str, same_as: str, *, in_log: bool = False, **more: object) -> Outcome:
    reason = Reason(code, {"of": of, **more})
    return replace(plain, status=Status.DUPLICATE, reasons=(reason,), same_as=same_as, in_log=in_log)


def _asked(flight: FlightFound) -> Iterator[Reason]:
    """What is asked about a flight by itself, each likeness once."""
    for doubt in {doubt.looks_like: doubt for doubt in reversed(flight.doubts)}.values():
        yield Reason("recording.looks_like", {"doubt": doubt})
    if (lasts := flight.landing_at - flight.takeoff_at) > LONGEST:
        yield Reason("recording.longer_than_a_day", {"hours": round(lasts.total_seconds() / 3_600)})
