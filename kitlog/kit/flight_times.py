"""Take-off and landing as typed on local clocks, as moments, and back."""

from datetime import UTC, date, datetime, time, timedelta, tzinfo
from zoneinfo import ZoneInfo

from kitlog.units.clock import nearest_minute


def moments_of(
    on: date, takeoff: time | None, landing: time | None, zone: tzinfo | None
) -> tuple[datetime | None, datetime | None]:
    """Both in UTC; a landing before the take-off is on the next day.

    Args:
        on: local day of the take-off.
        takeoff: on local clocks, None = not known.
        landing: likewise; without a take-off it is not known either.
        zone: of the place, None = the clock of this machine.
    """
    if takeoff is None:
        return None, None
    begins = _moment(on, takeoff, zone)
    if landing is None:
        return begins, None
    return begins, _moment(on + timedelta(days=landing < takeoff), landing, zone)


def _moment(on: date, at: time, zone: tzinfo | None) -> datetime:
    local = datetime.combine(on, at, zone)
    return (local.astimezone() if zone is None else local).astimezone(UTC)


def clock_of(at: datetime | None, zone_name: str) -> time | None:
    """A moment on the clocks of a zone, to the nearest minute; of this machine where no zone is known."""
    if at is None:
        return None
    return nearest_minute(at.astimezone(ZoneInfo(zone_name) if zone_name else None))
