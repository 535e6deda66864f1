"""What a recording told about a flight, as rows beside the log: times, heights, what was found before a correction."""

from collections.abc import Iterator
from datetime import datetime

from kitlog.desktop.flights_page.log import airtime_text
from kitlog.kit.flight_times import clock_of
from kitlog.kit.flights import Flight
from kitlog.wording.figures import number_text
from kitlog.wording.translate import _, ngettext

LEAST_MIN = 0.5
"""A correction smaller than what is shown is none."""


def recorded_rows(flight: Flight) -> Iterator[tuple[str, str, str]]:
    """Label, figure and what stands behind it; only what is known."""
    if flight.takeoff_at is not None:
        landing = f" – {_clock(flight.landing_at, flight)}" if flight.landing_at else ""
        zone = flight.time_zone.replace("_", " ") or _("clock of this computer")
        yield _("Times"), _clock(flight.takeoff_at, flight) + landing, zone
    if flight.found_airtime_min is not None and abs(flight.found_airtime_min - flight.airtime_min) >= LEAST_MIN:
        yield _("Found"), airtime_text(flight.found_airtime_min), _("in the recording, before it was corrected")
    if flight.launches > 1:
        yield _("Launches"), number_text(flight.launches), ""
    if flight.max_gnss_m is not None:
        yield _("Top"), _metres(flight.max_gnss_m), _("by satellite")
    if flight.max_pressure_m is not None:
        yield _("Top"), _metres(flight.max_pressure_m), _("by pressure")
    count = len(flight.recordings)
    if count:
        yield _("From"), ngettext("{n} recording", "{n} recordings", count).format(n=count), ""


def _clock(at: datetime | None, flight: Flight) -> str:
    clock = clock_of(at, flight.time_zone)
    return f"{clock:%H:%M}" if clock else ""


def _metres(height: int) -> str:
    return f"{number_text(height)}\u00a0m"
