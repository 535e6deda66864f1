"""The fields of each facet as data: one list makes the form, reads it and fills it."""

from dataclasses import dataclass
from typing import Literal

from kitlog.kit.facets import Bank, Battery, Charger, Garment, Harness, Reserve, Vessel, Wing
from kitlog.kit.kinds import Kind, Layer, Place
from kitlog.packing.cables import Connector
from kitlog.units.model import Frozen
from kitlog.wording.translate import N_

KG = 1000.0
"""Grams in a kilogram: shown in kg, stored in g."""


@dataclass(frozen=True, slots=True)
class FacetField:
    """One figure of a facet.

    Attributes:
        name: of the model's field; label: what it is called; unit: behind the figure.
        decimals, most: of what is shown; least: the least figure, for temperatures below zero.
        factor: what is stored per what is shown; whole: whether the model wants a whole number.
        choices: for a choice instead of a number; words: to choose from where any other text is kept; hint: in it.
        form: ``text``, ``day`` or ``moment`` instead of a number.
    """

    name: str
    label: str
    unit: str = ""
    decimals: int = 0
    most: float = 1_000_000
    least: float = 0
    factor: float = 1.0
    whole: bool = False
    choices: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    hint: str = ""
    form: Literal["", "text", "day", "moment"] = ""


CONNECTORS = tuple(connector.value for connector in Connector)
"""Plugs and sockets to choose from; any other text is kept."""


FACET_FIELDS: dict[str, tuple[FacetField, ...]] = {
    "wing": (
        FacetField("min_g", N_("Certified from"), "kg", 1, 1000, factor=KG, whole=True),
        FacetField("max_g", N_("Certified to"), "kg", 1, 1000, factor=KG, whole=True),
        FacetField("flat_m2", N_("Flat area"), "m²", 1, 100),
        FacetField("projected_m2", N_("Projected area"), "m²", 1, 100),
        FacetField("trim_kmh", N_("Trim speed"), "km/h", 1, 150),
        FacetField("sink_ms", N_("Least sink"), "m/s", 2, 20),
        FacetField("figures_g", N_("Both at"), "kg", 1, 1000, factor=KG, whole=True),
    ),
    "harness": (
        FacetField("max_g", N_("Greatest load"), "kg", 1, 1000, factor=KG, whole=True),
        FacetField("volume_l", N_("Volume"), "l", 0, 500),
    ),
    "reserve": (
        FacetField("min_g", N_("Load from"), "kg", 1, 1000, factor=KG, whole=True),
        FacetField("max_g", N_("Load to"), "kg", 1, 1000, factor=KG, whole=True),
        FacetField("sink_ms", N_("Sink"), "m/s", 2, 20),
        FacetField("sink_at_g", N_("Sink given at"), "kg", 1, 1000, factor=KG, whole=True),
    ),
    "battery": (
        FacetField("wh", N_("Energy"), "Wh", 2, 10_000),
        FacetField("mah", N_("or capacity"), "mAh", 0, 1_000_000),
        FacetField("v", N_("at"), "V", 2, 1000),
        FacetField("health_pct", N_("Health"), "%", 0, 100),
        FacetField("cutoff_pct", N_("Goes off at"), "%", 0, 99),
        FacetField("charge_max_w", N_("Charges with at most"), "W", 1, 1000),
        FacetField("connector", N_("Connector"), words=CONNECTORS, hint=N_("of its socket, of all its ports")),
        FacetField("on_hand_pct", N_("Charge on hand"), "%", 0, 100),
        FacetField("on_hand_at", N_("Seen at"), form="moment"),
        FacetField("swollen_on", N_("Seen swollen on"), form="day"),
        FacetField("place", N_("Lies in"), choices=tuple(place.value for place in Place)),
        FacetField("offset_k", N_("Warmer than the air by"), "K", 0, 50, -50),
        FacetField("fixed_c", N_("or at its own"), "°C", 0, 60, -40),
    ),
    "bank": (
        FacetField("rated_mah", N_("Rated at the 5 V port"), "mAh", 0, 1_000_000),
        FacetField("efficiency_pct", N_("From cell to port"), "%", 0, 100),
        FacetField("ports", N_("Ports"), "", 0, 100, whole=True),
        FacetField("port_w", N_("Most at a port"), "W", 1, 1000),
        FacetField("total_w", N_("Most at all ports"), "W", 1, 1000),
        FacetField("min_w", N_("Falls asleep under"), "W", 2, 1000),
        FacetField("off_s", N_("after"), "s", 0, 86_400),
        FacetField("quiescent_w", N_("Uses itself"), "W", 2, 1000),
    ),
    "charger": (FacetField("total_w", N_("Gives together at most"), "W", 1, 1000),),
    "garment": (
        FacetField("clo", N_("Insulation"), "clo", 2, 10),
        FacetField("layer", N_("Layer"), choices=tuple(layer.value for layer in Layer)),
        FacetField("part", N_("Covers"), form="text"),
    ),
    "vessel": (FacetField("capacity_ml", N_("Holds"), "l", 2, 100, factor=KG, whole=True),),
}
"""By the names of the facet fields of an item."""

FACET_TITLES = {
    "wing": N_("Wing"),
    "harness": N_("Harness"),
    "reserve": N_("Reserve"),
    "battery": N_("Battery and use"),
    "bank": N_("Power bank"),
    "charger": N_("Charger"),
    "garment": N_("Garment"),
    "vessel": N_("Vessel"),
}

FACET_MODELS: dict[str, type[Frozen]] = {
    "wing": Wing,
    "harness": Harness,
    "reserve": Reserve,
    "battery": Battery,
    "bank": Bank,
    "charger": Charger,
    "garment": Garment,
    "vessel": Vessel,
}

_BATTERY = ("battery",)
FITTING: dict[Kind, tuple[str, ...]] = {
    Kind.WING: ("wing",),
    Kind.HARNESS: ("harness",),
    Kind.RESERVE: ("reserve",),
    Kind.INSTRUMENT: _BATTERY,
    Kind.PHONE: _BATTERY,
    Kind.RADIO: _BATTERY,
    Kind.TRACKER: _BATTERY,
    Kind.BEACON: _BATTERY,
    Kind.CAMERA: _BATTERY,
    Kind.LIGHT: _BATTERY,
    Kind.POWER_BANK: ("battery", "bank"),
    Kind.CHARGER: ("charger",),
    Kind.CABLE: ("battery",),
    Kind.GARMENT: ("garment",),
    Kind.GLOVES: ("garment",),
    Kind.FOOTWEAR: ("garment",),
    Kind.VESSEL: ("vessel",),
}
"""Facets that are shown for a kind without asking; any other can be added."""
