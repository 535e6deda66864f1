"""Columns of whole pieces, launches and ports."""

from decimal import Decimal

import pytest
from column_reads import one, read, remarks

from kitlog.files.table.cells import Figure
from kitlog.files.table.doubt import Question


@pytest.mark.parametrize(
    "cell",
    [
        "2",
        "2x",
        "2 x",
        "x2",
        "2×",
        "2 Stk",
        "2 Stk.",
        "2 Stück",
        "2 pcs",
        "2 off",
        "2 pieces",
        "2 pièces",
        "2 Paar",
        "2.0",
    ],
)
def test_counts_as_they_are_written(cell):
    assert one("quantity", "", cell) == 2


@pytest.mark.parametrize("cell", ["1,5", "1 (2)", "2 of 3", "-1", "two", "2er", "½", "2 kg", "1e3", "２"])
def test_what_is_no_count(cell):
    assert one("quantity", "", cell) is Question.UNREAD


def test_launches_in_thousands():
    reading = read("opening_launches", "", ["1.250", "ca. 300", "12 Flüge", "1'100"])
    assert reading.values == (1250, 300, 12, 1100)
    assert reading.guesses == {1}
    assert remarks(reading) == [
        ("table.decided_decimal", {"mark": "comma", "cells": 1, "example": "1.250", "because": "impossible"})
    ]


def test_one_or_a_thousand_is_asked():
    reading = read("opening_launches", "", ["1.000"])
    assert dict(reading.doubts[0].readings) == {"comma": "1000", "point": "1"}


def test_a_workbooks_counts():
    assert one("quantity", "", Figure(Decimal("2.0"), "2")) == 2
    assert one("quantity", "", Figure(Decimal("2.5"), "2.5")) is Question.UNREAD
    assert one("quantity", "", Figure(Decimal(2), "2 Stk", "Stk")) == 2
    assert one("quantity", "", Figure(Decimal(2), "2 kg", "kg")) is Question.UNREAD
