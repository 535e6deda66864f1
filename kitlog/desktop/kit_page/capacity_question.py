"""What the capacity figures of the form come to, and the question what the mAh of a bank mean."""

from collections.abc import Mapping

from pydantic import ValidationError

from kitlog.desktop.kit_page.facet_form import FacetForm
from kitlog.desktop.kit_page.facet_part import FacetPart
from kitlog.desktop.parts.fields import NumberField
from kitlog.fault import Fault, InputFault
from kitlog.kit.facets import Bank, Battery
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind
from kitlog.packing.capacity import energy_wh, is_bank, refuse_more_out_than_in
from kitlog.units.refused import refused
from kitlog.wording.capacity_text import capacity_text
from kitlog.wording.faults import fault_text

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
    form.ask_meaning(asked=_is_asked(item))
    return item


def _tone(item: Item) -> str:
    try:
        return "muted" if energy_wh(item) is not None else "look"
    except InputFault:
        return "stop"


def _is_asked(item: Item) -> bool:
    """Whether mAh of a bank stand there of which nobody said what they mean."""
    battery = item.battery
    return is_bank(item) and battery is not None and battery.given == "mAh"


def answer(meaning: object, facets: Mapping[str, FacetPart]) -> None:
    """The mAh are of the cell: its volts are put in. Of the port: they go where the label's figure for it is kept."""
    battery, bank = facets.get("battery"), facets.get("bank")
    if not isinstance(battery, FacetForm) or not isinstance(bank, FacetForm):
        return
    mah, volts, rated = battery.fields["mah"], battery.fields["v"], bank.fields["rated_mah"]
    if not isinstance(mah, NumberField) or not isinstance(volts, NumberField) or not isinstance(rated, NumberField):
        return
    if meaning == OF_THE_CELL:
        volts.put(CELL_V)
    elif meaning == OF_THE_PORT:
        number = mah.number()
        mah.put(None)
        rated.put(number)
