"""Columns of mass ranges."""

import pytest
from column_reads import one, read, remarks

from kitlog.files.table.doubt import Question


@pytest.mark.parametrize(
    ("cell", "limits"),
    [
        ("85-105", (85_000, 105_000)), ("85 – 105 kg", (85_000, 105_000)), ("85kg-105kg", (85_000, 105_000)),
        ("85 bis 105", (85_000, 105_000)), ("85 to 105 kg", (85_000, 105_000)), ("de 85 à 105 kg", (85_000, 105_000)),
        ("von 85,5 bis 105", (85_500, 105_000)), ("85/105", (85_000, 105_000)), ("85…105", (85_000, 105_000)),
        ("187-231 lb", (84_822, 104_780)), ("max. 120 kg", (None, 120_000)), ("bis 120", (None, 120_000)),
        ("≤ 120 kg", (None, 120_000)), ("min 85", (85_000, None)), ("?", None),
    ],
)  # fmt: skip
def test_ranges_as_they_are_written(cell, limits):
    # Pounds: 187 x 0.45359237 = 84.8218 kg, 231 x 0.45359237 = 104.7798 kg (international pound).
    assert one("wing_range", "kg", cell) == limits


@pytest.mark.parametrize(
    "cell", ["105", "105-85", "<120", "85-105-120", "85-", "85-105 (95)", "85-105 m", "S-M", "-85"]
)
def test_what_is_no_range(cell):
    assert one("reserve_range", "kg", cell) is Question.UNREAD


def test_without_a_unit_it_is_asked_for():
    reading = read("wing_range", "", ["85-105"])
    assert reading.doubts[0].question is Question.MASS_UNIT
    assert reading.doubts[0].readings["kg"] == "85-105 kg"
    assert one("wing_range", "", "85-105", {"mass_unit": "kg"}) == (85_000, 105_000)


def test_rough_ranges_are_guesses():
    reading = read("wing_range", "kg", ["ca. 85-105"])
    assert (reading.values, reading.guesses) == (((85_000, 105_000),), {0})


@pytest.mark.parametrize(
    ("answer", "ends"),
    [("g", (85_000, 105_000)), ("kg", (85_000, 105_000)), ("lb", (38_555, 47_627)), ("oz", (38_555, 47_627))],
)
def test_what_a_wing_bears_is_in_kilograms_or_pounds_whatever_its_own_mass_is_in(answer, ends):
    # International pound: 85 x 0.45359237 = 38.5554 kg, 105 x 0.45359237 = 47.6272 kg.
    reading = read("wing_range", "", ["85-105"])
    assert set(reading.doubts[0].readings) == {"kg", "lb"}
    assert one("wing_range", "", "85-105", {"mass_unit": answer}) == ends
    assert one("wing_min_kg", "", "85", {"mass_unit": answer}) == ends[0]
    assert set(read("reserve_max_kg", "", ["85"]).doubts[0].readings) == {"kg", "lb"}


def test_a_unit_that_follows_from_another_is_told():
    for target, cell in (("wing_range", "85-105"), ("harness_max_kg", "110")):
        assert remarks(read(target, "", [cell, "120 kg"], {"mass_unit": "g"}))[0] == (
            "table.usual_unit",
            {"unit": "kg", "cells": 1},
        )
        assert remarks(read(target, "", [cell], {"mass_unit": "kg"})) == []
