"""Tables of the outing: the plan, its parts, and the ticks of the repack.

An override stays on record when its outing goes, so it alone has no foreign key to it.
"""

from sqlalchemy import Column, ForeignKey, Text, UniqueConstraint

from kitlog.kit.kinds import PhaseWay, Zone
from kitlog.outing.conditions import Condition, Demand
from kitlog.outing.outing import Role
from kitlog.outing.ticks import Step, TickMark
from kitlog.store.tables.base import part, root
from kitlog.store.tables.coded import ClockText
from kitlog.store.tables.columns import (
    day,
    entry,
    moment,
    name_or_none,
    one_of,
    owner,
    position,
    real,
    title,
    whole,
    words,
    yes_no,
)

OUTING = root(
    "outing",
    entry(),
    title("id", unique=True),
    title("name"),
    day("first_day", needed=True),
    day("last_day", needed=True),
    Column("starts_at", ClockText),
    name_or_none("time_zone"),
    words("site_name"),
    real("site_lat_deg", -90, 90),
    real("site_lon_deg", -180, 180),
    real("site_launch_m", -500, 9_000),
    real("site_landing_m", -500, 9_000),
    real("top_m", -500, 9_000),
    words("way_home"),
    name_or_none("set_wing"),
    name_or_none("set_harness"),
    name_or_none("set_reserve"),
    name_or_none("set_helmet"),
    whole("water_ml", 0, 100_000),
    yes_no("plugs_planned"),
)

OUTING_TYPE = part("outing_type", owner("outing_id", "outing.id"), position(), title("flight_type"))

PHASE = part(
    "phase",
    owner("outing_id", "outing.id"),
    position(),
    title("name"),
    one_of("way", PhaseWay, needed=True),
    real("low_h", 0, 240, needed=True),
    real("likely_h", 0, 240, needed=True),
    real("high_h", 0, 240, needed=True),
    real("air_c", -60, 60),
)

PERSON = part(
    "person",
    owner("outing_id", "outing.id"),
    position(),
    title("name"),
    one_of("role", Role, needed=True),
    moment("told_at"),
    words("phone"),
)

CONDITION = part(
    "condition",
    owner("outing_id", "outing.id"),
    position(),
    one_of("condition", Condition, needed=True),
    yes_no("holds"),
)

DEMANDED = part("demanded", owner("outing_id", "outing.id"), position(), one_of("by", Demand, needed=True))

PIN = part(
    "pin",
    owner("outing_id", "outing.id"),
    position(),
    title("item"),
    whole("n", 1, 10_000),
    one_of("zone", Zone),
    one_of("zone_on_foot", Zone),
)

LEFT_OUT = part("left_out", owner("outing_id", "outing.id"), position(), title("item"))

OWN_LINE = part(
    "own_line",
    owner("outing_id", "outing.id"),
    position(),
    title("text"),
    whole("mass_g", 0, 200_000),
    one_of("zone", Zone, needed=True),
    one_of("zone_on_foot", Zone),
)

PLUG = part(
    "plug",
    owner("outing_id", "outing.id"),
    position(),
    title("phase"),
    title("device"),
    title("bank"),
    real("connect_below_pct", 0, 100),
    real("charge_to_pct", 0, 100, needed=True),
)

USE = part(
    "use",
    owner("outing_id", "outing.id"),
    position(),
    title("item"),
    title("phase"),
    title("way"),
    real("share", 0, 1, needed=True),
)

START_CHARGE = part(
    "start_charge",
    owner("outing_id", "outing.id"),
    position(),
    title("item"),
    real("low_pct", 0, 100, needed=True),
    real("likely_pct", 0, 100, needed=True),
    real("high_pct", 0, 100, needed=True),
)

EVENING = part(
    "evening",
    owner("outing_id", "outing.id"),
    Column("from_at", ClockText, nullable=False),
    Column("bed_at", ClockText, nullable=False),
    Column("up_at", ClockText, nullable=False),
    Column("leave_at", ClockText, nullable=False),
    whole("sockets", 0, 100),
    real("place_c", -60, 60),
)

CHARGE_PRIORITY = part("charge_priority", owner("outing_id", "evening.outing_id"), position(), title("item"))

ANSWER = part(
    "answer",
    owner("outing_id", "outing.id"),
    position(),
    title("check"),
    words("value"),
    words("source"),
    moment("at", needed=True),
)

OVERRIDE = part(
    "override",
    title("outing_id", key=True),
    position(),
    title("finding"),
    title("reason"),
    moment("at", needed=True),
    moment("struck_at"),
)

TICK = root(
    "tick",
    entry(),
    Column("outing_id", Text, ForeignKey("outing.id", deferrable=True, initially="DEFERRED"), nullable=False),
    one_of("step", Step, needed=True),
    title("line"),
    one_of("mark", TickMark, needed=True),
    moment("at", needed=True),
    words("who"),
    words("reason"),
    UniqueConstraint("outing_id", "step", "line"),
)
