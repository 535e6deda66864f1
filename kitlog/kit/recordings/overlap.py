"""Recordings of the same flight by two instruments: they overlap in time."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from enum import StrEnum

from kitlog.kit.recordings.shifted import Trace, apart_m

Span = tuple[datetime, datetime]
"""Take-off and landing, aware."""
Flown = tuple[Span, ...]
"""The times in the air of one flight, relaunches apart; empty where they are not known."""

CLOCKS_S = 60
"""An overlap up to this may come from two clocks."""
AWAY_M, AWAY_M_S = 5_000.0, 30.0
"""Take-offs further apart than 5 km and 30 m/s for as long as both lasted are of two flights (common practice, no
source): no paraglider comes that far."""


class Overlap(StrEnum):
    """How two flights lie in time."""

    APART = "apart"
    SAME = "same"
    PARTLY = "partly"


def flown_s(flown: Flown) -> float:
    """Seconds in the air."""
    return sum((end - start).total_seconds() for start, end in flown)


def both_s(one: Flown, other: Flown) -> float:
    """Seconds in which both are in the air."""
    return sum(
        max(0.0, (min(one_end, other_end) - max(one_start, other_start)).total_seconds())
        for one_start, one_end in one
        for other_start, other_end in other
    )


def overlap(one: Flown, other: Flown) -> Overlap:
    """Whether two flights are one.

    SAME if half of the shorter lies in the other (common practice, no source): a second instrument. PARTLY if less
    than that, but more than `CLOCKS_S`: to be asked about. Nobody flies twice at a time.
    """
    shared_s = both_s(one, other)
    if shared_s > 0 and shared_s >= min(flown_s(one), flown_s(other)) / 2:
        return Overlap.SAME
    return Overlap.PARTLY if shared_s > CLOCKS_S else Overlap.APART


@dataclass(frozen=True, slots=True)
class Place:
    """A flight that has its place, to hold others against.

    Attributes:
        key: id in the log, or file; name: how it is called in what is said; in_log: which of the two.
        doubtful: it may be no flight at all; partly: keys of those that it overlaps in part, and was asked about.
        trace: tells its track again, None where its times are not known.
    """

    key: str
    name: str
    flown: Flown
    in_log: bool
    doubtful: bool = False
    partly: frozenset[str] = frozenset()
    trace: Trace | None = None

    def is_far_from(self, other: "Place") -> bool:
        """Whether nobody can have been at both take-offs; False where one of them is not known."""
        if self.trace is None or other.trace is None or not self.trace.spots or not other.trace.spots:
            return False
        took_s = max(self.trace.landing_s, other.trace.landing_s) - min(self.trace.takeoff_s, other.trace.takeoff_s)
        return apart_m(self.trace.spots[0], other.trace.spots[0]) > AWAY_M + AWAY_M_S * took_s


class Places:
    """All flights that have their place; by day, so that holding one against thousands costs no more than a few."""

    def __init__(self) -> None:
        self._places: list[Place] = []
        self._on_day: dict[int, list[int]] = {}

    def add(self, place: Place) -> None:
        """Put one behind all others."""
        for day in set(_days(place.flown)):
            self._on_day.setdefault(day, []).append(len(self._places))
        self._places.append(place)

    def near(self, flown: Flown) -> Iterator[Place]:
        """Those that share a day with a flight, in the order in which they were added."""
        for i in sorted({i for day in set(_days(flown)) for i in self._on_day.get(day, ())}):
            yield self._places[i]


def _days(flown: Flown) -> Iterator[int]:
    """The UTC days of a flight, as ordinals."""
    for start, end in flown:
        yield from range(start.astimezone(UTC).toordinal(), end.astimezone(UTC).toordinal() + 1)
