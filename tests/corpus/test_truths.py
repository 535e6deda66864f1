"""The judge of the corpus itself: it must tell wrong from missing from made up."""

from pathlib import Path
from typing import Any

from truths import Outcome, Truth, compare

from kitlog.kit.item import Item

SAID = {"line": 2, "name": "Radio", "kind": "radio", "mass_g": [212, 213], "battery.wh": 11.1, "draw_w": 0.3}


def outcome(*rows: dict[str, Any], said: dict[str, Any] = SAID, **more: object) -> Outcome:
    truth = Truth(Path("pilot/sheet.csv"), {"items": [said], "doubts": [], **more})
    return compare(truth, [Item(id="1", **row).model_dump(mode="json") for row in rows])


def way(power_w: float) -> dict[str, Any]:
    return {"name": "on", "power_w": power_w}


RIGHT = {"name": "Radio", "kind": "radio", "mass_g": 213, "battery": {"wh": 11.1, "ways": [way(0.3)]}}


def test_all_right() -> None:
    assert outcome(RIGHT) == Outcome(right=5)


def test_another_value_is_wrong_none_is_missing_and_more_is_made_up() -> None:
    found = outcome(RIGHT | {"mass_g": 21, "battery": {"ways": [way(0.3)]}, "serial": "7"})
    assert found.right == 3
    assert found.wrong == ["pilot/sheet.csv, row 2 (Radio), mass_g: expected [212, 213], got 21"]
    assert found.missing == ["pilot/sheet.csv, row 2 (Radio), battery.wh: expected 11.1, got None"]
    assert found.made_up == ["pilot/sheet.csv, row 2 (Radio), serial: expected '', got '7'"]


def test_an_item_that_did_not_come_in_and_one_that_nobody_wrote() -> None:
    found = outcome(RIGHT | {"name": "Total"})
    assert (found.right, len(found.missing), len(found.made_up)) == (0, 5, 1)


def test_what_is_only_suggested_may_be_read_or_left() -> None:
    said = {"line": 2, "name": "Radio", "may": {"kind": "radio"}}
    assert outcome({"name": "Radio", "kind": "radio"}, said=said) == outcome({"name": "Radio"}, said=said)
    assert outcome({"name": "Radio", "kind": "phone"}, said=said).made_up


def test_a_sheet_without_kinds_leaves_them_free_and_one_without_names_too() -> None:
    said = {"line": 2, "name": "Radio", "maker": "Ossel"}
    assert not outcome({"name": "Radio", "kind": "radio", "maker": "Ossel"}, said=said, kind_free=True).made_up
    assert outcome({"name": "Ossel 5", "maker": "Ossel"}, said=said, name_free=True) == Outcome(right=2)
