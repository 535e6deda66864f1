"""Which tables each thing lies in."""

from functools import cache
from typing import Any

from sqlalchemy import Table

from kitlog.kit.facets import (
    Bank,
    Battery,
    Charger,
    ChargerPort,
    Garment,
    Harness,
    Reserve,
    Share,
    Vessel,
    WayOfUse,
    Wing,
)
from kitlog.kit.flights import Flight
from kitlog.kit.item import Item
from kitlog.kit.measurement import Measurement
from kitlog.kit.paper import Paper
from kitlog.kit.reminder import Reminder
from kitlog.kit.service import Event, ModelRule, ServiceRecord, ServiceRule
from kitlog.outing.outing import (
    Answer,
    ChosenSet,
    Evening,
    Outing,
    Override,
    OwnLine,
    Person,
    Phase,
    Pin,
    PlugPlan,
    Site,
    StartCharge,
    Use,
)
from kitlog.outing.pilot import BodyMass, Pilot
from kitlog.outing.ticks import Tick
from kitlog.store.shape import Many, One, Pairs, Root, Values, all_parts
from kitlog.store.tables import kit, log, outing
from kitlog.units.model import Frozen

Stored = Pilot | Item | Flight | ServiceRule | ModelRule | ServiceRecord | Event | Outing | Tick | Reminder
"""What can be put into the data file."""

Removable = Pilot | Item | Flight | ServiceRule | ModelRule | Outing | Tick
"""What can be taken out of it again; records and events are struck, never removed."""

PILOTS = Root(Pilot, kit.PILOT, parts=(Many("masses", kit.BODY_MASS, BodyMass),))

ITEMS = Root(
    Item,
    kit.ITEM,
    parts=(
        Values("serves", kit.ITEM_SERVES, "serves"),
        Many("papers", kit.ITEM_PAPER, Paper),
        One("wing", kit.WING, Wing),
        One("harness", kit.HARNESS, Harness),
        One("reserve", kit.RESERVE, Reserve),
        One(
            "battery",
            kit.BATTERY,
            Battery,
            (Many("ways", kit.WAY_OF_USE, WayOfUse, (Many("shares", kit.WAY_SHARE, Share),)),),
        ),
        One("bank", kit.BANK, Bank),
        One("charger", kit.CHARGER, Charger, (Many("ports", kit.CHARGER_PORT, ChargerPort),)),
        One("garment", kit.GARMENT, Garment),
        One("vessel", kit.VESSEL, Vessel),
    ),
)

FLIGHTS = Root(
    Flight,
    log.FLIGHT,
    parts=(
        Values("flown", log.FLOWN, "item_id"),
        Values("carried", log.CARRIED, "item_id"),
        Values("recordings", log.FLIGHT_RECORDING, "sha256"),
    ),
)

RULES = Root(ServiceRule, log.SERVICE_RULE, parts=(Values("events", log.RULE_EVENT, "event"),))

MODEL_RULES = Root(ModelRule, log.MODEL_RULE, parts=(Values("events", log.MODEL_RULE_EVENT, "event"),))

RECORDS = Root(
    ServiceRecord,
    log.SERVICE_RECORD,
    parts=(
        Values("rules", log.RECORD_RULE, "rule"),
        Many("measurements", log.RECORD_MEASUREMENT, Measurement),
        Many("papers", log.RECORD_PAPER, Paper),
        Values("answers", log.RECORD_ANSWER, "event_id"),
    ),
)

REMINDERS = Root(Reminder, log.REMINDER)

EVENTS = Root(Event, log.EVENT)

OUTINGS = Root(
    Outing,
    outing.OUTING,
    parts=(
        Values("flight_types", outing.OUTING_TYPE, "flight_type"),
        Many("phases", outing.PHASE, Phase),
        Many("people", outing.PERSON, Person),
        Pairs("conditions", outing.CONDITION, "condition", "holds"),
        Values("demanded", outing.DEMANDED, "by"),
        Many("pinned", outing.PIN, Pin),
        Values("left_out", outing.LEFT_OUT, "item"),
        Many("own_lines", outing.OWN_LINE, OwnLine),
        Many("plugs", outing.PLUG, PlugPlan),
        Many("uses", outing.USE, Use),
        Many("starts", outing.START_CHARGE, StartCharge),
        One("evening", outing.EVENING, Evening, (Values("priority", outing.CHARGE_PRIORITY, "item"),)),
        Many("answers", outing.ANSWER, Answer),
        Many("overrides", outing.OVERRIDE, Override),
    ),
    inside={"site": (Site, "site_"), "set": (ChosenSet, "set_")},
    planned={"plugs": "plugs_planned"},
)

TICKS = Root(Tick, outing.TICK, key=("outing_id", "step", "line"))

ROOTS: dict[type[Frozen], Root[Any]] = {
    root.model: root
    for root in (PILOTS, ITEMS, FLIGHTS, RULES, MODEL_RULES, RECORDS, EVENTS, OUTINGS, TICKS, REMINDERS)
}
"""How each model lies in its tables."""

KEYS: dict[str, tuple[str, ...]] = {kit.PREFERENCE.name: ("name",)} | {
    root.table.name: root.key for root in ROOTS.values()
}
"""The columns that name a row, for tables in order of entry; a part's table says it itself."""

KIND_OF: dict[str, str] = {kit.PREFERENCE.name: kit.PREFERENCE.name} | {
    table.name: root.table.name
    for root in ROOTS.values()
    for table in (root.table, *(part.table for part in all_parts(root.parts)))
}
"""The thing that a table's rows belong to, by the name of its own table."""

OF_HISTORY: frozenset[str] = frozenset(
    table.name
    for table in (
        log.SERVICE_RECORD,
        log.RECORD_RULE,
        log.RECORD_MEASUREMENT,
        log.RECORD_PAPER,
        log.RECORD_ANSWER,
        log.EVENT,
        outing.OVERRIDE,
    )
)
"""What an inspector or buyer reads: never erased. See `kitlog.store.undo`."""


@cache
def key_names(table: Table) -> tuple[str, ...]:
    """The columns that name a row of any table."""
    return KEYS.get(table.name) or tuple(table.primary_key.columns.keys())
