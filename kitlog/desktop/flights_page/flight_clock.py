"""Take-off, landing and the zone of their clocks; the airtime follows them until it is typed over."""

from collections.abc import Callable
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from PySide6.QtCore import QTimeZone

from kitlog.desktop.outing_page.day_fields import ZoneField
from kitlog.desktop.outing_page.hour_fields import TimeField
from kitlog.desktop.parts.fields import NumberField
from kitlog.fault import InputFault
from kitlog.kit.flight_times import clock_of, moments_of
from kitlog.kit.flights import Flight
from kitlog.wording.translate import _

Moments = tuple[datetime | None, datetime | None]


class FlightClock:
    """The fields that say when a flight was and how long, and what one tells of the other.

    Args:
        flight: the flight that is edited, None for a new one.

    Attributes:
        hours, minutes: the airtime; takeoff, landing: on the clocks of `zone`.
    """

    def __init__(self, flight: Flight | None) -> None:
        self.hours = NumberField("h", most=100_000, unknown="0 h")
        self.minutes = NumberField("min", most=59, unknown="0 min")
        known = (flight.takeoff_at, flight.landing_at) if flight else (None, None)
        zone = flight.time_zone if flight else ""
        self.takeoff, self.landing = (TimeField(clock_of(at, zone)) for at in known)
        self.zone = ZoneField(zone)
        self._zone_followed = zone
        self._follows_zone = flight is None or not (zone or flight.takeoff_at)
        self._before = self._typed()
        self._followed: tuple[int | None, int | None] = (None, None)

    def put_airtime(self, minutes: int) -> None:
        """Show the airtime of a flight of the log; it follows its times if it came of them."""
        self.hours.put(minutes // 60)
        self.minutes.put(minutes % 60)
        if minutes == self._span_min(date(2000, 1, 1)):
            self._followed = self._airtime()

    def listen(self, day: Callable[[], date], is_total: Callable[[], bool]) -> None:
        """Let the airtime of a flight of one day follow from now on."""
        for field in (self.takeoff, self.landing):
            field.textChanged.connect(lambda _text: None if is_total() else self._follow(day()))
        self.zone.textChanged.connect(lambda _text: self.zone.mark_wrong(wrong=self._zone() is None))

    def propose_zone(self, name: str) -> None:
        """Show the zone of the place, else that of this computer, unless another was chosen."""
        if self._follows_zone and self.zone.text() == self._zone_followed:
            self._zone_followed = name or system_zone()
            self.zone.setText(self._zone_followed)

    def refuse_wrong(self) -> None:
        """Refuse times and a zone that cannot be read.

        Raises:
            InputFault: ``time.not_a_clock`` with ``field`` and ``value``; ``outing.unknown_time_zone`` with ``zone``.
        """
        for field in (self.takeoff, self.landing):
            if field.is_wrong():
                raise InputFault("time.not_a_clock", field=field.accessibleName(), value=field.text())
        if self._zone() is None:
            raise InputFault("outing.unknown_time_zone", field=_("Time zone"), zone=self.zone.text())

    def is_touched(self) -> bool:
        """Whether times or zone were changed."""
        return self._typed() != self._before

    def moments(self, on: date) -> dict[str, object]:
        """Take-off and landing as typed, and the zone of their clocks, by the names of the model."""
        takeoff_at, landing_at = self._moments(on)
        name = self._zone() or ""
        return {"takeoff_at": takeoff_at, "landing_at": landing_at, "time_zone": name if takeoff_at else ""}

    def _moments(self, on: date) -> Moments:
        name = self._zone()
        return moments_of(on, self.takeoff.time(), self.landing.time(), ZoneInfo(name) if name else None)

    def _follow(self, on: date) -> None:
        minutes = self._span_min(on)
        if minutes is None or self._airtime() != self._followed:
            return
        self.hours.put(minutes // 60)
        self.minutes.put(minutes % 60)
        self._followed = self._airtime()

    def _span_min(self, on: date) -> int | None:
        takeoff_at, landing_at = self._moments(on)
        return (
            None if takeoff_at is None or landing_at is None else round((landing_at - takeoff_at).total_seconds() / 60)
        )

    def _airtime(self) -> tuple[int | None, int | None]:
        return self.hours.whole(), self.minutes.whole()

    def _typed(self) -> tuple[str, str, str]:
        return self.takeoff.text(), self.landing.text(), self.zone.text()

    def _zone(self) -> str | None:
        """The zone chosen, empty for the clock of this machine; None if there is no such zone."""
        name = self.zone.text().strip()
        return name if not name or _is_zone(name) else None


def system_zone() -> str:
    """Name of the time zone of this computer, empty if it does not say."""
    name = bytes(QTimeZone.systemTimeZoneId().data()).decode()
    return name if name and _is_zone(name) else ""


def _is_zone(name: str) -> bool:
    try:
        return ZoneInfo(name).utcoffset(datetime(2000, 1, 1, tzinfo=UTC)) is not None
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return False
