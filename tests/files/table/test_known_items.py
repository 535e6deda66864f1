"""Rows about items of the kit, and beside them: states that are not understood, serial numbers of other things."""

from itertools import count

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.doubt import EMPTY, Answers, Question, Settled
from kitlog.files.table.kit_items import Existing
from kitlog.files.table.open_grid import read_grid
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.item import Item
from kitlog.kit.kinds import ItemState, Kind
from kitlog.workbench.kit_preview import ImportChoices, KitPreview, KitSource, preview_kit

WORDS = load_vocabulary(resources_folder())
KIT = (Item(id="a", name="Radio", serial="Q 7", state=ItemState.LENT), Item(id="b", name="Stöcke"))
LEAVE = Settled(Answers(dict.fromkeys(Question, EMPTY)))


def updated(text: str, existing: Existing = Existing.UPDATE) -> KitPreview:
    numbers = count(1)
    source = KitSource(KIT, WORDS, lambda: str(next(numbers)), {}, lambda _item: None)
    return preview_kit(source, read_grid(text.encode(), "kit.csv"), "kit.csv", ImportChoices(LEAVE, existing=existing))


def facts(preview: KitPreview, code: str) -> list[dict[str, object]]:
    return [dict(remark.facts) for remark in preview.remarks if remark.code == code]


def test_a_state_that_is_not_understood_leaves_what_the_kit_says() -> None:
    preview = updated("Item;State;Weight\nRadio;on the roof;210 g\nLamp;on the roof;80 g\n")
    assert [(change.after.state, change.after.mass_g) for change in preview.changed] == [(ItemState.LENT, 210)]
    assert [item.state for item in preview.new] == [ItemState.AWAY]
    assert facts(preview, "table.state_kept") == [{"words": ("on the roof",), "rows": (2,)}]
    assert facts(preview, "table.state_away") == [{"words": ("on the roof",), "rows": (3,)}]


@pytest.mark.parametrize("serial", ["Q 7", "q  7"])
def test_the_serial_number_of_a_thing_of_another_name_is_told(serial: str) -> None:
    preview = updated(f"Item;Serial\nRadio two;{serial}\nLamp;X\n")
    assert facts(preview, "table.serial_known") == [
        {"row": 2, "name": "Radio two", "serial": serial.strip(), "other": "Radio"}
    ]


@pytest.mark.parametrize("row", ["Radio;Q 7", "Radio two;", "Radio two;Q 8"])
def test_no_other_serial_number_is(row: str) -> None:
    assert facts(updated(f"Item;Serial\n{row}\n"), "table.serial_known") == []


def test_a_name_of_other_composition_is_the_same_name() -> None:
    preview = updated("Item;Weight\nSto\u0308cke;480 g\n")
    assert (preview.new, [change.after.mass_g for change in preview.changed]) == ((), [480])


def test_a_category_of_rescue_gives_way_to_what_the_name_tells() -> None:
    preview = updated("Objet;Catégorie\nTrousse de secours;Secours\nParachute rond;Secours\nMirvane 95;Rettung\n")
    assert [item.kind for item in preview.new] == [Kind.FIRST_AID, Kind.RESERVE, Kind.RESERVE]
    assert [fact["names"] for fact in facts(preview, "table.kind_guessed")] == [("Trousse de secours",)]
