"""What an item is, as facts for a buyer, an inspector or an insurer."""

from collections.abc import Iterator
from datetime import date

from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState
from kitlog.wording.book_parts import Fact, given
from kitlog.wording.figures import day_text, kg_text, mass_text, number_text, with_unit
from kitlog.wording.translate import _
from kitlog.wording.words import first_upper, word


def identity(item: Item) -> tuple[Fact, ...]:
    """Maker, model, serial number and days; what a reader looks for first is named even where it is not known."""
    unknown = _("not on record")
    return given(
        (_("Kind"), first_upper(word(item.kind.value))),
        (_("Pieces"), "" if item.quantity == 1 else number_text(item.quantity)),
        (_("Maker"), item.maker or unknown),
        (_("Model"), item.model or unknown),
        (_("Serial number"), item.serial or unknown),
        (_("Colour"), item.colour),
        (_("Made on"), _day(item.made_on) or unknown),
        (_("Bought on"), _day(item.bought_on)),
        (_("First used on"), _day(item.first_used_on) or unknown),
        (_("Mass"), _mass(item)),
        *figures(item),
    )


def figures(item: Item) -> Iterator[Fact]:
    """What is printed on a wing, harness or reserve."""
    if item.wing is not None:
        yield _("Certified range"), _span(item.wing.min_g, item.wing.max_g)
        yield _("Flat area"), with_unit(item.wing.flat_m2, "m²", 1) if item.wing.flat_m2 else ""
    if item.harness is not None and item.harness.max_g:
        yield _("Greatest load"), kg_text(item.harness.max_g, 0)
    if item.reserve is not None:
        yield _("Printed load"), _span(item.reserve.min_g, item.reserve.max_g)


def whereabouts(item: Item) -> tuple[Fact, ...]:
    """State, whose it is, who has it, and until when."""
    state = "" if item.state is ItemState.IN_SERVICE else word(item.state.value)
    return given(
        (_("State"), state),
        (_("Belongs to"), item.belongs_to),
        (_("Lent to"), item.lent_to),
        (_("Back by"), _day(item.back_by)),
    )


def _day(day: date | None) -> str:
    return day_text(day) if day else ""


def _mass(item: Item) -> str:
    if item.mass_g is None:
        return ""
    each = _("{mass} each") if item.quantity != 1 else "{mass}"
    return f"{each.format(mass=mass_text(item.mass_g))}, {word(item.mass_source.value)}"


def _span(low: int | None, high: int | None) -> str:
    if low is None and high is None:
        return ""
    if low is None or high is None:
        return (_("to {high}") if low is None else _("from {low}")).format(low=kg_text(low, 0), high=kg_text(high, 0))
    return _("{low} to {high}").format(low=number_text(low / 1000), high=kg_text(high, 0))
