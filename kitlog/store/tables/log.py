"""Tables of what was flown and serviced.

What lies in the past (flights, records, events) names items and rules by id without a foreign key: it outlives them.
"""

from sqlalchemy import Column, ForeignKey, Text

from kitlog.kit.service import CountsFrom, Grounds
from kitlog.store.tables.base import part, root
from kitlog.store.tables.columns import (
    day,
    entry,
    moment,
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
)

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
)

RULE_EVENT = part("rule_event", owner("rule_id", "service_rule.id"), position(), title("event"))

SERVICE_RECORD = root(
    "service_record",
    entry(),
    title("id", unique=True),
    title("item_id"),
    day("done_on", needed=True),
    real("hours", 0, 1_000_000),
    whole("launches", 0, 10_000_000),
    words("who"),
    words("result"),
    real("cost", 0, 1e9),
    words("remarks"),
    moment("struck_at"),
)

RECORD_RULE = part("record_rule", owner("record_id", "service_record.id"), position(), title("rule"))

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
