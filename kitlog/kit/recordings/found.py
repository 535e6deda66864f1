"""What is found in a recording: flights, or none; and the doubts about them."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class LooksLike(StrEnum):
    """What else a time in the air may have been."""

    CAR = "car"
    CABLE_CAR = "cable_car"
    GROUND_HANDLING = "ground_handling"
    GROUND_RIDE = "ground_ride"


class Because(StrEnum):
    """Why it looks like that."""

    CLIMBS_STRAIGHT = "climbs_straight"
    SINKS_STRAIGHT = "sinks_straight"
    ONLY_CLIMBS = "only_climbs"
    FAST_AND_LEVEL = "fast_and_level"
    STOPS = "stops"
    LOW_AND_NEAR = "low_and_near"
    LEVEL = "level"
    FOLLOWS_GROUND = "follows_ground"


@dataclass(frozen=True, slots=True)
class Doubt:
    """What a time in the air looks like, and why.

    Attributes:
        speed_m_s: its median speed; up_m, down_m: climbed and sunk in it; across_m: how far its ends, or for ground
            handling its furthest points, lie apart; stops: how often it stood still.
    """

    looks_like: LooksLike
    because: Because
    speed_m_s: float
    up_m: float
    down_m: float
    across_m: float
    stops: int


@dataclass(frozen=True, slots=True)
class Leg:
    """From one take-off to the next landing.

    Attributes:
        takeoff_at, landing_at: UTC; airtime_s: between them.
        takeoff_seen, landing_seen: False where the recording, or a gap without any valid fix, begins or ends in the
            air: it counts from the first or to the last fix then.
        gaps: how many gaps in it count as flown; gaps_s: how long they are together.
        doubt: what it looks like, None for a flight.
    """

    takeoff_at: datetime
    landing_at: datetime
    takeoff_seen: bool
    landing_seen: bool
    gaps: int
    gaps_s: float
    doubt: Doubt | None = None

    @property
    def airtime_s(self) -> float:
        """Seconds from take-off to landing."""
        return (self.landing_at - self.takeoff_at).total_seconds()


@dataclass(frozen=True, slots=True)
class FlightFound:
    """The flight, or the flights of one day, of a recording: a proposal, to be confirmed by the pilot.

    Attributes:
        legs: what counts, in order; at least one. If all that was found is doubtful, all of it, doubts included.
        left_out: what was found besides and does not count, each with its doubt: the car home, the cable car up.
        takeoff_lat_deg, takeoff_lon_deg: where the first leg begins.
        gnss_max_m, pressure_max_m: greatest heights in the legs, None if not recorded.
    """

    legs: tuple[Leg, ...]
    left_out: tuple[Leg, ...]
    takeoff_lat_deg: float
    takeoff_lon_deg: float
    gnss_max_m: int | None
    pressure_max_m: int | None

    @property
    def takeoff_at(self) -> datetime:
        """First take-off, UTC."""
        return self.legs[0].takeoff_at

    @property
    def landing_at(self) -> datetime:
        """Last landing, UTC."""
        return self.legs[-1].landing_at

    @property
    def launches(self) -> int:
        """How many take-offs count."""
        return len(self.legs)

    @property
    def airtime_min(self) -> float:
        """Minutes in the air; time on the ground between two launches is not in it."""
        return sum(leg.airtime_s for leg in self.legs) / 60

    @property
    def max_altitude_m(self) -> int | None:
        """Greatest height by satellite if recorded, else by pressure."""
        return self.pressure_max_m if self.gnss_max_m is None else self.gnss_max_m

    @property
    def starts_in_air(self) -> bool:
        """The first take-off is not in the recording."""
        return not self.legs[0].takeoff_seen

    @property
    def ends_in_air(self) -> bool:
        """The last landing is not in the recording."""
        return not self.legs[-1].landing_seen

    @property
    def doubts(self) -> tuple[Doubt, ...]:
        """The doubts about what counts."""
        return tuple(leg.doubt for leg in self.legs if leg.doubt)


@dataclass(frozen=True, slots=True)
class NoFlight:
    """A recording that never leaves the ground, or is too short or too sparse to tell.

    Attributes:
        first_at, last_at: of its fixes, UTC; valid: how many of them are.
    """

    first_at: datetime
    last_at: datetime
    valid: int
