"""Rows that give the same figures share what is checked of them: the items and the problems stay those of each row."""

from itertools import count

import pytest

from kitlog.files.resources import resources_folder
from kitlog.files.table.kit_items import KitItems, kit_items
from kitlog.files.table.kit_reading import Choices, read_kit_grid
from kitlog.files.table.open_grid import read_grid
from kitlog.files.table.vocabulary import load_vocabulary
from kitlog.kit.facets import Battery, Vessel, WayOfUse
from kitlog.kit.item import Item

WORDS = load_vocabulary(resources_folder())


def _brought(text: str, *, leave_out: bool = False) -> KitItems:
    ids = count(1)
    reading = read_kit_grid(read_grid(text.encode(), "kit.csv"), WORDS, Choices())
    return kit_items(reading, "kit.csv", (), lambda: f"id{next(ids)}", None, leave_out=leave_out)


def test_items_of_the_same_figures_are_as_checked_one_by_one() -> None:
    rows = ["a,3000,3.7", "b,3000,3.7", "c,3000,", "d,,", "e,3000,3.7"]
    new = _brought("\n".join(["name,battery_mah,battery_v", *rows])).new
    full, part = {"mah": 3000.0, "v": 3.7}, {"mah": 3000.0}
    batteries = (full, full, part, None, full)
    assert new == tuple(
        Item.model_validate({"id": f"id{n}", "name": name, "battery": battery})
        for n, (name, battery) in enumerate(zip("abcde", batteries, strict=True), 1)
    )
    assert all(item == Item.model_validate(item.model_dump()) for item in new)


def test_figures_of_two_facets_are_told_apart() -> None:
    new = _brought("name,battery_mah,vessel_ml\na,750,\nb,,750\nc,750,750\n").new
    assert [(item.battery, item.vessel) for item in new] == [
        (Battery(mah=750), None),
        (None, Vessel(capacity_ml=750)),
        (Battery(mah=750), Vessel(capacity_ml=750)),
    ]


def test_a_draw_becomes_the_way_of_use_of_each_row() -> None:
    new = _brought("name,battery_v,draw_w\na,3.7,0.5\nb,3.7,0.5\n").new
    assert [item.battery for item in new] == [Battery(v=3.7, ways=(WayOfUse(name="on", power_w=0.5),))] * 2


@pytest.mark.parametrize("leave_out", [False, True])
def test_figures_that_make_no_facet_are_a_problem_of_each_row(*, leave_out: bool) -> None:
    table = "name,wing_min_kg,wing_max_kg\na,105,85\nb,85,105\nc,105,85\n"
    brought = _brought(table, leave_out=leave_out)
    problems = brought.dropped if leave_out else brought.problems
    assert [(problem.row, problem.column, problem.code) for problem in problems] == [
        (2, "wing_min_kg", "facet.limits_reversed"),
        (4, "wing_min_kg", "facet.limits_reversed"),
    ]
    assert [item.name for item in brought.new if item.wing and item.wing.min_g == 85_000] == ["b"]
