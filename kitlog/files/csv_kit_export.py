"""Items into kit.csv, and the template that a newcomer fills in."""

from collections.abc import Iterator, Mapping, Sequence

from kitlog.files.csv_columns import KIT
from kitlog.files.csv_export import Export, Lost, blank, cells_of, unique_names, unwritten, written
from kitlog.files.csv_on_way import ON_WAY
from kitlog.kit.facets import Bank, Battery, Harness, Reserve, WayOfUse
from kitlog.kit.item import FACETS, Item
from kitlog.kit.kinds import Kind, MassSource, Zone
from kitlog.units.model import Frozen
from kitlog.wording.translate import _

_COVERED = {column.path[0] for column in KIT.all} | {"id"}
_TOLD = {"name", "power_w"}
"""What the column of the draw says."""


def write_kit(items: Sequence[Item]) -> Export:
    """The bytes of a kit.csv that gives the same items when read.

    Lost are: several ways of use, or one not named "on" or not given in watts; the range of a draw, how sure it is, its
    shares of the time; the ports of a charger; places, temperatures, what a bank uses itself, a facet of which nothing
    is known, a pair whose other item is not there or shares its name, numbers that need more than 19 decimals, and
    moments outside 1970 to 2100.
    """
    names = unique_names(items)
    rows = [cells_of(item, KIT) | {"fitted_to": _fitted_cell(item, names)} for item in items]
    lost = dict.fromkeys(Lost(item.name, field) for item in items for field in _lost_fields(item, names))
    return Export(written(KIT, rows), tuple(lost))


def _fitted_cell(item: Item, names: Mapping[str, str]) -> str:
    name = names.get(item.fitted_to or "", "")
    return KIT.by_heading["fitted_to"].form.write(name)


def _lost_fields(item: Item, names: Mapping[str, str]) -> Iterator[str]:
    if item.fitted_to is not None and item.fitted_to not in names:
        yield "fitted_to"
    yield from (".".join(KIT.by_heading[heading].path) for heading in unwritten(item, KIT))
    yield from _without_column(item)
    if item.battery is not None:
        yield from _lost_of_on_way(item.battery.ways)


def _without_column(item: Item) -> Iterator[str]:
    """Fields that no column stands for, looked for in the models so that a new field cannot be forgotten."""
    for name in type(item).model_fields:
        if name in FACETS:
            yield from _facet_without_column(name, getattr(item, name))
        elif name not in _COVERED and not blank(getattr(item, name)):
            yield name


def _facet_without_column(name: str, facet: Frozen | None) -> Iterator[str]:
    if facet is None:
        return
    values = {field: getattr(facet, field) for field in type(facet).model_fields}
    if all(blank(value) for value in values.values()):
        yield name
    yield from (f"{name}.{f}" for f, value in values.items() if (name, f) not in KIT.by_path and not blank(value))


def _lost_of_on_way(ways: Sequence[WayOfUse]) -> Iterator[str]:
    """What one column cannot say of the way that it holds, looked for in the model."""
    if ON_WAY.write(ways):
        fields = WayOfUse.model_fields
        yield from (
            f"battery.ways.{name}"
            for name in fields
            if name not in _TOLD and getattr(ways[0], name) != fields[name].default
        )


def template_kit() -> bytes:
    """A kit.csv with all headings and three items to write over: a harness, the reserve in it, a power bank."""
    return write_kit(_examples()).data


def _examples() -> tuple[Item, ...]:
    note = _("An example: write over it or delete the row.")
    harness = Item(
        id="1",
        name=_("Harness (example)"),
        kind=Kind.HARNESS,
        mass_g=3150,
        mass_source=MassSource.LUGGAGE_SCALE,
        zone=Zone.HARNESS,
        notes=note,
        harness=Harness(max_g=120_000),
    )
    reserve = Item(
        id="2",
        name=_("Reserve (example)"),
        kind=Kind.RESERVE,
        mass_g=1490,
        mass_source=MassSource.MAKERS_FIGURE,
        zone=Zone.UNDER_SEAT,
        fitted_to="1",
        notes=note,
        reserve=Reserve(min_g=60_000, max_g=100_000, sink_ms=5.4, sink_at_g=100_000),
    )
    bank = Item(
        id="3",
        name=_("Power bank (example)"),
        kind=Kind.POWER_BANK,
        mass_g=212,
        mass_source=MassSource.KITCHEN_SCALE,
        zone=Zone.COCKPIT,
        notes=note,
        battery=Battery(mah=10_000, v=3.7, charge_max_w=15, connector="USB-C"),
        bank=Bank(efficiency_pct=85, ports=2),
    )
    return harness, reserve, bank
