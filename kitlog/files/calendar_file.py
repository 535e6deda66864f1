"""Reminders as an iCalendar file (RFC 5545): all-day events that a calendar takes in, changes and takes back by UID.

Events and no to-dos: some calendars leave to-dos out. No METHOD: a file that is opened by hand is no scheduling message
(RFC 5546). The `icalendar` library folds lines at 75 octets, ends them with CR LF and escapes what needs it.
"""

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING

from kitlog import __version__
from kitlog.kit.reminders import Entry

if TYPE_CHECKING:
    from icalendar import Alarm, Event

OWN = b"PRODID:-//kitlog//"
"""What a calendar file of ours says in its head."""

RINGS_AT_H = 9
"""Hour of the local day at which an alarm rings: an all-day event begins at midnight."""


def calendar_bytes(entries: Iterable[Entry], now: datetime) -> bytes:
    """A calendar file.

    Args:
        entries: what it holds.
        now: the present moment, aware.
    """
    from icalendar import Calendar

    calendar = Calendar()
    calendar.add("prodid", f"-//kitlog//kitlog {__version__}//EN")
    calendar.add("version", "2.0")
    for entry in entries:
        calendar.add_component(_event(entry, now.astimezone(UTC).replace(microsecond=0)))
    return bytes(calendar.to_ical())


def is_own(head: bytes) -> bool:
    """Whether the beginning of a file is that of a calendar of ours, or of an empty file."""
    return not head or (head.startswith(b"BEGIN:VCALENDAR") and OWN in head)


def _event(entry: Entry, now: datetime) -> "Event":
    from icalendar import Event

    wanted, event = entry.wanted, Event()
    event.add("uid", wanted.uid)
    event.add("dtstamp", now)
    event.add("sequence", entry.sequence)
    if entry.changed:
        event.add("last-modified", now)
    event.add("status", "CANCELLED" if entry.cancelled else "CONFIRMED")
    event.add("summary", wanted.summary)
    event.add("dtstart", wanted.on)
    event.add("dtend", wanted.on + timedelta(days=1))
    event.add("transp", "TRANSPARENT")  # a reminder takes up nobody's day
    if wanted.text:
        event.add("description", wanted.text)
    if not entry.cancelled:
        event.add_component(_alarm(entry))
    return event


def _alarm(entry: Entry) -> "Alarm":
    from icalendar import Alarm

    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", timedelta(hours=RINGS_AT_H) - timedelta(days=entry.wanted.alarm_days))
    alarm.add("description", entry.wanted.summary)
    return alarm
