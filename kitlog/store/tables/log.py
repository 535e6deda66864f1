"""Tables of what was flown and serviced.

What lies in the past (flights, records, events) names items and rules by id without a foreign key: it outlives them.
"""

from sqlalchemy import Column, ForeignKey, Text

from kitlog.kit.kinds import Kind
from kitlog.kit.measurement import Measured
from kitlog.kit.paper import MAX_BYTES, MediaType
from kitlog.kit.service import CountsFrom, Grounds, Result
from kitlog.store.tables.base import part, root
from kitlog.store.tables.columns import (
    day,
    entry,
    later_whole,
    later_words,
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

FLIGHT = root(
    "flight",
    entry(),
    title("id", unique=True),
    day("on", needed=True),
    day("until"),
    moment("takeoff_at"),
    moment("landing_at"),
    real("airtime_min", 0, 10_000_000, needed=True),
    real("ground_handling_min", 0, 10_000_000, needed=True),
    whole("launches", 0, 100_000, needed=True),
    words("site"),
    words("note"),
    later_words("time_zone"),
    whole("max_gnss_m", -1_000, 50_000),
    whole("max_pressure_m", -1_000, 50_000),
    real("found_airtime_min", 0, 1_440),
)

FLIGHT_RECORDING = part("flight_recording", owner("flight_id", "flight.id"), position(), title("sha256"))

FLOWN = part("flown", owner("flight_id", "flight.id"), position(), title("item_id"))

CARRIED = part("carried", owner("flight_id", "flight.id"), position(), title("item_id"))

SERVICE_RULE = root(
    "service_rule",
    entry(),
    title("id", unique=True),
    Column(
        "item_id",
        Text,
        ForeignKey("item.id", deferrable=True, initially="DEFERRED"),
        nullable=False,
        index=True,
    ),
    title("rule"),
    whole("months", 1, 1_200),
    whole("recommended_months", 1, 1_200),
    real("hours", 0, 100_000, ends="(]"),
    whole("launches", 1, 1_000_000),
    day("due_on"),
    one_of("counts_from", CountsFrom, needed=True),
    yes_no("ground_handling"),
    whole("lead_days", 0, 3_650, needed=True),
    whole("warn_days", 0, 3_650, needed=True),
    one_of("grounds", Grounds, needed=True),
    words("source"),
    yes_no("applies"),
    later_whole("event_days", 0, 3_650),
    name_or_none("of_model"),
)

RULE_EVENT = part("rule_event", owner("rule_id", "service_rule.id"), position(), title("event"))

MODEL_RULE = root(
    "model_rule",
    entry(),
    title("id", unique=True),
    one_of("kind", Kind, needed=True),
    words("maker"),
    title("model"),
    title("rule"),
    whole("months", 1, 1_200),
    whole("recommended_months", 1, 1_200),
    real("hours", 0, 100_000, ends="(]"),
    whole("launches", 1, 1_000_000),
    day("due_on"),
    whole("event_days", 0, 3_650, needed=True),
    one_of("counts_from", CountsFrom, needed=True),
    yes_no("ground_handling"),
    whole("lead_days", 0, 3_650, needed=True),
    whole("warn_days", 0, 3_650, needed=True),
    one_of("grounds", Grounds, needed=True),
    words("source"),
)

MODEL_RULE_EVENT = part("model_rule_event", owner("rule_id", "model_rule.id"), position(), title("event"))

SERVICE_RECORD = root(
    "service_record",
    entry(),
    title("id", unique=True),
    title("item_id"),
    day("done_on", needed=True),
    real("hours", 0, 1_000_000),
    whole("launches", 0, 10_000_000),
    words("who"),
    real("cost", 0, 1e9),
    words("remarks"),
    moment("struck_at"),
    one_of("result", Result),
    later_words("currency"),
    day("next_due_on"),
    real("next_within_h", 0, 100_000, ends="(]"),
)

RECORD_RULE = part("record_rule", owner("record_id", "service_record.id"), position(), title("rule"))

RECORD_MEASUREMENT = part(
    "record_measurement",
    owner("record_id", "service_record.id"),
    position(),
    one_of("what", Measured, needed=True),
    real("value", -100_000, 1_000_000, needed=True),
    title("unit"),
    words("gauge"),
    words("place"),
)

RECORD_PAPER = part(
    "record_paper",
    owner("record_id", "service_record.id"),
    position(),
    title("sha256"),
    title("name"),
    one_of("media_type", MediaType, needed=True),
    whole("size", 1, MAX_BYTES, needed=True),
)

RECORD_ANSWER = part("record_answer", owner("record_id", "service_record.id"), position(), title("event_id"))

REMINDER = root(
    "reminder",
    entry(),
    title("id", unique=True),
    whole("sequence", 0, 2_000_000_000, needed=True),
    day("on", needed=True),
    title("content"),
    yes_no("cancelled"),
)

EVENT = root(
    "event",
    entry(),
    title("id", unique=True),
    title("item_id"),
    day("on", needed=True),
    title("kind"),
    words("note"),
    moment("struck_at"),
)
