"""What the capacity figures of the form come to, and the question what mAh mean that a port may have."""

from collections.abc import Mapping

from pydantic import ValidationError

from kitlog.desktop.kit_page.facet_form import FacetForm
from kitlog.desktop.kit_page.facet_part import FacetPart
from kitlog.desktop.parts.fields import NumberField
from kitlog.fault import Fault, InputFault
from kitlog.kit.facets import Bank, Battery, contradict
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.capacity import energy_wh, refuse_more_out_than_in
from kitlog.units.energy import energy_wh as product_wh
from kitlog.units.energy import is_port
from kitlog.units.refused import refused
from kitlog.wording.capacity_text import capacity_text
from kitlog.wording.draw_text import short_text
from kitlog.wording.faults import fault_text
from kitlog.wording.translate import _

CELL_V = 3.7
"""Nominal volts of one lithium-ion cell, where the label of a bank tells none (as printed on products)."""

OF_THE_CELL, OF_THE_PORT = "cell", "port"


def cell_item(kind: Kind, facets: Mapping[str, FacetPart]) -> Item:
    """An item with battery and bank as they stand in the form; ways of use are left out.

    Raises:
        pydantic.ValidationError: the figures contradict each other.
    """
    battery, bank = facets.get("battery"), facets.get("bank")
    return Item(
        id="cell",
        name="cell",
        kind=kind,
        battery=Battery(**battery.figures()) if isinstance(battery, FacetForm) else None,
        bank=Bank(**found) if isinstance(bank, FacetForm) and (found := bank.figures()) else None,
    )


def look_at_capacity(kind: Kind, facets: Mapping[str, FacetPart]) -> Item:
    """Show the line under the capacity figures and the question about the mAh; the item for the draws to go by."""
    form = facets.get("battery")
    unknown = Item(id="cell", name="cell", kind=kind)
    if not isinstance(form, FacetForm) or form.capacity is None:
        return unknown
    item, text, tone = unknown, "", "muted"
    try:
        item = cell_item(kind, facets)
        refuse_more_out_than_in(item)
        text = capacity_text(item)
    except ValidationError as error:
        text, tone = fault_text(refused(error)).line, "stop"
    except Fault as fault:
        text, tone = fault_text(fault).line, "stop"
    form.capacity.say(text, tone if tone == "stop" else _tone(item))
    form.capacity.setVisible(bool(text))
    _ask_meaning(form, feeds=isinstance(facets.get("bank"), FacetForm))
    return item


def _tone(item: Item) -> str:
    try:
        return "muted" if energy_wh(item) is not None else "look"
    except InputFault:
        return "stop"


def _ask_meaning(form: FacetForm, *, feeds: bool) -> None:
    """Ask about mAh that may be of the cell or of a port: beside the volts of one, or beside none on what feeds."""
    mah, volts, wh = (_number(form, name) for name in ("mah", "v", "wh"))
    if mah is None or volts is None:
        form.ask_meaning(_("at the 5 V port"), asked=feeds and mah is not None and wh is None)
        return
    at_port = _("at the 5 V port") if feeds else _("at {volts} all the same").format(volts=short_text(volts, "V"))
    form.ask_meaning(at_port, asked=is_port(volts) and (wh is None or contradict(wh, mah, volts)))


def _number(form: FacetForm, name: str) -> float | None:
    field = form.fields[name]
    return field.number() if isinstance(field, NumberField) else None


def answer(meaning: object, facets: Mapping[str, FacetPart]) -> None:
    """The mAh are of the cell: its volts are put in. Of the port: they go where the label's figure for it is kept.

    Of what feeds nobody, they become the Wh that they are at the volts beside them.
    """
    battery, bank = facets.get("battery"), facets.get("bank")
    if not isinstance(battery, FacetForm):
        return
    mah, volts = (_number(battery, name) for name in ("mah", "v"))
    if meaning == OF_THE_CELL:
        _put(battery, v=CELL_V)
    elif meaning == OF_THE_PORT and mah is not None:
        _put(battery, mah=None, v=None)
        if isinstance(bank, FacetForm):
            _put(bank, rated_mah=mah)
        elif volts is not None:
            _put(battery, wh=product_wh(mah, volts))


def _put(form: FacetForm, **figures: float | None) -> None:
    for name, figure in figures.items():
        field = form.fields[name]
        if isinstance(field, NumberField):
            field.put(figure)
