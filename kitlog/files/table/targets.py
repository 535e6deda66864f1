"""What a column of a table can stand for: each heading of kit.csv, and what people write that has no column there."""

from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from kitlog.files.csv_columns import KIT
from kitlog.files.csv_forms import DAY, KILOGRAMS, MOMENT, NOTE, NUMBER, SEVERAL, TEXT, WHOLE, Form
from kitlog.files.csv_on_way import ON_WAY


class Way(StrEnum):
    """How the cells of a column are read."""

    TEXT = "text"
    NOTE = "note"
    SEVERAL = "several"
    WORD = "word"
    """A word of a closed list (kind, zone, state ...)."""
    DAY = "day"
    MOMENT = "moment"
    """A day with a time and its offset from UTC."""
    COUNT = "count"
    """Whole pieces, launches, ports: 2, 2x, 2 pcs."""
    MASS = "mass"
    """Whole grams, from g, kg, oz, lb."""
    FIGURE = "figure"
    """A number with a unit of its own dimension."""
    ELECTRIC = "electric"
    """Text such as "10000 mAh 3.7 V" or "38 Wh"."""
    MASS_RANGE = "mass range"
    """Least and greatest mass in one cell: 85-105 kg."""
    MASS_UNIT = "mass unit"
    """The unit of the masses in this row: g, kg, oz, lb."""


@dataclass(frozen=True, slots=True)
class Target:
    """Something that a column can stand for.

    Attributes:
        name: the heading of kit.csv, or a name of its own for what has none there.
        way: how its cells are read.
        unit: unit of the value that is read: g for masses, else as in the heading (Wh, mAh, V, W, ml, l, m2, km/h,
            m/s, %, h, s, clo); empty where there is none.
    """

    name: str
    way: Way
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Meaning:
    """What one column stands for.

    Attributes:
        target: name of a `Target`; empty = the column is left out.
        unit: unit of its bare numbers as its heading (or a title, or the row under it) gives it, from the units that
            `kitlog.files.table.amounts` knows; empty = none given.
    """

    target: str
    unit: str = ""


_UNITS = {
    "battery_wh": "Wh",
    "battery_mah": "mAh",
    "battery_v": "V",
    "battery_health_pct": "%",
    "battery_cutoff_pct": "%",
    "battery_on_hand_pct": "%",
    "bank_rated_mah": "mAh",
    "bank_efficiency_pct": "%",
    "draw_w": "W",
    "charge_max_w": "W",
    "bank_port_w": "W",
    "bank_total_w": "W",
    "bank_min_w": "W",
    "bank_off_s": "s",
    "charger_total_w": "W",
    "opening_h": "h",
    "opening_ground_h": "h",
    "wing_flat_m2": "m2",
    "wing_projected_m2": "m2",
    "wing_trim_kmh": "km/h",
    "wing_sink_ms": "m/s",
    "reserve_sink_ms": "m/s",
    "harness_volume_l": "l",
    "volume_ml": "ml",
    "vessel_ml": "ml",
    "clo": "clo",
}
_COUNTS = ("quantity", "opening_launches", "bank_ports")


def _way(heading: str, form: Form) -> Way:
    if heading in _COUNTS:
        return Way.COUNT
    if heading == "mass_g" or form is KILOGRAMS:
        return Way.MASS
    plain = {id(TEXT): Way.TEXT, id(NOTE): Way.NOTE, id(SEVERAL): Way.SEVERAL, id(DAY): Way.DAY}
    plain[id(MOMENT)] = Way.MOMENT
    if id(form) in plain:
        return plain[id(form)]
    return Way.FIGURE if form in (NUMBER, WHOLE, ON_WAY) else Way.WORD


def _targets() -> dict[str, Target]:
    found = {}
    for column in KIT.all:
        way = _way(column.heading, column.form)
        unit = "g" if way is Way.MASS else _UNITS.get(column.heading, "")
        found[column.heading] = Target(column.heading, way, unit)
    also = (
        Target("mass_all", Way.MASS, "g"),
        Target("mass_more", Way.MASS, "g"),
        Target("mass_unit", Way.MASS_UNIT),
        Target("battery", Way.ELECTRIC),
        Target("wing_range", Way.MASS_RANGE, "g"),
        Target("reserve_range", Way.MASS_RANGE, "g"),
    )
    return found | {target.name: target for target in also}


TARGETS = MappingProxyType(_targets())
"""All targets by name: the headings of kit.csv, ``mass_all`` (all pieces of the row together), ``mass_more``
(a second figure: ounces beside pounds, or another weighing), ``mass_unit``,
``battery``, ``wing_range`` and ``reserve_range``."""
