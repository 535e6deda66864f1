"""Times of day as a person types and reads them."""

import re
from datetime import datetime, time, timedelta

from kitlog.fault import InputFault

_CLOCK = re.compile(r"([01]?\d|2[0-3])[:.]([0-5]\d)", re.ASCII)


def parse_clock(text: str) -> time:
    """A time of day, 24 h: ``9:30``, ``09.30``.

    Raises:
        InputFault: ``time.not_a_clock`` with ``value``.
    """
    found = _CLOCK.fullmatch(text.strip())
    if found is None:
        raise InputFault("time.not_a_clock", value=text)
    return time(int(found[1]), int(found[2]))


def nearest_minute(at: datetime) -> time:
    """A moment on its own clock to the nearest minute; the last half minute of a day stays on that day."""
    rounded = at + timedelta(seconds=30)
    shown = rounded if rounded.date() == at.date() else at
    return time(shown.hour, shown.minute)
