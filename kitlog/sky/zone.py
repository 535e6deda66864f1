"""The time zone of a place, and the local day there."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError


def zone_of(lat_deg: float, lon_deg: float) -> str | None:
    """Name of the time zone at a place, for example ``Europe/Vienna``; on the open sea one such as ``Etc/GMT-3``.

    None where no zone is known, or one that the zone data of this machine do not have. The borders are simplified
    (tzfpy, from the boundaries of OpenStreetMap): within some hundred metres of a border it may be the neighbour's.
    """
    from tzfpy import get_tz

    name = get_tz(lon_deg, lat_deg)
    try:
        return ZoneInfo(name).key if name else None
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return None


def local_time(at: datetime, lat_deg: float, lon_deg: float) -> datetime:
    """An aware time on the clocks of a place; in UTC where its zone is not known."""
    name = zone_of(lat_deg, lon_deg)
    return at.astimezone(ZoneInfo(name) if name else UTC)


def utc_day_of(local_day: date, clock_s: int, lat_deg: float, lon_deg: float) -> date:
    """The UTC date of a time of day in UTC, so that it falls on `local_day` at a place.

    Args:
        local_day: the date on the clocks of the place.
        clock_s: seconds since midnight, UTC.
        lat_deg: north positive.
        lon_deg: east positive.
    """
    for days in (0, -1, 1):
        day = local_day + timedelta(days=days)
        at = datetime(day.year, day.month, day.day, tzinfo=UTC) + timedelta(seconds=clock_s)
        if local_time(at, lat_deg, lon_deg).date() == local_day:
            return day
    return local_day
