"""Conditions of a day: ticked, else derived where they can be, else open (common practice where no source is named)."""

from collections.abc import Callable, Iterable
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

from kitlog.kit.kinds import PhaseWay
from kitlog.outing.conditions import OPEN_COUNTS_AS_YES, TICKED, Answer3, Condition, Demand
from kitlog.outing.needs import FlightType
from kitlog.outing.outing import NOT_ALONE, Outing, Phase, Role
from kitlog.packing.assessment import Truth
from kitlog.sky.sun import sunset
from kitlog.sky.wind_chill import wind_chill_c

COLD_AIR_C = 5.0
COLD_CHILL_C = 0.0
HOT_LAUNCH_C = 25.0
WALK_LIKELY_H = 1.0
WALK_HIGH_H = 3.0
HIGH_TOP_M = 3_000.0
PACK_UP_HIGH_H = 0.8
LATE_BEFORE_SUNSET = timedelta(hours=1)
AIRFLOW_KMH = 38.0
"""Airflow in flight where the wing's trim speed is not known; airflow is 35 to 55 km/h all flight (from memory)."""


def truths(outing: Outing, types: Iterable[FlightType], airflow_kmh: float = AIRFLOW_KMH) -> tuple[Truth, ...]:
    """Every condition of the outing: what the flight type brings, then the pilot's tick, then the plan, else open."""
    by_type = {condition for flight_type in types for condition in flight_type.makes_true}
    return tuple(_truth(condition, outing, by_type, airflow_kmh) for condition in Condition)


def _truth(condition: Condition, outing: Outing, by_type: set[Condition], airflow_kmh: float) -> Truth:
    if condition in by_type:
        return Truth(condition, Answer3.YES, "flight type")
    if condition in outing.conditions:
        return Truth(condition, _answer3(outing.conditions[condition]), "ticked")
    if condition in OPEN_COUNTS_AS_YES:
        return Truth(condition, Answer3.OPEN, "not answered", counts_as_yes=True)
    if condition in TICKED:
        return Truth(condition, Answer3.NO, "not ticked")
    if condition is Condition.COLD:
        return Truth(condition, _answer3(_cold(outing, airflow_kmh)), "derived")
    return Truth(condition, _answer3(_DERIVED[condition](outing)), "derived")


def _answer3(holds: bool | None) -> Answer3:  # noqa: FBT001  # three answers from a three-valued fact
    if holds is None:
        return Answer3.OPEN
    return Answer3.YES if holds else Answer3.NO


def _cold(outing: Outing, airflow_kmh: float) -> bool | None:
    temperatures = [(phase.way, phase.air_c) for phase in outing.phases if phase.air_c is not None]
    if not temperatures:
        return None
    chills = [wind_chill_c(air, airflow_kmh) for way, air in temperatures if way is PhaseWay.FLIGHT]
    return min(air for _, air in temperatures) <= COLD_AIR_C or min(chills, default=COLD_AIR_C) <= COLD_CHILL_C


def _hot(outing: Outing) -> bool | None:
    waits = [p.air_c for p in outing.phases if p.way is PhaseWay.WAIT and p.air_c is not None]
    return max(waits) >= HOT_LAUNCH_C if waits else None


def _alone(outing: Outing) -> bool | None:
    if not outing.people:
        return None
    return not any(person.role in NOT_ALONE for person in outing.people)


def _walk(outing: Outing) -> bool | None:
    if not outing.phases:
        return None
    walks = [p for p in outing.phases if p.way is PhaseWay.WALK_OUT]
    likely, high = sum(p.likely_h for p in walks), sum(p.high_h for p in walks)
    return likely > WALK_LIKELY_H or high > WALK_HIGH_H


def _no_pickup(outing: Outing) -> bool:
    return not any(person.role is Role.DRIVER for person in outing.people)


def _late(outing: Outing) -> bool | None:
    """Whether it is packed up later than an hour before the sunset of the day on which the last flight begins."""
    begin, end = _last_flight_begins(outing), flights_end(outing)
    dusk = None if begin is None else sunset_of(outing, begin.date())
    return None if end is None or dusk is None else end > dusk - LATE_BEFORE_SUNSET


def flights_end(outing: Outing) -> datetime | None:
    """When the last flight is landed and packed up, in the high case; None where the plan does not say."""
    last = _last_flight(outing)
    if last is None:
        return None
    return _after(outing, sum(p.high_h for p in outing.phases[: last + 1]) + _pack_up_h(outing.phases[last + 1 :]))


def _last_flight_begins(outing: Outing) -> datetime | None:
    last = _last_flight(outing)
    return None if last is None else _after(outing, sum(p.high_h for p in outing.phases[:last]))


def _last_flight(outing: Outing) -> int | None:
    return max((i for i, p in enumerate(outing.phases) if p.way is PhaseWay.FLIGHT), default=None)


def _after(outing: Outing, hours: float) -> datetime | None:
    """So many hours after the start of the plan, by the clock of the site."""
    if outing.starts_at is None or outing.time_zone is None:
        return None
    start = datetime.combine(outing.first_day, outing.starts_at, ZoneInfo(outing.time_zone))
    return (start.astimezone(UTC) + timedelta(hours=hours)).astimezone(start.tzinfo)


def _pack_up_h(after: tuple[Phase, ...]) -> float:
    return next((p.high_h for p in after if p.way is PhaseWay.PACK_UP), PACK_UP_HIGH_H)


def sunset_of(outing: Outing, day: date) -> datetime | None:
    """Sunset at the site on a day, None without coordinates or time zone."""
    site = outing.site
    if site.lat_deg is None or site.lon_deg is None or outing.time_zone is None:
        return None
    return sunset(site.lat_deg, site.lon_deg, day, outing.time_zone)


def _high(outing: Outing) -> bool | None:
    return None if outing.top_m is None else outing.top_m >= HIGH_TOP_M


def _overnight(outing: Outing) -> bool:
    return outing.last_day > outing.first_day or any(p.way is PhaseWay.NIGHT for p in outing.phases)


def _passenger(outing: Outing) -> bool:
    return any(person.role is Role.PASSENGER for person in outing.people)


def _event(outing: Outing) -> bool:
    return Demand.EVENT in outing.demanded


_DERIVED: dict[Condition, Callable[[Outing], bool | None]] = {
    Condition.HOT: _hot,
    Condition.ALONE: _alone,
    Condition.WALK: _walk,
    Condition.NO_PICKUP: _no_pickup,
    Condition.LATE: _late,
    Condition.HIGH: _high,
    Condition.OVERNIGHT: _overnight,
    Condition.PASSENGER: _passenger,
    Condition.EVENT: _event,
}
