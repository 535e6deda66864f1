"""Tables of the kit: pilots, items with their facets, flights, preferences."""

from sqlalchemy import Column, ForeignKey, ForeignKeyConstraint, Integer, Text

from kitlog.kit.kinds import ItemState, Kind, Layer, MassSource, PhaseWay, Place, Zone
from kitlog.kit.paper import MAX_BYTES, MediaType
from kitlog.outing.pilot import BodyRole
from kitlog.store.tables.base import part, root
from kitlog.store.tables.columns import (
    day,
    entry,
    later_words,
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

PILOT = root(
    "pilot",
    entry(),
    title("id", unique=True),
    title("name"),
    one_of("role", BodyRole, needed=True),
    words("phone"),
    words("notes"),
)

BODY_MASS = part(
    "body_mass",
    owner("pilot_id", "pilot.id"),
    position(),
    day("taken_on", needed=True),
    whole("mass_g", 20_000, 250_000, needed=True),
    words("how"),
)

ITEM = root(
    "item",
    entry(),
    title("id", unique=True),
    title("name"),
    one_of("kind", Kind, needed=True),
    whole("quantity", 0, 10_000, needed=True),
    whole("mass_g", 0, 200_000),
    one_of("mass_source", MassSource, needed=True),
    one_of("zone", Zone),
    one_of("zone_on_foot", Zone),
    Column("fitted_to", Text, ForeignKey("item.id", deferrable=True, initially="DEFERRED"), index=True),
    one_of("state", ItemState, needed=True),
    words("maker"),
    words("model"),
    words("serial"),
    day("made_on"),
    day("bought_on"),
    day("first_used_on"),
    real("opening_h", 0, 100_000),
    whole("opening_launches", 0, 1_000_000),
    words("colour"),
    real("value", 0, 1e9),
    whole("volume_ml", 0, 1_000_000),
    words("notes"),
    real("opening_ground_h", 0, 100_000),
    later_words("belongs_to"),
    later_words("lent_to"),
    day("back_by"),
)

ITEM_PAPER = part(
    "item_paper",
    owner("item_id", "item.id"),
    position(),
    title("sha256"),
    title("name"),
    one_of("media_type", MediaType, needed=True),
    whole("size", 1, MAX_BYTES, needed=True),
)

ITEM_SERVES = part("item_serves", owner("item_id", "item.id"), position(), title("serves"))

WING = part(
    "wing",
    owner("item_id", "item.id"),
    whole("min_g", 0, 1_000_000),
    whole("max_g", 0, 1_000_000),
    real("flat_m2", 0, 100, ends="(]"),
    real("projected_m2", 0, 100, ends="(]"),
    real("trim_kmh", 0, 150, ends="(]"),
    real("sink_ms", 0, 20, ends="(]"),
    whole("figures_g", 0, 1_000_000),
)

HARNESS = part("harness", owner("item_id", "item.id"), whole("max_g", 0, 1_000_000), real("volume_l", 0, 500))

RESERVE = part(
    "reserve",
    owner("item_id", "item.id"),
    whole("min_g", 0, 1_000_000),
    whole("max_g", 0, 1_000_000),
    real("sink_ms", 0, 20, ends="(]"),
    whole("sink_at_g", 0, 1_000_000),
)

BATTERY = part(
    "battery",
    owner("item_id", "item.id"),
    real("wh", 0, 10_000),
    real("mah", 0, 1_000_000),
    real("v", 0, 1_000, ends="(]"),
    real("health_pct", 0, 100),
    real("cutoff_pct", 0, 100, ends="[)"),
    real("charge_max_w", 0, 1_000),
    words("connector"),
    one_of("place", Place),
    real("offset_k", -50, 50),
    real("fixed_c", -40, 60),
    real("on_hand_pct", 0, 100),
    moment("on_hand_at"),
    day("swollen_on"),
)

WAY_OF_USE = part(
    "way_of_use",
    owner("item_id", "battery.item_id"),
    position(),
    title("name"),
    real("power_w", 0, 1_000),
    real("low_w", 0, 1_000),
    real("high_w", 0, 1_000),
    real("current_ma", 0, 1_000_000),
    real("at_v", 0, 100, ends="(]"),
    real("lasts_h", 0, 10_000, ends="(]"),
    real("from_pct", 0, 100),
    real("to_pct", 0, 100),
    real("over_h", 0, 10_000, ends="(]"),
    day("measured_on"),
    words("basis"),
    words("source"),
)

WAY_SHARE = part(
    "way_share",
    Column("item_id", Text, primary_key=True, nullable=False),
    Column("way", Integer, primary_key=True, nullable=False),
    position(),
    one_of("during", PhaseWay, needed=True),
    real("share", 0, 1, needed=True),
    ForeignKeyConstraint(
        ["item_id", "way"],
        ["way_of_use.item_id", "way_of_use.position"],
        deferrable=True,
        initially="DEFERRED",
    ),
)

BANK = part(
    "bank",
    owner("item_id", "item.id"),
    real("efficiency_pct", 0, 100, ends="(]"),
    whole("ports", 0, 100),
    real("port_w", 0, 1_000),
    real("total_w", 0, 1_000),
    real("min_w", 0, 1_000),
    real("off_s", 0, 86_400),
    real("quiescent_w", 0, 1_000),
    real("rated_mah", 0, 1_000_000),
)

CHARGER = part("charger", owner("item_id", "item.id"), real("total_w", 0, 1_000))

CHARGER_PORT = part(
    "charger_port",
    owner("item_id", "charger.item_id"),
    position(),
    real("power_w", 0, 1_000),
    words("connector"),
    yes_no("fixed_cable"),
)

GARMENT = part("garment", owner("item_id", "item.id"), real("clo", 0, 10), one_of("layer", Layer), words("part"))

VESSEL = part("vessel", owner("item_id", "item.id"), whole("capacity_ml", 0, 100_000))

PREFERENCE = root("preference", entry(), title("name", unique=True), words("value"))
