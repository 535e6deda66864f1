"""Which items a need takes: kinds, what they serve, layer and part of garments; and what is guessed of an item."""

import pytest

from kitlog.kit.facets import Garment
from kitlog.kit.item import Item
from kitlog.kit.kinds import Kind, Layer
from kitlog.outing.library import Library, Served
from kitlog.outing.needs import Need, Strength


def need(**fields: object) -> Need:
    return Need.model_validate({"id": "n", "label": "n", "strength": Strength.ADVISED, "why": "so", **fields})


def item(kind: Kind = Kind.GARMENT, name: str = "thing", garment: Garment | None = None) -> Item:
    return Item(id="i", name=name, kind=kind, garment=garment)


def test_a_kind_or_something_served_is_enough() -> None:
    either = need(kinds=["phone"], serves=["position"])
    assert either.takes(item(Kind.PHONE), ())
    assert either.takes(item(Kind.INSTRUMENT), {"position"})
    assert not either.takes(item(Kind.INSTRUMENT), {"map"})


def test_with_both_the_kind_must_serve_too() -> None:
    both = need(kinds=["instrument"], serves=["map"], both=True)
    assert both.takes(item(Kind.INSTRUMENT), {"map"})
    assert not both.takes(item(Kind.INSTRUMENT), {"audio"})
    assert not both.takes(item(Kind.PHONE), {"map"})


@pytest.mark.parametrize(
    ("garment", "expected"),
    [
        (Garment(layer=Layer.INSULATION, part="top"), True),
        (Garment(layer=Layer.INSULATION), True),
        (Garment(layer=Layer.INSULATION, part="legs"), False),
        (Garment(layer=Layer.MID, part="top"), False),
        (Garment(clo=0.55, part="top"), False),
        (None, False),
    ],
)
def test_insulation_is_a_layer_never_an_amount_of_clo(garment: Garment | None, expected: bool) -> None:
    insulation = need(kinds=["garment"], layer="insulation", part="top", serves=["insulation"])
    assert insulation.takes(item(garment=garment), ()) is expected
    assert insulation.takes(item(garment=garment), {"insulation"})


@pytest.mark.parametrize(
    ("garment", "expected"),
    [
        (Garment(layer=Layer.BASE, part="top"), True),
        (Garment(part="Top"), True),
        (Garment(part="top, legs"), True),
        (Garment(layer=Layer.WIND, part="top"), False),
        (Garment(part="legs"), False),
        (Garment(), False),
        (None, False),
    ],
)
def test_clothes_of_a_part_leave_other_layers_alone(garment: Garment | None, expected: bool) -> None:
    top = need(kinds=["garment"], part="top", not_layers=["mid", "insulation", "wind"])
    assert top.takes(item(garment=garment), ()) is expected


WHISTLE = Served(name="whistle", label="whistle", words=("whistle", "sifflet"))
CALLS = Served(name="call", label="call", kinds=(Kind.PHONE,))


def test_what_an_item_does_is_guessed_from_name_model_and_kind() -> None:
    library = Library(served=(WHISTLE, CALLS))
    assert library.guessed(item(Kind.TOOL, "Tree kit and whistle")) == {"whistle"}
    assert library.guessed(Item(id="i", name="Red", model="Sifflet 3", kind=Kind.PHONE)) == {"whistle", "call"}
    assert library.guessed(item(Kind.TOOL, "Knife")) == frozenset()


def test_a_changed_copy_of_the_library_guesses_anew() -> None:
    library = Library(served=(WHISTLE,))
    phone = item(Kind.PHONE, "Whistle")
    assert library.guessed(phone) == library.guessed(phone) == {"whistle"}
    changed = library.model_copy(update={"served": (CALLS,)})
    assert changed.guessed(phone) == {"call"}
    assert library.guessed(phone) == {"whistle"}
