"""The figures of an item as rows: label, figure, and how sure it is or what belongs to it."""

from collections.abc import Callable, Iterator
from datetime import date

from kitlog.desktop.kit_page.power_figures import Row, bank_rows, battery_rows, charger_rows
from kitlog.desktop.words import near_text
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.kit.mass import line_tolerance_g
from kitlog.outing.library import Library
from kitlog.packing.assessment import Assessment
from kitlog.wording.figures import day_text, kg_text, litres_text, mass_text, number_text, with_unit
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word
from kitlog.workbench.reads import KitRow


def figure_rows(row: KitRow, library: Library) -> list[Row]:
    """What is known about an item, the mass first."""
    item = row.item
    made = [_mass(item), *_facets(item), (_("Zones"), word(row.zone.value), _foot(row))]
    if row.serves:
        served = library.served_by_name()
        names = ", ".join(sorted(word(served[n].label) if n in served else n for n in row.serves))
        made.append((_("Serves"), names, _("a guess") if row.guessed else _("said by you")))
    return [*made, *_papers(item)]


def _mass(item: Item) -> Row:
    if item.mass_g is None:
        return _("Mass"), mass_text(None), _("weigh it once: the sums get sharper")
    tolerance = line_tolerance_g(item, max(item.quantity, 1)) or 0
    figure = mass_text(item.all_mass_g)
    pieces = f", {item.quantity} × {mass_text(item.mass_g)}" if item.quantity != 1 else ""
    return _("Mass"), figure, f"{word(item.mass_source.value)}, ± {mass_text(tolerance)}{pieces}"


def _foot(row: KitRow) -> str:
    return _("on foot: {zone}").format(zone=word(row.zone_on_foot.value))


def _span(low: int | None, high: int | None) -> str:
    if low is None and high is None:
        return word("not known")
    if low is None or high is None:
        one = _("to {high}") if low is None else _("from {low}")
        return one.format(low=_kg(low), high=_kg(high))
    return _("{low} to {high}").format(low=number_text(low / 1000), high=_kg(high))


def _kg(mass_g: int | None) -> str:
    return kg_text(mass_g, 0 if mass_g is None or mass_g % 1000 == 0 else 1)


def _facets(item: Item) -> Iterator[Row]:
    for name, rows in _FACETS.items():
        if getattr(item, name) is not None:
            yield from rows(item)


def _wing(item: Item) -> Iterator[Row]:
    wing = item.wing
    if wing is not None:
        yield _("Certified range"), _span(wing.min_g, wing.max_g), _("total mass in flight")
        if wing.flat_m2:
            yield _("Size"), _("{area} flat").format(area=with_unit(wing.flat_m2, "m²", 1)), item.serial


def _harness(item: Item) -> Iterator[Row]:
    if item.harness is not None:
        yield _("Greatest load"), _span(None, item.harness.max_g) if item.harness.max_g else word("not known"), ""


def _reserve(item: Item) -> Iterator[Row]:
    reserve = item.reserve
    if reserve is not None:
        sink = with_unit(reserve.sink_ms, "m/s", 1) if reserve.sink_ms else ""
        yield _("Printed load"), _span(reserve.min_g, reserve.max_g), sink


def _garment(item: Item) -> Iterator[Row]:
    if item.garment is not None:
        figure = word("not known") if item.garment.clo is None else with_unit(item.garment.clo, "clo", 2)
        layer = word(item.garment.layer.value) if item.garment.layer else ""
        yield _("Insulation"), figure, ", ".join(part for part in (layer, word(item.garment.part)) if part)


def _vessel(item: Item) -> Iterator[Row]:
    if item.vessel is not None:
        capacity = item.vessel.capacity_ml
        yield (
            _("Holds"),
            word("not known") if capacity is None else litres_text(capacity),
            _("content is weighed apart"),
        )


_FACETS: dict[str, Callable[[Item], Iterator[Row]]] = {
    "wing": _wing,
    "harness": _harness,
    "reserve": _reserve,
    "battery": battery_rows,
    "bank": bank_rows,
    "charger": charger_rows,
    "garment": _garment,
    "vessel": _vessel,
}


def _papers(item: Item) -> Iterator[Row]:
    if item.state.value != "in service":
        yield _("State"), word(item.state.value), ""
    if item.serial and not (item.wing and item.wing.flat_m2):
        yield _("Serial number"), item.serial, ""
    for label, day in (
        (_("Made"), item.made_on),
        (_("Bought"), item.bought_on),
        (_("First used"), item.first_used_on),
    ):
        if day is not None:
            yield label, day_text(day), ""
    if item.colour:
        yield _("Colour"), item.colour, ""


def take_off_row(item: Item, assessment: Assessment | None, today: date) -> list[Row]:
    """For the wing of the outing being worked on: the take-off mass and where it lies in the range."""
    chosen = None if assessment is None else assessment.chosen.get(Kind.WING)
    if assessment is None or chosen is None or chosen.id != item.id or assessment.mass.take_off_g is None:
        return []
    outing, mass = assessment.outing, assessment.mass
    near = first_upper(near_text(outing.first_day, outing.last_day, today))
    note = _("± {tolerance}").format(tolerance=number_text(mass.tolerance_g / 1000, 1))
    low, take_off_g = item.wing.min_g if item.wing else None, mass.take_off_g
    if low is not None and take_off_g is not None:
        side = _("{mass} above low limit") if take_off_g >= low else _("{mass} under low limit")
        note = f"{note}, {side.format(mass=number_text(abs(take_off_g - low) / 1000, 1))}"
    return [(near, kg_text(mass.take_off_g), note)]
