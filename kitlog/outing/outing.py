"""The outing: one planned day or several, as it stands in a JSON file and in the data file."""

from datetime import date, time, timedelta
from enum import StrEnum
from typing import Annotated, Any, Self
from zoneinfo import ZoneInfo

from pydantic import AwareDatetime, BeforeValidator, Field, StrictBool, model_validator
from pydantic_core import PydanticCustomError

from kitlog.kit.kinds import PhaseWay, Zone
from kitlog.outing.conditions import Condition, Demand
from kitlog.units.days import Day
from kitlog.units.model import Frozen
from kitlog.units.text import Line, Name, Note

Hours = Annotated[float, Field(strict=True, ge=0, le=240)]
AirC = Annotated[float, Field(strict=True, ge=-60, le=60)]
ChargePct = Annotated[float, Field(strict=True, ge=0, le=100)]
HeightM = Annotated[float, Field(strict=True, ge=-500, le=9_000)]
MAX_DAYS = 60


class Site(Frozen):
    """Where one flies: name, coordinates in degrees (north and east positive), heights above the sea in m."""

    name: Line = ""
    lat_deg: Annotated[float, Field(strict=True, ge=-90, le=90)] | None = None
    lon_deg: Annotated[float, Field(strict=True, ge=-180, le=180)] | None = None
    launch_m: HeightM | None = None
    landing_m: HeightM | None = None


class Phase(Frozen):
    """A stretch of the day: duration low, likely and high in h, air temperature in deg C, way of moving."""

    name: Name
    way: PhaseWay
    low_h: Hours
    likely_h: Hours
    high_h: Hours
    air_c: AirC | None = None

    @model_validator(mode="before")
    @classmethod
    def _one_duration_is_three(cls, raw: Any) -> Any:
        if isinstance(raw, dict) and raw.get("likely_h") is not None:
            likely = raw["likely_h"]
            return {"name": raw.get("way"), "low_h": likely, "high_h": likely, **raw}
        return raw

    @model_validator(mode="after")
    def _check(self) -> Self:
        if not self.low_h <= self.likely_h <= self.high_h:
            raise PydanticCustomError("phase.durations_not_rising", "{name}", {"name": self.name})
        return self


class Role(StrEnum):
    """What a person is to the outing."""

    CONTACT = "contact"
    DRIVER = "driver"
    FELLOW_PILOT = "fellow pilot"
    INSTRUCTOR = "instructor"
    HELPER = "helper"
    BOAT_CREW = "boat crew"
    PASSENGER = "passenger"

    @classmethod
    def _missing_(cls, value: object) -> "Role | None":
        text = str(value).strip().lower().replace("_", " ").replace("-", " ")
        also = {"co pilot": cls.FELLOW_PILOT, "copilot": cls.FELLOW_PILOT, "retrieve driver": cls.DRIVER}
        return also.get(text) or next((role for role in cls if role.value == text), None)


NOT_ALONE = frozenset({Role.FELLOW_PILOT, Role.INSTRUCTOR, Role.BOAT_CREW, Role.HELPER, Role.PASSENGER})
"""Who is there and would notice within an hour."""


class Person(Frozen):
    """Somebody of the outing; `told_at` is when the route and times were given to them."""

    name: Name
    role: Role
    told_at: AwareDatetime | None = None
    phone: Line = ""


class ChosenSet(Frozen):
    """The wing, harness, reserve and helmet the pilot flies in, as ids or names; None = not chosen."""

    wing: Name | None = None
    harness: Name | None = None
    reserve: Name | None = None
    helmet: Name | None = None


def _named(raw: Any) -> Any:
    return {"item": raw} if isinstance(raw, str) else raw


class Pin(Frozen):
    """An item that must go: id or name; pieces (None = all of them, or what the needs ask) and zones if unusual."""

    item: Name
    n: Annotated[int, Field(strict=True, ge=1, le=10_000)] | None = None
    zone: Zone | None = None
    zone_on_foot: Zone | None = None


class OwnLine(Frozen):
    """A line of the pilot's own on the list, with a mass in g if it counts."""

    text: Name
    mass_g: Annotated[int, Field(strict=True, ge=0, le=200_000)] | None = None
    zone: Zone = Zone.WORN
    zone_on_foot: Zone | None = None


class PlugPlan(Frozen):
    """A device plugged into a bank in a phase, from the start or once its charge has fallen below a share."""

    phase: Name
    device: Name
    bank: Name
    connect_below_pct: Annotated[float, Field(strict=True, ge=0, le=100)] | None = None
    charge_to_pct: Annotated[float, Field(strict=True, ge=0, le=100)] = 100.0


class Use(Frozen):
    """The share of a phase's time (0..1) that an item spends in one of its ways of use, or ``off``."""

    item: Name
    phase: Name
    way: Name
    share: Annotated[float, Field(strict=True, ge=0, le=1)]


def _one_charge_is_three(raw: Any) -> Any:
    if isinstance(raw, dict) and raw.get("likely_pct") is not None:
        likely = raw["likely_pct"]
        return {"low_pct": likely, "high_pct": likely, **raw}
    return raw


class StartCharge(Frozen):
    """The charge that a device or bank begins the day with, in %: low, likely, high. Not named = full."""

    item: Name
    low_pct: ChargePct
    likely_pct: ChargePct
    high_pct: ChargePct

    @model_validator(mode="before")
    @classmethod
    def _one_is_three(cls, raw: Any) -> Any:
        return _one_charge_is_three(raw)

    @model_validator(mode="after")
    def _check(self) -> Self:
        if not self.low_pct <= self.likely_pct <= self.high_pct:
            raise PydanticCustomError("start_charge.not_rising", "{item}", {"item": self.item})
        return self

    @property
    def is_unknown(self) -> bool:
        """Whether nothing is known of it: anything from empty to full, reckoned from empty."""
        return (self.low_pct, self.likely_pct, self.high_pct) == (0.0, 0.0, 100.0)


class Evening(Frozen):
    """The night before: when things are charged, and where.

    Attributes:
        from_at, bed_at, up_at, leave_at: local times; hands are there from the first to the second and from the third
            to the fourth.
        sockets: free sockets in the wall; None = enough.
        place_c: temperature where things charge; None = not known.
        priority: items, the one that must be full first.
    """

    from_at: time
    bed_at: time
    up_at: time
    leave_at: time
    sockets: Annotated[int, Field(strict=True, ge=0, le=100)] | None = None
    place_c: AirC | None = None
    priority: tuple[Name, ...] = ()


class Answer(Frozen):
    """What the pilot answered to a check: value, source and time."""

    check: Name
    value: Note
    source: Line = ""
    at: AwareDatetime


class Override(Frozen):
    """A written reason why a finding does not keep the pilot at home; it stays on record."""

    finding: Name
    reason: Annotated[Note, Field(min_length=1)]
    at: AwareDatetime
    struck_at: AwareDatetime | None = None


def _zone_name(name: str) -> str:
    try:
        ZoneInfo(name)
    except (KeyError, ValueError, OSError) as problem:
        raise PydanticCustomError("outing.unknown_time_zone", "{zone}", {"zone": name}) from problem
    return name


def _own(raw: Any) -> Any:
    return {"text": raw} if isinstance(raw, str) else raw


class Outing(Frozen):
    """One planned day or several.

    Attributes:
        id: stable name inside the data file; not needed in a JSON file.
        flight_types: names of flight types of the library, at least one.
        starts_at: local time on site; time_zone: IANA name.
        top_m: greatest planned height above the sea.
        conditions: what the pilot ticked yes or no; what is missing is derived or open.
        demanded: who demands that service by law is closed.
        water_ml: water at launch; None = what the needs ask for.
        plugs: None = a sensible default; an empty list = nothing is plugged in.
        starts: charge at the start of what does not begin the day full.
        evening: when and where things are charged the night before; None = not told.
    """

    id: Name = "outing"
    name: Name
    flight_types: Annotated[tuple[Name, ...], Field(min_length=1)]
    first_day: Day
    last_day: Day
    starts_at: time | None = None
    time_zone: Annotated[Name, BeforeValidator(str)] | None = None
    site: Site = Site()
    top_m: HeightM | None = None
    phases: tuple[Phase, ...] = ()
    way_home: Line = ""
    people: tuple[Person, ...] = ()
    conditions: dict[Condition, StrictBool] = {}  # noqa: RUF012  # frozen model, pydantic copies defaults
    demanded: tuple[Demand, ...] = ()
    set: ChosenSet = ChosenSet()
    pinned: tuple[Annotated[Pin, BeforeValidator(_named)], ...] = ()
    left_out: tuple[Name, ...] = ()
    own_lines: tuple[Annotated[OwnLine, BeforeValidator(_own)], ...] = ()
    water_ml: Annotated[int, Field(strict=True, ge=0, le=100_000)] | None = None
    plugs: tuple[PlugPlan, ...] | None = None
    uses: tuple[Use, ...] = ()
    starts: tuple[StartCharge, ...] = ()
    evening: Evening | None = None
    answers: tuple[Answer, ...] = ()
    overrides: tuple[Override, ...] = ()

    @model_validator(mode="before")
    @classmethod
    def _one_day_is_both(cls, raw: Any) -> Any:
        if isinstance(raw, dict) and raw.get("first_day") is not None and raw.get("last_day") is None:
            return {**raw, "last_day": raw["first_day"]}
        return raw

    @model_validator(mode="after")
    def _check(self) -> Self:
        if not self.first_day <= self.last_day < self.first_day + timedelta(days=MAX_DAYS):
            days = {"first": str(self.first_day), "last": str(self.last_day)}
            raise PydanticCustomError("outing.days_reversed", "{first} {last}", days)
        if self.time_zone is not None:
            _zone_name(self.time_zone)
        names = [phase.name for phase in self.phases]
        if len(set_of(names)) != len(names):
            raise PydanticCustomError("outing.phase_named_twice", "", {})
        return self

    @property
    def days(self) -> tuple[date, ...]:
        """Each day of the outing."""
        count = (self.last_day - self.first_day).days + 1
        return tuple(self.first_day + timedelta(days=i) for i in range(count))


def set_of(names: list[str]) -> frozenset[str]:
    """The different names of a list (`set` is a field of the outing)."""
    return frozenset(names)
