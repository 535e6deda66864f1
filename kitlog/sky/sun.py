"""Sunset at a place and date: upper edge of the sun on a level horizon, average refraction (USNO definition)."""

from datetime import date, datetime
from zoneinfo import ZoneInfo


def sunset(lat_deg: float, lon_deg: float, day: date, time_zone: str) -> datetime | None:
    """Local sunset as an aware time, None on a day when the sun does not set.

    Elevation 0 is used: right for a valley, an upper bound where mountains hide the sun earlier. Good to about
    2 minutes against published tables.
    """
    from astral import Observer
    from astral.sun import sunset as astral_sunset

    try:
        return astral_sunset(Observer(lat_deg, lon_deg, 0.0), day, tzinfo=ZoneInfo(time_zone))
    except ValueError:
        return None
