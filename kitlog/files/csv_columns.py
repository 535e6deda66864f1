"""The headings of kit.csv and service.csv: where each stands in the models, and in which form."""

from collections.abc import Sequence
from dataclasses import dataclass

from kitlog.files.csv_forms import DAY, KILOGRAMS, MOMENT, NOTE, NUMBER, SEVERAL, TEXT, WHOLE, Form, choice
from kitlog.files.csv_on_way import ON_WAY
from kitlog.kit.kinds import ItemState, Kind, Layer, MassSource, Zone
from kitlog.kit.service import CountsFrom, Grounds, Result

_ZONE = choice(Zone)


@dataclass(frozen=True, slots=True)
class Column:
    """One heading: the path of its field in the model, and how its cells are written."""

    heading: str
    path: tuple[str, ...]
    form: Form


class Columns:
    """The headings of one file, in the order in which they are written.

    Args:
        columns: all headings.
        required: headings that must be there, with a cell in each row.
    """

    def __init__(self, columns: Sequence[Column], required: tuple[str, ...]) -> None:
        self.all = tuple(columns)
        self.required = required
        self.by_heading = {column.heading: column for column in columns}
        self.by_path = {column.path: column for column in columns}
        self.headings = tuple(self.by_heading)

    def at(self, path: tuple[object, ...]) -> Column | None:
        """The column of a place in the model; of a facet as a whole its first column; None for the whole model."""
        for length in range(len(path), 0, -1):
            found = next((column for column in self.all if column.path[:length] == path[:length]), None)
            if found:
                return found
        return None


def _plain(form: Form, *headings: str) -> list[Column]:
    return [Column(heading, (heading,), form) for heading in headings]


def _last(form: Form, field: str) -> list[Column]:
    """A column about the last time it was done."""
    return [Column(f"last_{field}", ("last", field), form)]


def _facet(facet: str, prefix: str, form: Form, *fields: str) -> list[Column]:
    """Columns named prefix + field; a field in grams is a heading in kilograms."""
    unit = "_kg" if form is KILOGRAMS else ""
    return [
        Column(prefix + (field.removesuffix("_g") + unit if unit else field), (facet, field), form) for field in fields
    ]


KIT = Columns(
    [
        *_plain(TEXT, "name"),
        *_plain(choice(Kind), "kind"),
        *_plain(WHOLE, "quantity", "mass_g"),
        *_plain(choice(MassSource), "mass_source"),
        *_plain(_ZONE, "zone", "zone_on_foot"),
        *_plain(TEXT, "fitted_to"),
        *_plain(SEVERAL, "serves"),
        *_plain(choice(ItemState), "state"),
        *_plain(TEXT, "belongs_to", "lent_to"),
        *_plain(DAY, "back_by"),
        *_plain(TEXT, "maker", "model", "serial"),
        *_plain(DAY, "made_on", "bought_on", "first_used_on"),
        *_plain(NUMBER, "opening_h"),
        *_plain(WHOLE, "opening_launches"),
        *_plain(NUMBER, "opening_ground_h"),
        *_plain(TEXT, "colour"),
        *_plain(NUMBER, "value"),
        *_plain(NOTE, "notes"),
        *_facet("wing", "wing_", KILOGRAMS, "min_g", "max_g"),
        *_facet("wing", "wing_", NUMBER, "flat_m2", "projected_m2", "trim_kmh", "sink_ms"),
        *_facet("wing", "wing_", KILOGRAMS, "figures_g"),
        *_facet("harness", "harness_", KILOGRAMS, "max_g"),
        *_facet("harness", "harness_", NUMBER, "volume_l"),
        *_facet("reserve", "reserve_", KILOGRAMS, "min_g", "max_g"),
        *_facet("reserve", "reserve_", NUMBER, "sink_ms"),
        *_facet("reserve", "reserve_", KILOGRAMS, "sink_at_g"),
        *_facet("battery", "battery_", NUMBER, "wh", "mah", "v", "health_pct", "cutoff_pct"),
        Column("draw_w", ("battery", "ways"), ON_WAY),
        *_facet("battery", "", NUMBER, "charge_max_w"),
        *_facet("battery", "", TEXT, "connector"),
        *_facet("battery", "battery_", NUMBER, "on_hand_pct"),
        *_facet("battery", "battery_", MOMENT, "on_hand_at"),
        *_facet("battery", "battery_", DAY, "swollen_on"),
        *_facet("bank", "bank_", NUMBER, "rated_mah", "efficiency_pct"),
        *_facet("bank", "bank_", WHOLE, "ports"),
        *_facet("bank", "bank_", NUMBER, "port_w", "total_w", "min_w", "off_s"),
        *_facet("charger", "charger_", NUMBER, "total_w"),
        *_facet("garment", "", NUMBER, "clo"),
        *_facet("garment", "garment_", choice(Layer), "layer"),
        *_facet("garment", "garment_", TEXT, "part"),
        Column("vessel_ml", ("vessel", "capacity_ml"), WHOLE),
        *_plain(WHOLE, "volume_ml"),
    ],
    required=("name",),
)
"""kit.csv: one item a row."""

_COUNTS_FROM = choice(
    CountsFrom,
    first_used_on=CountsFrom.FIRST_USE,
    bought_on=CountsFrom.BOUGHT,
    made_on=CountsFrom.MADE,
)

SERVICE = Columns(
    [
        Column("item", ("item_id",), TEXT),
        *_plain(TEXT, "rule"),
        *_plain(WHOLE, "months", "recommended_months"),
        *_plain(NUMBER, "hours"),
        *_plain(WHOLE, "launches"),
        *_plain(DAY, "due_on"),
        Column("event", ("events",), SEVERAL),
        *_plain(WHOLE, "event_days"),
        Column("last_on", ("last", "done_on"), DAY),
        *_last(NUMBER, "hours"),
        *_last(WHOLE, "launches"),
        *_last(TEXT, "who"),
        *_last(choice(Result), "result"),
        *_last(NUMBER, "cost"),
        *_last(TEXT, "currency"),
        *_last(NOTE, "remarks"),
        *_last(DAY, "next_due_on"),
        *_last(NUMBER, "next_within_h"),
        *_plain(_COUNTS_FROM, "counts_from"),
        *_plain(WHOLE, "lead_days", "warn_days"),
        *_plain(choice(Grounds), "grounds"),
        *_plain(TEXT, "source"),
    ],
    required=("item", "rule"),
)
"""service.csv: one rule of an item a row, with the last time it was done (under ``last``, which makes the record)."""
