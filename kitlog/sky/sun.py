"""Sunset at a place and date: upper edge of the sun on a level horizon, average refraction (USNO definition)."""

from datetime import date, datetime, time, timedelta, timezone
from zoneinfo import ZoneInfo

_H_PER_DEG = 1 / 15


def sunset(lat_deg: float, lon_deg: float, day: date, time_zone: str) -> datetime | None:
    """The sunset that ends a local day, as an aware time; None on a day when the sun does not set.

    In the far north in summer it may fall after midnight, on the next date: the evening counts, not the date.
    Elevation 0 is used: right for a valley, an upper bound where mountains hide the sun earlier. Good to about
    2 minutes against published tables.
    """
    from astral import Observer
    from astral.sun import sunset as astral_sunset

    zone = ZoneInfo(time_zone)
    by_the_sun = timezone(timedelta(hours=lon_deg * _H_PER_DEG))
    noon = datetime.combine(day, time(12), zone).astimezone(by_the_sun)
    try:
        return astral_sunset(Observer(lat_deg, lon_deg, 0.0), noon.date(), tzinfo=by_the_sun).astimezone(zone)
    except ValueError:
        return None
