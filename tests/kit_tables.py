"""Arbitrary items as a kit.csv can hold them; shared by the tests of what is written and read back."""

import itertools
from collections.abc import Callable
from datetime import UTC, datetime, timedelta, timezone
from typing import Any

from hypothesis import strategies as st

from kitlog.fault import InputFault
from kitlog.kit.facets import MAH_AT_PORT, Bank, Battery, Charger, Garment, Harness, Reserve, Vessel, WayOfUse, Wing
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind, Layer, MassSource, Zone
from kitlog.packing.capacity import refuse_more_out_than_in
from kitlog.units.days import FIRST_DAY, LAST_DAY

AWKWARD = "'=+-@,;\"\\ \n\t＝éa1ſ\u200b\ufeff\U0001f4a1"
ONE_LINE = st.text(st.sampled_from([c for c in AWKWARD if c not in "\n\t"]), max_size=20) | st.text(
    st.characters(codec="utf-8", exclude_categories=["Cc", "Cf", "Cs"]), max_size=20
)
LINE = ONE_LINE
NAME = ONE_LINE.filter(lambda text: text.strip() != "")
NOTE = st.text(st.sampled_from(AWKWARD), max_size=40)
GRAMS = st.integers(0, 1_000_000)
DAY = st.dates(FIRST_DAY, LAST_DAY)
MOMENT = st.datetimes(
    datetime(FIRST_DAY.year, 1, 2),  # noqa: DTZ001  # the offset comes with timezones
    datetime(LAST_DAY.year, 12, 30),  # noqa: DTZ001
    timezones=st.sampled_from([UTC, timezone(timedelta(hours=2)), timezone(timedelta(hours=-9, minutes=-30))]),
)


def ids() -> Callable[[], str]:
    count = itertools.count(1)
    return lambda: str(next(count))


def number(least: float, most: float) -> st.SearchStrategy[float]:
    """Numbers in a range that 19 decimals can hold: any of 3 decimals, and floats as they come from arithmetic."""
    awkward = st.floats(max(least, 0.01), most, allow_subnormal=False)
    low, high = round(least * 1000), round(most * 1000)
    return st.integers(max(low, 1 if least else 0), high).map(lambda n: n / 1000) | awkward


def maybe(strategy: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return st.none() | strategy


def facet(model: type[Any], **fields: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    """A facet of which something is known, or none; limits the right way round."""

    def build(values: dict[str, Any]) -> Any:
        low, high = values.get("min_g"), values.get("max_g")
        if low is not None and high is not None:
            values |= {"min_g": min(low, high), "max_g": max(low, high)}
        made = model(**values)
        return None if made == model() else made

    return maybe(st.fixed_dictionaries({}, optional=fields).map(build))


WINGS = facet(
    Wing,
    min_g=GRAMS,
    max_g=GRAMS,
    flat_m2=number(0.001, 100),
    projected_m2=number(0.001, 100),
    trim_kmh=number(0.001, 150),
    sink_ms=number(0.001, 20),
    figures_g=GRAMS,
)
WATTS = number(0, 1_000)
ON = WATTS.map(lambda watts: (WayOfUse(name="on", power_w=watts),))
CELL = {
    "health_pct": number(0, 100),
    "cutoff_pct": number(0, 99),
    "charge_max_w": WATTS,
    "connector": LINE,
    "ways": ON,
    "v": number(0.001, 1_000),
    "on_hand_pct": number(0, 100),
    "on_hand_at": MOMENT,
    "swollen_on": DAY,
}
BATTERIES = facet(Battery, wh=number(0, 10_000), **CELL) | facet(Battery, mah=number(0, 1_000_000), **CELL)
FACETS = {
    "wing": WINGS,
    "harness": facet(Harness, max_g=GRAMS, volume_l=number(0, 500)),
    "reserve": facet(Reserve, min_g=GRAMS, max_g=GRAMS, sink_ms=number(0.001, 20), sink_at_g=GRAMS),
    "battery": BATTERIES,
    "bank": facet(
        Bank,
        rated_mah=number(0, 1_000_000),
        efficiency_pct=number(0.001, 100),
        ports=st.integers(0, 100),
        port_w=WATTS,
        total_w=WATTS,
        min_w=WATTS,
        off_s=number(0, 86_400),
    ),
    "charger": facet(Charger, total_w=WATTS),
    "garment": facet(Garment, clo=number(0, 10), layer=st.sampled_from(Layer), part=LINE),
    "vessel": facet(Vessel, capacity_ml=st.integers(0, 100_000)),
}
PLAIN = {
    "kind": st.sampled_from(Kind),
    "quantity": st.integers(0, 10_000),
    "mass_g": maybe(st.integers(0, 200_000)),
    "mass_source": st.sampled_from(MassSource),
    "zone": maybe(st.sampled_from(Zone)),
    "zone_on_foot": maybe(st.sampled_from(Zone)),
    "serves": st.lists(NAME, max_size=3).map(tuple),
    "state": st.sampled_from(ItemState),
    "maker": LINE,
    "model": LINE,
    "serial": LINE,
    "made_on": maybe(DAY),
    "bought_on": maybe(DAY),
    "first_used_on": maybe(DAY),
    "opening_h": maybe(number(0, 100_000)),
    "opening_launches": maybe(st.integers(0, 1_000_000)),
    "opening_ground_h": maybe(number(0, 100_000)),
    "belongs_to": LINE,
    "lent_to": LINE,
    "back_by": maybe(DAY),
    "colour": LINE,
    "value": maybe(number(0, 1e9)),
    "volume_ml": maybe(st.integers(0, 1_000_000)),
    "notes": NOTE,
}


def _possible(item: Item) -> Item:
    """The item, without what no table brings: mAh of a cell or a port, ports that give too much, a charger's as a bank's."""
    if item.kind is Kind.CHARGER:
        item = item.model_copy(update={"bank": None})
    if item.battery and item.battery.given == MAH_AT_PORT:
        item = item.model_copy(update={"battery": None})
    try:
        refuse_more_out_than_in(item)
    except InputFault:
        return item.model_copy(update={"bank": None})
    return item


@st.composite
def kits(draw: st.DrawFn) -> list[Item]:
    """Items with ids 1, 2, 3 ...; some fitted to a later one whose name is its own, so that there are no circles."""
    fields = draw(st.lists(st.fixed_dictionaries({"name": NAME}, optional=PLAIN | FACETS), max_size=4))
    items = [_possible(Item(id=str(n), **values)) for n, values in enumerate(fields, start=1)]
    names = [item.name for item in items]
    for n, item in enumerate(items):
        later = [other.id for other in items[n + 1 :] if names.count(other.name) == 1]
        target = draw(st.none() | st.sampled_from(later)) if later else None
        items[n] = item.model_copy(update={"fitted_to": target})
    return items
